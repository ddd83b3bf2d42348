// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/outbox.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"
#include "protocol/upload.h"

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

// A shelf in memory and a workroom that answers as the protocol says, for tests with simulated time.

namespace truehang::sync::test {

inline const Time start = Time(std::chrono::milliseconds(1'773'483'600'000));

class Shelf : public OutboxShelf {
public:
    std::vector<Item> items;
    std::map<std::string, Receipt> confirmed;
    std::map<std::string, Refusal> refused;
    std::map<std::string, WhatIsThere> together;
    std::map<std::string, std::string> why;

    [[nodiscard]] std::vector<Item> pending() override { return items; }
    void confirm(const Item& item, const Receipt& receipt) override {
        confirmed[item.key] = receipt;
        remove(item);
    }
    void refuse(const Item& item, const Refusal& refusal) override {
        refused[item.key] = refusal;
        remove(item);
    }
    void bring_together(const Item& item, const WhatIsThere& there, const std::string&, const std::string&) override {
        together[item.key] = there;
        remove(item);
    }
    void postpone(const Item& item, int attempts, Time not_before, const std::string& reason) override {
        for (auto& kept : items) {
            if (kept.key == item.key) {
                kept.attempts = attempts;
                kept.not_before = not_before;
            }
        }
        why[item.key] = reason;
    }

private:
    void remove(const Item& item) {
        std::erase_if(items, [&](const Item& kept) { return kept.key == item.key; });
    }
};

inline Item survey_item(const std::string& id, long long revision = 1) {
    Item item;
    item.key = "survey/" + id + "/" + std::to_string(revision);
    item.survey = id;
    item.revision = revision;
    item.sha256 = hex(sha256(item.key));
    item.bytes = 100;
    return item;
}

inline Item photo_item(const std::string& name) {
    Item item;
    item.kind = ItemKind::photo;
    item.sha256 = hex(sha256(name));
    item.key = "photo/" + item.sha256;
    item.bytes = 1000;
    return item;
}

/// A photo whose bytes are `content`.
inline Item item_with(const std::string& content) {
    auto item = photo_item("");
    item.sha256 = hex(sha256(content));
    item.key = "photo/" + item.sha256;
    item.bytes = static_cast<long long>(content.size());
    return item;
}

inline Answer problem_answer(ProblemKind kind, std::vector<ProblemFault> faults = {}) {
    return {status_of(kind),
            {{"Content-Type", std::string(problem_type)}},
            write_problem({kind, "Said so.", std::move(faults)})};
}

/// What the protocol says a workroom does, in its simplest form.
class Workroom {
public:
    std::map<std::string, SurveyReceipt> surveys;  ///< by path
    std::map<std::string, PhotoReceipt> photos;    ///< by digest
    std::map<std::string, std::string> contents;   ///< what the phone has, by digest: photos that may go in pieces
    struct Upload {
        std::string came;
        long long length = 0;
    };
    std::map<std::string, Upload> uploads;  ///< by digest
    std::set<std::string> erased;           ///< digests
    bool takes_pieces = true;
    long long bytes_sent = 0;  ///< of photos, whatever became of them

