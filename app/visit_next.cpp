// SPDX-License-Identifier: Apache-2.0
#include "open_visit.h"
#include "visit_model.h"

// What comes next of a visit, in words.

namespace truehang {

QString VisitModel::nextStep() const {
    switch (next_.step) {
        case NextStep::add_window:
            return QStringLiteral("window");
        case NextStep::measure:
            return QStringLiteral("measure");
        case NextStep::agree:
        case NextStep::agree_again:
            return QStringLiteral("agree");
        case NextStep::send:
            return QStringLiteral("send");
        case NextStep::done:
            break;
    }
    return QStringLiteral("done");
}

QString VisitModel::nextSays() const {
    switch (next_.step) {
        case NextStep::add_window:
            return tr("Add the first window");
        case NextStep::measure:
            return tr("Measure the next window");
        case NextStep::agree:
            return tr("Agree with the client");
        case NextStep::agree_again:
            return tr("Have it signed again");
        case NextStep::send:
            return tr("Send to the workroom");
        case NextStep::done:
            break;
    }
    return tr("Back to the visits");
}

QString VisitModel::windowAfter() const {
    const int next = windows_.indexOf(open_.windowId()) + 1;
    return next > 0 && next < windows_.count() ? windows_.value(next, QStringLiteral("windowId")).toString()
                                               : QString();
}

QString VisitModel::afterWindowSays() const {
    if (!windowAfter().isEmpty()) {
        return tr("Next window");
    }
    if (next_.step == NextStep::done) {
        return tr("Back to the visit");
    }
    return windowToMeasure() == open_.windowId() ? tr("Go on measuring") : nextSays();
}

}  // namespace truehang
