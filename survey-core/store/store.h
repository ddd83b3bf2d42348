// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/questions.h"
#include "survey/survey.h"
#include "units/result.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// Counts the states of one visit's document from 1; every edit, undo and redo that changes the document adds one.
using Revision = long long;

/// What the store may not ask the system for by itself.
struct StoreSurroundings {
    std::function<std::string()> now;     ///< RFC 3339 with an offset
    std::function<std::string()> new_id;  ///< a UUID never given before (`store/uuid7.h`)
    std::string vfs;                      ///< name of a registered SQLite VFS; empty: the system's own
    /// False only for throwaway copies: edits then outlive the program, but not a loss of power.
    bool survives_power_cut = true;
};

/// How a visit stands, by its windows and by what the workroom confirmed.
enum class VisitState {
    to_measure,  ///< no station is taken
    measuring,   ///< a window isn't measured whole
    to_send,     ///< measured, and the workroom lacks the newest revision or a photo
    there,       ///< the workroom has the newest revision and every photo
    asked,       ///< the workroom asks something
};

/// One line of the list of visits; nothing of it needs the document to be read.
struct VisitSummary {
    std::string id;
    std::string title;
    std::string address;
    std::string client;
    std::string day;  ///< the visit's own, as 2026-03-14: of `measured_at`, else of its making
    int windows = 0;
    int windows_begun = 0;     ///< with a station taken
    int windows_measured = 0;  ///< with every station of the walk taken
    int questions = 0;         ///< open ones from the workroom
    long long last_edit = 0;   ///< rises over all visits
    std::string updated_at;    ///< RFC 3339, of the last edit
    bool removed = false;
    Revision revision = 0;
    Revision confirmed_revision = 0;  ///< the newest the workroom confirmed; 0: none
    int photos = 0;                   ///< photos the survey mentions, each once
    int photos_confirmed = 0;         ///< those of them the workroom confirmed
    std::string unsent_since;         ///< RFC 3339: the oldest edit or photo the workroom hasn't confirmed; empty: none
};

/// Which visits are listed: by words, by state, the removed ones or the others, and of those a page.
struct VisitsAsked {
    std::string id{};     ///< this visit alone; empty: any
    std::string words{};  ///< all of them in title, client or address, capital or small (`units/folded.h`)
    std::optional<VisitState> state{};
    bool removed = false;
    int from = 0;
    int most = 60;
};

/// A page of the list, newest day first, within a day the newest edit first.
struct VisitsPage {
    std::vector<VisitSummary> visits;
    bool more = false;  ///< others come after these
};

/// What one edit was, for the list of a visit's history.
struct EditSummary {
    enum class Kind { edit, undo, redo };
    long long number = 0;  ///< rises over all visits
    Kind kind = Kind::edit;
    Revision revision = 0;  ///< of the visit after it
    std::string at;
    std::string what;     ///< as given to `keep`; of undo and redo: what was undone or redone
    bool undone = false;  ///< an edit that stands undone now
};

/// What undo and redo would do now: the `what` of that edit, or nothing.
struct UndoOffer {
    std::optional<std::string> undo;
    std::optional<std::string> redo;
};

/// A window that was taken out of a visit, as it was last, and the room it stood in (without windows).
struct RemovedWindow {
    Room room;
    Window window;
};

/// In the store's folder: small pictures, `SHA256.jpg`, which whoever shows photos makes.
inline constexpr std::string_view thumbnail_folder = "thumbnails";

/// Something of a window that was looked at, a caution say; `mark` is for whoever shows it to choose.
struct SeenMark {
    std::string window;
    std::string mark;

    auto operator<=>(const SeenMark&) const = default;
};

/// Where the surveyor is, and the text that is typed but not yet entered. One in a store.
struct Draft {
    std::string visit;
    std::string room;
    std::string window;
    std::string screen;
    std::string station;
    std::string typed;
    std::string more;  ///< anything else a screen wants back, as the screen writes it
    friend bool operator==(const Draft&, const Draft&) = default;
};

