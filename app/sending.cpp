// SPDX-License-Identifier: Apache-2.0
#include "sending.h"

#include "document/document.h"
#include "open_visit.h"
#include "outbox/store_shelf.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/questions.h"
#include "protocol/records.h"
#include "protocol/time_text.h"
#include "survey_keeping.h"
#include "writing.h"

#include <QPointer>
#include <QRandomGenerator>
#include <QSysInfo>
#include <algorithm>

namespace truehang {

namespace {

sync::Time time_now() { return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now()); }

std::string key_of(const OutboxItem& item) {
    switch (item.kind) {
        case ItemKind::survey:
            return "survey/" + item.id + "/" + std::to_string(item.revision);
        case ItemKind::answer:
            return "answer/" + item.id;
        case ItemKind::photo:
            break;
    }
    return "photo/" + item.id;
}

/// An item of the store as it is sent; nothing where it can't be read.
std::optional<sync::Item> item_of(Store& store, const OutboxItem& row) {
    if (row.kind == ItemKind::photo) {
        return sync::item_from_store(row, nullptr);
    }
    if (row.kind == ItemKind::answer) {
        const auto answer = store.answer_to_send(row.id);
        return answer ? std::optional(sync::answer_from_store(row, *answer)) : std::nullopt;
    }
    const auto document = store.document_to_send(row.id);
    if (!document) {
        return std::nullopt;
    }
    sync::Item item = sync::item_from_store(row, &*document);
    item.parents_here = sync::parents_here(store, row.id);
    return item;
}

/// What waits, with the digest of what will be sent. An item that can't be read is left out; the others go on.
Result<std::vector<sync::Item>> items_waiting(Store& store) {
    const auto rows = store.pending();
    if (!rows) {
        return rows.error();
    }
    std::vector<sync::Item> items;
    for (const OutboxItem& row : *rows) {
        if (auto item = item_of(store, row)) {
            items.push_back(*std::move(item));
        }
    }
    return items;
}

}  // namespace

Sending::Sending(SurveyKeeping& keeping, sync::WireTimes times, QObject* parent)
    : QObject(parent),
      keeping_(keeping),
      wire_(times),
      pairing_wire_(times),
      rules_wire_(times),
      outbox_(*this, time_now, [] { return QRandomGenerator::global()->generate64(); }),
      inbox_(*this),
      sender_(outbox_, wire_, time_now, [this](const sync::Item& item, auto then) { bytesOf(item, std::move(then)); }) {
    outbox_.also_ask(inbox_);
    connect(&sender_, &sync::Sender::moved, this, &Sending::moved);
}

Sending::~Sending() = default;

void Sending::begin() {
    keeping_.post(
        this, [](Store& store) { return store.pairing(); },
        [this](const Result<std::optional<Pairing>>& held) {
            if (held && *held) {
                take(**held, {});
                fetchRules();
            }
            look();
        });
}

Result<Sending::Standing> Sending::readStanding(Store& store) {
    Standing standing;
    auto items = items_waiting(store);
    auto cursor = store.asked_until();
    auto questions = store.questions_asked_until();
    const auto coming = store.coming();
    auto photos = store.photos_elsewhere();
    if (!items || !cursor || !questions || !coming || !photos) {
        return !items       ? items.error()
               : !cursor    ? cursor.error()
               : !questions ? questions.error()
               : !coming    ? coming.error()
                            : photos.error();
    }
    standing.items = std::move(items).value();
    standing.cursor = std::move(cursor).value();
    standing.questions_cursor = std::move(questions).value();
    standing.photos = std::move(photos).value();
    for (const ComingRevision& one : *coming) {
        standing.coming.push_back({{one.visit, one.revision, one.sha256, one.received_at}, one.sent_by});
    }
    return standing;
}

void Sending::look(bool now) {
    if (!workroom_) {  // nobody to send to: no document is made ready
        emit moved();
        return;
    }
    if (now) {
        fetchRules();
    }
    goOn([this, now] {
        if (now) {
            outbox_.try_now();
        }
    });
}

void Sending::askQuestionsAnew() {
    if (workroom_) {
        goOn([this] { inbox_.ask_questions_anew(); });
    }
}

void Sending::goOn(std::function<void()> first) {
    keeping_.post(this, &Sending::readStanding, [this, first = std::move(first)](Result<Standing> standing) {
        if (standing) {
            standing_ = std::move(standing).value();
        }
        first();
        sender_.go();
        emit moved();
    });
}