    /// `cut_after`: the wire is cut once so many bytes of the body have come; there is no answer then.
    Answer receive(const Request& request, std::optional<long long> cut_after = std::nullopt) {
        const auto place = read_path(request.path);
        if (!place || (!takes_pieces && place->kind == Place::Kind::upload)) {
            return problem_answer(ProblemKind::not_there);
        }
        if (request.method == Method::post) {
            return takes_pieces ? begin(*place, request) : problem_answer(ProblemKind::wrong_method);
        }
        if (place->kind == Place::Kind::upload) {
            return request.method == Method::patch ? take_piece(*place, request, cut_after) : ask_upload(*place);
        }
        if (request.method == Method::put) {
            return place->kind == Place::Kind::photo ? put_photo(*place, request, cut_after)
                                                     : put_survey(*place, request);
        }
        return place->kind == Place::Kind::photo ? ask_photo(*place) : ask_survey(*place);
    }

private:
    static std::string field(const Request& request, std::string_view name) {
        for (const auto& [key, value] : request.headers) {
            if (key == name) {
                return value;
            }
        }
        return "";
    }
    static Answer standing(int status, const Upload& upload) {
        return {status,
                {{"upload-offset", std::to_string(upload.came.size())},
                 {"upload-complete", "?0"},
                 {"upload-length", std::to_string(upload.length)}},
                ""};
    }
    Answer kept(const std::string& sha256) {
        return {200, {{"upload-complete", "?1"}}, write_record(photos.at(sha256))};
    }
    Answer begin(const Place& place, const Request& request) {
        if (erased.contains(place.sha256)) {
            return problem_answer(ProblemKind::erased);
        }
        if (photos.contains(place.sha256)) {
            return kept(place.sha256);
        }
        const auto length = read_byte_count(field(request, upload_length_header)).value_or(-1);
        const bool there = uploads.contains(place.sha256);
        auto& upload = uploads[place.sha256];
        upload.length = there ? upload.length : length;
        return upload.length == length ? standing(there ? 200 : 201, upload)
                                       : problem_answer(ProblemKind::inconsistent_length);
    }
    Answer ask_upload(const Place& place) {
        if (const auto found = uploads.find(place.sha256); found != uploads.end()) {
            return standing(204, found->second);
        }
        auto answer = ask_photo(place);
        if (answer.status == 200) {
            answer.status = 204;
            answer.headers.emplace_back("upload-complete", "?1");
        }
        return answer;
    }
    Answer take_piece(const Place& place, const Request& request, std::optional<long long> cut_after) {
        const auto found = uploads.find(place.sha256);
        if (found == uploads.end()) {
            return {404, {}, problem_answer(ProblemKind::not_there).content};
        }
        auto& upload = found->second;
        const auto offset = read_byte_count(field(request, upload_offset_header)).value_or(-1);
        const auto there = static_cast<long long>(upload.came.size());
        if (offset != there) {
            return {409,
                    {{"upload-offset", std::to_string(there)}},
                    write_problem({ProblemKind::mismatching_offset, "Elsewhere.", {}, there, offset})};
        }
        const auto bytes = std::min(cut_after.value_or(request.range->bytes), request.range->bytes);
        upload.came += contents.at(place.sha256)
                           .substr(static_cast<std::size_t>(request.range->from), static_cast<std::size_t>(bytes));
        bytes_sent += bytes;
        const bool last = read_truth(field(request, upload_complete_header)) == true;
        if (bytes < request.range->bytes || !last) {
            return standing(204, upload);
        }
        return complete(place.sha256);
    }
    Answer complete(const std::string& sha256_hex) {
        const auto came = uploads.at(sha256_hex).came;
        uploads.erase(sha256_hex);
        if (hex(sha256(came)) != sha256_hex) {
            return problem_answer(ProblemKind::digest_mismatch);
        }
        photos[sha256_hex] = {sha256_hex, static_cast<long long>(came.size()), "2026-03-14T12:00:00Z"};
        auto answer = kept(sha256_hex);
        answer.status = 201;
        return answer;
    }
    static std::string at(const Place& place) { return revision_path(place.survey, place.revision); }

    Answer put_survey(const Place& place, const Request& request) {
        const auto found = surveys.find(at(place));
        const auto& sha = request.body_of->sha256;
        if (found != surveys.end()) {
            return found->second.sha256 == sha ? Answer{200, {}, write_record(found->second)}
                                               : problem_answer(ProblemKind::conflict);
        }
        const SurveyReceipt receipt{place.survey, place.revision, sha, "2026-03-14T12:00:00Z"};
        surveys[at(place)] = receipt;
        return {201, {}, write_record(receipt)};
    }
    Answer put_photo(const Place& place, const Request& request, std::optional<long long> cut_after) {
        bytes_sent += std::min(cut_after.value_or(request.body_of->bytes), request.body_of->bytes);
        if (cut_after) {
            return {};
        }
        if (erased.contains(place.sha256)) {
            return problem_answer(ProblemKind::erased);
        }
        const bool there = photos.contains(place.sha256);
        auto& receipt = photos[place.sha256];
        receipt = {place.sha256, request.body_of->bytes, "2026-03-14T12:00:00Z"};
        return {there ? 200 : 201, {}, write_record(receipt)};
    }
    Answer ask_survey(const Place& place) {
        SurveyThere there{place.survey, {}, {}};
        for (const auto& [path, receipt] : surveys) {
            if (receipt.id == place.survey) {
                there.revisions.push_back(receipt);
            }
        }
        return there.revisions.empty() ? problem_answer(ProblemKind::not_there) : Answer{200, {}, write_record(there)};
    }
    Answer ask_photo(const Place& place) {
        const auto found = photos.find(place.sha256);
        if (found == photos.end()) {
            return {404, {}, ""};
        }
        const auto digest = sha256_from_hex(place.sha256).value_or(Sha256{});
        return {200, {{"repr-digest", digest_field(digest)}, {"truehang-received-at", found->second.received_at}}, ""};
    }
};

}  // namespace truehang::sync::test
