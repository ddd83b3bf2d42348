// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/outbox.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <map>
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

    Answer receive(const Request& request) {
        const auto place = read_path(request.path);
        if (!place) {
            return problem_answer(ProblemKind::not_there);
        }
        if (request.method == Method::put) {
            return place->kind == Place::Kind::photo ? put_photo(*place, request) : put_survey(*place, request);
        }
        return place->kind == Place::Kind::photo ? ask_photo(*place) : ask_survey(*place);
    }

private:
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
    Answer put_photo(const Place& place, const Request& request) {
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