void Sending::take(const Pairing& pairing, const QString& name) {
    workroom_ = pairing;
    name_ = name;
    const auto pin = QByteArray::fromStdString(pairing.certificate_fingerprint);
    wire_.setPin(pin);
    rules_wire_.setPin(pin);
    sender_.setWorkroom(sync::workroom_address(shown(pairing.address)), QByteArray::fromStdString(pairing.token));
    outbox_.paired();
}

/// Whatever goes wrong is left for the next time: nobody waits for it.
void Sending::fetchRules() {
    if (!workroom_ || fetching_) {
        return;
    }
    sync::Request request;
    request.path = sync::rules_path_now;
    request.headers = {{"Accept", std::string(sync::json_type)}};
    fetching_ = true;
    rules_wire_.send(sync::workroom_address(shown(workroom_->address)), QByteArray::fromStdString(workroom_->token),
                     request, {}, [this](const sync::Outcome& outcome) {
                         fetching_ = false;
                         const auto* answer = std::get_if<sync::Answer>(&outcome);
                         if (workroom_ && answer != nullptr && answer->status == 200) {
                             emit rulesCame(QByteArray::fromStdString(answer->content));
                         }
                     });
}

QString Sending::whyNotPaired(const sync::Outcome& outcome, bool pinned) {
    const auto* failure = std::get_if<sync::WireFailure>(&outcome);
    if (failure == nullptr || *failure != sync::WireFailure::not_trusted) {
        return tr("No workroom answers there. Check the address, and that both are in one network.");
    }
    return pinned
               ? tr("Another certificate answers there than the pairing text names. Nothing was sent. Ask the "
                    "workroom for a new text, and paste it as the address.")
               : tr("The certificate there isn’t one this phone trusts. Nothing was sent. Paste the pairing text that "
                    "the workroom shows as the address.");
}

void Sending::pair(const QString& typed, const QString& code, const QString& pin,
                   std::function<void(const QString&)> then) {
    const QUrl address = sync::workroom_address(typed);
    if (!address.isValid()) {
        then(tr("This isn’t an address. It looks like 192.0.2.7:8080."));
        return;
    }
    const sync::PairRequest asked{bytes(code), bytes(QSysInfo::machineHostName()).substr(0, 100)};
    const sync::Request request = sync::pairing_request(asked);
    pairing_wire_.setPin(pin.toLatin1());
    pairing_wire_.send(
        address, {}, request, QByteArray::fromStdString(request.content),
        [this, address, pin, then](const sync::Outcome& outcome) {
            const auto* answer = std::get_if<sync::Answer>(&outcome);
            if (!answer) {
                then(whyNotPaired(outcome, !pin.isEmpty()));
                return;
            }
            const auto read = sync::read_pairing(*answer);
            if (!read) {
                then(fault_of(read));
                return;
            }
            keepPairing({bytes(address.toString()), read->token, bytes(pin)}, shown(read->workroom), then);
        });
}

void Sending::keepPairing(const Pairing& pairing, const QString& name, std::function<void(const QString&)> then) {
    keeping_.post(
        this, [pairing](Store& store) { return store.set_pairing(pairing); },
        [this, pairing, name, then](const Result<Done>& kept) {
            if (kept) {
                take(pairing, name);
                look(true);
            }
            then(fault_of(kept));
        });
}

void Sending::unpair() {
    sender_.callOff();
    rules_wire_.callOff();
    sender_.setWorkroom({}, {});
    wire_.setPin({});
    rules_wire_.setPin({});
    outbox_.unpaired();
    workroom_.reset();
    name_.clear();
    keeping_.post(
        this, [](Store& store) { return store.clear_pairing(); }, [this](const Result<Done>&) { emit moved(); });
}

sync::ItemState Sending::stateOf(const OutboxItem& item) const {
    const auto key = key_of(item);
    const auto waiting = std::ranges::find(standing_.items, key, &sync::Item::key);
    sync::ItemState state;
    if (item.state == ItemState::confirmed) {
        state.standing = sync::Standing::there;
    } else if (item.state == ItemState::refused) {
        state = {sync::Standing::refused, item.why, {}, {}};
    } else if (waiting != standing_.items.end()) {
        state = outbox_.state_of(*waiting);
    }
    return state;
}

void Sending::sendAgain(const OutboxItem& item) {
    outbox_.take_up_again(key_of(item));
    keeping_.post(
        this, [item](Store& store) { return store.send_again(item); }, [this](const Result<Done>&) { look(true); });
}

