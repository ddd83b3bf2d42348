// SPDX-License-Identifier: Apache-2.0
#include "document/json_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <unordered_set>

namespace truehang {
namespace {

using Json = nlohmann::json;

/// nlohmann's id of "number overflow parsing".
constexpr int number_overflow = 406;

std::string not_json(std::string_view bytes, std::size_t position) {
    const std::string_view before = bytes.substr(0, std::min(position, bytes.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    return fmt::format("This isn’t JSON in UTF-8 at byte {} (line {}). Write the document again, or mend it there.",
                       position, line);
}

/// An object or list that is being read, and where in it the reading stands.
struct Frame {
    JsonValue value;
    std::string key;                       ///< of the member being read
    bool key_read = false;                 ///< a key stands without its value yet
    std::unordered_set<std::string> keys;  ///< of an object, for those that stand twice
};

/// Builds the tree from nlohmann's events, so that at every moment the pointer and the depth are known.
class TreeBuilder : public nlohmann::json_sax<Json> {
public:
    explicit TreeBuilder(std::string_view bytes) : bytes_(bytes) {}

    bool null() override { return place({}); }
    bool boolean(bool truth) override {
        JsonValue value;
        value.kind = JsonKind::boolean;
        value.truth = truth;
        return place(std::move(value));
    }
    bool number_integer(number_integer_t number) override {
        return place_number(static_cast<double>(number), fmt::format("{}", number));
    }
    bool number_unsigned(number_unsigned_t number) override {
        return place_number(static_cast<double>(number), fmt::format("{}", number));
    }
    bool number_float(number_float_t number, const string_t& literal) override { return place_number(number, literal); }
    bool string(string_t& text) override {
        JsonValue value;
        value.kind = JsonKind::string;
        value.text = std::move(text);
        return place(std::move(value));
    }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(JsonKind::object); }
    bool start_array(std::size_t) override { return open(JsonKind::array); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool key(string_t& name) override {
        Frame& frame = frames_.back();
        frame.key = name;
        frame.key_read = true;
        if (!frame.keys.insert(name).second) {
            tree_.repeated_keys.push_back(pointer());
        }
        return true;
    }
    bool parse_error(std::size_t position, const std::string&, const Json::exception& fault) override {
        if (fault.id == number_overflow) {
            faults_.push_back(
                {pointer(), "This number is too large to be finite. Write the number that was measured."});
        } else {
            faults_.push_back({pointer(), not_json(bytes_, position)});
        }
        return false;
    }

    [[nodiscard]] Faults& faults() { return faults_; }
    [[nodiscard]] JsonTree& tree() { return tree_; }

private:
    bool place_number(double number, std::string literal) {
        JsonValue value;
        value.kind = JsonKind::number;
        value.number = number;
        value.text = std::move(literal);
        return place(std::move(value));
    }

    bool place(JsonValue&& value) {
        if (++values_ > most_values) {
            faults_.push_back({pointer(), fmt::format("A document may hold at most {} values.", most_values)});
            return false;
        }
        if (frames_.empty()) {
            tree_.root = std::move(value);
            return true;
        }
        Frame& frame = frames_.back();
        if (frame.value.kind == JsonKind::object) {
            frame.value.members.emplace_back(std::move(frame.key), std::move(value));
            frame.key.clear();
            frame.key_read = false;
        } else {
            frame.value.items.push_back(std::move(value));
        }
        return true;
    }

    bool open(JsonKind kind) {
        if (frames_.size() == deepest_nesting) {
            faults_.push_back({pointer(), fmt::format("Objects and lists may stand at most {} deep in one another.",
                                                      deepest_nesting)});
            return false;
        }
        frames_.emplace_back().value.kind = kind;
        return true;
    }

    bool close() {
        JsonValue value = std::move(frames_.back().value);
        frames_.pop_back();
        return place(std::move(value));
    }

    /// Where the value lies that is being read; of an object between two members, the object.
    [[nodiscard]] std::string pointer() const {
        std::string result;
        for (const Frame& frame : frames_) {
            if (frame.value.kind == JsonKind::array) {
                result = pointer_to(result, frame.value.items.size());
            } else if (frame.key_read) {
                result = pointer_to(result, frame.key);
            }
        }
        return result;
    }

    std::string_view bytes_;
    std::vector<Frame> frames_;
    JsonTree tree_;
    Faults faults_;
    std::size_t values_ = 0;
};

void append_text(const JsonValue& value, std::string& out) {
    std::string_view separator;
    switch (value.kind) {
        case JsonKind::null:
            out += "null";
            return;
        case JsonKind::boolean:
            out += value.truth ? "true" : "false";
            return;
        case JsonKind::number:
            out += value.text;
            return;
        case JsonKind::string:
            out += json_string(value.text);
            return;
        case JsonKind::object:
            out += '{';
            for (const auto& [name, member] : value.members) {
                out += separator;
                out += json_string(name);
                out += ':';
                append_text(member, out);
                separator = ",";
            }
            out += '}';
            return;
        case JsonKind::array:
            out += '[';
            for (const JsonValue& item : value.items) {
                out += separator;
                append_text(item, out);
                separator = ",";
            }
            out += ']';
            return;
    }
}

}  // namespace

JsonValue::JsonValue() = default;

const JsonValue* JsonValue::find(std::string_view name) const {
    for (const auto& [key, value] : members) {
        if (key == name) {
            return &value;
        }
    }
    return nullptr;
}

Result<JsonTree, Faults> read_json(std::string_view bytes) {
    if (bytes.size() > largest_document) {
        return Faults{{"", fmt::format("The document has {} bytes; at most {} (4 MiB) are read.", bytes.size(),
                                       largest_document)}};
    }
    // A zero byte stands nowhere in JSON, but the parser takes it for the end.
    const std::size_t zero = bytes.find('\0');
    const std::string_view text = bytes.substr(0, zero);
    TreeBuilder builder(text);
    if (!Json::sax_parse(text.begin(), text.end(), &builder)) {
        return std::move(builder.faults());
    }
    if (zero != std::string_view::npos) {
        return Faults{{"", not_json(bytes, zero + 1)}};
    }
    return std::move(builder.tree());
}

std::string json_text(const JsonValue& value) {
    std::string out;
    append_text(value, out);
    return out;
}

std::string json_string(std::string_view text) {
    return Json(text).dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string json_number(double number) {
    if (number == 0.0) {
        return "0";  // also for -0.0
    }
    if (std::abs(number) < 1e15 && number == std::trunc(number)) {
        return fmt::format("{}", static_cast<long long>(number));
    }
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number);
    return {buffer.data(), end.ptr};
}

std::string pointer_to(std::string_view parent, std::string_view name) {
    std::string result(parent);
    result += '/';
    for (const char c : name) {
        if (c == '~') {
            result += "~0";
        } else if (c == '/') {
            result += "~1";
        } else {
            result += c;
        }
    }
    return result;
}

std::string pointer_to(std::string_view parent, std::size_t index) { return fmt::format("{}/{}", parent, index); }

}  // namespace truehang
