// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/steps_page.h"

#include "protocol/paths.h"
#include "sheet/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace truehang::workroom {

using sync::LayerMark;
using sync::Step;

namespace {

std::string capital(std::string_view word) {
    std::string text(word);
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::string title_of(const StepsLayer& layer) {
    return layer.made.layer.empty() ? layer.made.title : layer.made.title + ", " + layer.made.layer;
}

std::string button_value(const StepsLayer& layer, Step step, bool done) {
    return write_asked_mark({done, step, false, layer.made.room, layer.made.window, layer.made.layer});
}

View step_view(const StepsTable& table, const StepsLayer& layer, Step step, bool may_mark) {
    const auto& mark = layer.steps.at(static_cast<std::size_t>(step));
    const bool changed = layer.has_changed(step);
    const auto word = std::string(sync::word_of(step));
    auto entry = view();
    entry.set("step", word);
    entry.set("done", mark ? View{step_text(*mark)} : truth(false));
    entry.set("who", mark ? fmt::format("{}, by {}", moment_text(mark->at), mark->by) : "");
    entry.set("changed", truth(changed));
    entry.set("same", mark && !changed && mark->revision != table.newest()
                          ? View{fmt::format("Revision {} has the same figures.", table.newest())}
                          : truth(false));
    entry.set("title", title_of(layer));
    entry.set("back", mark && may_mark ? View{button_value(layer, step, false)} : truth(false));
    const bool markable = may_mark && layer.is_there && (!mark || mark->revision != table.newest() || changed);
    entry.set("set", markable ? View{button_value(layer, step, true)} : truth(false));
    entry.set("set_says", mark ? "Mark anew" : "Mark as " + word);
    return entry;
}

/// Revisions that a layer's marks were made by, but the newest, rising.
std::set<long long> revisions_before(const StepsTable& table, const StepsLayer& layer) {
    std::set<long long> revisions;
    for (const auto& mark : layer.steps) {
        if (mark && mark->revision != table.newest()) {
            revisions.insert(mark->revision);
        }
    }
    return revisions;
}

View since_view(const StepsTable& table, const StepsLayer& layer, long long revision) {
    auto entry = view();
    entry.set("title", fmt::format("From revision {} to revision {}", revision, table.newest()));
    entry.set("before", fmt::format("revision {}", revision));
    entry.set("after", fmt::format("revision {}", table.newest()));
    const bool is_kept = table.before.contains(revision);
    const auto difference = is_kept && layer.is_there ? table.since(revision, layer) : LayerDifference{};
    const bool digests_differ = std::ranges::any_of(layer.steps, [&](const auto& mark) {
        return mark && mark->revision == revision && mark->figures_sha256 != layer.digest;
    });
    std::string said;
    if (!is_kept) {
        said = fmt::format("Revision {} isn’t here, so what differs can’t be shown.", revision);
    } else if (!layer.is_there) {
        said = fmt::format("It is no longer in revision {}.", table.newest());
    } else if (digests_differ && !difference.figures_differ) {
        said =
            "When it was marked, its figures were worked out otherwise than this version of Truehang does. Go by the "
            "sheet that was printed then.";
    } else if (!digests_differ) {
        said = difference.lines.empty() ? "The figures are the same."
                                        : "The figures are the same; what is to be minded differs.";
    }
    entry.set("said", said.empty() ? truth(false) : View{said});
    set_differences(entry, difference.lines);
    return entry;
}

View layer_view(const StepsTable& table, const StepsLayer& layer, std::size_t number, bool may_mark) {
    auto entry = view();
    entry.set("id", fmt::format("layer-{}", number));
    entry.set("title", title_of(layer));
    entry.set("hangs", layer.hangs.empty() ? truth(false) : View{layer.hangs});
    entry.set("gone", layer.is_there ? truth(false) : View{fmt::format("No longer in revision {}.", table.newest())});
    auto steps = view_list();
    for (const Step step : sync::all_steps) {
        steps << step_view(table, layer, step, may_mark);
    }
    entry.set("steps", steps);
    auto since = view_list();
    const auto revisions = revisions_before(table, layer);
    for (const long long revision : revisions) {
        since << since_view(table, layer, revision);
    }
    entry.set("since", since);
    entry.set("changed", truth(layer.has_changed()));
    return entry;
}

/// What differs of all that is bought, from each earlier revision that something was done by.
View bought_view(const StepsTable& table) {
    auto list = view_list();
    for (const auto& [revision, made] : table.before) {
        const auto difference = written_differences(table.survey, made, table.made, sheet_style_for(table.survey));
        if (!difference.bought.empty()) {
            auto entry = view();
            entry.set("title", fmt::format("From revision {} to revision {}", revision, table.newest()));
            entry.set("before", fmt::format("revision {}", revision));
            entry.set("after", fmt::format("revision {}", table.newest()));
            set_differences(entry, difference.bought);
            list << entry;
        }
    }
    return list;
}

View revisions_view(const StepsTable& table) {
    auto revisions = view_list();
    for (auto receipt = table.receipts.rbegin(); receipt != table.receipts.rend(); ++receipt) {
        auto entry = view();
        entry.set("number", std::to_string(receipt->revision));
        entry.set("received", moment_text(receipt->received_at));
        revisions << entry;
    }
    return revisions;
}

View bulk_view() {
    auto all = view_list();
    for (const Step step : sync::all_steps) {
        auto entry = view();
        entry.set("value", write_asked_mark({true, step, true, "", "", ""}));
        entry.set("text", "Mark all as " + std::string(sync::word_of(step)));
        all << entry;
    }
    return all;
}

}  // namespace

std::string steps_path(std::string_view survey) { return "/surveys/" + sync::percent_encode(survey) + "/steps"; }

std::string step_text(const LayerMark& mark) {
    return fmt::format("{} from revision {}", capital(sync::word_of(mark.step)), mark.revision);
}

void set_differences(View& values, const std::vector<DifferenceLine>& lines) {
    auto list = view_list();
    auto minded = view_list();
    bool some = false;
    for (const DifferenceLine& line : lines) {
        if (line.flag) {
            minded << View{line.after.empty()    ? fmt::format("Gone: {}. {}", line.what, line.before)
                           : line.before.empty() ? fmt::format("New: {}. {}", line.what, line.after)
                                                 : fmt::format("Now: {}. {}", line.what, line.after)};
            continue;
        }
        some = true;
        auto entry = view();
        entry.set("what", line.what);
        entry.set("figure", line.figure);
        entry.set("then", line.before.empty() ? "–" : line.before);
        entry.set("now", line.after.empty() ? "–" : line.after);
        entry.set("more", line.more);
        list << entry;
    }
    values.set("lines", list);
    values.set("lines_some", truth(some));
    values.set("minded", minded);
}

std::string write_asked_mark(const AskedMark& asked) {
    const std::string start = std::string(asked.done ? "set/" : "back/") + std::string(sync::word_of(asked.step));
    return asked.all ? start
                     : start + "/" + sync::percent_encode(asked.room) + "/" + sync::percent_encode(asked.window) + "/" +
                           sync::percent_encode(asked.layer);
}

std::optional<AskedMark> read_asked_mark(std::string_view text) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find('/', at), text.size());
        const auto part = sync::percent_decode(text.substr(at, end - at));
        if (!part) {
            return std::nullopt;
        }
        parts.push_back(*part);
        at = end + 1;
    }
    const auto step = parts.size() > 1 ? sync::step_of(parts[1]) : std::nullopt;
    const bool known = parts[0] == "set" || parts[0] == "back";
    if (!known || !step || (parts.size() != 2 && parts.size() != 5) || (parts.size() == 2 && parts[0] == "back")) {
        return std::nullopt;
    }
    AskedMark asked{parts[0] == "set", *step, parts.size() == 2, "", "", ""};
    if (!asked.all) {
        asked.room = parts[2];
        asked.window = parts[3];
        asked.layer = parts[4];
    }
    return asked;
}

