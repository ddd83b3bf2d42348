// SPDX-License-Identifier: Apache-2.0
#include "figures/figures.h"

#include "figures/changed_twice.h"
#include "figures/orders.h"
#include "figures/window_working.h"

namespace truehang {

WindowFigures work_out_window(const Survey& survey, const Room& room, const Window& window) {
    return work_window(survey, room, window).figures;
}

Figures work_out(const Survey& survey) {
    Figures figures;
    figures.survey = survey.id;
    figures.revision = survey.revision;
    OrderBook book(survey);
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            WorkedWindow worked = work_window(survey, room, window);
            book.take(worked);
            figures.windows.push_back(std::move(worked.figures));
        }
    }
    figures.orders = book.orders();
    figures.haberdashery = book.haberdashery();
    figures.flags = changed_twice_flags(survey);
    return figures;
}

}  // namespace truehang
