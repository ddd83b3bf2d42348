// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/upload_desk.h"

#include "protocol/limits.h"
#include "protocol/upload.h"
#include "workroom/archive/erasure.h"
#include "workroom/site/devices_desk.h"
#include "workroom/site/replies.h"

#include <fmt/format.h>

namespace truehang::workroom {

using http::Admission;
using http::Request;
using http::RequestHead;
using http::Response;
using sync::Place;
using sync::ProblemKind;

namespace {

constexpr std::chrono::hours between_sweeps{1};

Response with(Response response, std::string_view name, std::string value) {
    response.headers.emplace_back(name, std::move(value));
    return response;
}

std::string limits(std::chrono::seconds left) {
    return fmt::format("max-size={}, max-age={}", sync::photo_limit, left.count());
}

/// An answer without a body that says how an upload stands.
Response standing(int status, const UploadState& state, bool complete = false) {
    Response response;
    response.status = status;
    response.headers = {{"Cache-Control", "no-store"},
                        {std::string(sync::upload_offset_header), std::to_string(state.offset)},
                        {std::string(sync::upload_complete_header), sync::write_truth(complete)},
                        {std::string(sync::upload_length_header), std::to_string(state.length)}};
    return complete ? response : with(std::move(response), sync::upload_limit_header, limits(state.left));
}

Response not_begun() {
    return problem_reply(ProblemKind::not_there, "No such upload is here. Begin it with POST to the photo’s path.");
}

Response too_large() {
    return with(problem_reply(ProblemKind::too_large, "A photo is at most 32 MiB."), sync::upload_limit_header,
                limits(sync::upload_life));
}

Response wrong_length(std::string detail) { return problem_reply(ProblemKind::inconsistent_length, std::move(detail)); }

Response mismatch(std::string detail, long long expected, std::optional<long long> provided) {
    sync::Problem problem{ProblemKind::mismatching_offset, std::move(detail), {}, expected, provided};
    return with(problem_reply(problem), sync::upload_offset_header, std::to_string(expected));
}

std::string_view type_of(const RequestHead& head) {
    const auto field = head.header("content-type");
    return field.substr(0, field.find_first_of("; "));
}

/// What a piece says of itself.
struct PieceHead {
    long long offset = 0;
    long long bytes = 0;
    bool completes = false;
    std::optional<long long> length;
    std::optional<sync::Sha256> digest;
};

/// Reads a piece's head, or says why it can't be taken.
std::optional<Response> read_piece_head(const RequestHead& head, PieceHead& piece) {
    if (type_of(head) != sync::partial_upload_type) {
        return problem_reply(ProblemKind::wrong_type, "A piece is sent as application/partial-upload.");
    }
    if (!head.content_length) {
        return problem_reply(ProblemKind::length_required, "A piece says with Content-Length how long it is.");
    }
    const auto offset = sync::read_byte_count(head.header("upload-offset"));
    const auto completes = sync::read_truth(head.header("upload-complete"));
    if (!offset || !completes) {
        return problem_reply(ProblemKind::malformed_request,
                             "A piece says where it begins (Upload-Offset: a whole number) and whether it is the last "
                             "(Upload-Complete: ?0 or ?1).");
    }
    if (*head.content_length > sync::photo_limit) {
        return too_large();
    }
    const auto digest = sync::read_digest_field(head.header("content-digest"));
    if (!digest && !head.header("content-digest").empty()) {
        return problem_reply(ProblemKind::malformed_request, digest.error().text);
    }
    piece = {*offset, static_cast<long long>(*head.content_length), *completes,
             sync::read_byte_count(head.header("upload-length")), digest ? *digest : std::nullopt};
    return std::nullopt;
}

/// Why a piece doesn't fit the length that its upload was begun with, or nothing.
std::optional<Response> why_not_fitting(const PieceHead& piece, const UploadState& state) {
    if (piece.length && *piece.length != state.length) {
        return wrong_length(fmt::format("The upload was begun for {} bytes.", state.length));
    }
    if (piece.offset + piece.bytes > state.length) {
        return wrong_length(fmt::format("The upload was begun for {} bytes; this piece would end at {}.", state.length,
                                        piece.offset + piece.bytes));
    }
    if (piece.completes && piece.offset + piece.bytes != state.length) {
        return wrong_length(fmt::format("The last piece ends at byte {}; the upload was begun for {}.",
                                        piece.offset + piece.bytes, state.length));
    }
    return std::nullopt;
}

Response completed(Response response) {
    return with(std::move(response), sync::upload_complete_header, sync::write_truth(true));
}

}  // namespace

UploadDesk::UploadDesk(Archive& archive) : archive_(archive), shelf_(archive.uploads_folder(), archive.clock()) {
    sweep_due();
}

void UploadDesk::sweep_due() {
    const auto now = archive_.clock()();
    auto last = swept_.load();
    if ((now >= last && now - last < between_sweeps) || !swept_.compare_exchange_strong(last, now)) {
        return;
    }
    shelf_.sweep();
    for (const auto& digest : shelf_.digests()) {
        if (const auto erased = is_erased_photo(archive_, digest); erased && *erased) {
            remove_uploads_of(archive_.uploads_folder(), digest);
        }
    }
}

bool UploadDesk::takes(const Place& place, const RequestHead& head) {
    return place.kind == Place::Kind::upload || (place.kind == Place::Kind::photo && head.method == "POST");
}

Admission UploadDesk::admit(const Place& place, const RequestHead& head, const Holder& holder) {
    if (auto why_not = why_not_a_device(holder, unknown_device)) {
        return refuse(std::move(*why_not));
    }
    if (head.method == "POST" && place.kind == Place::Kind::photo) {
        return admit_beginning(head);
    }
    if (head.method == "PATCH") {
        return admit_piece({holder->device, place.sha256}, head);
    }
    const bool known = head.method == "HEAD" || head.method == "DELETE";
    return known ? Admission{}
                 : refuse(problem_reply(ProblemKind::wrong_method,
                                        "An upload is asked with HEAD, sent with PATCH, given up with DELETE."));
}

Admission UploadDesk::admit_beginning(const RequestHead& head) const {
    const auto length = sync::read_byte_count(head.header("upload-length"));
    if (sync::read_truth(head.header("upload-complete")) != false) {
        return refuse(problem_reply(ProblemKind::malformed_request,
                                    "An upload in pieces is begun with Upload-Complete: ?0; a whole photo is PUT."));
    }
    if (!length) {
        return refuse(problem_reply(ProblemKind::length_required,
                                    "An upload is begun with Upload-Length: the photo’s bytes, a whole number."));
    }
    if (*length > static_cast<long long>(sync::photo_limit)) {
        return refuse(too_large());
    }
    return *length == 0 ? refuse(wrong_length("A photo has at least one byte.")) : Admission{};
}

Admission UploadDesk::admit_piece(const UploadKey& key, const RequestHead& head) {
    PieceHead piece;
    if (auto why_not = read_piece_head(head, piece)) {
        return refuse(std::move(*why_not));
    }
    const auto opened = shelf_.open_piece(key, piece.offset, piece.digest);
    if (!opened) {
        return refuse(error_reply(opened.error()));
    }
    if (!opened->state) {
        return refuse(not_begun());
    }
    if (!opened->intake) {
        return refuse(mismatch(opened->under_way
                                   ? "Another piece of this photo is on its way. Ask with HEAD, which ends "
                                     "it, and go on from what it says."
                                   : "The upload stands at another byte. Go on from there.",
                               opened->state->offset, piece.offset));
    }
    if (auto why_not = why_not_fitting(piece, *opened->state)) {
        return refuse(std::move(*why_not));
    }
    Admission admission;
    admission.body_limit = sync::photo_limit;
    admission.length_required = true;
    admission.sink = opened->intake;
    return admission;
}

void UploadDesk::answer(const Place& place, const Request& request, const Holder& holder, const Respond& respond) {
    if (auto why_not = why_not_a_device(holder, unknown_device)) {  // it may have been revoked since it was admitted
        return respond(std::move(*why_not));
    }
    const UploadKey key{holder->device, place.sha256};
    if (request.head.method == "PATCH") {
        return take_piece(key, request, respond);
    }
    if (request.head.method == "POST") {
        return respond(begin(key, request.head));
    }
    if (request.head.method == "HEAD") {
        return respond(tell(key));
    }
    Response gone;
    gone.status = 204;
    respond(shelf_.forget(key) ? gone : not_begun());
}

Response UploadDesk::begin(const UploadKey& key, const RequestHead& head) {
    const auto kept = archive_.photo(key.sha256);
    if (!kept) {
        return error_reply(kept.error());
    }
    if (*kept) {
        const auto confirmed = archive_.confirm();
        return confirmed ? completed(json_reply(200, sync::write_record(**kept))) : error_reply(confirmed.error());
    }
    const auto state = shelf_.begin(key, sync::read_byte_count(head.header("upload-length")).value_or(0));
    if (!state && state.error().code == ErrorCode::conflict) {
        return wrong_length("This upload was begun for another length. Give that one up with DELETE first.");
    }
    if (!state && state.error().code == ErrorCode::out_of_range) {
        return problem_reply(
            ProblemKind::too_many_uploads,
            fmt::format("A device may have {} uploads and {} MiB unfinished. Finish some, or give them "
                        "up with DELETE.",
                        sync::uploads_at_once, sync::unfinished_limit / 1024 / 1024));
    }
    if (!state) {
        return error_reply(state.error());
    }
    // Asked once it stands there: one that erases meanwhile either is seen here or sees it.
    const auto erased = is_erased_photo(archive_, key.sha256);
    if (!erased) {
        return error_reply(erased.error());
    }
    if (*erased) {
        shelf_.forget(key);
        return error_reply(erased_error("This photo"));
    }
    return with(standing(state->was_there ? 200 : 201, *state), "Location", sync::upload_path(key.sha256));
}

Response UploadDesk::tell(const UploadKey& key) {
    const auto state = shelf_.look(key);
    if (!state) {
        return error_reply(state.error());
    }
    return *state ? standing(204, **state) : tell_kept(key);
}

/// Of a photo that is whole and kept: what its receipt says.
Response UploadDesk::tell_kept(const UploadKey& key) const {
    const auto kept = archive_.photo(key.sha256);
    if (!kept || !*kept) {
        return kept ? not_begun() : error_reply(kept.error());
    }
    if (const auto confirmed = archive_.confirm(); !confirmed) {
        return error_reply(confirmed.error());
    }
    const auto digest = sync::sha256_from_hex(key.sha256).value_or(sync::Sha256{});
    auto response = standing(204, {(*kept)->bytes, (*kept)->bytes}, true);
    response.headers.emplace_back(sync::repr_digest_header, sync::digest_field(digest));
    response.headers.emplace_back(sync::received_at_header, (*kept)->received_at);
    return response;
}

Response UploadDesk::moved_on(const UploadKey& key, const RequestHead& head) {
    const auto state = shelf_.glance(key);
    return state ? mismatch("Another request took this upload on meanwhile. Go on from where it stands.", state->offset,
                            sync::read_byte_count(head.header("upload-offset")))
                 : not_begun();
}

void UploadDesk::take_piece(const UploadKey& key, const Request& request, const Respond& answered) {
    const auto piece = std::dynamic_pointer_cast<PieceIntake>(request.sink);
    const Respond respond = [piece, answered](Response response) {
        if (piece) {
            piece->let_go();
        }
        answered(std::move(response));
    };
    const auto end =
        piece ? piece->finish() : Result<long long>(Error{ErrorCode::io, "upload", "It couldn’t be taken."});
    if (!end && end.error().code == ErrorCode::conflict) {
        return respond(moved_on(key, request.head));
    }
    if (!end && end.error().code == ErrorCode::unreadable) {
        return respond(problem_reply(ProblemKind::digest_mismatch, end.error().text));
    }
    if (!end) {
        return respond(error_reply(end.error()));
    }
    if (sync::read_truth(request.head.header("upload-complete")) == true) {
        return complete(key, *piece, *end, respond);
    }
    Response response;
    response.status = 204;
    response.headers = {{"Cache-Control", "no-store"},
                        {std::string(sync::upload_offset_header), std::to_string(*end)},
                        {std::string(sync::upload_complete_header), sync::write_truth(false)}};
    respond(std::move(response));
}

void UploadDesk::complete(const UploadKey& key, PieceIntake& piece, long long bytes, const Respond& respond) {
    const auto beside = archive_.incoming_folder() / sync::hex(sync::sha256(random_bytes(16)));
    const auto put = piece.put(key.sha256, beside, archive_.photo_file(key.sha256));
    if (!put && put.error().code == ErrorCode::missing) {
        return respond(not_begun());
    }
    if (!put && put.error().code == ErrorCode::unreadable) {
        return respond(completed(problem_reply(ProblemKind::digest_mismatch, put.error().text)));
    }
    if (!put) {
        return respond(error_reply(put.error()));
    }
    archive_.keep_photo(
        key.sha256, bytes, key.device, [this, key, respond](const Result<Kept<sync::PhotoReceipt>>& kept) {
            // Where its record couldn't be written the upload stays whole: the last piece, sent again empty, asks
            // again.
            auto answer = kept ? json_reply(kept->was_there ? 200 : 201, sync::write_record(kept->receipt))
                               : error_reply(kept.error());
            const bool ended = kept || is_erased_error(kept.error());
            if (ended) {
                shelf_.forget(key);
            }
            respond(ended ? completed(std::move(answer)) : std::move(answer));
        });
}

}  // namespace truehang::workroom
