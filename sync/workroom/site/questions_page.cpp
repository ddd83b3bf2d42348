// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/questions_page.h"

#include "protocol/paths.h"
#include "sheet/words.h"
#include "survey/stations.h"
#include "units/angle_text.h"
#include "workroom/site/sheet_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace truehang::workroom {

using sync::AskedQuestion;
using sync::QuestionAnswer;

namespace {

std::string name_of(const Room& room) { return room.name.empty() ? room.id : room.name; }
std::string name_of(const Window& window) { return window.name.empty() ? window.id : window.name; }

std::string station_text(const Window* window, const std::string& word) {
    const auto shape = window == nullptr ? std::nullopt : window->shape.known();
    const auto station = shape ? find_station(*shape, word) : std::nullopt;
    return station ? station_words(*station) : word;
}

/// A reading in the survey’s unit, with how it was typed where that says something else.
std::string reading_text(const Survey& survey, const std::optional<Length>& length, const std::optional<Angle>& angle) {
    const auto style = sheet_style_for(survey);
    return angle    ? write_angle(*angle, style.decimal, true)
           : length ? write_length(*length, {style.unit, 16, style.decimal, true})
                    : "";
}

std::string answered_text(const Survey& survey, const Window* window, const sync::AnswerReading& reading) {
    const auto length = reading.value_mm ? std::optional(Length::mm(*reading.value_mm)) : std::nullopt;
    const auto angle = reading.value_deg ? std::optional(Angle::degrees(*reading.value_deg)) : std::nullopt;
    return fmt::format("{}: {}", station_text(window, reading.station), reading_text(survey, length, angle));
}

/// What was read last at a station; nothing where nothing was.
const Reading* last_reading(const Window& window, std::string_view station) {
    const auto found = std::find_if(window.readings.rbegin(), window.readings.rend(),
                                    [&](const Reading& reading) { return reading.station == station; });
    return found == window.readings.rend() ? nullptr : &*found;
}

/// Stations that may be asked about: those of the walk, then others that have readings.
std::vector<std::string> stations_asked(const Window& window) {
    std::vector<std::string> words;
    for (const Station& station : walk_of(window)) {
        words.emplace_back(station.word);
    }
    for (const Reading& reading : window.readings) {
        if (std::ranges::find(words, reading.station) == words.end()) {
            words.push_back(reading.station);
        }
    }
    return words;
}

View option(const AskedAbout& about, std::string text, const AskedAbout& chosen) {
    auto entry = view();
    entry.set("value", write_asked_about(about));
    entry.set("text", std::move(text));
    entry.set("chosen", truth(about == chosen));
    return entry;
}

View windows_view(const Survey& survey, const AskedAbout& chosen) {
    auto windows = view_list();
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            auto options = view_list();
            const auto name = name_of(window);  // a closed list shows no heading of its entries
            options << option({room.id, window.id, ""}, name + ": the whole window", chosen);
            for (const std::string& word : stations_asked(window)) {
                const Reading* reading = last_reading(window, word);
                const auto value = reading == nullptr ? "" : reading_text(survey, reading->value, reading->angle);
                const auto says = station_text(&window, word);
                options << option({room.id, window.id, word}, name + ": " + says + (value.empty() ? "" : ", " + value),
                                  chosen);
            }
            auto entry = view();
            entry.set("name", name_of(room) + ", " + name);
            entry.set("options", options);
            windows << entry;
        }
    }
    return windows;
}

const Window* window_of(const Survey& survey, const std::string& room, const std::string& window) {
    const auto place = find_window(survey, room, window, "");
    return place ? place->window : nullptr;
}

std::string where_text(const Survey& survey, const sync::Question& question) {
    const auto place = find_window(survey, question.room, question.window, "");
    const auto window = place ? name_of(*place->room) + ", " + name_of(*place->window)
                              : question.room + ", " + question.window + " (no longer in the visit)";
    return question.station.empty() ? window
                                    : window + ": " + station_text(place ? place->window : nullptr, question.station);
}

