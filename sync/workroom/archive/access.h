// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/pairing_code.h"
#include "protocol/records.h"
#include "units/result.h"
#include "workroom/archive/archive.h"
#include "workroom/archive/last_seen.h"
#include "workroom/archive/secret.h"

#include <chrono>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// How long a browser stays signed in.
inline constexpr std::chrono::hours session_life{7 * 24};

/// Whose token was shown.
struct TokenHolder {
    std::string device;    ///< its id
    bool revoked = false;  ///< it may do nothing any more
};

/// Who may send and who may look: devices with tokens, browsers with sessions, both taken on by a one-time code. A
/// secret is `ID.SECRET`; only the SHA-256 of SECRET is kept, compared in constant time. Safe from several threads.
class Access {
public:
    explicit Access(Archive& archive);

    /// A new code, as it is shown to a person; holds ten minutes and once.
    [[nodiscard]] Result<std::string> new_code();

    /// Takes a device on. Errors: `busy` after too many wrong codes in a minute (nothing is looked at then);
    /// `unknown_word` for a code that doesn't hold; else what the database says.
    [[nodiscard]] Result<std::string> pair(std::string_view typed_code, std::string_view device_name);
    /// The same for a browser: the value of its cookie.
    [[nodiscard]] Result<std::string> sign_in(std::string_view typed_code);

    /// The device whose bearer token this is, revoked or not; nothing for any other token.
    [[nodiscard]] Result<std::optional<TokenHolder>> device_of(std::string_view token);
    /// Has written down when devices were last seen; to be called once they have their answers.
    void write_last_seen() { last_seen_.write_due(); }
    [[nodiscard]] Result<bool> signed_in(std::string_view session);

private:
    /// Writes the row of what is taken on: its id, and its secret as it is kept.
    using Enter = std::function<void(Records&, const std::string& id, const std::string& kept)>;

    [[nodiscard]] Result<std::string> take_on(std::string_view typed_code, const Enter& enter);
    [[nodiscard]] bool begin_try();
    void forgive_try();

    Archive& archive_;
    LastSeen last_seen_;
    std::mutex mutex_;
    std::vector<sync::Time> tries_;  ///< of the last minute that didn't succeed
};

}  // namespace truehang::workroom
