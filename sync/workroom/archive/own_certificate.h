// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "units/result.h"

#include <filesystem>
#include <string>
#include <vector>

namespace truehang::workroom {

/// The certificate that a workroom made for itself, with its key.
struct OwnCertificate {
    std::filesystem::path file;  ///< PEM, key and certificate in one, read by nobody but its owner
    std::string fingerprint;     ///< SHA-256 of the certificate as DER, 64 lower-case digits
};

/// How long it holds.
inline constexpr std::chrono::days own_certificate_life{3652};

/// The certificate in a folder; made where there is none: a key on P-256, self-signed, for `names` (host names and IP
/// addresses; what is neither is left out), from a day before `now` for ten years. What is there is never made anew:
/// paired phones know no other. `damaged` where it can't be read, `full` or `io` where it can't be written.
[[nodiscard]] Result<OwnCertificate> own_certificate(const std::filesystem::path& folder,
                                                     const std::vector<std::string>& names, sync::Time now);

}  // namespace truehang::workroom
