// SPDX-License-Identifier: Apache-2.0
#include "survey/findings.h"

namespace truehang {

std::string_view word_of(Severity severity) {
    switch (severity) {
        case Severity::stop:
            return "stop";
        case Severity::remeasure:
            return "remeasure";
        case Severity::decide:
            return "decide";
        case Severity::caution:
            return "caution";
        case Severity::note:
            break;
    }
    return "note";
}

}  // namespace truehang
