// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/meaning.h"
#include "outbox/wire.h"
#include "protocol/questions.h"
#include "protocol/records.h"

#include <algorithm>
#include <chrono>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

// What others sent of the surveys that are on this device: asked for by the workroom’s cursor, fetched, and handed on
// to be put together, with the photos that aren’t here. As the outbox, it holds no socket, thread or timer; the outbox
// asks it what to do where no survey is to be sent.

namespace truehang::sync {

/// Somebody else’s revision of a survey that is here.
struct Coming {
    SurveyReceipt receipt;
    std::string sent_by;  ///< for people; may be empty
};

/// Where what comes is kept. Called on the thread that calls the outbox; must not call back into it.
class InboxShelf {
public:
    virtual ~InboxShelf() = default;
    /// The last cursor noted; empty: none yet.
    [[nodiscard]] virtual std::string cursor() = 0;
    /// Revisions to fetch, and digests of photos that are named and aren’t here. May be snapshots: what was just taken
    /// may still be in them.
    [[nodiscard]] virtual std::vector<Coming> coming() = 0;
    [[nodiscard]] virtual std::vector<std::string> photos_elsewhere() = 0;
    /// Keeps what came and the cursor after it as one; what no survey here is concerned by is left out. It was asked
    /// for after the cursor `from` (empty: from the first): where that isn't what is noted, nothing is kept. What
    /// couldn't be kept is told to the inbox (`not_noted`).
    virtual void note(const Changes& changes, const std::string& from) = 0;
    /// The last cursor noted of what was asked; empty: none yet.
    [[nodiscard]] virtual std::string questions_cursor() = 0;
    /// Keeps what was asked and answered, and the cursor after it, as `note`. What couldn’t be kept is told to the
    /// inbox (`questions_not_noted`).
    virtual void note_questions(const QuestionEntries& came, const std::string& from) = 0;
    /// The document of that revision, its digest checked: to be put together with what is here.
    virtual void take(const Coming& one, const std::string& document) = 0;
    /// The workroom has it no more, or it can’t be fetched: it isn’t coming.
    virtual void pass_over(const Coming& one) = 0;
    /// A photo’s bytes, their digest checked.
    virtual void take_photo(const std::string& sha256, const std::string& bytes, const std::string& media_type) = 0;
};

/// When to ask.
struct Asking {
    std::chrono::milliseconds every{300'000};          ///< for what came
    std::chrono::milliseconds photo_again{3'600'000};  ///< for a photo that wasn’t there
    int page = 200;                                    ///< changes at once
};

/// The state machine. What it knows beside its shelf may be lost at any moment: it asks again.
class Inbox {
public:
    explicit Inbox(InboxShelf& shelf, Asking asking = {}) : shelf_(shelf), asking_(asking) {}

    /// A revision to fetch, or what came or was asked to be asked for, where that is due.
    [[nodiscard]] std::optional<Request> next(Time now);
    /// A photo to fetch.
    [[nodiscard]] std::optional<Request> next_photo(Time now);
    /// When `next` or `next_photo` may have something by itself.
    [[nodiscard]] Time wake_at() const { return std::min(changes_.ask_at, questions_.ask_at); }
    /// Asks what came as soon as it can.
    void ask_now();
    /// It may be another workroom: goes by what the shelf says.
    void forget();

    /// What the answer to its last request means: `confirmed` where it was taken, else as `meaning_of_trouble` says it.
    [[nodiscard]] Meaning answered(const Answer& answer, Time now);
    /// What came couldn’t be kept now: it is asked for again, after a while, from where the shelf stands then.
    void not_noted(Time now) { changes_.not_noted(now + asking_.every); }
    void questions_not_noted(Time now) { questions_.not_noted(now + asking_.every); }
    /// The shelf forgot how far was asked: questions are asked for at once, from where it stands.
    void ask_questions_anew() { questions_.not_noted(Time{}); }
    /// A document or a photo of this digest that was taken couldn’t be kept now, or it couldn't be passed over: it is
    /// fetched again after a while.
    void try_later(const std::string& sha256, Time now);

    /// No answer came: it is asked again, as soon as the way to the workroom is open.
    void failed() { under_way_.reset(); }
    /// The connection broke off over it: others are asked for first.
    void broke_off(Time now);

private:
    struct UnderWay {
        enum class What { changes, questions, document, photo };
        What what = What::changes;
        Coming coming;
        std::string photo;
    };

    /// One feed of the workroom that is asked for page by page.
    struct Feed {
        std::optional<std::string> cursor{};  ///< the last that was told, ahead of the shelf’s snapshot
        std::string asked_from{};             ///< of the request that is under way
        Time ask_at{};

        [[nodiscard]] bool is_due(Time now, std::chrono::milliseconds every) const;
        void not_noted(Time again_at);
    };

    [[nodiscard]] Request ask(Feed& feed, UnderWay::What what, std::string_view path, const std::string& shelf_cursor);
    /// What an answer means that isn’t a page of the feed; nothing where it is one.
    [[nodiscard]] std::optional<Meaning> trouble_with(Feed& feed, const Answer& answer, Time now) const;
    Meaning take_changes(const Answer& answer, Time now);
    Meaning take_questions(const Answer& answer, Time now);
    Meaning take_document(const Coming& one, const Answer& answer, Time now);
    Meaning take_photo(const std::string& sha256, const Answer& answer, Time now);
    /// The same thing isn’t asked for again before that time.
    void later(const std::string& key, Time until) { not_before_[key] = until; }
    [[nodiscard]] bool is_due(const std::string& key, Time now) const;

    InboxShelf& shelf_;
    Asking asking_;
    std::optional<UnderWay> under_way_;
    Feed changes_, questions_;
    std::set<std::string> taken_;  ///< digests
    std::map<std::string, Time> not_before_;
};

}  // namespace truehang::sync
