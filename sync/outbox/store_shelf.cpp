// SPDX-License-Identifier: Apache-2.0
#include "outbox/store_shelf.h"

#include "protocol/digest.h"
#include "protocol/records.h"

namespace truehang::sync {

namespace {

Result<std::vector<Item>> read_pending(Store& store) {
    const auto rows = store.pending();
    if (!rows) {
        return rows.error();
    }
    std::vector<Item> items;
    for (const auto& row : *rows) {
        if (row.kind == truehang::ItemKind::photo) {
            items.push_back(item_from_store(row, nullptr));
            continue;
        }
        if (row.kind == truehang::ItemKind::answer) {
            if (const auto answer = store.answer_to_send(row.id)) {
                items.push_back(answer_from_store(row, *answer));
            }
            continue;
        }
        // A document that can't be read back holds nothing else up.
        if (const auto document = store.document_to_send(row.id)) {
            items.push_back(item_from_store(row, &*document));
            items.back().parents_here = parents_here(store, row.id);
        }
    }
    return items;
}

}  // namespace

Item item_from_store(const OutboxItem& row, const DocumentToSend* document) {
    Item item;
    item.attempts = row.tries;
    item.not_before = read_time(row.until).value_or(Time{});
    if (document == nullptr) {
        item.kind = ItemKind::photo;
        item.sha256 = row.id;
        item.bytes = row.bytes;
        item.media_type = row.media_type;
        item.key = "photo/" + row.id;
    } else {
        item.survey = row.id;
        item.revision = document->revision;
        item.sha256 = document->sha256;
        item.bytes = static_cast<long long>(document->bytes.size());
        item.key = "survey/" + row.id + "/" + std::to_string(document->revision);
    }
    return item;
}

Item answer_from_store(const OutboxItem& row, const VisitAnswer& answer) {
    Item item;
    item.key = "answer/" + row.id;
    item.kind = ItemKind::answer;
    item.survey = answer.visit;
    item.question = answer.number;
    item.answer = answer.id;
    item.sha256 = hex(sha256(answer.record));
    item.bytes = static_cast<long long>(answer.record.size());
    item.attempts = row.tries;
    item.not_before = read_time(row.until).value_or(Time{});
    return item;
}

OutboxItem row_of(const Item& item) {
    OutboxItem row;
    switch (item.kind) {
        case ItemKind::survey:
            row.kind = truehang::ItemKind::survey;
            row.id = item.survey;
            row.revision = item.revision;
            break;
        case ItemKind::answer:
            row.kind = truehang::ItemKind::answer;
            row.id = item.answer;
            break;
        case ItemKind::photo:
            row.kind = truehang::ItemKind::photo;
            row.id = item.sha256;
            break;
    }
    return row;
}

VisitQuestion visit_question(const Question& asked) {
    return {asked.survey, asked.number, asked.room, asked.window, asked.station, asked.words, asked.by, asked.at};
}

VisitAnswer visit_answer(const ReceivedAnswer& came) {
    const QuestionAnswer& answer = came.answer;
    const AnswerReading reading = answer.reading.value_or(AnswerReading{});
    return {answer.survey, answer.number, answer.id, answer.words, reading.station,
            reading.typed, answer.by,     answer.at, came.device,  ""};
}

Result<Done> keep_questions(Store& store, const QuestionEntries& came, const std::string& from) {
    std::vector<VisitQuestion> asked;
    std::vector<VisitAnswer> answered;
    for (const QuestionEntry& entry : came.entries) {
        if (entry.question) {
            asked.push_back(visit_question(*entry.question));
        }
        if (entry.answer) {
            answered.push_back(visit_answer(*entry.answer));
        }
    }
    return store.note_questions(asked, answered, from, came.next);
}

std::string receipt_record(const Item& item, const Receipt& receipt) {
    if (item.kind == ItemKind::answer) {
        return write_record(AnswerReceipt{item.survey, item.question, item.answer, receipt.received_at});
    }
    return item.kind == ItemKind::photo
               ? write_record(PhotoReceipt{receipt.sha256, item.bytes, receipt.received_at})
               : write_record(SurveyReceipt{item.survey, item.revision, receipt.sha256, receipt.received_at});
}

MetRevision met_revision(const WhatIsThere& there, const std::string& bytes) {
    return {there.newest.revision, bytes, there.newest.sha256, there.sent_by, there.newest.received_at};
}

Result<Done> keep_fetched_photo(Store& store, const std::string& sha256, const std::string& bytes,
                                const std::string& media_type) {
    const auto kept = store.keep_photo(bytes, media_type);
    if (!kept) {
        return kept.error();
    }
    OutboxItem row;
    row.kind = truehang::ItemKind::photo;
    row.id = sha256;
    const PhotoReceipt receipt{sha256, static_cast<long long>(bytes.size()), ""};
    return store.confirm(row, write_record(receipt));
}

std::vector<std::string> parents_here(Store& store, const std::string& survey) {
    std::vector<std::string> here;
    const auto parents = store.parents(survey);
    for (const std::string& parent : parents ? *parents : std::vector<std::string>{}) {
        if (const auto bytes = store.parent_bytes(survey, parent); bytes && *bytes) {
            here.push_back(parent);
        }
    }
    return here;
}

StoreShelf::StoreShelf(AsyncStore& store, Told told)
    : store_(store), told_(std::move(told)), snapshot_(std::make_shared<std::vector<Item>>()) {}

StoreShelf::~StoreShelf() = default;

void StoreShelf::refresh() {
    store_.post(read_pending, [this, alive = std::weak_ptr(snapshot_)](const Result<std::vector<Item>>& items) {
        if (!alive.expired() && items) {
            *snapshot_ = *items;
            told_.refreshed();
        }
    });
}

void StoreShelf::bytes_of(const Item& item, std::function<void(Result<std::string>)> then) {
    store_.post(
        [item](Store& store) -> Result<std::string> {
            if (item.kind == ItemKind::photo) {
                return store.photo_bytes(item.sha256);
            }
            if (item.kind == ItemKind::answer) {
                auto answer = store.answer_to_send(item.answer);
                return answer ? Result<std::string>(std::move(answer).value().record) : answer.error();
            }
            auto document = store.document_to_send(item.survey);
            if (!document) {
                return document.error();
            }
            if (document->sha256 != item.sha256) {
                return Error{ErrorCode::conflict, item.survey,
                             "The visit was edited; its newer revision goes instead."};
            }
            if (const auto noted = store.note_going_out(item.survey, item.revision); !noted) {
                return noted.error();
            }
            return std::move(document).value().bytes;
        },
        std::move(then));
}

void StoreShelf::keep(const Item& item, std::function<Result<Done>(Store&, const OutboxItem&)> work) {
    store_.post([row = row_of(item), work = std::move(work)](Store& store) { return work(store, row); },
                [this, key = item.key, alive = std::weak_ptr(snapshot_)](const Result<Done>& done) {
                    if (alive.expired()) {
                        return;
                    }
                    if (!done) {
                        told_.not_kept(key, done.error());
                    }
                    refresh();
                });
}

void StoreShelf::confirm(const Item& item, const Receipt& receipt) {
    keep(item, [record = receipt_record(item, receipt)](Store& store, const OutboxItem& row) {
        return store.confirm(row, record);
    });
}

void StoreShelf::bring_together(const Item& item, const WhatIsThere& there, const std::string& theirs,
                                const std::string& common) {
    keep(item,
         [met = met_revision(there, theirs), base = there.common_sha256, common](
             Store& store, const OutboxItem& row) -> Result<Done> {
             const auto kept =
                 store.bring_together(row.id, base, common, met, "Put together with what came to the workroom");
             if (kept || (kept.error().code != ErrorCode::missing && kept.error().code != ErrorCode::conflict)) {
                 return kept ? Result<Done>(Done{}) : kept.error();
             }
             return store.refuse(row, kept.error().text);
         });
}

void StoreShelf::refuse(const Item& item, const Refusal& refusal) {
    keep(item, [why = refusal.why + " " + refusal.what_to_do](Store& store, const OutboxItem& row) {
        return store.refuse(row, why);
    });
}

void StoreShelf::postpone(const Item& item, int /*attempts*/, Time not_before, const std::string& why) {
    keep(item, [until = write_time(not_before), why](Store& store, const OutboxItem& row) {
        return store.postpone(row, until, why);
    });
}

}  // namespace truehang::sync
