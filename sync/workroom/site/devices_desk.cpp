// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/devices_desk.h"

#include "sheet/words.h"
#include "workroom/archive/device_shelf.h"
#include "workroom/site/frame.h"
#include "workroom/site/pairing_page.h"
#include "workroom/site/replies.h"
#include "workroom/site/rules_page.h"
#include "workroom/site/site_pages.h"

#include <string>

namespace truehang::workroom {

namespace {

constexpr std::string_view page_path = "/devices";
constexpr std::string_view revoke_path = "/devices/revoke";
constexpr std::string_view code_path = "/devices/code";

View device_view(const PairedDevice& device) {
    auto entry = view();
    entry.set("id", device.id);
    entry.set("name", device.name);
    entry.set("paired", moment_text(device.paired_at));
    entry.set("seen", device.last_seen ? moment_text(sync::write_time(*device.last_seen)) : "not yet");
    entry.set("surveys", std::to_string(device.surveys));
    entry.set("revoked", device.revoked_at.empty() ? truth(false) : View{moment_text(device.revoked_at)});
    return entry;
}

std::string devices_page(const std::vector<PairedDevice>& devices, bool may_revoke) {
    auto values = view();
    auto list = view_list();
    for (const auto& device : devices) {
        list << device_view(device);
    }
    values.set("some", truth(!devices.empty()));
    values.set("may_revoke", truth(may_revoke));
    values.set("devices", list);
    return framed({"Devices", "page-devices", {{"/", "Surveys"}}, false}, fill("devices", values));
}

http::Response revoke(Archive& archive, const std::string& id) {
    const auto revoked = DeviceShelf(archive).revoke(id);
    if (!revoked) {
        return revoked.error().code == ErrorCode::missing ? page_reply(404, missing_page())
                                                          : error_reply(revoked.error());
    }
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location", page_path);
    return response;
}

http::Response show_new_code(const DevicesDesk& desk) {
    const auto until = desk.archive.clock()() + sync::pairing_code_life;
    const auto code = desk.access.new_code();
    return code ? page_reply(200, pairing_page(desk.reach, *code, until)) : error_reply(code.error());
}

}  // namespace

std::optional<http::Response> why_not_a_device(const Result<TokenHolder>& holder, std::string unknown) {
    if (!holder) {
        return error_reply(holder.error());
    }
    if (holder->revoked) {
        return problem_reply(sync::ProblemKind::unauthorised,
                             "This device was revoked by the workroom. Pair it with a new code if it should send.");
    }
    return holder->device.empty() ? std::optional(problem_reply(sync::ProblemKind::unauthorised, std::move(unknown)))
                                  : std::nullopt;
}

http::Response look_at_devices(const DevicesDesk& desk, const Caller& caller) {
    const auto devices = DeviceShelf(desk.archive).all();
    return devices ? page_reply(200, devices_page(*devices, caller.may_do(Right::revoke)))
                   : error_reply(devices.error());
}

http::Response take_devices_form(const DevicesDesk& desk, const http::Request& request) {
    if (request.head.path == code_path) {
        return show_new_code(desk);
    }
    const auto fields = read_form(request.body);
    const auto device = fields.find("device");
    return request.head.path == revoke_path && device != fields.end() ? revoke(desk.archive, device->second)
                                                                      : page_reply(404, missing_page());
}

}  // namespace truehang::workroom
