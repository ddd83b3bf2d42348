// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "shown_rows.h"
#include "survey/stations.h"
#include "units/length_text.h"

#include <QObject>
#include <QSet>
#include <optional>
#include <vector>

namespace truehang {

class OpenVisit;
class Settings;

/// The walk through one window, station by station. Next moves on at once; a station's stitch fills when its reading is
/// on the disk; a reading that couldn't be written leads back to its station with the text and the reason.
class WalkModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowId READ windowId NOTIFY windowChanged)
    /// "Parlour, south window"
    Q_PROPERTY(QString title READ title NOTIFY windowChanged)

    /// The station's word ("opening.height.left") and what a person reads ("Sill to head, left"). Empty at the end.
    Q_PROPERTY(QString station READ station NOTIFY changed)
    Q_PROPERTY(QString says READ says NOTIFY changed)
    /// Between what it runs, where its words could be taken for the glass; else empty.
    Q_PROPERTY(QString between READ between NOTIFY changed)
    /// Place in the walk, from 0; equal to `count` once past the last.
    Q_PROPERTY(int index READ index NOTIFY changed)
    Q_PROPERTY(int count READ count NOTIFY changed)
    /// "6 of 12"
    Q_PROPERTY(QString position READ position NOTIFY changed)
    /// Past the last station: nothing is typed here, what comes next is the figures.
    Q_PROPERTY(bool atEnd READ atEnd NOTIFY changed)

    /// The number being typed, as it stands in the field: a key shows once it is kept against the death of the program.
    /// A station that has a reading shows it as it was typed, and the first digit starts a new one.
    Q_PROPERTY(QString typed READ shownText NOTIFY changed)
    /// True: what stands in the field is the kept reading, nothing new.
    Q_PROPERTY(bool shownIsKept READ shownIsKept NOTIFY changed)
    /// `mm`, `cm`, `m`, `in`, or `°` for an angle.
    Q_PROPERTY(QString unit READ unit NOTIFY changed)
    /// The decimal mark on the keypad, "." or ",".
    Q_PROPERTY(QString decimalMark READ decimalMark CONSTANT)
    /// The keypad's row of fractions. Roles: `key` ("3/8"), `says` ("⅜").
    Q_PROPERTY(truehang::ShownRows* fractions READ fractions CONSTANT)

    /// The line under the number: how it fits, or why it can't be read. Empty: nothing to say.
    Q_PROPERTY(QString line READ line NOTIFY changed)
    /// `quiet`, `adds-up`, `differs`, `proposed` or `fault`.
    Q_PROPERTY(QString lineKind READ lineKind NOTIFY changed)
    /// Why a reading isn't kept; empty where all are. It names the station.
    Q_PROPERTY(QString notKept READ notKept NOTIFY changed)

    /// Roles: `station` (key), `says`, `mark` (ThreadMark), `figure` (as typed, with unit; a proposed value says so),
    /// `reason` (why it wasn't taken), `current`, `asks` (a flag names it), `isProposed`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* stations READ stations CONSTANT)
    /// What can be measured beside what the walk asks for. Roles: `station` (key), `says`.
    Q_PROPERTY(truehang::ShownRows* more READ more CONSTANT)
    /// Why a station can't be reached. Roles: `word` (key), `says`.
    Q_PROPERTY(truehang::ShownRows* reasons READ reasons CONSTANT)
    /// Ways to go on without a tape: the same as another of the stretch, or what is typed as an estimate (word, says).
    Q_PROPERTY(truehang::ShownRows* withoutTape READ withoutTape CONSTANT)
    /// The reason given at this station, or empty.
    Q_PROPERTY(QString reason READ reason NOTIFY changed)
    /// A caution for the hands at this station ("both feet on the floor first"); empty mostly.
    Q_PROPERTY(QString caution READ caution NOTIFY changed)

    /// Readings kept so far don't add up, and the person hasn't put it off: show the panel.
    Q_PROPERTY(bool differs READ differs NOTIFY changed)
    /// "These differ by 45 mm" and the sentence below it.
    Q_PROPERTY(QString differsTitle READ differsTitle NOTIFY changed)
    Q_PROPERTY(QString differsText READ differsText NOTIFY changed)
    /// The readings it may be. Roles: `suspect` (key), `station`, `says`, `figure` ("2183, perhaps 2138"), `slip`
    /// ("two digits exchanged"), `likely`, `isLikely`, `offer` ("It should read 2138", empty where nothing is),
    /// `offerSpoken`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* suspects READ suspects CONSTANT)
    /// "None of these, or two slips at once: possible"; empty where nothing is suspected.
    Q_PROPERTY(QString noneOfThese READ noneOfThese NOTIFY changed)
    /// Readings differ, and the person has put it off.
    Q_PROPERTY(bool hasPutOff READ hasPutOff NOTIFY changed)
    /// The one reading that would settle it, and the action's words ("Measure floor to ceiling again").
    Q_PROPERTY(QString againStation READ againStation NOTIFY changed)
    Q_PROPERTY(QString againSays READ againSays NOTIFY changed)
    /// Why that reading, where it says more than the differing readings themselves; empty else.
    Q_PROPERTY(QString againWhy READ againWhy NOTIFY changed)

    /// Where nothing differs: the reading worth taking next with the action's words and why, or why none is.
    Q_PROPERTY(QString nextStation READ nextStation NOTIFY changed)
    Q_PROPERTY(QString nextSays READ nextSays NOTIFY changed)
    Q_PROPERTY(QString nextWhy READ nextWhy NOTIFY changed)
    Q_PROPERTY(QString nothingMore READ nothingMore NOTIFY changed)

    /// Every reading of this station, newest first. Roles: `reading` (key), `figure`, `when`, `how`, `standing`
    /// ("counts", "replaced"), `counts`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* history READ history CONSTANT)
    /// "Measure floor to ceiling again", of this station.
    Q_PROPERTY(QString hereAgainSays READ hereAgainSays NOTIFY changed)
    /// Two readings of the station stand, and a person is to say which one counts.
    Q_PROPERTY(bool hereTwice READ hereTwice NOTIFY changed)
    /// There are readings of this station beside the one that counts.
    Q_PROPERTY(bool hasEarlier READ hasEarlier NOTIFY changed)

    /// Why a level line would pay; empty where it wouldn't, or stands.
    Q_PROPERTY(QString levelWhy READ levelWhy NOTIFY changed)
    /// A level line can be taken here, and none has been.
    Q_PROPERTY(bool canTakeLevel READ canTakeLevel NOTIFY changed)

    Q_PROPERTY(bool canBack READ canBack NOTIFY changed)
    Q_PROPERTY(bool canUndo READ canUndo NOTIFY changed)
    Q_PROPERTY(bool canRedo READ canRedo NOTIFY changed)