std::string steps_page(const StepsTable& table, const StepsPage& page) {
    auto values = view();
    const auto title = table.survey.title.empty() ? std::string("Untitled visit") : table.survey.title;
    values.set("title", title);
    values.set("newest", std::to_string(table.newest()));
    values.set("received", moment_text(table.receipts.back().received_at));
    values.set("said", page.said.empty() ? truth(false) : View{page.said});
    values.set("action", steps_path(table.survey.id));
    values.set("by", page.by);
    values.set("by_signed_in", truth(page.by_signed_in));
    values.set("may_mark", truth(page.may_mark));
    values.set("revisions", revisions_view(table));
    values.set("some", truth(!table.layers.empty()));
    values.set("bulk", table.layers.size() > 1 ? bulk_view() : view_list());
    values.set("bulk_some", truth(table.layers.size() > 1 && page.may_mark));
    const auto bought = bought_view(table);
    values.set("bought_some", truth(!bought.list_value().empty()));
    values.set("bought", bought);
    auto layers = view_list();
    for (std::size_t i = 0; i < table.layers.size(); ++i) {
        layers << layer_view(table, table.layers[i], i + 1, page.may_mark);
    }
    values.set("layers", layers);
    const Frame frame{"Ordered, cut, made, hung",
                      "page-steps",
                      {{"/", "Surveys"}, {"/surveys/" + sync::percent_encode(table.survey.id), title}},
                      false};
    return framed(frame, fill("steps", values));
}

}  // namespace truehang::workroom
