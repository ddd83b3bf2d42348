// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/paths.h"
#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/people/door.h"
#include "workroom/people/sign_in_desk.h"
#include "workroom/site/arrivals_desk.h"
#include "workroom/site/planning_bench.h"
#include "workroom/site/reach.h"
#include "workroom/site/upload_desk.h"

#include <chrono>
#include <optional>
#include <string>

namespace truehang::workroom {

class PhotoIntake;

struct ReceptionOptions {
    std::string workroom_name = "Workroom";
    bool sign_in_everywhere = false;  ///< pages ask who it is on this machine too (behind a proxy)
    std::string font_folder = "/usr/share/fonts/truetype";
};

/// Everything the receiver serves: the protocol for devices, and pages for people. What each address asks for stands in
/// people/rights.h; who may come in is the `Door`’s to say, before anything below is called.
class Reception final : public http::Site {
public:
    Reception(Archive& archive, Access& access, ReceptionOptions options);

    [[nodiscard]] http::Admission admit(const http::RequestHead& head) override;
    void answer(http::Request request, Respond respond) override;
    [[nodiscard]] http::Response refusal(int status, std::string_view text) override;
    void ending() override;

    /// How phones reach it; told once, before anything is served.
    void set_reach(Reach reach) { reach_ = std::move(reach); }
    /// Once nothing is served any more: no plan is worked out from here on, nobody is told of arrivals, and the archive
    /// may be closed. False where a plan was still under way after so long.
    [[nodiscard]] bool end(std::chrono::milliseconds time);

private:
    [[nodiscard]] http::Admission admit_place(const sync::Place& place, const http::RequestHead& head);
    [[nodiscard]] http::Admission admit_put(const sync::Place& place, const http::RequestHead& head);
    void answer_route(const Route& route, const Caller& caller, http::Request request, const Respond& respond);
    void answer_place(const sync::Place& place, http::Request request, const Respond& respond);
    [[nodiscard]] http::Response answer_pair(const http::Request& request);
    void answer_put(const sync::Place& place, http::Request request, const Respond& respond);
    void answer_revision(const sync::Place& place, http::Request request, std::string device, const Respond& respond);
    void answer_photo_put(const sync::Place& place, http::Request request, std::string device, const Respond& respond);
    /// Puts what was taken in in its place, or says why not.
    [[nodiscard]] std::optional<http::Response> put_photo(const sync::Place& place, const http::Request& request,
                                                          PhotoIntake* intake) const;
    void answer_rolls(const http::Request& request, const Caller& caller, const Respond& respond);
    [[nodiscard]] http::Response answer_steps(const http::Request& request, const Caller& caller);
    [[nodiscard]] http::Response answer_devices(const http::Request& request, const Caller& caller);
    [[nodiscard]] http::Response answer_page(const http::Request& request, const Caller& caller);

    Archive& archive_;
    Access& access_;
    ReceptionOptions options_;
    Door door_;
    SignInDesk sign_in_;
    ArrivalsDesk arrivals_;
    PlanningBench bench_;
    UploadDesk uploads_;
    Reach reach_;
};

}  // namespace truehang::workroom