public:
    WalkModel(OpenVisit& open, const Settings& settings, QObject* parent = nullptr);

    [[nodiscard]] QString windowId() const;
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString station() const;
    [[nodiscard]] QString says() const;
    [[nodiscard]] QString between() const;
    [[nodiscard]] int index() const;
    [[nodiscard]] int count() const;
    [[nodiscard]] QString position() const;
    [[nodiscard]] bool atEnd() const;
    [[nodiscard]] QString typed() const;
    [[nodiscard]] QString shownText() const;
    [[nodiscard]] bool shownIsKept() const;
    [[nodiscard]] QString unit() const;
    [[nodiscard]] QString decimalMark() const;
    [[nodiscard]] ShownRows* fractions() { return &fractions_; }
    [[nodiscard]] QString line() const;
    [[nodiscard]] QString lineKind() const;
    [[nodiscard]] QString notKept() const;
    [[nodiscard]] ShownRows* stations() { return &stations_; }
    [[nodiscard]] ShownRows* more() { return &more_; }
    [[nodiscard]] ShownRows* reasons() { return &reasons_; }
    [[nodiscard]] ShownRows* withoutTape() { return &without_tape_; }
    [[nodiscard]] QString reason() const;
    [[nodiscard]] QString caution() const;
    [[nodiscard]] bool differs() const;
    [[nodiscard]] QString differsTitle() const;
    [[nodiscard]] QString differsText() const;
    [[nodiscard]] ShownRows* suspects() { return &suspects_; }
    [[nodiscard]] QString againStation() const;
    [[nodiscard]] bool hasPutOff() const;
    [[nodiscard]] QString noneOfThese() const;
    [[nodiscard]] QString againSays() const;
    [[nodiscard]] QString againWhy() const;
    [[nodiscard]] QString nextStation() const;
    [[nodiscard]] QString nextSays() const;
    [[nodiscard]] QString nextWhy() const;
    [[nodiscard]] QString nothingMore() const;
    [[nodiscard]] ShownRows* history() { return &history_; }
    [[nodiscard]] QString hereAgainSays() const;
    [[nodiscard]] bool hereTwice() const;
    [[nodiscard]] bool hasEarlier() const;
    [[nodiscard]] QString levelWhy() const;
    [[nodiscard]] bool canTakeLevel() const;
    [[nodiscard]] bool canBack() const;
    [[nodiscard]] bool canUndo() const;
    [[nodiscard]] bool canRedo() const;

    /// One key of the keypad: a digit, "." or ",", "/", " ", "'", "\"", a letter of a unit (as a measuring device sends
    /// it), or a fraction ("3/8", set off by a space).
    Q_INVOKABLE void pressKey(const QString& key);
    Q_INVOKABLE void rubOut();
    Q_INVOKABLE void clearField();
    /// mm, cm, m, in, and round again: what is typed from here on is read in it, until it is changed again.
    Q_INVOKABLE void cycleUnit();
    /// Keeps what is typed and moves on; an empty field just moves on. False where it can't be read: the text stays and
    /// `line` says why.
    Q_INVOKABLE bool next();
    Q_INVOKABLE void back();
    Q_INVOKABLE void jumpTo(const QString& station);
    /// Keeps why this station isn't taken (a word of `reasons` or the person's own words) and moves on.
    Q_INVOKABLE void cantReach(const QString& reason);
    /// Keeps a way of `withoutTape` (its word) as this station's reading, copied or estimated, and moves on.
    Q_INVOKABLE void goOnWithout(const QString& way);
    /// Takes `againStation` (or, where nothing is asked, this station) again: goes there with an empty field.
    Q_INVOKABLE void takeAgain();
    /// Takes this station again: empties its field.
    Q_INVOKABLE void takeHereAgain();
    /// Puts off the differing readings: the panel closes until one of them is taken again.
    Q_INVOKABLE void later();
    /// Shows again what was put off.
    Q_INVOKABLE void lookAgain();
    /// Puts the correction of a suspect (a key of `suspects`) in place as a proposed reading, in one edit with those
    /// that go with it; the readings that were typed stay in the history. Nothing moves.
    Q_INVOKABLE void propose(const QString& suspect);
    /// Goes to the reading worth taking next, with an empty field.
    Q_INVOKABLE void takeNext();
    /// Goes to the first station of the level line that isn't taken; the three join the walk.
    Q_INVOKABLE void takeLevel();
    Q_INVOKABLE void undo();
    Q_INVOKABLE void redo();

    /// Opens the walk at the first station without a reading, or at `station` with the draft kept for it.
    void openWindow(const QString& windowId, const QString& station = {});