enum class ItemKind { survey, photo, answer };

/// How far an item of the outbox is.
enum class ItemState {
    waiting,    ///< to be sent, at once or from `until` on
    refused,    ///< the workroom said no; waits for an edit or for `send_again`
    confirmed,  ///< the workroom has it
};

/// One thing to send: the newest revision of a visit, or a photo.
struct OutboxItem {
    ItemKind kind = ItemKind::survey;
    std::string id;         ///< visit id, or sha256 of the photo (64 hexadecimal digits)
    Revision revision = 0;  ///< of a survey; 0 for a photo
    ItemState state = ItemState::waiting;
    std::string since;  ///< RFC 3339: when it came to this state
    std::string until;  ///< RFC 3339: not to be tried before; empty: at once
    std::string why;    ///< of the last refusal or postponement
    int tries = 0;      ///< postponements since it was queued
    std::string media_type;
    long long bytes = 0;  ///< of a photo
};

/// The exact bytes of a survey revision to send. They stay the same at each call until the visit is edited.
struct DocumentToSend {
    Revision revision = 0;
    std::string bytes;   ///< UTF-8 JSON
    std::string sha256;  ///< of `bytes`, 64 hexadecimal digits
};

/// A revision of a visit that somebody else sent, as it is at the workroom.
struct MetRevision {
    Revision revision = 0;
    std::string bytes;
    std::string sha256;       ///< of `bytes`
    std::string sent_by;      ///< the device’s name, for people; may be empty
    std::string received_at;  ///< RFC 3339, the workroom’s clock, for people
};

/// A revision of a visit that somebody else sent and that isn’t in the visit here yet.
struct ComingRevision {
    std::string visit;
    Revision revision = 0;
    std::string sha256;
    std::string received_at;  ///< RFC 3339, the workroom’s clock
    std::string sent_by;      ///< the device’s name, for people; may be empty
    friend bool operator==(const ComingRevision&, const ComingRevision&) = default;
};

/// The workroom this phone sends to.
struct Pairing {
    std::string address;                  ///< as `https://192.0.2.7:8443`
    std::string token;                    ///< what this phone shows at each call
    std::string certificate_fingerprint;  ///< sha256 in hexadecimal, or empty
    friend bool operator==(const Pairing&, const Pairing&) = default;
};

/// Surveys, their history, photos and the outbox: one SQLite file `truehang.sqlite` in a folder, photos beside it as
/// `photos/ab/abcd….jpg`. One thread at a time; `async_store.h` gives it a thread of its own.
///
/// A call that returns success for an edit has its bytes on the disk (WAL, synchronous=FULL). A call that returns an
/// error has changed nothing, and the same call may be tried again: `full` (no room), `io`, `damaged` (stored bytes
/// don't read back; nothing is overwritten), `busy`, `missing` (no such visit, window, photo or item), `conflict`.
/// A survey that `read_survey` would refuse isn't stored: `unreadable`, with the JSON pointer in `where`.
class Store {
public:
    /// Opens or creates the store. `busy`: another process has it open. `newer_version`: a later version wrote it;
    /// `damaged`: it isn't sound. In these three cases the files stay as they are.
    [[nodiscard]] static Result<std::unique_ptr<Store>> open(const std::filesystem::path& folder,
                                                             StoreSurroundings surroundings);
    ~Store();
    Store(const Store&) = delete;
    Store& operator=(const Store&) = delete;

    /// A UUID made when the store was created: this phone, towards a workroom.
    [[nodiscard]] const std::string& device_id() const;

    // -- Visits ------------------------------------------------------------------------------------------------

