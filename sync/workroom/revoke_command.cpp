// SPDX-License-Identifier: Apache-2.0
#include "workroom/revoke_command.h"

#include "workroom/archive/device_shelf.h"
#include "workroom/documents.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

namespace {

int fail_at(const Error& error) {
    fmt::print(stderr, "truehang-workroom: {}: {}\n", error.where, error.text);
    return refused;
}

/// A name as it may stand on a terminal: what would steer it is shown as a question mark.
std::string plain(std::string name) {
    std::replace_if(
        name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }, '?');
    // C1 controls, U+0080 to U+009F, are 0xC2 and a byte below 0xA0.
    for (std::size_t at = 0; at + 1 < name.size(); ++at) {
        if (name[at] == '\xc2' && static_cast<unsigned char>(name[at + 1]) < 0xa0) {
            name.replace(at, 2, "?");
        }
    }
    return name;
}

std::string line_of(const PairedDevice& device) {
    const auto state = device.revoked_at.empty() ? std::string() : ", revoked " + device.revoked_at;
    const auto seen = device.last_seen ? "last seen " + sync::write_time(*device.last_seen) : "not seen yet";
    return fmt::format("{}  {}\n    paired {}, {}, surveys: {}{}\n", device.id, plain(device.name), device.paired_at,
                       seen, device.surveys, state);
}

int list(const std::vector<PairedDevice>& devices) {
    std::string lines;
    for (const auto& device : devices) {
        lines += line_of(device);
    }
    return write_out(devices.empty() ? "No device is paired.\n" : lines, "") ? 0 : refused;
}

int revoke(const RevokeOptions& options) {
    const auto archive = open_standing_archive(options.kept);
    if (!archive) {
        return fail_at(archive.error());
    }
    const DeviceShelf shelf(**archive);
    const auto devices = shelf.all();
    if (!devices || options.device.empty()) {
        return devices ? list(*devices) : fail_at(devices.error());
    }
    const auto device = find_device(*devices, options.device);
    if (!device) {
        return fail_at({device.error().code, plain(device.error().where), device.error().text});
    }
    const auto revoked = shelf.revoke(device->id);
    if (!revoked) {
        return fail_at(revoked.error());
    }
    return write_out(fmt::format("{}  {}: {}\n", device->id, plain(device->name),
                                 *revoked ? "revoked; what it sent stays" : "was revoked already"),
                     "")
               ? 0
               : refused;
}

}  // namespace

void add_revoke(CLI::App& app, RevokeOptions& options, int& result) {
    auto* command = app.add_subcommand("revoke", "Refuse a device from now on, or list the devices");
    add_kept_at(*command, options.kept);
    command->add_option("device", options.device, "Its id, or a name that only one has; none: list them");
    command->callback([&] { result = revoke(options); });
}

}  // namespace truehang::workroom