View answer_view(const Survey& survey, const Window* window, const sync::ReceivedAnswer& received) {
    const QuestionAnswer& answer = received.answer;
    auto entry = view();
    entry.set("words", answer.words.empty() ? truth(false) : View{answer.words});
    entry.set("reading", answer.reading ? View{answered_text(survey, window, *answer.reading)} : truth(false));
    entry.set("typed", answer.reading && !answer.reading->typed.empty() ? View{answer.reading->typed} : truth(false));
    const auto& by = answer.by.empty() ? received.device : answer.by;
    entry.set("who", fmt::format("{}{}, came in {}", by.empty() ? "" : by + ", ", moment_text(answer.at),
                                 moment_text(received.received_at)));
    entry.set("revision", answer.reading && answer.revision > 0
                              ? View{fmt::format("In the survey from revision {} on.", answer.revision)}
                              : truth(false));
    return entry;
}

}  // namespace

std::string ask_path(std::string_view survey) { return "/surveys/" + sync::percent_encode(survey) + "/ask"; }

std::string ask_path(std::string_view survey, const std::string& room, const std::string& window) {
    return ask_path(survey) + "?about=" + sync::percent_encode(write_asked_about({room, window, ""}));
}

std::string write_asked_about(const AskedAbout& about) {
    return sync::percent_encode(about.room) + "/" + sync::percent_encode(about.window) + "/" +
           sync::percent_encode(about.station);
}

std::optional<AskedAbout> read_asked_about(std::string_view text) {
    const auto first = text.find('/');
    const auto second = first == std::string_view::npos ? first : text.find('/', first + 1);
    if (second == std::string_view::npos || text.find('/', second + 1) != std::string_view::npos) {
        return std::nullopt;
    }
    auto room = sync::percent_decode(text.substr(0, first));
    auto window = sync::percent_decode(text.substr(first + 1, second - first - 1));
    auto station = sync::percent_decode(text.substr(second + 1));
    return room && window && station ? std::optional(AskedAbout{*room, *window, *station}) : std::nullopt;
}

bool can_be_asked(const Survey& survey, const AskedAbout& about) {
    const auto* window = window_of(survey, about.room, about.window);
    if (window == nullptr) {
        return false;
    }
    const auto stations = stations_asked(*window);
    return about.station.empty() || std::ranges::find(stations, about.station) != stations.end();
}

View questions_view(const Survey& survey, const std::vector<AskedQuestion>& asked) {
    std::vector<const AskedQuestion*> order;
    order.reserve(asked.size());
    for (const AskedQuestion& one : asked) {
        order.push_back(&one);
    }
    std::stable_partition(order.begin(), order.end(), [](const AskedQuestion* one) { return one->answers.empty(); });
    auto list = view_list();
    for (const AskedQuestion* one : order) {
        const auto* window = window_of(survey, one->question.room, one->question.window);
        auto answers = view_list();
        for (const auto& answer : one->answers) {
            answers << answer_view(survey, window, answer);
        }
        auto entry = view();
        entry.set("id", fmt::format("question-{}", one->question.number));
        entry.set("where", where_text(survey, one->question));
        entry.set("words", one->question.words);
        entry.set("who", fmt::format("{}, {}, looking at revision {}", one->question.by, moment_text(one->question.at),
                                     one->question.revision));
        entry.set("open", truth(one->answers.empty()));
        entry.set("answers", answers);
        list << entry;
    }
    return list;
}

std::string questions_page(const Survey& survey, const std::vector<AskedQuestion>& asked, const QuestionsPage& page) {
    auto values = view();
    const auto title = survey.title.empty() ? std::string("Untitled visit") : survey.title;
    const auto windows = windows_view(survey, page.about);
    values.set("title", title);
    values.set("said", page.said.empty() ? truth(false) : View{page.said});
    values.set("action", ask_path(survey.id));
    values.set("by", page.by);
    values.set("by_signed_in", truth(page.by_signed_in));
    values.set("may_ask", truth(page.may_ask));
    values.set("words", page.words);
    values.set("revision", std::to_string(page.newest));
    values.set("some", truth(!windows.list_value().empty()));
    values.set("windows", windows);
    values.set("asked_some", truth(!asked.empty()));
    values.set("questions", questions_view(survey, asked));
    const Frame frame{
        "Ask", "page-ask", {{"/", "Surveys"}, {"/surveys/" + sync::percent_encode(survey.id), title}}, false};
    return framed(frame, fill("ask", values));
}

}  // namespace truehang::workroom