    /// All visits, removed ones too, newest edit first.
    [[nodiscard]] Result<std::vector<VisitSummary>> visits();
    /// A page of those that are asked for; windows that aren't counted yet are counted.
    [[nodiscard]] Result<VisitsPage> visits(const VisitsAsked& asked);
    [[nodiscard]] Result<VisitSummary> summary(std::string_view visit_id);
    /// Those of these visits that are there and can’t be read back: damaged on the disk.
    [[nodiscard]] Result<std::vector<std::string>> unreadable(const std::vector<std::string>& visit_ids);
    /// Counts the windows of up to `most` visits that came from an earlier version, so that they are found by their
    /// state; how many are left. A visit that can't be read counts as one to measure.
    [[nodiscard]] Result<int> count_windows(int most);

    /// The survey as it stands, `revision` set. Removed visits can be read.
    [[nodiscard]] Result<Survey> visit(std::string_view visit_id);

    /// Makes the stored visit equal to `after`: the rows that differ are written in one transaction with an edit that
    /// can be undone, the new revision and its outbox row. `what` says to a person what was done ("Sill to head,
    /// left: 1130"). Creates the visit where the id is new (revision: the survey's own, or 1). Where nothing differs,
    /// nothing is written. Returns the revision as it now stands. `after.revision` counts only where it is above the
    /// stored one (a newer document taken in).
    [[nodiscard]] Result<Revision> keep(const Survey& after, std::string_view what);

    /// The same for one window (new in its room where its id is new): touches that window's rows only. This is the
    /// way of a reading.
    [[nodiscard]] Result<Revision> keep_window(std::string_view visit_id, std::string_view room_id, const Window& after,
                                               std::string_view what);

    /// Takes the visit out of the list and puts it back; an edit like others (undo brings it back), but no new
    /// revision: the document is the same.
    [[nodiscard]] Result<Done> remove_visit(std::string_view visit_id);
    [[nodiscard]] Result<Done> bring_back(std::string_view visit_id);

    // -- The bin -----------------------------------------------------------------------------------------------

    /// Erases removed visits for good: their rows, undo, receipts, what waits to be sent, half-typed texts, and the
    /// photos and thumbnails that no other visit mentions, not even in its undo. `conflict` where one isn't removed;
    /// then none is erased. The file is written anew, so that their bytes are gone from it; where there is no room for
    /// that (`full`), the visits are gone all the same and the rest is done when the store is next opened.
    [[nodiscard]] Result<Done> erase_visits(const std::vector<std::string>& visit_ids);
    /// The windows that were taken out of a visit, alone or with their room, and that undo still knows; the last one
    /// taken out first. One that names a cloth which has gone since isn't among them.
    [[nodiscard]] Result<std::vector<RemovedWindow>> removed_windows(std::string_view visit_id);
    /// Erases those for good, as above, and with them all that could be undone or redone in this visit until now.
    [[nodiscard]] Result<Done> erase_removed_windows(std::string_view visit_id);

    // -- What was looked at ------------------------------------------------------------------------------------

    /// Kept on this device alone: no edit, and nothing is sent. Writing one again changes nothing.
    [[nodiscard]] Result<Done> mark_seen(std::string_view visit_id, const SeenMark& seen);
    [[nodiscard]] Result<std::vector<SeenMark>> seen(std::string_view visit_id);

    // -- Undo --------------------------------------------------------------------------------------------------

    /// Undoes the last edit that isn't undone, as a new edit with a revision and outbox row of its own; redo redoes
    /// the last undone one, until another edit was made. Both give the `what` of that edit, or nothing where there
    /// is none; the making of a visit isn't undone. Read the visit again afterwards.
    [[nodiscard]] Result<std::optional<std::string>> undo(std::string_view visit_id);
    [[nodiscard]] Result<std::optional<std::string>> redo(std::string_view visit_id);
    [[nodiscard]] Result<UndoOffer> undo_offer(std::string_view visit_id);
    /// Every edit, undo and redo of a visit, the oldest first.
    [[nodiscard]] Result<std::vector<EditSummary>> history(std::string_view visit_id);