signals:
    void windowChanged();
    /// Anything shown at the station changed.
    void changed();
    /// The person stands at another station.
    void moved();
    /// A reading was typed and is being kept: its figure, with unit.
    void taken(const QString& figure);
    /// A reading of `station` is on the disk: its stitch may be sewn.
    void kept(const QString& station);

private:
    void show();
    void showStations();
    void showFlags();
    void showHistory();
    void showLine();
    void showWithoutTape();
    /// What is typed anew, as a reading; nothing where nothing is, or it can't be read.
    [[nodiscard]] std::optional<Reading> typedAnew() const;
    void joinWalk(const QString& station);
    void walkAnew();
    void goTakeAgain(const QString& station);
    [[nodiscard]] QString measureWords(const QString& station) const;
    void standAt(int index);
    void typeOver(const QString& text);
    void weigh();
    void keepReading(Reading reading);
    void readingKept(const QString& windowId, const QString& station, const QString& typed, const QString& fault);
    void moveOn();
    /// What is typed, as this station's reading without an id: a length, or degrees at an angle.
    [[nodiscard]] Result<Reading> typedReading() const;
    [[nodiscard]] bool atAngle() const;
    [[nodiscard]] bool isTaken(const Station& station) const;
    [[nodiscard]] const Station* here() const;
    [[nodiscard]] QString fieldTextOf(const Reading& reading) const;
    [[nodiscard]] const Window* window() const;
    [[nodiscard]] const Reading* keptReading(std::string_view station) const;
    /// What is kept there was planned, and the pole is up now: it is asked for anew.
    [[nodiscard]] bool isStillPlanned(std::string_view station) const;
    [[nodiscard]] QString saysOf(const QString& station) const;
    [[nodiscard]] QString placeOf(const QString& station) const;
    void fill(const QString& text);
    void showOnceKept(const QString& before);

    OpenVisit& open_;
    const Settings& settings_;
    QString window_id_;
    std::vector<Station> walk_;
    int index_ = 0;
    QString typed_;
    QString shown_text_;  // what of it is kept, while keys are on their way
    int keys_on_their_way_ = 0;
    int field_ = 0;  // counts fields, so that a key of an earlier one isn't taken for this one's
    bool shown_is_kept_ = false;
    LengthUnit unit_ = LengthUnit::mm;
    QString line_;
    QString line_kind_ = QStringLiteral("quiet");
    QString not_kept_;
    QSet<QString> being_kept_;  // stations whose reading is on its way to the disk
    bool take_again_ = false;   // an empty field at a station that has a reading
    QSet<QString> put_off_;     // texts of flags that the person put off
    QSet<QString> joined_;      // stations that the walk doesn't ask for by itself
    QString closed_;            // what the reading kept last closed
    std::optional<Flag> differ_;
    QString again_station_;
    QSet<QString> flagged_;
    ShownRows fractions_;
    ShownRows stations_;
    ShownRows more_{{"station", "says"}};
    ShownRows reasons_;
    ShownRows without_tape_{{"word", "says"}};
    ShownRows suspects_;
    ShownRows history_;
};

}  // namespace truehang
