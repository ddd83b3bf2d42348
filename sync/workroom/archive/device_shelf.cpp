// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/device_shelf.h"

#include "workroom/archive/upload_shelf.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

PairedDevice device_of(Query& row) {
    PairedDevice device;
    device.id = row.text(0);
    device.name = row.text(1);
    device.paired_at = row.text(2);
    if (!row.is_null(3)) {
        device.last_seen = sync::Time(std::chrono::milliseconds(row.number(3)));
    }
    device.revoked_at = row.is_null(4) ? "" : row.text(4);
    device.surveys = row.number(5);
    return device;
}

}  // namespace

Result<std::vector<PairedDevice>> DeviceShelf::all() const {
    return archive_.database().read<std::vector<PairedDevice>>(
        [](Records& records) -> Result<std::vector<PairedDevice>> {
            Query query(records,
                        "SELECT id, name, paired_at, last_seen_ms, revoked_at, (SELECT count(DISTINCT "
                        "r.survey) FROM revision AS r WHERE r.device = d.id) FROM device AS d "
                        "ORDER BY revoked_at IS NOT NULL, paired_at, id");
            std::vector<PairedDevice> devices;
            while (query.step()) {
                devices.push_back(device_of(query));
            }
            return devices;
        });
}

Result<bool> DeviceShelf::revoke(const std::string& id) const {
    const auto now = sync::write_time(archive_.clock()());
    auto revoked = archive_.database().write_and_wait<bool>([&](Records& records) -> Result<bool> {
        Query update(records, "UPDATE device SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL");
        update.bind(1, now);
        update.bind(2, id);
        if (update.exec() == 1) {
            return true;
        }
        Query query(records, "SELECT 1 FROM device WHERE id = ?");
        query.bind(1, id);
        return query.step() ? Result<bool>(false) : Error{ErrorCode::missing, id, "There is no such device here."};
    });
    if (revoked) {
        remove_uploads_from(archive_.uploads_folder(), id);
    }
    return revoked;
}

Result<PairedDevice> find_device(const std::vector<PairedDevice>& devices, std::string_view id_or_name) {
    std::vector<PairedDevice> named;
    for (const auto& device : devices) {
        if (device.id == id_or_name) {
            return device;
        }
        if (device.name == id_or_name) {
            named.push_back(device);
        }
    }
    if (named.empty()) {
        return Error{ErrorCode::missing, std::string(id_or_name), "There is no such device here."};
    }
    const bool one = named.size() == 1 || (named[0].revoked_at.empty() && !named[1].revoked_at.empty());
    if (!one) {
        return Error{ErrorCode::conflict, std::string(id_or_name), "More than one device has this name: give its id."};
    }
    return named[0];
}

}  // namespace truehang::workroom