    // -- Draft -------------------------------------------------------------------------------------------------

    /// Keeps the draft against the death of the program at any moment, without waiting for the disk; the next edit
    /// takes it to the disk too.
    [[nodiscard]] Result<Done> keep_draft(const Draft& draft);
    /// The last draft kept; an empty one where there is none.
    [[nodiscard]] Result<Draft> draft();

    // -- Photos ------------------------------------------------------------------------------------------------

    /// Puts a photo's bytes on the disk (location and owner data must be gone already) and gives their sha256. The
    /// photo belongs to a visit, and is sent, from the edit on that mentions it. Same bytes: same file.
    [[nodiscard]] Result<std::string> keep_photo(std::string_view bytes, std::string_view media_type);
    /// Where the photo lies. `missing` where it isn't here.
    [[nodiscard]] Result<std::filesystem::path> photo_file(std::string_view sha256) const;
    /// Its bytes. `damaged` where they no longer have that sha256.
    [[nodiscard]] Result<std::string> photo_bytes(std::string_view sha256) const;

    // -- Outbox ------------------------------------------------------------------------------------------------

    /// What waits to be sent (postponed items too, with their `until`), the oldest first, surveys before answers, those
    /// before photos.
    [[nodiscard]] Result<std::vector<OutboxItem>> pending();
    /// Every item of one visit in whatever state: its survey first, then answers, then its photos in the survey's
    /// order.
    [[nodiscard]] Result<std::vector<OutboxItem>> items_of(std::string_view visit_id);
    /// The visit's newest revision as the bytes to send. Bytes that were handed out are kept until their revision,
    /// or a later one, is confirmed.
    [[nodiscard]] Result<DocumentToSend> document_to_send(std::string_view visit_id);
    /// The workroom has it. `item.revision` is the revision that was sent: a later one goes on waiting. Its receipt
    /// is kept as given.
    [[nodiscard]] Result<Done> confirm(const OutboxItem& item, std::string_view receipt);
    /// The bytes of this revision go out now and may arrive, whatever is heard of it. On the disk when it returns.
    [[nodiscard]] Result<Done> note_going_out(std::string_view visit_id, Revision revision);
    /// Digests of the documents that the visit as it stands was made from and that others may have, the newest first:
    /// what went out, what the workroom confirmed, what was met there, a file that it came from or went as.
    [[nodiscard]] Result<std::vector<std::string>> parents(std::string_view visit_id);
    /// The bytes of one of them; nothing where only its digest is known.
    [[nodiscard]] Result<std::optional<std::string>> parent_bytes(std::string_view visit_id, std::string_view sha256);
    /// Others have this document of the visit too, from now on: it is its newest parent.
    [[nodiscard]] Result<Done> add_parent(std::string_view visit_id, std::string_view bytes);
    /// Keeps a survey that somebody else's is in, as one edit, with what was met, all or nothing: a new revision above
    /// theirs, whose newest parent theirs is, waits to be sent. Where it says what they sent and no more, it is theirs,
    /// and nothing waits.
    [[nodiscard]] Result<Revision> keep_met(const Survey& after, std::string_view what, const MetRevision& met);
    /// Puts what somebody else sent together with the visit as it stands (`merge/merge.h`), as one edit that is called
    /// `what`, and notes it as met. `base`: the bytes that both were made from; empty: those kept here of the digest
    /// `base_sha256`. `missing` where they aren’t; `conflict` where the two can’t be put together.
    [[nodiscard]] Result<Revision> bring_together(std::string_view visit_id, std::string_view base_sha256,
                                                  std::string_view base, const MetRevision& met, std::string_view what);
    /// The bytes that the visit and a document of it were both made from: the newest document that both tell, as far as
    /// it is kept here; nothing where none is.
    [[nodiscard]] Result<std::optional<std::string>> common_with(std::string_view visit_id, std::string_view bytes);
    /// How far the workroom was asked for what came to it; empty: never, or another workroom.
    [[nodiscard]] Result<std::string> asked_until();
    /// What came to the workroom, and how far it is asked now, as one. Of visits that are here the newest revision
    /// waits in `coming`, unless the visit is made from it already; others are passed over.
    /// `conflict`, and nothing is noted, where it wasn't asked from where it stands (`asked_from`; empty: from the
    /// first).
    [[nodiscard]] Result<Done> note_coming(const std::vector<ComingRevision>& came, std::string_view asked_from,
                                           std::string_view asked_until);
    /// What is to be fetched and put together; what was since isn’t among them.
    [[nodiscard]] Result<std::vector<ComingRevision>> coming();
    /// It isn’t fetched: it is met when the visit is sent.
    [[nodiscard]] Result<Done> pass_over(const ComingRevision& one);
    /// Photos that visits of which somebody else sent something mention and that aren’t here.
    [[nodiscard]] Result<std::vector<std::string>> photos_elsewhere();
    /// What was met last, or nothing.
    [[nodiscard]] Result<std::optional<MetRevision>> last_met(std::string_view visit_id);
    /// How far the workroom was asked for its questions; empty: never, or another workroom.
    [[nodiscard]] Result<std::string> questions_asked_until();
    /// The workroom is asked for all of its questions again: those on a visit that comes here from elsewhere were
    /// passed over while it wasn't.
    [[nodiscard]] Result<Done> ask_questions_anew();
    /// What was asked and answered, and how far it is asked now, as one. What isn’t about a visit here is left out, and
    /// what is here already stays as it is. `conflict` as `note_coming`.
    [[nodiscard]] Result<Done> note_questions(const std::vector<VisitQuestion>& asked,
                                              const std::vector<VisitAnswer>& answered, std::string_view asked_from,
                                              std::string_view asked_until);
    /// What was asked about a visit, rising.
    [[nodiscard]] Result<std::vector<VisitQuestion>> questions(std::string_view visit_id);
    /// Keeps an answer given here; it waits to be sent. `missing` where there is no such question.
    [[nodiscard]] Result<Done> keep_answer(const VisitAnswer& answer);
    /// An answer given here, by its id.
    [[nodiscard]] Result<VisitAnswer> answer_to_send(std::string_view id);
    /// The workroom will not take it; a later revision than the one sent goes on waiting.
    [[nodiscard]] Result<Done> refuse(const OutboxItem& item, std::string_view why);
    /// No answer, or "later": not to be tried before `until` (RFC 3339; empty: at once).
    [[nodiscard]] Result<Done> postpone(const OutboxItem& item, std::string_view until, std::string_view why);
    /// Puts a refused, postponed or confirmed item back to be sent at once.
    [[nodiscard]] Result<Done> send_again(const OutboxItem& item);
    /// The receipt of a confirmed survey revision or photo (revision 0), or nothing.
    [[nodiscard]] Result<std::optional<std::string>> receipt(ItemKind kind, std::string_view id, Revision revision);

    [[nodiscard]] Result<std::optional<Pairing>> pairing();
    [[nodiscard]] Result<Done> set_pairing(const Pairing& pairing);
    [[nodiscard]] Result<Done> clear_pairing();

    // -- Backup ------------------------------------------------------------------------------------------------

    /// Copies everything but the pairing into another folder, which `open` reads; while in use. What stood there is
    /// replaced only when the copy is whole. `busy` where a store is open there.
    [[nodiscard]] Result<Done> backup_to(const std::filesystem::path& folder);

private:
    struct Inside;
    Revision keep_whole(const Survey& after, std::string_view what);
    Revision note_met(std::string_view visit_id, const MetRevision& met);
    Result<Done> set_removed(std::string_view visit_id, bool removed);
    Result<Done> finish_erasing();
    explicit Store(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

}  // namespace truehang
