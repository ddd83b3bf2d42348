// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

// What can go wrong on the way between a phone and its workroom, and where.

namespace truehang::sync::simulation {

enum class Fault {
    phone_dies,
    receiver_dies,
    cut,
    repeated,
    delayed,
    busy,
    disk_full,
    sign_in_page,  ///< something in between answers 200 with a page of its own
    clock_jumps,
    count
};
inline constexpr std::array<std::string_view, 9> fault_words{
    "phone dies", "receiver dies", "cut", "repeated", "delayed", "busy", "disk full", "sign-in page", "clock jumps"};

/// What is being done.
enum class Way {
    edit,
    send_survey,
    ask_survey,
    fetch_survey,
    send_photo,
    ask_photo,
    begin_upload,
    ask_upload,
    send_piece,
    follow,
    count
};
inline constexpr std::array<std::string_view, 10> way_words{"edit",       "send survey", "ask survey",   "fetch survey",
                                                            "send photo", "ask photo",   "begin upload", "ask upload",
                                                            "send piece", "follow"};

/// How far it has come.
enum class Phase {
    leaving,    ///< on the phone, before anything of it is on the wire
    arriving,   ///< on the wire
    within,     ///< at the receiver, written and not committed
    kept,       ///< committed and not answered
    answering,  ///< the answer is on the wire
    acted,      ///< the phone has acted on it
    count
};
inline constexpr std::array<std::string_view, 6> phase_words{"leaving", "arriving",  "within",
                                                             "kept",    "answering", "acted"};

/// What can go wrong there; empty: a request of this kind never comes there.
[[nodiscard]] std::vector<Fault> possible(Way way, Phase phase);

/// One thing that can go wrong in one place.
struct Case {
    Way way = Way::edit;
    Phase phase = Phase::leaving;
    Fault fault = Fault::cut;
};
/// All of them.
[[nodiscard]] const std::vector<Case>& cases();

/// What is asked after a request of that kind broke off; the same where it is just sent again.
[[nodiscard]] Way asked_after(Way way);

/// How often each went wrong.
class Tally {
public:
    void add(Way way, Phase phase, Fault fault) { ++counts_[index(way, phase, fault)]; }
    void add(const Tally& other) {
        for (std::size_t i = 0; i < counts_.size(); ++i) {
            counts_[i] += other.counts_[i];
        }
    }
    [[nodiscard]] long long of(Way way, Phase phase, Fault fault) const { return counts_[index(way, phase, fault)]; }
    /// Of all that can go wrong, how often what went wrong least did.
    [[nodiscard]] long long least() const;
    [[nodiscard]] long long all() const;

private:
    static constexpr std::size_t phases = static_cast<std::size_t>(Phase::count);
    static constexpr std::size_t faults = static_cast<std::size_t>(Fault::count);
    static constexpr std::size_t index(Way way, Phase phase, Fault fault) {
        return (static_cast<std::size_t>(way) * phases + static_cast<std::size_t>(phase)) * faults +
               static_cast<std::size_t>(fault);
    }
    std::array<long long, static_cast<std::size_t>(Way::count) * phases * faults> counts_{};
};

/// A fault put into the phone, the receiver or whoever follows it, to see that it is found.
enum class Bug {
    none,
    receipt_before_commit,     ///< the receiver answers, and commits afterwards
    cursor_past_in_flight,     ///< places in the order of changes are given out before the commit, to several at once
    last_writer_wins,          ///< the receiver takes a revision made from something older
    revision_replaced,         ///< the same number with other content is taken in its place
    repeat_counts_twice,       ///< the same content once more is a change once more
    digest_not_checked,        ///< a photo is kept as it came
    piece_taken_anywhere,      ///< a piece isn’t asked where it begins, nor the whole what it is
    looked_before_the_lock,    ///< what is there is looked at before writing is this request’s alone
    row_in_its_own_commit,     ///< an edit is kept, and that it is to be sent in a later transaction
    newest_confirmed,          ///< a receipt confirms whatever revision stands on the phone now
    sign_in_page_believed,     ///< any 200 is a receipt
    theirs_taken,              ///< two hands: the other’s document stands, this phone’s work is gone
    unheard_is_no_parent,      ///< what went out and was never answered isn’t told as a parent
    put_together_not_sent,     ///< what was put together stays on the phone
    busy_is_for_good,          ///< “later” is taken as a refusal
    cursor_before_the_record,  ///< who follows keeps the cursor first, and what came with it afterwards
    count
};
inline constexpr std::array<std::string_view, 17> bug_words{"none",
                                                            "receipt-before-commit",
                                                            "cursor-past-in-flight",
                                                            "last-writer-wins",
                                                            "revision-replaced",
                                                            "repeat-counts-twice",
                                                            "digest-not-checked",
                                                            "piece-taken-anywhere",
                                                            "looked-before-the-lock",
                                                            "row-in-its-own-commit",
                                                            "newest-confirmed",
                                                            "sign-in-page-believed",
                                                            "theirs-taken",
                                                            "unheard-is-no-parent",
                                                            "put-together-not-sent",
                                                            "busy-is-for-good",
                                                            "cursor-before-the-record"};

}  // namespace truehang::sync::simulation
