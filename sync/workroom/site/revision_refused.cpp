// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/revision_refused.h"

#include "workroom/archive/erasure.h"
#include "workroom/archive/lineage.h"
#include "workroom/site/replies.h"

namespace truehang::workroom {

http::Response revision_refused(Archive& archive, const std::string& survey,
                                const std::optional<std::vector<std::string>>& parents, const Error& why) {
    if (why.code != ErrorCode::conflict || is_erased_error(why)) {
        return error_reply(why);
    }
    const auto there = what_is_there(archive.database(), survey, parents.value_or(std::vector<std::string>{}));
    if (!there) {
        return error_reply(there.error());
    }
    sync::Problem problem{sync::ProblemKind::conflict, why.text, {}, {}, {}, *there};
    return problem_reply(problem);
}

}  // namespace truehang::workroom
