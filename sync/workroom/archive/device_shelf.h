// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "units/result.h"
#include "workroom/archive/archive.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// A device that was paired.
struct PairedDevice {
    std::string id;
    std::string name;                     ///< what it called itself: any text
    std::string paired_at;                ///< RFC 3339
    std::optional<sync::Time> last_seen;  ///< within `last_seen_grain`; nothing where it never came back
    std::string revoked_at;               ///< RFC 3339; empty: it may send
    long long surveys = 0;                ///< of how many it sent a revision
};

/// The devices that may send, and those that no longer may.
class DeviceShelf {
public:
    explicit DeviceShelf(Archive& archive) : archive_(archive) {}

    /// All of them: those that may send first, then by when they were paired.
    [[nodiscard]] Result<std::vector<PairedDevice>> all() const;
    /// From here on the device's token is refused; what it sent stays, what is unfinished of it goes. True where it
    /// held until now, false where it was revoked before. `missing` where there is no such device.
    [[nodiscard]] Result<bool> revoke(const std::string& id) const;

private:
    Archive& archive_;
};

/// The device of that id, else the only one of that name; of several one that may still send goes before revoked ones.
/// `missing` where there is none, `conflict` where more than one has the name.
[[nodiscard]] Result<PairedDevice> find_device(const std::vector<PairedDevice>& devices, std::string_view id_or_name);

}  // namespace truehang::workroom
