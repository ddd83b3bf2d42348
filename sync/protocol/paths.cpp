// SPDX-License-Identifier: Apache-2.0
#include "protocol/paths.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/questions.h"

#include <algorithm>
#include <charconv>
#include <vector>

namespace truehang::sync {

namespace {

bool unreserved(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '.' ||
           c == '_' || c == '~';
}

int hex_value(char c) {
    if (c >= '0' && c <= '9') {
        return c - '0';
    }
    if (c >= 'a' && c <= 'f') {
        return c - 'a' + 10;
    }
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

std::vector<std::string_view> segments(std::string_view path) {
    std::vector<std::string_view> parts;
    while (!path.empty() && path.front() == '/') {
        path.remove_prefix(1);
        const auto slash = path.find('/');
        parts.push_back(path.substr(0, slash));
        path.remove_prefix(slash == std::string_view::npos ? path.size() : slash);
    }
    return path.empty() ? parts : std::vector<std::string_view>{};
}

std::optional<long long> read_revision(std::string_view text) {
    long long value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool plain = !text.empty() && text.front() >= '1' && text.front() <= '9';
    if (!plain || fault != std::errc{} || end != text.data() + text.size() || value > revision_limit) {
        return std::nullopt;
    }
    return value;
}

std::string survey_path(std::string_view survey_id, std::string_view rest) {
    return "/surveys/" + percent_encode(survey_id) + std::string(rest);
}

std::optional<Place> read_survey_place(const std::vector<std::string_view>& parts) {
    auto id = percent_decode(parts[1]);
    if (!id || !id_travels(*id)) {
        return std::nullopt;
    }
    Place place;
    place.survey = std::move(*id);
    if (parts.size() == 4 && parts[2] == "revisions") {
        const auto revision = read_revision(parts[3]);
        place.kind = Place::Kind::revision;
        place.revision = revision.value_or(0);
        return revision ? std::optional(place) : std::nullopt;
    }
    if (parts.size() == 6 && parts[2] == "questions" && parts[4] == "answers") {
        const auto number = read_revision(parts[3]);
        place.kind = Place::Kind::answer;
        place.revision = number.value_or(0);
        place.answer = std::string(parts[5]);
        return number && is_answer_id(place.answer) ? std::optional(place) : std::nullopt;
    }
    for (const auto& [name, kind] :
         {std::pair{"receipt", Place::Kind::receipt}, std::pair{"figures", Place::Kind::figures},
          std::pair{"marks", Place::Kind::marks}, std::pair{"questions", Place::Kind::questions}}) {
        if (parts.size() == 3 && parts[2] == name) {
            place.kind = kind;
            return place;
        }
    }
    return std::nullopt;
}

}  // namespace

std::string revision_path(std::string_view survey_id, long long revision) {
    return survey_path(survey_id, "/revisions/" + std::to_string(revision));
}
std::string receipt_path(std::string_view survey_id) { return survey_path(survey_id, "/receipt"); }
std::string figures_path(std::string_view survey_id) { return survey_path(survey_id, "/figures"); }
std::string marks_path(std::string_view survey_id) { return survey_path(survey_id, "/marks"); }
std::string questions_path(std::string_view survey_id) { return survey_path(survey_id, "/questions"); }
std::string answer_path(std::string_view survey_id, long long number, std::string_view answer_id) {
    return survey_path(survey_id, "/questions/" + std::to_string(number) + "/answers/" + std::string(answer_id));
}
std::string rules_path(long long version) { return "/rules/" + std::to_string(version); }
std::string photo_path(std::string_view sha256_hex) { return "/photos/" + std::string(sha256_hex); }
std::string upload_path(std::string_view sha256_hex) { return "/uploads/" + std::string(sha256_hex); }

std::optional<Place> read_path(std::string_view path) {
    Place place;
    if (path == rules_path_now) {
        place.kind = Place::Kind::rules;
        return place;
    }
    for (const auto& [name, kind] :
         {std::pair{pair_path, Place::Kind::pair}, std::pair{health_path, Place::Kind::health},
          std::pair{changes_path, Place::Kind::changes}, std::pair{all_questions_path, Place::Kind::all_questions}}) {
        if (path == name) {
            place.kind = kind;
            return place;
        }
    }
    const auto parts = segments(path);
    if (parts.size() >= 3 && parts[0] == "surveys") {
        return read_survey_place(parts);
    }
    if (parts.size() == 2 && parts[0] == "rules") {
        const auto version = read_revision(parts[1]);
        place.kind = Place::Kind::rules;
        place.revision = version.value_or(0);
        return version ? std::optional(place) : std::nullopt;
    }
    if (parts.size() == 2 && (parts[0] == "photos" || parts[0] == "uploads") && sha256_from_hex(parts[1])) {
        place.kind = parts[0] == "photos" ? Place::Kind::photo : Place::Kind::upload;
        place.sha256 = std::string(parts[1]);
        return place;
    }
    return std::nullopt;
}

bool id_travels(std::string_view id) {
    const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
    return !id.empty() && id.size() <= id_limit && id != "." && id != ".." &&
           std::none_of(id.begin(), id.end(), control);
}

std::string percent_encode(std::string_view text) {
    static constexpr std::string_view digits = "0123456789ABCDEF";
    std::string encoded;
    for (const char c : text) {
        if (unreserved(c)) {
            encoded += c;
        } else {
            const auto byte = static_cast<unsigned char>(c);
            encoded += '%';
            encoded += digits[byte >> 4U];
            encoded += digits[byte & 15U];
        }
    }
    return encoded;
}

std::optional<std::string> percent_decode(std::string_view text) {
    std::string decoded;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '%') {
            decoded += text[i];
            continue;
        }
        const int high = i + 2 < text.size() ? hex_value(text[i + 1]) : -1;
        const int low = i + 2 < text.size() ? hex_value(text[i + 2]) : -1;
        if (high < 0 || low < 0) {
            return std::nullopt;
        }
        decoded += static_cast<char>(high * 16 + low);
        i += 2;
    }
    return decoded;
}

}  // namespace truehang::sync
