// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/digest.h"
#include "units/result.h"
#include "workroom/http/http_server.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// A photo on its way in: written to a file under a name of its own and hashed as it comes; put in its place only when
/// it is whole and its digest is the one that was told. What isn't finished leaves nothing behind.
class PhotoIntake final : public http::BodySink {
public:
    /// Makes a file in `folder`; a failure shows at the first `take`.
    PhotoIntake(const std::filesystem::path& folder, std::string name);
    ~PhotoIntake() override;
    PhotoIntake(const PhotoIntake&) = delete;
    PhotoIntake& operator=(const PhotoIntake&) = delete;

    [[nodiscard]] bool take(std::string_view piece) override;

    /// The digest of what came; ends the taking.
    [[nodiscard]] sync::Sha256 digest();
    [[nodiscard]] long long bytes() const { return bytes_; }

    /// Brings the bytes to the disk and the file to `place` (same file system). Errors: `full`, `io`.
    [[nodiscard]] Result<Done> put(const std::filesystem::path& place);
    /// Why `take` said no.
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

private:
    std::filesystem::path file_;
    int descriptor_ = -1;
    long long bytes_ = 0;
    sync::Sha256Stream hash_;
    std::optional<Error> fault_;
};

}  // namespace truehang::workroom
