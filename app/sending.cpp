// SPDX-License-Identifier: Apache-2.0
#include "sending.h"

#include "document/document.h"
#include "open_visit.h"
#include "outbox/store_shelf.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
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
    return item.kind == ItemKind::survey ? "survey/" + item.id + "/" + std::to_string(item.revision)
                                         : "photo/" + item.id;
}

/// The store's own row of an item that came from `items_waiting`.
OutboxItem stored(const sync::Item& item) {
    OutboxItem row;
    row.kind = item.kind == sync::ItemKind::survey ? ItemKind::survey : ItemKind::photo;
    row.id = item.kind == sync::ItemKind::survey ? item.survey : item.sha256;
    row.revision = item.revision;
    return row;
}

/// What waits, with the digest of what will be sent. An item that can't be read is left out; the others go on.
Result<std::vector<sync::Item>> items_waiting(Store& store) {
    const auto rows = store.pending();
    if (!rows) {
        return rows.error();
    }
    std::vector<sync::Item> items;
    for (const OutboxItem& row : *rows) {
        sync::Item item;
        item.attempts = row.tries;
        item.media_type = row.media_type;
        item.not_before = sync::read_time(row.until).value_or(sync::Time{});
        if (row.kind == ItemKind::survey) {
            const auto document = store.document_to_send(row.id);
            if (!document) {
                continue;
            }
            item.kind = sync::ItemKind::survey;
            item.survey = row.id;
            item.revision = document->revision;
            item.sha256 = document->sha256;
            item.bytes = static_cast<long long>(document->bytes.size());
            item.parents_here = sync::parents_here(store, row.id);
        } else {
            item.kind = sync::ItemKind::photo;
            item.sha256 = row.id;
            item.bytes = row.bytes;
        }
        OutboxItem named = stored(item);
        item.key = key_of(named);
        items.push_back(std::move(item));
    }
    return items;
}

std::string receipt_text(const sync::Item& item, const sync::Receipt& receipt) {
    if (item.kind == sync::ItemKind::survey) {
        return sync::write_record(sync::SurveyReceipt{item.survey, item.revision, receipt.sha256, receipt.received_at});
    }
    return sync::write_record(sync::PhotoReceipt{receipt.sha256, item.bytes, receipt.received_at});
}

}  // namespace

Sending::Sending(SurveyKeeping& keeping, sync::WireTimes times, QObject* parent)
    : QObject(parent),
      keeping_(keeping),
      wire_(times),
      pairing_wire_(times),
      rules_wire_(times),
      outbox_(*this, time_now, [] { return QRandomGenerator::global()->generate64(); }),
      sender_(outbox_, wire_, time_now, [this](const sync::Item& item, auto then) { bytesOf(item, std::move(then)); }) {
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

void Sending::look(bool now) {
    if (!workroom_) {  // nobody to send to: no document is made ready
        emit moved();
        return;
    }
    if (now) {
        fetchRules();
    }
    keeping_.post(this, items_waiting, [this, now](Result<std::vector<sync::Item>> items) {
        if (items) {
            snapshot_ = std::move(items).value();
        }
        if (now) {
            outbox_.try_now();
        }
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
    const auto waiting = std::ranges::find(snapshot_, key, &sync::Item::key);
    sync::ItemState state;
    if (item.state == ItemState::confirmed) {
        state.standing = sync::Standing::there;
    } else if (item.state == ItemState::refused) {
        state = {sync::Standing::refused, item.why, {}, {}};
    } else if (waiting != snapshot_.end()) {
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
        [row = stored(item), text = receipt_text(item, receipt)](Store& store) { return store.confirm(row, text); },
        [this](const Result<Done>& kept) {
            look();
            if (kept) {
                emit confirmed();
            }
        });
}

void Sending::bring_together(const sync::Item& item, const sync::WhatIsThere& there, const std::string& theirs,
                             const std::string& common) {
    const auto row = stored(item);
    const auto met = sync::met_revision(there, theirs);
    const bool is_open = open_ != nullptr && open_->visitId() == shown(row.id);
    const auto says = bytes(togetherSays(met));
    keeping_.post(
        this,
        [row, met, common, says, is_open, digest = there.common_sha256](Store& store) -> Result<std::string> {
            if (!is_open) {
                const auto kept = store.bring_together(row.id, digest, common, met, says);
                return kept ? Result<std::string>(std::string()) : kept.error();
            }
            const auto base = common.empty() ? store.parent_bytes(row.id, digest)
                                             : Result<std::optional<std::string>>(std::optional(common));
            if (!base || !*base) {
                return base ? Error{ErrorCode::missing, row.id, "What both were made from isn’t on this device."}
                            : base.error();
            }
            return **base;
        },
        [this, item, met, is_open](const Result<std::string>& base) {
            if (!base || !is_open) {
                const bool for_good =
                    !base && (base.error().code == ErrorCode::missing || base.error().code == ErrorCode::conflict);
                return togetherEnds(item, fault_of(base), for_good);
            }
            const auto from = read_survey(*base);
            if (!from) {
                return togetherEnds(item, tr("What both were made from can’t be read here."), true);
            }
            togetherHere(item, *from, met);
        });
}

QString Sending::togetherSays(const MetRevision& met) {
    return met.sent_by.empty() ? tr("Put together with what somebody else sent")
                               : tr("Put together with what %1 sent").arg(shown(met.sent_by));
}

void Sending::togetherHere(const sync::Item& item, const Survey& base, const MetRevision& met) {
    if (open_->visitId() != shown(item.survey)) {  // closed meanwhile: sent again, it is met again
        togetherEnds(item, tr("The visit was closed meanwhile."), false);
        return;
    }
    open_->bringTogether(togetherSays(met), base, met, [this, item, still = QPointer(this)](const QString& fault) {
        if (still) {
            togetherEnds(item, fault, !fault.isEmpty());
        }
    });
}

/// `for_good`: the visit stays as it is here, and is shown as refused; else it is tried again.
void Sending::togetherEnds(const sync::Item& item, const QString& fault, bool for_good) {
    if (fault.isEmpty()) {
        if (open_ != nullptr && open_->visitId() == shown(item.survey)) {
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
        this, [row = stored(item), why = bytes(fault)](Store& store) { return store.refuse(row, why); },
        [this](const Result<Done>&) { look(); });
}

void Sending::refuse(const sync::Item& item, const sync::Refusal& refusal) {
    keeping_.post(
        this,
        [row = stored(item), why = refusal.why + " " + refusal.what_to_do](Store& store) {
            return store.refuse(row, why);
        },
        [this](const Result<Done>&) { look(); });
}

void Sending::postpone(const sync::Item& item, int, sync::Time not_before, const std::string& why) {
    keeping_.post(
        this,
        [row = stored(item), until = sync::write_time(not_before), why](Store& store) {
            return store.postpone(row, until, why);
        },
        [this](const Result<Done>&) { look(); });
}

}  // namespace truehang
