// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/inbox.h"
#include "outbox/outbox.h"
#include "store/store.h"
#include "transport/network_wire.h"
#include "transport/sender.h"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <functional>
#include <optional>

namespace truehang {

class OpenVisit;
class SurveyKeeping;

/// The outbox of the store on the network: pairs, sends what waits, and keeps what came of it. It sees a snapshot of
/// the store's outbox, taken anew after each edit and each answer.
class Sending : public QObject, private sync::OutboxShelf, private sync::InboxShelf {
    Q_OBJECT

public:
    explicit Sending(SurveyKeeping& keeping, sync::WireTimes times = {}, QObject* parent = nullptr);
    ~Sending() override;

    /// Whose visit isn’t changed behind its back: what others sent of it is put together there.
    void mind(OpenVisit& open) { open_ = &open; }

    /// Reads the pairing and what waits, then sends.
    void begin();
    /// Something new waits, or a person asks: `now` overrides pauses.
    void look(bool now = false);
    /// A visit came here from elsewhere, and the store forgot how far it asked: what was asked about it comes too.
    void askQuestionsAnew();

    [[nodiscard]] const std::optional<Pairing>& workroom() const { return workroom_; }
    [[nodiscard]] const QString& workroomName() const { return name_; }
    /// Pairs; `then` has the fault, or none. With a `pin` (SHA-256 in hexadecimal) nobody but who shows that
    /// certificate is spoken to, now or later.
    void pair(const QString& address, const QString& code, const QString& pin,
              std::function<void(const QString& fault)> then);
    void unpair();

    [[nodiscard]] sync::Link link() const { return outbox_.link(); }
    /// How an item of the store stands.
    [[nodiscard]] sync::ItemState stateOf(const OutboxItem& item) const;
    void sendAgain(const OutboxItem& item);

signals:
    /// The link, an item or the pairing stands differently.
    void moved();
    /// The workroom confirmed an item and the store has its receipt.
    void confirmed();
    /// What somebody else sent of this visit is in it now, or a photo that it names.
    void broughtTogether(const QString& visit);
    /// What the workroom asked, or what was answered, came in.
    void questionsCame();
    /// The workroom gave its house rules, as it is asked for them when the phone begins, pairs or sends by hand.
    void rulesCame(const QByteArray& document);

private:
    std::vector<sync::Item> pending() override { return standing_.items; }
    void confirm(const sync::Item& item, const sync::Receipt& receipt) override;
    void bring_together(const sync::Item& item, const sync::WhatIsThere& there, const std::string& theirs,
                        const std::string& common) override;
    void refuse(const sync::Item& item, const sync::Refusal& refusal) override;
    void postpone(const sync::Item& item, int attempts, sync::Time not_before, const std::string& why) override;

    std::string cursor() override { return standing_.cursor; }
    std::vector<sync::Coming> coming() override { return standing_.coming; }
    std::vector<std::string> photos_elsewhere() override { return standing_.photos; }
    void note(const sync::Changes& changes, const std::string& from) override;
    std::string questions_cursor() override { return standing_.questions_cursor; }
    void note_questions(const sync::QuestionEntries& came, const std::string& from) override;
    void take(const sync::Coming& one, const std::string& document) override;
    void pass_over(const sync::Coming& one) override;
    void take_photo(const std::string& sha256, const std::string& bytes, const std::string& media_type) override;

    /// What the store tells of what waits and what is coming, at one time.
    struct Standing {
        std::vector<sync::Item> items;
        std::string cursor;
        std::string questions_cursor;
        std::vector<sync::Coming> coming;
        std::vector<std::string> photos;
    };
    static Result<Standing> readStanding(Store& store);
    /// Reads the standing anew, does `first`, and goes on.
    void goOn(std::function<void()> first);
    [[nodiscard]] bool isOpen(const std::string& visit) const;
    void cameTogether(const sync::Coming& one, const QString& fault);
    void bytesOf(const sync::Item& item, std::function<void(const std::optional<QByteArray>&)> then);
    static QString togetherSays(const MetRevision& met);
    using Ended = std::function<void(const QString& fault, bool forGood)>;
    /// Puts what another sent together with a visit, whether it is open or not. `base`: the bytes that both were made
    /// from.
    void putTogether(const std::string& visit, const MetRevision& met, std::function<Result<std::string>(Store&)> base,
                     Ended then);
    void togetherHere(const std::string& visit, const std::string& base, const MetRevision& met, const Ended& then);
    void togetherEnds(const sync::Item& item, const QString& fault, bool for_good);
    void take(const Pairing& pairing, const QString& name);
    void fetchRules();
    static QString whyNotPaired(const sync::Outcome& outcome, bool pinned);
    void keepPairing(const Pairing& pairing, const QString& name, std::function<void(const QString&)> then);

    SurveyKeeping& keeping_;
    OpenVisit* open_ = nullptr;
    Standing standing_;
    std::optional<Pairing> workroom_;
    QString name_;
    sync::NetworkWire wire_;
    sync::NetworkWire pairing_wire_;
    sync::NetworkWire rules_wire_;
    bool fetching_ = false;
    sync::Outbox outbox_;
    sync::Inbox inbox_;
    sync::Sender sender_;
};

}  // namespace truehang
