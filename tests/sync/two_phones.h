// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "document_workroom.h"
#include "merge/merge.h"
#include "outbox/outbox.h"
#include "outbox/store_shelf.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

// Phones with their real stores.

namespace truehang::sync::test {

/// A phone: its store on the disk, its outbox, and no event loop.
class StorePhone : public OutboxShelf, public InboxShelf {
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
        if (asks) {
            inbox = std::make_unique<Inbox>(*this);
            outbox->also_ask(*inbox);
        }
        outbox->paired();
    }

    [[nodiscard]] Store& store() { return *store_; }
    /// The body of a request, as the store has it now; none where it was edited since.
    std::optional<std::string> body_of(const Request& request) {
        if (!request.body_of) {
            return std::string();
        }
        if (request.body_of->kind == ItemKind::photo) {
            return store_->photo_bytes(request.body_of->sha256).value();
        }
        if (request.body_of->kind == ItemKind::answer) {
            return store_->answer_to_send(request.body_of->answer).value().record;
        }
        const auto document = store_->document_to_send(request.body_of->survey);
        if (!document || document->sha256 != request.body_of->sha256 ||
            !store_->note_going_out(request.body_of->survey, document->revision)) {
            return std::nullopt;
        }
        return document->bytes;
    }

    Time now = Time(std::chrono::milliseconds(1'773'483'600'000));
    bool asks = false;  ///< for what others sent, from the next start on
    std::unique_ptr<Inbox> inbox;
    std::unique_ptr<Outbox> outbox;
    std::vector<std::string> refusals;
    int brought_together = 0;

private:
    std::vector<Item> pending() override {
        std::vector<Item> items;
        const auto rows = store_->pending().value();
        for (const auto& row : rows) {
            if (row.kind == truehang::ItemKind::photo) {
                items.push_back(item_from_store(row, nullptr));
                continue;
            }
            if (row.kind == truehang::ItemKind::answer) {
                items.push_back(answer_from_store(row, store_->answer_to_send(row.id).value()));
                continue;
            }
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

    std::string cursor() override { return store_->asked_until().value(); }
    std::vector<Coming> coming() override {
        std::vector<Coming> list;
        const auto rows = store_->coming().value();
        for (const ComingRevision& one : rows) {
            list.push_back({{one.visit, one.revision, one.sha256, one.received_at}, one.sent_by});
        }
        return list;
    }
    std::vector<std::string> photos_elsewhere() override { return store_->photos_elsewhere().value(); }
    void note(const Changes& changes, const std::string& from) override {
        std::vector<ComingRevision> came;
        for (const Change& change : changes.changes) {
            const auto& receipt = change.receipt;
            came.push_back({receipt.id, receipt.revision, receipt.sha256, receipt.received_at, change.sent_by});
        }
        EXPECT_TRUE(store_->note_coming(came, from, changes.next));
    }
    std::string questions_cursor() override { return store_->questions_asked_until().value(); }
    void note_questions(const QuestionEntries& came, const std::string& from) override {
        EXPECT_TRUE(keep_questions(*store_, came, from));
    }
    void take(const Coming& one, const std::string& document) override {
        const auto common = store_->common_with(one.receipt.id, document);
        if (!common.value()) {
            return pass_over(one);
        }
        ++brought_together;
        const MetRevision met{one.receipt.revision, document, one.receipt.sha256, one.sent_by, one.receipt.received_at};
        EXPECT_TRUE(store_->bring_together(one.receipt.id, "", **common, met, "Put together"));
    }
    void pass_over(const Coming& one) override {
        EXPECT_TRUE(store_->pass_over({one.receipt.id, one.receipt.revision, one.receipt.sha256, "", ""}));
    }
    void take_photo(const std::string& sha256, const std::string& bytes, const std::string& media_type) override {
        EXPECT_TRUE(keep_fetched_photo(*store_, sha256, bytes, media_type));
    }

    std::string name_;
    std::filesystem::path folder_;
    std::unique_ptr<Store> store_;
    int ids_ = 0;
    std::uint64_t random_ = 0;
};

inline const std::string id = "01924f6a-7c00-7000-8000-0000000000b7";

inline Survey visit() {
    Survey survey;
    survey.id = id;
    survey.title = "Net loft";
    survey.measured_at = "2026-03-14T10:00:00Z";
    Room& room = survey.rooms.emplace_back();
    room.id = "room";
    for (const char* name : {"w1", "w2"}) {
        Window& window = room.windows.emplace_back();
        window.id = name;
        window.shape = Word<Shape>(std::string("recess"));
    }
    return survey;
}

/// What may become of one request.
enum class Fate { arrives, not_sent, answer_lost, restarted_before, restarted_after, count };

class TwoPhones {
public:
    explicit TwoPhones(bool sent_before = true) {
        const Survey begun = visit();
        EXPECT_TRUE(anna.store().keep(begun, "made"));
        if (sent_before) {
            settle(anna);
        }
        // As a file goes: the document with its parents, which both phones count among theirs from then on.
        const auto handed = visit_to_hand();
        EXPECT_TRUE(anna.store().add_parent(id, handed));
        EXPECT_TRUE(ben.store().keep(read_survey(handed).value(), "taken in"));
        EXPECT_TRUE(ben.store().add_parent(id, handed));
    }

    void read(StorePhone& phone, const std::string& name, int window) {
        Survey survey = phone.store().visit(id).value();
        Window& in = survey.rooms[0].windows[static_cast<std::size_t>(window)];
        Reading reading;
        reading.id = name;
        reading.station = "opening.width.top";
        reading.value = Length::mm(1200.0);
        in.readings.push_back(reading);
        ASSERT_TRUE(phone.store().keep_window(id, "room", in, "read"));
        entered.insert(name);
    }

    void note(StorePhone& phone, const std::string& text) {
        Survey survey = phone.store().visit(id).value();
        survey.rooms[0].windows[0].notes = text;
        ASSERT_TRUE(phone.store().keep(survey, "noted"));
    }

    /// One request of a phone’s, with what becomes of it; false where it has none now.
    bool step(StorePhone& phone, Fate fate = Fate::arrives) {
        const auto next = phone.outbox->next();
        if (!next.request) {
            if (next.wake_at) {
                phone.now = std::max(phone.now, *next.wake_at);
            }
            return next.wake_at.has_value();
        }
        const auto body = phone.body_of(*next.request);
        const auto ticket = next.request->ticket;
        if (!body) {
            phone.outbox->failed(ticket, WireFailure::no_bytes);
            return true;
        }
        if (fate == Fate::restarted_before || fate == Fate::not_sent) {
            fate == Fate::not_sent ? phone.outbox->failed(ticket, WireFailure::not_reached) : phone.start();
            return true;
        }
        const auto answer = workroom.receive(*next.request, *body);
        if (fate == Fate::arrives) {
            phone.outbox->answered(ticket, answer);
        } else {
            fate == Fate::answer_lost ? phone.outbox->failed(ticket, WireFailure::broken_off) : phone.start();
        }
        return true;
    }

    void settle(StorePhone& phone) {
        for (int i = 0; i < 1000 && step(phone); ++i) {
        }
    }

    void expect_all_there() {
        std::set<std::string> there;
        const Survey survey = read_survey(workroom.newest(id).bytes).value();
        for (const Window& window : survey.rooms.at(0).windows) {
            for (const Reading& reading : window.readings) {
                there.insert(reading.id);
            }
        }
        EXPECT_EQ(there, entered);
        for (auto* phone : {&anna, &ben}) {
            EXPECT_TRUE(phone->refusals.empty()) << phone->refusals.front();
            EXPECT_TRUE(phone->store().pending()->empty());
        }
    }

    DocumentWorkroom workroom;
    StorePhone anna{"anna"};
    StorePhone ben{"ben"};
    std::set<std::string> entered;

private:
    std::string visit_to_hand() {
        Survey survey = anna.store().visit(id).value();
        survey.parents = anna.store().parents(id).value();
        return write_survey(survey, false);
    }
};

}  // namespace truehang::sync::test