void Sending::bytesOf(const sync::Item& item, std::function<void(const std::optional<QByteArray>&)> then) {
    keeping_.post(
        this,
        [item](Store& store) -> Result<std::string> {
            if (item.kind == sync::ItemKind::photo) {
                return store.photo_bytes(item.sha256);
            }
            if (item.kind == sync::ItemKind::answer) {
                auto answer = store.answer_to_send(item.answer);
                return answer ? Result<std::string>(std::move(answer).value().record) : answer.error();
            }
            auto document = store.document_to_send(item.survey);
            if (!document) {
                return document.error();
            }
            if (document->sha256 != item.sha256) {  // edited meanwhile: the next snapshot has the later revision
                return Error{ErrorCode::conflict, item.survey, "It was edited meanwhile."};
            }
            if (const auto noted = store.note_going_out(item.survey, item.revision); !noted) {
                return noted.error();
            }
            return std::move(document->bytes);
        },
        [this, then](const Result<std::string>& read) {
            if (!read) {
                look();
            }
            then(read ? std::optional(QByteArray::fromStdString(*read)) : std::nullopt);
        });
}

void Sending::confirm(const sync::Item& item, const sync::Receipt& receipt) {
    keeping_.post(
        this,
        [row = sync::row_of(item), text = sync::receipt_record(item, receipt)](Store& store) {
            return store.confirm(row, text);
        },
        [this](const Result<Done>& kept) {
            look();
            if (kept) {
                emit confirmed();
            }
        });
}

void Sending::bring_together(const sync::Item& item, const sync::WhatIsThere& there, const std::string& theirs,
                             const std::string& common) {
    const auto base = [visit = item.survey, common, digest = there.common_sha256](Store& store) -> Result<std::string> {
        auto kept = common.empty() ? store.parent_bytes(visit, digest)
                                   : Result<std::optional<std::string>>(std::optional(common));
        return !kept   ? Result<std::string>(kept.error())
               : *kept ? Result<std::string>(std::move(**kept))
                       : Error{ErrorCode::missing, visit, "What both were made from isn’t on this device."};
    };
    putTogether(item.survey, sync::met_revision(there, theirs), base,
                [this, item](const QString& fault, bool for_good) { togetherEnds(item, fault, for_good); });
}

void Sending::putTogether(const std::string& visit, const MetRevision& met,
                          std::function<Result<std::string>(Store&)> base, Ended then) {
    const bool is_open = isOpen(visit);
    if (!is_open && open_ != nullptr && open_->holds(shown(visit))) {  // what is read for it would be of before
        QMetaObject::invokeMethod(
            this, [then] { then(tr("The visit is being opened."), false); }, Qt::QueuedConnection);
        return;
    }
    keeping_.post(
        this,
        [visit, met, base = std::move(base), says = bytes(togetherSays(met)),
         is_open](Store& store) -> Result<std::string> {
            auto from = base(store);
            if (!from || is_open) {
                return from;
            }
            const auto kept = store.bring_together(visit, "", *from, met, says);
            return kept ? Result<std::string>(std::string()) : kept.error();
        },
        [this, visit, met, is_open, then = std::move(then)](const Result<std::string>& from) {
            if (from && is_open) {
                return togetherHere(visit, *from, met, then);
            }
            const bool for_good =
                !from && (from.error().code == ErrorCode::missing || from.error().code == ErrorCode::conflict);
            then(fault_of(from), for_good);
        });
}

QString Sending::togetherSays(const MetRevision& met) {
    return met.sent_by.empty() ? tr("Put together with what somebody else sent")
                               : tr("Put together with what %1 sent").arg(shown(met.sent_by));
}

void Sending::togetherHere(const std::string& visit, const std::string& base, const MetRevision& met,
                           const Ended& then) {
    if (!isOpen(visit)) {  // closed meanwhile: it is met again
        return then(tr("The visit was closed meanwhile."), false);
    }
    const auto from = read_survey(base);
    if (!from) {
        return then(tr("What both were made from can’t be read here."), true);
    }
    open_->bringTogether(togetherSays(met), *from, met,
                         [then, still = QPointer(this)](const QString& fault, bool for_good) {
                             if (still) {
                                 then(fault, for_good);
                             }
                         });
}

bool Sending::isOpen(const std::string& visit) const { return open_ != nullptr && open_->visitId() == shown(visit); }

