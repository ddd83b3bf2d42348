// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/json_reader.h"
#include "survey/survey.h"

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// The faults of one document as they are found, at most `most_faults` of them.
class FaultList {
public:
    static constexpr std::size_t most_faults = 1000;

    void add(std::string pointer, std::string text);
    [[nodiscard]] bool empty() const { return faults_.empty(); }
    [[nodiscard]] Faults take() { return std::move(faults_); }

private:
    Faults faults_;
};

/// A range of numbers, its ends included unless `low_open` or `high_open`.
struct NumberRange {
    double low = 0.0;
    double high = 0.0;
    bool low_open = false;
    bool high_open = false;
};
inline constexpr NumberRange length_range{0.0, 100000.0};           ///< mm
inline constexpr NumberRange placed_range{-100000.0, 100000.0};     ///< mm from an edge, negative to its left
inline constexpr NumberRange any_number{-1e12, 1e12};               ///< finite, and fit to reckon with
inline constexpr NumberRange count_range{0.0, 9007199254740991.0};  ///< whole numbers that a double holds exactly

enum class Presence { optional, required };

/// Reads the members of one JSON object, each under its name and with its range, and keeps what isn't read. An absent
/// member leaves its field as it was; a wrong one is a fault at its pointer and leaves the field as it was. A known
/// member whose value equals its field's default (an empty text or list, null, zero, false) goes to `rest` too, so that
/// writing gives it back.
class ObjectReader {
public:
    /// `value` must be an object.
    ObjectReader(const JsonValue& value, std::string pointer, FaultList& faults);

    [[nodiscard]] const std::string& pointer() const { return pointer_; }
    [[nodiscard]] std::string pointer(std::string_view key) const { return pointer_to(pointer_, key); }
    [[nodiscard]] FaultList& faults() { return faults_; }
    [[nodiscard]] bool has(std::string_view key) const { return value_.find(key) != nullptr; }

    void text(std::string_view key, std::string& field, Presence presence = Presence::optional);
    void text(std::string_view key, std::optional<std::string>& field);
    /// A text that must say something.
    void id(std::string_view key, std::string& field, Presence presence = Presence::optional);
    void time(std::string_view key, std::string& field);
    /// A text or null.
    void nullable_text(std::string_view key, std::optional<std::string>& field);
    void flag(std::string_view key, bool& field);
    void flag(std::string_view key, std::optional<bool>& field);

    void number(std::string_view key, double& field, const NumberRange& range);
    void number(std::string_view key, std::optional<double>& field, const NumberRange& range);
    void whole(std::string_view key, int& field, const NumberRange& range);
    void whole(std::string_view key, long long& field, const NumberRange& range);
    void whole(std::string_view key, std::optional<long long>& field, const NumberRange& range);
    void whole(std::string_view key, std::optional<int>& field, const NumberRange& range);
    void length(std::string_view key, Length& field, const NumberRange& range = length_range,
                Presence presence = Presence::optional);
    void length(std::string_view key, std::optional<Length>& field, const NumberRange& range = length_range);
    void angle(std::string_view key, std::optional<Angle>& field, const NumberRange& range);

    template <class E>
    void word(std::string_view key, std::optional<Word<E>>& field) {
        std::optional<std::string> written;
        text(key, written);
        if (written) {
            field = Word<E>(*written);
        }
    }

    using ReadItem = std::function<void(const JsonValue&, const std::string& pointer)>;
    /// A list of at most `most` items, each handed on with its pointer.
    void list(std::string_view key, std::size_t most, const ReadItem& read_item,
              Presence presence = Presence::optional);
    /// The same, of objects.
    using ReadObject = std::function<void(ObjectReader&)>;
    void objects(std::string_view key, std::size_t most, const ReadObject& read_object,
                 Presence presence = Presence::optional);
    /// An object; true where it is there and was handed on.
    bool object(std::string_view key, const ReadObject& read_object);
    /// An object or null.
    bool nullable_object(std::string_view key, const ReadObject& read_object);

    /// The member's value, taken as known; nothing where absent.
    [[nodiscard]] const JsonValue* take(std::string_view key, Presence presence = Presence::optional);
    /// A member that the caller reads from `value` itself.
    void know(std::string_view key) { taken_.emplace(key); }
    /// A taken member to be given back by `rest` as it stands.
    void keep(std::string_view key);
    void fault(std::string_view key, std::string text) { faults_.add(pointer(key), std::move(text)); }
    /// Members that weren't taken, and those kept, in the order they stood.
    [[nodiscard]] Extra rest() const;
    [[nodiscard]] const JsonValue& value() const { return value_; }

private:
    const JsonValue* take_kind(std::string_view key, JsonKind kind, Presence presence);
    std::optional<double> take_number(std::string_view key, const NumberRange& range, Presence presence);
    std::optional<double> take_whole(std::string_view key, const NumberRange& range);

    const JsonValue& value_;
    std::string pointer_;
    FaultList& faults_;
    std::set<std::string, std::less<>> taken_;
    std::set<std::string, std::less<>> kept_;
};

/// "a text", "a number" …: what a fault's sentence calls a kind.
[[nodiscard]] std::string_view name_of(JsonKind kind);

/// Reads a document that is one object; a fault calls it `what` ("A survey"). The faults found, none where it is sound.
[[nodiscard]] Faults read_whole_document(std::string_view bytes, std::string_view what,
                                         const std::function<void(ObjectReader&)>& read);

/// Whether a format is `name`, or `name.N` of a later minor version.
[[nodiscard]] bool is_format(std::string_view format, std::string_view name);

/// Why a number outside its range was refused.
[[nodiscard]] bool lies_within(double number, const NumberRange& range);
[[nodiscard]] std::string says_range(double number, const NumberRange& range);

}  // namespace truehang
