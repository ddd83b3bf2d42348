// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/reception.h"
#include "workroom/site/replies.h"
#include "workroom/site/site_pages.h"
#include "workroom/site/steps_desk.h"

namespace truehang::workroom {

http::Response Reception::answer_steps(const http::Request& request, const std::string& survey) {
    const bool sent = request.head.method == "POST";
    if (sent) {
        if (auto why_not = why_not_set(request.head, "What was done is marked on the workroom’s own page.")) {
            return std::move(*why_not);
        }
    } else if (auto why_not = why_not_look(request.head)) {
        return why_not->status == 401 ? page_reply(401, sign_in_page("")) : std::move(*why_not);
    }
    auto answer =
        sent ? take_steps(archive_, survey, request.body) : look_at_steps(archive_, survey, request.head.query);
    return answer ? std::move(*answer) : page_reply(404, missing_page());
}

}  // namespace truehang::workroom
