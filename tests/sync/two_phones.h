// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "outbox/outbox.h"
#include "outbox/store_shelf.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <filesystem>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

// Phones with their real stores, and a workroom in memory that keeps documents and answers as the protocol says.

namespace truehang::sync::test {

/// The workroom: each survey’s revisions by number, none ever replaced.
class DocumentWorkroom {
public:
    struct Kept {
        SurveyReceipt receipt;
        std::string bytes;
    };
    std::map<std::string, std::map<long long, Kept>> surveys;
    int replaced = 0;

    Answer receive(const Request& request, const std::string& body) {
        const auto place = read_path(request.path);
        if (!place) {
            return problem({ProblemKind::not_there, "Not here.", {}});
        }
        auto& revisions = surveys[place->survey];
        if (place->kind == Place::Kind::receipt) {
            SurveyThere there{place->survey, {}, {}};
            for (const auto& [number, kept] : revisions) {
                there.revisions.push_back(kept.receipt);
            }
            return revisions.empty() ? problem({ProblemKind::not_there, "Not here.", {}})
                                     : Answer{200, {}, write_record(there)};
        }
        const auto found = revisions.find(place->revision);
        if (request.method == Method::get) {
            return found != revisions.end() ? Answer{200, {}, found->second.bytes}
                                            : problem({ProblemKind::not_there, "Not here.", {}});
        }
        return put(*place, body);
    }

    [[nodiscard]] const Kept& newest(const std::string& survey) const { return surveys.at(survey).rbegin()->second; }

private:
    static Answer problem(const Problem& problem) { return {status_of(problem.kind), {}, write_problem(problem)}; }

    Answer put(const Place& place, const std::string& body) {
        auto& revisions = surveys[place.survey];
        const auto sha = hex(sha256(body));
        if (const auto found = revisions.find(place.revision); found != revisions.end()) {
            return found->second.receipt.sha256 == sha ? Answer{200, {}, write_record(found->second.receipt)}
                                                       : conflict(place.survey, body);
        }
        const auto document = read_survey(body);
        if (!document) {
            return problem({ProblemKind::malformed_document, "Faults.", {}});
        }
        const auto& parents = document->parents;
        if (parents && !revisions.empty()) {
            const auto& head = revisions.rbegin()->second.receipt;
            const bool knows = std::find(parents->begin(), parents->end(), head.sha256) != parents->end();
            if (!knows || head.revision >= place.revision) {
                return conflict(place.survey, body);
            }
        }
        const SurveyReceipt receipt{place.survey, place.revision, sha, "2026-03-14T12:00:00Z"};
        revisions[place.revision] = {receipt, body};
        return {201, {}, write_record(receipt)};
    }

    Answer conflict(const std::string& survey, const std::string& body) {
        const auto& revisions = surveys[survey];
        WhatIsThere there{revisions.rbegin()->second.receipt, "The other phone", "", 0};
        std::map<std::string, long long> line{{there.newest.sha256, there.newest.revision}};
        for (auto kept = revisions.rbegin(); kept != revisions.rend(); ++kept) {
            if (const auto in_line = line.find(kept->second.receipt.sha256); in_line != line.end()) {
                in_line->second = kept->first;
                const auto older = read_survey(kept->second.bytes).value().parents.value_or(std::vector<std::string>{});
                for (const auto& parent : older) {
                    line.emplace(parent, 0);
                }
            }
        }
        const auto sent = read_survey(body).value().parents.value_or(std::vector<std::string>{});
        for (const auto& parent : sent) {
            if (const auto found = line.find(parent); found != line.end()) {
                there.common_sha256 = parent;
                there.common_revision = found->second;
                break;
            }
        }
        return problem({ProblemKind::conflict, "Something else is here.", {}, {}, {}, there});
    }
};

/// A phone: its store on the disk, its outbox, and no event loop.
class StorePhone : public OutboxShelf {
public:
    explicit StorePhone(std::string name) : name_(std::move(name)) {
        std::string pattern = (std::filesystem::temp_directory_path() / "truehang-XXXXXX").string();
        folder_ = ::mkdtemp(pattern.data());
        start();
    }
    ~StorePhone() override {
        store_.reset();
        std::filesystem::remove_all(folder_);
    }
    StorePhone(const StorePhone&) = delete;
    StorePhone& operator=(const StorePhone&) = delete;

    /// The program dies and begins again: what isn’t in the store is gone.
    void start() {
        store_.reset();
        StoreSurroundings surroundings;
        surroundings.now = [this] { return write_time(now); };
        surroundings.new_id = [this] { return name_ + std::to_string(++ids_); };
        surroundings.survives_power_cut = false;
        store_ = std::move(Store::open(folder_, surroundings)).value();
        outbox = std::make_unique<Outbox>(
            *this, [this] { return now; }, [this] { return ++random_; });
        outbox->paired();
    }

    [[nodiscard]] Store& store() { return *store_; }
    /// The body of a request, as the store has it now; none where it was edited since.
    std::optional<std::string> body_of(const Request& request) {
        if (!request.body_of) {
            return std::string();
        }
        const auto document = store_->document_to_send(request.body_of->survey);
        if (!document || document->sha256 != request.body_of->sha256 ||
            !store_->note_going_out(request.body_of->survey, document->revision)) {
            return std::nullopt;
        }
        return document->bytes;
    }

    Time now = Time(std::chrono::milliseconds(1'773'483'600'000));
    std::unique_ptr<Outbox> outbox;
    std::vector<std::string> refusals;
    int brought_together = 0;

private:
    std::vector<Item> pending() override {
        std::vector<Item> items;
        const auto rows = store_->pending().value();
        for (const auto& row : rows) {
            const auto document = store_->document_to_send(row.id).value();
            items.push_back(item_from_store(row, &document));
            items.back().parents_here = parents_here(*store_, row.id);
        }
        return items;
    }
    void confirm(const Item& item, const Receipt& receipt) override {
        static_cast<void>(store_->confirm(row_of(item), receipt_record(item, receipt)));
    }
    void bring_together(const Item& item, const WhatIsThere& there, const std::string& theirs,
                        const std::string& common) override {
        ++brought_together;
        const auto kept = store_->bring_together(item.survey, there.common_sha256, common, met_revision(there, theirs),
                                                 "Put together");
        if (!kept) {
            refuse(item, {kept.error().text, ""});
        }
    }
    void refuse(const Item& item, const Refusal& refusal) override {
        refusals.push_back(refusal.why);
        static_cast<void>(store_->refuse(row_of(item), refusal.why));
    }
    void postpone(const Item& item, int, Time not_before, const std::string& why) override {
        static_cast<void>(store_->postpone(row_of(item), write_time(not_before), why));
    }

    std::string name_;
    std::filesystem::path folder_;
    std::unique_ptr<Store> store_;
    int ids_ = 0;
    std::uint64_t random_ = 0;
};

}  // namespace truehang::sync::test
