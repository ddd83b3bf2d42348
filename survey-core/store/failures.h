// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <SQLiteCpp/Exception.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <system_error>
#include <utility>

namespace truehang {

/// What a refusal of SQLite means to a person: full, damaged, busy or io.
[[nodiscard]] Error error_of(const SQLite::Exception& thrown);

/// The same for a refusal of the file system at `where`.
[[nodiscard]] Error error_of(const std::error_code& code, const std::filesystem::path& where);

/// A stored row or file that doesn't read back.
[[nodiscard]] Error damaged(std::string where, const std::string& why);

/// An Error on its way out of nested calls; never leaves the store.
struct Failure {
    Error error;
};

/// Runs `work`, which gives a Result, and turns whatever it throws into an Error: no exception leaves the store.
template <class Work>
auto guarded(Work&& work) -> decltype(work()) {
    try {
        return std::forward<Work>(work)();
    } catch (const Failure& failure) {
        return failure.error;
    } catch (const SQLite::Exception& thrown) {
        return error_of(thrown);
    } catch (const std::filesystem::filesystem_error& thrown) {
        return error_of(thrown.code(), thrown.path1());
    } catch (const nlohmann::json::exception& thrown) {
        return damaged("store", thrown.what());
    } catch (const std::exception& thrown) {
        return Error{ErrorCode::io, "store", thrown.what()};
    }
}

/// The value of a result, or its error thrown as a Failure.
template <class T>
T value_or_throw(Result<T> result) {
    if (!result) {
        throw Failure{result.error()};
    }
    return std::move(result).value();
}

}  // namespace truehang
