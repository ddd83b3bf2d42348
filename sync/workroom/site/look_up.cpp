// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/look_up.h"

#include "document/document.h"
#include "figures/figures.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "workroom/archive/changes.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/archive/photo_pieces.h"
#include "workroom/archive/rules_shelf.h"
#include "workroom/site/questions_desk.h"
#include "workroom/site/replies.h"
#include "workroom/site/rules_page.h"

#include <algorithm>
#include <charconv>
#include <fstream>

namespace truehang::workroom {

using http::RequestHead;
using http::Response;
using sync::Place;
using sync::ProblemKind;

namespace {

constexpr std::size_t usual_changes = 100;
constexpr std::size_t most_changes = 1000;

std::string media_type_of(std::string_view bytes) {
    if (bytes.substr(0, 3) == "\xff\xd8\xff") {
        return "image/jpeg";
    }
    if (bytes.substr(0, 8) == "\x89PNG\r\n\x1a\n") {
        return "image/png";
    }
    return bytes.size() >= 12 && bytes.substr(0, 4) == "RIFF" && bytes.substr(8, 4) == "WEBP"
               ? "image/webp"
               : "application/octet-stream";
}

/// Puts the photo’s file, or its bytes where the records hold them, into `response`: the first bytes of it.
Result<std::string> begin_photo(Archive& archive, const std::string& sha256, Response& response) {
    static constexpr std::size_t enough = 16;
    if (archive.database().hold_photos()) {
        auto bytes = photo_bytes(archive, sha256);
        if (!bytes) {
            return bytes.error();
        }
        response.body = std::move(bytes).value();
        return response.body.substr(0, enough);
    }
    response.file = archive.photo_file(sha256);
    std::string start(enough, '\0');
    std::ifstream file(response.file, std::ios::binary);
    file.read(start.data(), static_cast<std::streamsize>(start.size()));
    start.resize(static_cast<std::size_t>(file.gcount()));
    return start;
}

Response photo_reply(Archive& archive, const Place& place, const RequestHead& head) {
    const auto photo = archive.photo(place.sha256);
    if (!photo) {
        return error_reply(photo.error());
    }
    if (!*photo) {
        return not_there();
    }
    if (head.method == "HEAD") {  // its receipt
        if (const auto confirmed = archive.confirm(); !confirmed) {
            return error_reply(confirmed.error());
        }
    }
    Response response;
    const auto start = begin_photo(archive, place.sha256, response);
    if (!start) {
        return error_reply(start.error());
    }
    if (start->empty() && (*photo)->bytes > 0) {
        return error_reply({ErrorCode::damaged, "photos", "A photo’s bytes aren’t where they were put."});
    }
    const auto digest = sync::sha256_from_hex(place.sha256).value_or(sync::Sha256{});
    response.headers = {{"Content-Type", media_type_of(*start)},
                        {std::string(sync::repr_digest_header), sync::digest_field(digest)},
                        {std::string(sync::received_at_header), (*photo)->received_at},
                        {"Cache-Control", "private, max-age=86400"},
                        {"X-Content-Type-Options", "nosniff"}};
    if (head.method == "HEAD") {
        response.file.clear();
        response.body.clear();
        response.content_length = static_cast<std::uint64_t>((*photo)->bytes);
    }
    return response;
}

Response receipt_reply(Archive& archive, const Place& place) {
    const auto receipts = archive.receipts(place.survey);
    const auto missing = missing_photos(archive, place.survey);
    if (!receipts || !missing) {
        return error_reply(receipts ? missing.error() : receipts.error());
    }
    if (receipts->empty()) {
        return not_there();
    }
    const auto confirmed = archive.confirm();
    return confirmed ? json_reply(200, sync::write_record(sync::SurveyThere{place.survey, *receipts, *missing}))
                     : error_reply(confirmed.error());
}

Response figures_reply(Archive& archive, const Place& place) {
    const auto newest = archive.newest(place.survey);
    if (!newest) {
        return error_reply(newest.error());
    }
    if (!*newest) {
        return not_there();
    }
    const auto survey = read_survey((*newest)->bytes);
    if (!survey) {
        return error_reply({ErrorCode::damaged, "revision", "A stored document can’t be read any more."});
    }
    return json_reply(200, write_figures(work_out(*survey)));
}

Response marks_reply(Archive& archive, const Place& place) {
    const auto newest = archive.newest(place.survey);
    auto marks = MarkShelf(archive).marks(place.survey);
    if (!newest || !marks) {
        return error_reply(newest ? marks.error() : newest.error());
    }
    return *newest ? json_reply(200, sync::write_marks({place.survey, std::move(marks).value()})) : not_there();
}

Response rules_reply(Archive& archive, const Place& place) {
    const RulesShelf shelf(archive);
    const auto document = place.revision == 0 ? shelf.current() : shelf.version(place.revision);
    if (!document) {
        return document.error().code == ErrorCode::missing ? not_there() : error_reply(document.error());
    }
    return json_reply(200, write_rules_document(*document));
}

/// The bytes as they came. What is named by its digest never changes: a client that has it is told so (RFC
/// 9110, 13.1.2).
Response revision_reply(Archive& archive, const Place& place, const RequestHead& head) {
    auto kept = archive.revision(place.survey, place.revision);
    if (!kept) {
        return error_reply(kept.error());
    }
    if (!*kept) {
        return not_there();
    }
    const auto& sha256 = (*kept)->receipt.sha256;
    const auto tag = '"' + sha256 + '"';
    const bool has_it = head.header("if-none-match").find(tag) != std::string_view::npos;
    auto response = has_it ? Response{} : json_reply(200, std::move((*kept)->bytes));
    response.status = has_it ? 304 : 200;
    response.headers.emplace_back("ETag", tag);
    response.headers.emplace_back(sync::repr_digest_header,
                                  sync::digest_field(sync::sha256_from_hex(sha256).value_or(sync::Sha256{})));
    return response;
}

Response changes_reply(Archive& archive, const RequestHead& head) {
    const auto asked = read_form(head.query);
    const auto after = asked.find("after");
    const auto limit = asked_limit(head.query);
    if (!limit) {
        return problem_reply(ProblemKind::malformed_request, "limit is a whole number from 1 up.");
    }
    const auto changes = changes_after(archive, after == asked.end() ? "" : after->second, *limit);
    if (!changes && changes.error().code == ErrorCode::missing) {
        return problem_reply(ProblemKind::unknown_cursor, changes.error().text);
    }
    return changes ? json_reply(200, sync::write_record(*changes)) : error_reply(changes.error());
}

}  // namespace

std::optional<std::size_t> asked_limit(std::string_view query) {
    const auto asked = read_form(query);
    const auto field = asked.find("limit");
    if (field == asked.end()) {
        return usual_changes;
    }
    std::size_t limit = 0;
    const auto& text = field->second;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), limit);
    const bool whole = fault == std::errc{} && end == text.data() + text.size() && limit > 0;
    return whole ? std::optional(std::min(limit, most_changes)) : std::nullopt;
}

Response look_up(Archive& archive, const Place& place, const RequestHead& head) {
    using Kind = Place::Kind;
    switch (place.kind) {
        case Kind::photo:
            return photo_reply(archive, place, head);
        case Kind::revision:
            return revision_reply(archive, place, head);
        case Kind::receipt:
            return receipt_reply(archive, place);
        case Kind::figures:
            return figures_reply(archive, place);
        case Kind::rules:
            return rules_reply(archive, place);
        case Kind::changes:
            return changes_reply(archive, head);
        case Kind::marks:
            return marks_reply(archive, place);
        case Kind::all_questions:
        case Kind::questions:
            return questions_reply(archive, place, head);
        case Kind::answer:
        case Kind::upload:
        case Kind::pair:
        case Kind::health:
            break;
    }
    return not_there();
}

}  // namespace truehang::workroom
