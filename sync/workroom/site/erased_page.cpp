// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/erased_page.h"

#include "sheet/words.h"
#include "workroom/site/frame.h"

namespace truehang::workroom {

std::string erased_page(const std::vector<ErasedSurvey>& erased) {
    auto values = view();
    auto list = view_list();
    for (const ErasedSurvey& survey : erased) {
        auto entry = view();
        entry.set("survey", survey.survey);
        entry.set("erased", moment_text(survey.erased_at));
        entry.set("by", survey.erased_by);
        entry.set("revisions", std::to_string(survey.revisions));
        entry.set("rolls", std::to_string(survey.rolls));
        entry.set("photos", std::to_string(survey.photos));
        list << entry;
    }
    values.set("some", truth(!erased.empty()));
    values.set("surveys", list);
    return framed({"Erased", "page-erased", {{"/", "Surveys"}}, false}, fill("erased", values));
}

}  // namespace truehang::workroom
