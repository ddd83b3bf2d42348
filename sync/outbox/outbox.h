// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/inbox.h"
#include "outbox/item.h"
#include "outbox/meaning.h"
#include "outbox/pieces.h"
#include "outbox/wire.h"

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

// What to send next, what an answer means, and what to do when none comes. A state machine: it holds no socket, thread
// or timer and asks nobody for the time. Whoever has the wire runs this loop:
//
//     const Step step = outbox.next();
//     if (step.request) send it, then outbox.answered(ticket, answer) or outbox.failed(ticket, failure), and again;
//     else wait until step.wake_at (or for new items, the network, a person) and ask again.

namespace truehang::sync {

/// Where the items lie. Called on the thread that calls the outbox; must not call back into it.
class OutboxShelf {
public:
    virtual ~OutboxShelf() = default;
    /// What is neither confirmed nor refused, oldest first. May be a snapshot: an item just confirmed may still be in
    /// it.
    [[nodiscard]] virtual std::vector<Item> pending() = 0;
    /// The workroom has it. Must be kept durably; the item isn't pending any more.
    virtual void confirm(const Item& item, const Receipt& receipt) = 0;
    /// It will never be taken as it is. Kept, shown to a person, not pending any more.
    virtual void refuse(const Item& item, const Refusal& refusal) = 0;
    /// Somebody else’s revision came before it, `theirs` (the bytes), and both were made from the document of the
    /// digest `there.common_sha256`: `common` is its bytes, empty where the item’s `parents_here` has it. The item
    /// isn’t pending any more; a later revision that holds both is, or else the shelf refuses it or calls `try_later`.
    virtual void bring_together(const Item& item, const WhatIsThere& there, const std::string& theirs,
                                const std::string& common) = 0;
    /// It stays pending with these `attempts` and `not_before`; `why` is a sentence for a person.
    virtual void postpone(const Item& item, int attempts, Time not_before, const std::string& why) = 0;
};

/// How long to wait after failures: `first` doubled for each failure up to a cap, then a random share between half and
/// all of it, so that many devices don't come back together.
struct Delays {
    std::chrono::milliseconds first{2'000};
    std::chrono::milliseconds link_cap{300'000};            ///< when the workroom can't be reached
    std::chrono::milliseconds item_cap{1'800'000};          ///< when one item fails
    std::chrono::milliseconds retry_after_cap{21'600'000};  ///< the longest Retry-After that is obeyed
};

/// What to do now: send `request`, or wait until `wake_at`; neither: nothing is pending, or see `Link`.
struct Step {
    std::optional<Request> request;
    std::optional<Time> wake_at;
};

/// How the way to the workroom stands, for a person.
struct Link {
    enum class State {
        not_paired,     ///< no workroom yet: nothing is sent
        quiet,          ///< nothing stands in the way
        unreachable,    ///< no network or no workroom; tried again at `again_at`
        asked_to_wait,  ///< the workroom asked for time until `again_at`
        pair_again,     ///< the workroom doesn't know this device any more: a new code is needed
    };
    State state = State::not_paired;
    std::optional<Time> again_at;
    std::string text;  ///< one sentence
};

/// How one pending item stands, for a person.
struct ItemState {
    Standing standing = Standing::waiting;
    std::string why;         ///< of the last failure, else empty
    std::string what_to_do;  ///< of a refusal, else empty
    std::optional<Time> again_at;
    long long bytes_there = 0;  ///< of a photo that goes in pieces: how many the workroom said it has
};

/// The state machine. At most one request is under way. Everything that must outlive the program is on the shelf; what
/// is only in memory may be lost at any moment, since every request may be sent twice.
class Outbox {
public:
    using Clock = std::function<Time()>;
    using Random = std::function<std::uint64_t()>;  ///< 64 uniform random bits

    Outbox(OutboxShelf& shelf, Clock clock, Random random, Delays delays = {}, Pieces pieces = {});

    /// Asks `inbox` too, from now on; it must outlive this.
    void also_ask(Inbox& inbox) { inbox_ = &inbox; }

    /// A token is held: sending may begin (also after `pair_again`). Clears pauses.
    void paired();
    /// No workroom any more.
    void unpaired();

    /// What to do now. Surveys and answers go before what comes is asked for, photos after it. Order: items that failed
    /// least, surveys before answers, those before photos, oldest first; an item that failed waits its own time while
    /// the others go on. After a PUT that broke off, the next request for that item asks what is there instead of
    /// sending it again. A large photo goes in pieces, and goes on where the workroom says that it stands; surveys go
    /// between two of them. A workroom that takes no pieces gets it whole.
    [[nodiscard]] Step next();

    /// The answer to the request `ticket`. A ticket that isn't under way is ignored.
    void answered(long long ticket, const Answer& answer);
    /// No answer came.
    void failed(long long ticket, WireFailure failure);
    /// The request was called off on this device (the app is closing, a person stopped it): no fault, no delay; what
    /// became of it is asked first.
    void called_off(long long ticket);

    /// The network came back, or a person asked: no pause and no item's delay holds any longer, but a Retry-After does.
    void try_now();

    /// What was to be brought together couldn’t be now: the item is pending again, tried after a while.
    void try_later(const Item& item, const std::string& why);

    /// A refused item is pending again (a person mended or insisted).
    void take_up_again(const std::string& key);

    [[nodiscard]] Link link() const;
    /// How this pending item stands.
    [[nodiscard]] ItemState state_of(const Item& item) const;

private:
    /// What a request is about.
    enum class Way { send, ask, fetch, begin_upload, ask_upload, send_piece };
    /// What was there instead of what was sent, as it is fetched; lost with the program, it is asked for again.
    struct Gathering {
        WhatIsThere there;
        std::optional<std::string> theirs;

        /// The revision that is fetched next, and its digest.
        [[nodiscard]] long long revision() const { return theirs ? there.common_revision : there.newest.revision; }
        [[nodiscard]] const std::string& sha256() const { return theirs ? there.common_sha256 : there.newest.sha256; }
    };
    struct UnderWay {
        long long ticket = 0;
        Item item;
        Way way = Way::send;
        ByteRange range;  ///< of `send_piece`
    };
    /// What is known of an item beyond what a snapshot of the shelf may say.
    struct Known {
        int attempts = 0;
        Time not_before{};
        bool delay_lifted = false;
        bool ask_first = false;
        bool settled = false;                ///< confirmed or refused
        bool whole = false;                  ///< not in pieces, although it is large
        std::optional<long long> offset;     ///< where its upload stands
        std::optional<Gathering> gathering;  ///< of a survey
        long long furthest = 0;  ///< where it stood at most: what is begun anew doesn’t count as coming on
        int stalls = 0;          ///< answers in a row that brought no byte forward
        int forgiven = 0;        ///< attempts that count no more, since its upload came on after them
        ItemState state;
    };

    [[nodiscard]] std::vector<Item> pending();
    [[nodiscard]] std::optional<Request> asked_for(Time now, bool photos);
    void act_on_coming(const Meaning& meaning);
    [[nodiscard]] bool due(const Item& item, Time now) const;
    [[nodiscard]] bool link_waits(Time now) const;
    [[nodiscard]] bool in_pieces(const Item& item) const;
    [[nodiscard]] Request request_for(const Item& item);
    [[nodiscard]] Request upload_request_for(const Item& item, Way& way) const;
    [[nodiscard]] std::chrono::milliseconds delay(int failures, std::chrono::milliseconds cap);
    void act_on(const UnderWay& sent, const Meaning& meaning);
    void act_on_upload(const UnderWay& sent, const UploadMeaning& meaning);
    void take_document(const UnderWay& sent, const Meaning& meaning);
    void link_is_well();
    void confirm(const Item& item, const Receipt& receipt);
    void refuse(const Item& item, const Refusal& refusal);
    void postpone(const Item& item, const std::string& why);
    void link_failed(const std::string& why);
    void link_asked_to_wait(const Meaning& meaning);

    OutboxShelf& shelf_;
    Clock clock_;
    Random random_;
    Delays delays_;
    Pieces pieces_;
    Link link_;
    long long last_ticket_ = 0;
    int link_failures_ = 0;
    std::optional<UnderWay> under_way_;
    Inbox* inbox_ = nullptr;
    std::optional<long long> asking_;  ///< the ticket of what `inbox_` asks
    std::map<std::string, Known> known_;
};

}  // namespace truehang::sync
