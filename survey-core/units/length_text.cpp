// SPDX-License-Identifier: Apache-2.0
#include "units/length_text.h"

#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>
#include <vector>

namespace truehang {
namespace {

constexpr double largest_mm = 100000.0;
/// Whole digits and decimals that are read: more than any tape shows, few enough for exact 64-bit fractions.
constexpr std::size_t most_digits = 6;

std::string understood() {
    return say("Understood are lengths such as 1240, 124.5 cm, 1.24 m, 48 3/8 in and 4' 3 1/2\".");
}

Error refuse(ErrorCode code, std::string text) { return {code, "", std::move(text)}; }
Error unreadable() { return refuse(ErrorCode::unreadable, understood()); }

/// A fraction of whole numbers, 0 or more; kept below 2^53 so that one division gives the nearest double.
struct Fraction {
    long long numerator = 0;
    long long denominator = 1;

    [[nodiscard]] double value() const { return static_cast<double>(numerator) / static_cast<double>(denominator); }
};

Fraction lowest(Fraction f) {
    const long long divisor = std::gcd(f.numerator, f.denominator);
    return {f.numerator / divisor, f.denominator / divisor};
}
Fraction operator+(Fraction a, Fraction b) {
    const long long common = std::lcm(a.denominator, b.denominator);
    return lowest({a.numerator * (common / a.denominator) + b.numerator * (common / b.denominator), common});
}
Fraction operator*(Fraction a, Fraction b) {
    return lowest({a.numerator * b.numerator, a.denominator * b.denominator});
}

/// One thing that was typed.
enum class TokenKind { number, fraction, slash, mark, word, hyphen, other };
struct Token {
    TokenKind kind = TokenKind::other;
    std::string text;               ///< digits with their decimal mark as '.', or a word in lower case
    Fraction fraction;              ///< of a written fraction such as ½
    bool has_decimal_mark = false;  ///< of a number
    bool spaced = false;            ///< white space stands before it
};

/// Characters outside ASCII that people type, and what they stand for.
struct Spelling {
    std::string_view written;
    std::string_view means;
};
constexpr std::array spellings{
    Spelling{"\u00a0", " "},  Spelling{"\u2007", " "},  Spelling{"\u2009", " "}, Spelling{"\u202f", " "},
    Spelling{"\u2032", "'"},  Spelling{"\u2019", "'"},  Spelling{"\u2018", "'"}, Spelling{"\u2033", "\""},
    Spelling{"\u201d", "\""}, Spelling{"\u201c", "\""}, Spelling{"\u2044", "/"}, Spelling{"\u2215", "/"},
    Spelling{"\u2212", "-"},  Spelling{"\u2010", "-"},  Spelling{"\u2011", "-"}, Spelling{"\u2013", "-"},
};
struct WrittenFraction {
    std::string_view written;
    Fraction fraction;
};
constexpr std::array written_fractions{
    WrittenFraction{"\u00bd", {1, 2}}, WrittenFraction{"\u00bc", {1, 4}}, WrittenFraction{"\u00be", {3, 4}},
    WrittenFraction{"\u215b", {1, 8}}, WrittenFraction{"\u215c", {3, 8}}, WrittenFraction{"\u215d", {5, 8}},
    WrittenFraction{"\u215e", {7, 8}},
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_space(char c) { return c == ' ' || c == '\t'; }

/// Splits what was typed into tokens.
class Tokens {
public:
    explicit Tokens(std::string_view typed) : rest_(typed) {
        while (!rest_.empty()) {
            take_next();
        }
    }
    [[nodiscard]] std::vector<Token> take() { return std::move(tokens_); }

private:
    void take_next() {
        if (take_spelling() || take_written_fraction()) {
            return;
        }
        const char c = rest_.front();
        if (is_space(c)) {
            spaced_ = true;
            rest_.remove_prefix(1);
        } else if (is_digit(c) || ((c == '.' || c == ',') && rest_.size() > 1 && is_digit(rest_[1]))) {
            take_number();
        } else if (is_letter(c)) {
            take_word();
        } else {
            add_character(c);
            rest_.remove_prefix(1);
        }
    }

    bool take_spelling() {
        for (const auto& [written, means] : spellings) {
            if (rest_.starts_with(written)) {
                rest_.remove_prefix(written.size());
                means == " " ? static_cast<void>(spaced_ = true) : add_character(means.front());
                return true;
            }
        }
        return false;
    }

    bool take_written_fraction() {
        for (const auto& [written, fraction] : written_fractions) {
            if (rest_.starts_with(written)) {
                rest_.remove_prefix(written.size());
                add(TokenKind::fraction).fraction = fraction;
                return true;
            }
        }
        return false;
    }

    void take_number() {
        Token& token = add(TokenKind::number);
        while (!rest_.empty() && (is_digit(rest_.front()) || rest_.front() == '.' || rest_.front() == ',')) {
            const bool mark = !is_digit(rest_.front());
            if (mark && (token.has_decimal_mark || rest_.size() < 2 || !is_digit(rest_[1]))) {
                break;
            }
            token.has_decimal_mark = token.has_decimal_mark || mark;
            token.text += mark ? '.' : rest_.front();
            rest_.remove_prefix(1);
        }
    }

    void take_word() {
        Token& token = add(TokenKind::word);
        while (!rest_.empty() && is_letter(rest_.front())) {
            const char c = rest_.front();
            token.text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
            rest_.remove_prefix(1);
        }
    }

    void add_character(char c) {
        const bool second_quote = c == '\'' && !spaced_ && !tokens_.empty() && tokens_.back().text == "'";
        if (second_quote) {
            tokens_.back().text = "\"";  // two single quotes are the inch mark
            return;
        }
        const TokenKind kind = c == '/'                ? TokenKind::slash
                               : c == '\'' || c == '"' ? TokenKind::mark
                               : c == '-'              ? TokenKind::hyphen
                                                       : TokenKind::other;
        add(kind).text = c;
    }

    Token& add(TokenKind kind) {
        Token& token = tokens_.emplace_back();
        token.kind = kind;
        token.spaced = spaced_;
        spaced_ = false;
        return token;
    }

    std::string_view rest_;
    std::vector<Token> tokens_;
    bool spaced_ = false;
};

/// What a unit's word or mark stands for: the unit it counts as, and its millimetres.
struct UnitMark {
    std::string_view word;
    LengthUnit unit;
    Fraction mm;
    bool feet = false;
};
constexpr Fraction inch_in_mm{127, 5};
constexpr Fraction foot_in_mm{1524, 5};
constexpr std::array unit_marks{
    UnitMark{"mm", LengthUnit::mm, {1, 1}},
    UnitMark{"cm", LengthUnit::cm, {10, 1}},
    UnitMark{"m", LengthUnit::m, {1000, 1}},
    UnitMark{"in", LengthUnit::in, inch_in_mm},
    UnitMark{"inch", LengthUnit::in, inch_in_mm},
    UnitMark{"inches", LengthUnit::in, inch_in_mm},
    UnitMark{"\"", LengthUnit::in, inch_in_mm},
    UnitMark{"ft", LengthUnit::in, foot_in_mm, true},
    UnitMark{"foot", LengthUnit::in, foot_in_mm, true},
    UnitMark{"feet", LengthUnit::in, foot_in_mm, true},
    UnitMark{"'", LengthUnit::in, foot_in_mm, true},
};

const UnitMark* find_unit(const Token& token) {
    if (token.kind != TokenKind::word && token.kind != TokenKind::mark) {
        return nullptr;
    }
    const auto found = std::ranges::find(unit_marks, token.text, &UnitMark::word);
    return found == unit_marks.end() ? nullptr : &*found;
}

/// A number as typed: "48", "124.5", "48 3/8".
struct TypedNumber {
    Fraction value;
    std::string whole_digits;
    std::size_t decimals = 0;
    bool has_fraction = false;
};

struct Quantity {
    TypedNumber number;
    const UnitMark* unit = nullptr;  ///< none: no unit stands there
};

/// The number, or why it has more digits than are read.
Result<Fraction> whole_and_decimals(const std::string& text) {
    const auto point = text.find('.');
    const auto first_digit = std::min(text.find_first_not_of('0'), point);
    const std::string whole = first_digit == std::string::npos ? "" : text.substr(first_digit, point - first_digit);
    const std::string decimals = point == std::string::npos ? "" : text.substr(point + 1);
    if (whole.size() > most_digits) {
        return refuse(ErrorCode::out_of_range, say("That is more than 100 m: lengths are read from 0 to 100,000 mm."));
    }
    if (decimals.size() > most_digits) {
        return refuse(ErrorCode::unreadable, say("At most {} decimals are read.", most_digits));
    }
    Fraction result;
    for (const char c : whole + decimals) {
        result.numerator = result.numerator * 10 + (c - '0');
    }
    for (std::size_t i = 0; i < decimals.size(); ++i) {
        result.denominator *= 10;
    }
    return lowest(result);
}

/// Reads tokens as at most two quantities ("4' 3 1/2\"").
class LengthReader {
public:
    explicit LengthReader(std::vector<Token> tokens) : tokens_(std::move(tokens)) {}

    Result<TypedLength> read(LengthUnit entry_unit) {
        if (tokens_.empty()) {
            return refuse(ErrorCode::unreadable, say("Nothing was typed. {}", understood()));
        }
        if (tokens_.front().kind == TokenKind::hyphen) {
            return refuse(ErrorCode::out_of_range, say("A length is 0 or more: type it without a minus."));
        }
        auto first = read_quantity();
        if (!first) {
            return first.error();
        }
        if (at_ == tokens_.size()) {
            return alone(*first, entry_unit);
        }
        if (first->unit == nullptr || !first->unit->feet) {
            return after_the_end(*first);
        }
        return feet_and_inches(*first);
    }

private:
    [[nodiscard]] bool next_is(TokenKind kind, std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() && tokens_[at_ + ahead].kind == kind;
    }

    Result<Quantity> read_quantity() {
        Quantity quantity;
        auto number = read_number();
        if (!number) {
            return number.error();
        }
        quantity.number = *number;
        if (at_ < tokens_.size()) {
            quantity.unit = find_unit(tokens_[at_]);
            if (quantity.unit != nullptr) {
                ++at_;
            } else if (tokens_[at_].kind == TokenKind::word) {
                return refuse(ErrorCode::unreadable,
                              say(R"("{}" is no unit known here: mm, cm, m, in, ft, ' and " are.)", tokens_[at_].text));
            }
        }
        return quantity;
    }

    Result<TypedNumber> read_number() {
        TypedNumber number;
        if (next_is(TokenKind::number) && !next_is(TokenKind::slash, 1)) {
            const Token& token = tokens_[at_++];
            const auto value = whole_and_decimals(token.text);
            if (!value) {
                return value.error();
            }
            number.value = *value;
            const auto point = token.text.find('.');
            number.whole_digits = token.text.substr(0, point);
            number.decimals = point == std::string::npos ? 0 : token.text.size() - point - 1;
            if (!fraction_follows()) {
                return number;
            }
            if (token.has_decimal_mark) {
                return refuse(ErrorCode::unreadable, say("Type decimals or a fraction, not both in one number."));
            }
        }
        const auto fraction = read_fraction();
        if (!fraction) {
            return fraction.error();
        }
        number.value = number.value + *fraction;
        number.has_fraction = true;
        return number;
    }

    /// After a whole number: "3/8" set off by a space or a hyphen ("48-3/8"), or one of ½ ¼ ….
    bool fraction_follows() {
        if (next_is(TokenKind::fraction) || (next_is(TokenKind::number) && next_is(TokenKind::slash, 1))) {
            return true;
        }
        const bool hyphened =
            next_is(TokenKind::hyphen) &&
            (next_is(TokenKind::fraction, 1) || (next_is(TokenKind::number, 1) && next_is(TokenKind::slash, 2)));
        if (hyphened) {
            ++at_;
        }
        return hyphened;
    }

    Result<Fraction> read_fraction() {
        if (next_is(TokenKind::fraction)) {
            return tokens_[at_++].fraction;
        }
        if (!next_is(TokenKind::number) || !next_is(TokenKind::slash, 1) || !next_is(TokenKind::number, 2)) {
            return unreadable();
        }
        const Token& above = tokens_[at_];
        const Token& below = tokens_[at_ + 2];
        at_ += 3;
        const auto numerator = whole_and_decimals(above.text);
        const auto denominator = whole_and_decimals(below.text);
        constexpr std::array<long long, 6> halvings{2, 4, 8, 16, 32, 64};
        if (!numerator || !denominator || above.has_decimal_mark || below.has_decimal_mark ||
            std::ranges::find(halvings, denominator->numerator) == halvings.end()) {
            return refuse(ErrorCode::unreadable,
                          say("Fractions are read in halves, quarters, 8ths, 16ths, 32nds and 64ths."));
        }
        if (numerator->numerator == 0 || numerator->numerator >= denominator->numerator) {
            return refuse(ErrorCode::unreadable, say("{}/{} is no fraction between 0 and 1: type the whole "
                                                     "number before it, as 48 3/8.",
                                                     above.text, below.text));
        }
        return lowest({numerator->numerator, denominator->numerator});
    }

    Result<TypedLength> after_the_end(const Quantity& first) const {
        if (first.unit == nullptr && tokens_[at_].kind == TokenKind::number) {
            return refuse(ErrorCode::unreadable,
                          say("Two numbers stand here; digits aren’t grouped. {}", understood()));
        }
        return unreadable();
    }

    static Result<TypedLength> alone(const Quantity& quantity, LengthUnit entry_unit) {
        const bool written = quantity.unit != nullptr;
        const LengthUnit unit = written ? quantity.unit->unit : entry_unit;
        const TypedNumber& number = quantity.number;
        if (!written && number.has_fraction && unit != LengthUnit::in) {
            return refuse(ErrorCode::ambiguous,
                          say("A fraction is read in inches only where it says so: type \"in\" after it, or the "
                              "length in {} with decimals.",
                              word_of(unit)));
        }
        if (unit == LengthUnit::mm && number.decimals == 3 && !number.whole_digits.empty() &&
            number.whole_digits.size() <= 3) {
            return refuse(
                ErrorCode::ambiguous,
                say("This could be thousands or decimals of a millimetre: type it without the mark, or with m."));
        }
        const auto unit_mark = std::ranges::find(unit_marks, word_of(unit), &UnitMark::word);
        return in_range(number.value * (written ? quantity.unit->mm : unit_mark->mm), unit, written);
    }

    Result<TypedLength> feet_and_inches(const Quantity& feet) {
        if (next_is(TokenKind::hyphen)) {
            ++at_;  // 4'-3 1/2"
        }
        const auto inches = read_quantity();
        if (!inches) {
            return inches.error();
        }
        const bool in_inches = inches->unit == nullptr || (inches->unit->unit == LengthUnit::in && !inches->unit->feet);
        if (at_ != tokens_.size() || !in_inches) {
            return unreadable();
        }
        if (feet.number.has_fraction || feet.number.decimals > 0) {
            return refuse(ErrorCode::unreadable, say("Feet before inches must be whole, as in 4' 3 1/2\"."));
        }
        if (inches->number.value.value() >= 12.0 || inches->number.whole_digits.size() > 2) {
            return refuse(ErrorCode::unreadable, say("Inches after feet run from 0 to below 12, as in 4' 3 1/2\"."));
        }
        return in_range(feet.number.value * foot_in_mm + inches->number.value * inch_in_mm, LengthUnit::in, true);
    }

    static Result<TypedLength> in_range(Fraction mm, LengthUnit unit, bool written) {
        if (mm.value() > largest_mm) {
            return refuse(
                ErrorCode::out_of_range,
                written ? say("That is more than 100 m: lengths are read from 0 to 100,000 mm.")
                        : say("In {} that is more than 100 m: lengths are read from 0 to 100,000 mm.", word_of(unit)));
        }
        return TypedLength{Length::mm(mm.value()), unit, written};
    }

    std::vector<Token> tokens_;
    std::size_t at_ = 0;
};

/// Rounded to so many decimals, the decimal mark as asked.
std::string decimal_text(double value, int decimals, char mark) {
    const double step = decimals == 0 ? 1.0 : decimals == 1 ? 10.0 : decimals == 2 ? 100.0 : 1000.0;
    std::string text = fmt::format("{:.{}f}", round_whole(value * step) / step, decimals);
    if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') {
        text.erase(0, 1);
    }
    std::ranges::replace(text, '.', mark);
    return text;
}

/// The same without zeros that say nothing.
std::string trimmed_decimal_text(double value, int decimals, char mark) {
    std::string text = decimal_text(value, decimals, mark);
    text.erase(text.find_last_not_of('0') + 1);
    if (!text.empty() && text.back() == mark) {
        text.pop_back();
    }
    return text;
}

std::string inch_text(double inches, int denominator) {
    const auto parts = static_cast<long long>(round_whole(std::abs(inches) * denominator));
    const long long whole = parts / denominator;
    const Fraction rest = lowest({parts % denominator, denominator});
    std::string text = parts != 0 && inches < 0.0 ? "-" : "";
    if (whole != 0 || rest.numerator == 0) {
        text += std::to_string(whole);
    }
    if (rest.numerator != 0) {
        text += fmt::format("{}{}/{}", whole != 0 ? " " : "", rest.numerator, rest.denominator);
    }
    return text;
}

}  // namespace

Result<TypedLength> read_length(std::string_view typed, LengthUnit entry_unit) {
    constexpr std::size_t longest_text = 100;
    if (typed.size() > longest_text) {
        return unreadable();
    }
    return LengthReader(Tokens(typed).take()).read(entry_unit);
}

std::string write_length(Length length, const LengthStyle& style) {
    std::string text;
    switch (style.unit) {
        case LengthUnit::mm:
            text = trimmed_decimal_text(length.mm(), 1, style.decimal);
            break;
        case LengthUnit::cm:
            text = trimmed_decimal_text(length.mm() / 10.0, 2, style.decimal);
            break;
        case LengthUnit::m:
            text = decimal_text(length.metres(), 3, style.decimal);
            break;
        case LengthUnit::in:
            text = inch_text(length.inches(), style.inch_denominator);
            break;
    }
    return style.with_unit ? fmt::format("{} {}", text, word_of(style.unit)) : text;
}

std::string said_length(Length length, LengthUnit unit) {
    const Length whole = unit == LengthUnit::in ? length : Length::mm(round_whole(length.mm()));
    return write_length(whole, {.unit = unit, .inch_denominator = 16, .decimal = said_decimal(), .with_unit = true});
}

std::optional<LengthUnit> length_unit(std::string_view word) {
    for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::cm, LengthUnit::m, LengthUnit::in}) {
        if (word_of(unit) == word) {
            return unit;
        }
    }
    return std::nullopt;
}

std::string_view word_of(LengthUnit unit) {
    switch (unit) {
        case LengthUnit::mm:
            return "mm";
        case LengthUnit::cm:
            return "cm";
        case LengthUnit::m:
            return "m";
        case LengthUnit::in:
            return "in";
    }
    return "";
}

}  // namespace truehang
