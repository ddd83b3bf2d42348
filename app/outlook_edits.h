// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <QString>
#include <algorithm>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace truehang {

/// Changes what a window looks out on; an outlook that holds nothing any more goes.
template <class Change>
[[nodiscard]] auto changing_outlook(Change change) {
    return [change](Window& window) {
        Outlook outlook = window.outlook.value_or(Outlook());
        if (!change(outlook)) {
            return false;
        }
        const bool empty = !outlook.glass_width && !outlook.glass_height && !outlook.outer_depth &&
                           outlook.bearings.empty() && outlook.skyline.empty() && outlook.extra.empty();
        window.outlook = empty ? std::nullopt : std::optional(outlook);
        return true;
    };
}

/// Changes one item of a list of the outlook; false where it isn’t there.
template <class Item>
[[nodiscard]] auto changing_one(std::vector<Item> Outlook::*list, const std::string& id,
                                const std::function<bool(Item&)>& change) {
    return changing_outlook([list, id, change](Outlook& outlook) {
        const auto found = std::ranges::find(outlook.*list, id, &Item::id);
        return found != (outlook.*list).end() && change(*found);
    });
}

template <class Item>
[[nodiscard]] const Item* find_one(const Window* window, std::vector<Item> Outlook::*list, const std::string& id) {
    if (window == nullptr || !window->outlook) {
        return nullptr;
    }
    const auto& items = *window->outlook.*list;
    const auto found = std::ranges::find(items, id, &Item::id);
    return found == items.end() ? nullptr : &*found;
}

/// A change of one window as a change of its survey.
[[nodiscard]] inline std::function<bool(Survey&)> within(const QString& window, std::function<bool(Window&)> change) {
    return [id = window.toStdString(), change = std::move(change)](Survey& survey) {
        for (Room& room : survey.rooms) {
            const auto found = std::ranges::find(room.windows, id, &Window::id);
            if (found != room.windows.end()) {
                return change(*found);
            }
        }
        return false;
    };
}

}  // namespace truehang