/// `for_good`: the visit stays as it is here, and is shown as refused; else it is tried again.
void Sending::togetherEnds(const sync::Item& item, const QString& fault, bool for_good) {
    if (fault.isEmpty()) {
        if (isOpen(item.survey)) {
            open_->readAgain();
        }
        emit broughtTogether(shown(item.survey));
        look();
        return;
    }
    if (!for_good) {
        outbox_.try_later(item, bytes(fault));
        return;
    }
    keeping_.post(
        this, [row = sync::row_of(item), why = bytes(fault)](Store& store) { return store.refuse(row, why); },
        [this](const Result<Done>&) { look(); });
}

void Sending::note(const sync::Changes& changes, const std::string& from) {
    std::vector<ComingRevision> came;
    for (const sync::Change& change : changes.changes) {
        if (change.erased_at.empty()) {
            const auto& receipt = change.receipt;
            came.push_back({receipt.id, receipt.revision, receipt.sha256, receipt.received_at, change.sent_by});
        }
    }
    keeping_.post(
        this, [came, from, until = changes.next](Store& store) { return store.note_coming(came, from, until); },
        [this](const Result<Done>& noted) {
            if (!noted) {
                inbox_.not_noted(time_now());
            }
            look();
        });
}

void Sending::note_questions(const sync::QuestionEntries& came, const std::string& from) {
    keeping_.post(
        this, [came, from](Store& store) { return sync::keep_questions(store, came, from); },
        [this, any = !came.entries.empty()](const Result<Done>& noted) {
            if (!noted) {
                inbox_.questions_not_noted(time_now());
            } else if (any) {
                emit questionsCame();
            }
            look();
        });
}

void Sending::take(const sync::Coming& one, const std::string& document) {
    const MetRevision met{one.receipt.revision, document, one.receipt.sha256, one.sent_by, one.receipt.received_at};
    const auto base = [visit = one.receipt.id, document](Store& store) -> Result<std::string> {
        auto common = store.common_with(visit, document);
        return !common   ? Result<std::string>(common.error())
               : *common ? Result<std::string>(std::move(**common))
                         : Error{ErrorCode::missing, visit, "What both were made from isn’t on this device."};
    };
    putTogether(one.receipt.id, met, base, [this, one](const QString& fault, bool for_good) {
        if (for_good && !isOpen(one.receipt.id)) {  // it is met, and said, when the visit is sent
            pass_over(one);
        } else {
            cameTogether(one, fault);
        }
    });
}

void Sending::cameTogether(const sync::Coming& one, const QString& fault) {
    if (!fault.isEmpty()) {
        inbox_.try_later(one.receipt.sha256, time_now());
    } else {
        if (isOpen(one.receipt.id)) {
            open_->readAgain();
        }
        emit broughtTogether(shown(one.receipt.id));
    }
    look();
}

void Sending::pass_over(const sync::Coming& one) {
    const auto& receipt = one.receipt;
    keeping_.post(
        this,
        [row = ComingRevision{receipt.id, receipt.revision, receipt.sha256, receipt.received_at, one.sent_by}](
            Store& store) { return store.pass_over(row); },
        [this, sha256 = receipt.sha256](const Result<Done>& kept) {
            if (!kept) {
                inbox_.try_later(sha256, time_now());
            }
            look();
        });
}

void Sending::take_photo(const std::string& sha256, const std::string& bytes, const std::string& media_type) {
    keeping_.post(
        this,
        [sha256, bytes, media_type](Store& store) -> Result<Done> {
            return sync::keep_fetched_photo(store, sha256, bytes, media_type);
        },
        [this, sha256](const Result<Done>& kept) {
            if (!kept) {
                inbox_.try_later(sha256, time_now());
            }
            look();
            if (kept) {
                emit broughtTogether({});
            }
        });
}

void Sending::refuse(const sync::Item& item, const sync::Refusal& refusal) {
    keeping_.post(
        this,
        [row = sync::row_of(item), why = refusal.why + " " + refusal.what_to_do](Store& store) {
            return store.refuse(row, why);
        },
        [this](const Result<Done>&) { look(); });
}

void Sending::postpone(const sync::Item& item, int, sync::Time not_before, const std::string& why) {
    keeping_.post(
        this,
        [row = sync::row_of(item), until = sync::write_time(not_before), why](Store& store) {
            return store.postpone(row, until, why);
        },
        [this](const Result<Done>&) { look(); });
}

}  // namespace truehang
