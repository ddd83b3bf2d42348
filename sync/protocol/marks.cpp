// SPDX-License-Identifier: Apache-2.0
#include "protocol/marks.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/time_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <utility>

namespace truehang::sync {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view format = "truehang.marks/1";
constexpr std::size_t longest_id = 65536;  ///< bytes; a survey's own ids have no limit but its document's
constexpr std::array<std::pair<std::string_view, Step>, 4> words{
    {{"ordered", Step::ordered}, {"cut", Step::cut}, {"made", Step::made}, {"hung", Step::hung}}};

/// Reads one entry; the first key that isn't as it should be is `fault`.
class MarkReader {
public:
    explicit MarkReader(const Json& json) : json_(json) {}

    LayerMark read(long long before) {
        LayerMark mark;
        mark.number = whole("number");
        mark.room = text("room", longest_id);
        mark.window = text("window", longest_id);
        mark.layer = json_.contains("layer") ? text("layer", longest_id) : "";
        const auto step = step_of(text("step", longest_id));
        mark.step = step.value_or(Step::ordered);
        mark.done = json_.contains("done") && json_["done"].is_boolean() && json_["done"].get<bool>();
        mark.revision = whole("revision");
        mark.figures_sha256 = json_.contains("figures_sha256") ? text("figures_sha256", longest_id) : "";
        mark.by = text("by", name_limit);
        mark.at = text("at", longest_id);
        check("number", mark.number > before && mark.number <= marks_limit);
        check("step", step.has_value());
        check("done", json_.contains("done") && json_["done"].is_boolean());
        check("revision", mark.revision >= 1 && mark.revision <= revision_limit);
        check("figures_sha256",
              mark.done ? sha256_from_hex(mark.figures_sha256).has_value() : mark.figures_sha256.empty());
        check("by", !mark.by.empty());
        check("at", read_time(mark.at).has_value());
        return mark;
    }
    [[nodiscard]] const std::string& fault() const { return fault_; }

private:
    void check(const char* key, bool holds) {
        if (!holds && fault_.empty()) {
            fault_ = key;
        }
    }
    std::string text(const char* key, std::size_t most) {
        const auto found = json_.find(key);
        const bool fits =
            found != json_.end() && found->is_string() && found->get_ref<const std::string&>().size() <= most;
        check(key, fits);
        return fits ? found->get<std::string>() : std::string();
    }
    long long whole(const char* key) {
        const auto found = json_.find(key);
        const bool fits = found != json_.end() && found->is_number_integer();
        check(key, fits);
        return fits ? found->get<long long>() : 0;
    }

    const Json& json_;
    std::string fault_;
};

Error unreadable(std::string where) {
    return {ErrorCode::unreadable, std::move(where), "These aren’t the marks that are expected here."};
}

}  // namespace

std::string_view word_of(Step step) {
    return std::ranges::find(words, step, &std::pair<std::string_view, Step>::second)->first;
}

std::optional<Step> step_of(std::string_view word) {
    const auto found = std::ranges::find(words, word, &std::pair<std::string_view, Step>::first);
    return found == words.end() ? std::nullopt : std::optional(found->second);
}

std::string write_marks(const LayerMarks& marks) {
    Json list = Json::array();
    for (const LayerMark& mark : marks.marks) {
        Json entry{{"number", mark.number}, {"room", mark.room}, {"window", mark.window}};
        if (!mark.layer.empty()) {
            entry["layer"] = mark.layer;
        }
        entry["step"] = word_of(mark.step);
        entry["done"] = mark.done;
        entry["revision"] = mark.revision;
        if (mark.done) {
            entry["figures_sha256"] = mark.figures_sha256;
        }
        entry["by"] = mark.by;
        entry["at"] = mark.at;
        list.push_back(std::move(entry));
    }
    const Json json{{"format", format}, {"survey", marks.survey}, {"marks", std::move(list)}};
    return json.dump(1, ' ', false, Json::error_handler_t::replace);
}

Result<LayerMarks> read_marks(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    const auto is_text = [&json](const char* key) { return json.contains(key) && json[key].is_string(); };
    if (!json.is_object() || !is_text("format") || json["format"].get<std::string>() != format) {
        return unreadable("/format");
    }
    if (!is_text("survey") || !json.contains("marks") || !json["marks"].is_array()) {
        return unreadable(is_text("survey") ? "/marks" : "/survey");
    }
    LayerMarks read{json["survey"].get<std::string>(), {}};
    for (const Json& entry : json["marks"]) {
        if (!entry.is_object()) {
            return unreadable(fmt::format("/marks/{}", read.marks.size()));
        }
        MarkReader reader(entry);
        read.marks.push_back(reader.read(read.marks.empty() ? 0 : read.marks.back().number));
        if (!reader.fault().empty()) {
            return unreadable(fmt::format("/marks/{}/{}", read.marks.size() - 1, reader.fault()));
        }
    }
    return read;
}

std::vector<LayerMark> standing_marks(const std::vector<LayerMark>& marks) {
    std::map<StepPlace, const LayerMark*> last;
    for (const LayerMark& mark : marks) {
        last[place_of(mark)] = &mark;
    }
    std::vector<LayerMark> standing;
    for (const LayerMark& mark : marks) {
        if (mark.done && last[place_of(mark)] == &mark) {
            standing.push_back(mark);
        }
    }
    return standing;
}

StepPlace place_of(const LayerMark& mark) { return {mark.room, mark.window, mark.layer, mark.step}; }

}  // namespace truehang::sync
