// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "adding_up.h"
#include "reading_history.h"
#include "visit_state.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;
using Stitch = thread_mark::Mark;

namespace {

Reading reading_of(const char* id, const char* station, double mm, const char* typed = "") {
    Reading reading;
    reading.id = id;
    reading.station = station;
    reading.value = Length::mm(mm);
    reading.typed = typed;
    return reading;
}

/// The left plumb line of a recess with two digits of the whole exchanged: 860 + 1130 + 148 = 2138.
Window crooked_window() {
    Window window;
    window.id = "w";
    window.shape = Shape::recess;
    window.readings = {reading_of("b", "below.left", 860), reading_of("h", "opening.height.left", 1130),
                       reading_of("a", "above.left", 148), reading_of("c", "ceiling.left", 2183)};
    return window;
}

Suspect suspect_of(const char* station, const char* slip, double was, std::optional<double> proposed, double weight) {
    Suspect suspect;
    suspect.station = station;
    suspect.slip = slip;
    suspect.was = Length::mm(was);
    if (proposed) {
        suspect.proposed = Length::mm(*proposed);
    }
    suspect.weight = weight;
    return suspect;
}

Check check_of(const Window& window, double off_by, double explained, bool adds_up) {
    Check check;
    check.network = "plumb.left";
    check.redundancy = 1;
    check.chi2 = adds_up ? 1.0 : 100.0;
    check.limit = 10.83;
    check.adds_up = adds_up;
    check.off_by = Length::mm(off_by);
    check.explained = Length::mm(explained);
    for (const Reading& reading : window.readings) {
        check.readings.push_back({reading.station, 0.0, 0.25, 0.0, 0.0, 0.0});
    }
    return check;
}

const Station& station_of(const char* word) {
    const auto& all = stations_of(Shape::recess);
    return *std::ranges::find(all, word, &Station::word);
}

void take(Bench& bench, const char* station, const char* typed) {
    WalkModel* walk = bench.notebook().walk();
    walk->jumpTo(station);
    walk->clearField();
    bench.type(typed);
    QVERIFY(walk->next());
    bench.settle();
}

/// The readings above by the keypad, the last of them closing the loop.
QString open_crooked(Bench& bench) {
    const QString window = bench.openNewWindow();
    take(bench, "below.left", "860");
    take(bench, "opening.height.left", "1130");
    take(bench, "above.left", "148");
    take(bench, "ceiling.left", "2183");
    return window;
}

/// The suspect of this station that has an offer.
QString offered_key(const ShownRows* suspects, const QString& station, const QString& offer) {
    for (int row = 0; row < suspects->count(); ++row) {
        if (suspects->value(row, "station").toString() == station &&
            suspects->value(row, "offer").toString() == offer) {
            return suspects->value(row, "suspect").toString();
        }
    }
    return {};
}

/// Half an octagon's outline of side 600: 600 (1 + sqrt 2) across, inside angles of 135 degrees (any table of
/// polygons); two digits of one of them exchanged.
QString open_half_octagon(Bench& bench) {
    const QString window = bench.openNewWindow("bay");
    take(bench, "facet.1.width", "600");
    take(bench, "facet.2.width", "600");
    take(bench, "facet.3.width", "600");
    take(bench, "corner.1.angle_deg", "153");
    take(bench, "corner.2.angle_deg", "135");
    take(bench, "bay.chord", "1449");
    return window;
}

const LengthStyle in_mm{};
const LengthStyle in_inches{LengthUnit::in, 8, '.', false};
const LengthStyle in_cm_comma{LengthUnit::cm, 8, ',', false};

}  // namespace

class AppSettlingTest : public QObject {
    Q_OBJECT

private slots:
    void aClosedLoopSaysByHowMuch();
    void aNumberStillGrowingIsNoFault();
    void slipsInPlainWords_data();
    void slipsInPlainWords();
    void howLikelyByRule_data();
    void howLikelyByRule();
    void suspectsOfOneStationStandApart();
    void anAngleSaysWhatItShouldRead();
    void aCopyOffersNoValue();
    void anAngleIsProposedInDegrees();
    void whatNothingSuspectsIsNamed();
    void proposingKeepsEveryReading();
    void anExchangeIsProposedAsOneEdit();
    void aProposalNeverLooksTaped();
    void aProposalGivesWayToTheTape();
    void aRetakeKeepsTheStage();
    void historyNewestFirst();
    void putOffStaysPutOff();
    void theClosedLoopIsSaidAtTheNextStation();
    void theLevelLineJoinsTheWalk();
};

void AppSettlingTest::aClosedLoopSaysByHowMuch() {
    const Window window = crooked_window();
    WindowFigures worked;
    const auto line = [&](const LengthStyle& style) {
        return line_under_number(worked, window, station_of("ceiling.left"), style);
    };
    QCOMPARE(line(in_mm).text, QString());
    QCOMPARE(line(in_mm).kind, QString("quiet"));
    worked.checks = {check_of(window, 2.0, 14.2, true)};
    QCOMPARE(line(in_mm).text, QString("Adds up, to 2 mm (tape and edges allow 14)"));
    QCOMPARE(line(in_mm).kind, QString("adds-up"));
    QCOMPARE(line(in_cm_comma).text, QString("Adds up, to 0,2 cm (tape and edges allow 1,4)"));
    // 1 in is 25.4 mm (international yard and pound agreement, 1959): 2 mm is nearest to 1/16, 14.2 mm to 9/16.
    QCOMPARE(line(in_inches).text, QString("Adds up, to 1/16 in (tape and edges allow 9/16)"));
    worked.checks = {check_of(window, 45.0, 14.2, false)};
    QCOMPARE(line(in_mm).text, QString("Doesn’t add up: off by 45 mm, tape and edges allow 14"));
    QCOMPARE(line(in_mm).kind, QString("differs"));
    // A reading that the loop doesn't hold is no part of it.
    QCOMPARE(line_under_number(worked, window, station_of("below.right"), in_mm).text, QString());
    // Of two loops, the one that differs is spoken of.
    Check other = check_of(window, 1.0, 14.2, true);
    worked.checks = {other, check_of(window, 45.0, 14.2, false), other};
    QCOMPARE(line(in_mm).kind, QString("differs"));
    Flag flag;
    flag.code = "does-not-add-up";
    flag.text = "A sentence. Another.";
    for (const Reading& reading : window.readings) {
        flag.stations.push_back(reading.station);
    }
    QCOMPARE(differ_words(worked, window, flag, in_mm).title, QString("These differ by 45 mm"));
    QCOMPARE(differ_words(worked, window, flag, in_mm).text,
             QString("In one go 2183, in 3 parts 2138. Tape and edges allow 14."));
    worked.checks.clear();  // nothing is known of it: the flag's own words
    QCOMPARE(differ_words(worked, window, flag, in_mm).title, QString("A sentence"));
    QCOMPARE(differ_words(worked, window, flag, in_mm).text, QString("Another."));
}

void AppSettlingTest::aNumberStillGrowingIsNoFault() {
    Bench bench;
    bench.openNewWindow();
    take(bench, "below.left", "860");
    take(bench, "opening.height.left", "1130");
    take(bench, "above.left", "148");
    WalkModel* walk = bench.notebook().walk();
    walk->jumpTo("ceiling.left");
    for (const char* typed : {"2", "21", "213"}) {
        walk->clearField();
        bench.type(typed);
        QCOMPARE(walk->line(), QString());
    }
    bench.type("8");
    QCOMPARE(walk->lineKind(), QString("adds-up"));
    bench.type("8");
    QCOMPARE(walk->lineKind(), QString("differs"));
}

void AppSettlingTest::slipsInPlainWords_data() {
    QTest::addColumn<QByteArray>("slip");
    QTest::addColumn<QString>("words");
    QTest::newRow("transposed") << QByteArray("transposed-digits") << "two digits exchanged";
    QTest::newRow("wrong digit") << QByteArray("wrong-digit") << "one digit wrong";
    QTest::newRow("missing") << QByteArray("missing-digit") << "a digit left out";
    QTest::newRow("doubled") << QByteArray("doubled-digit") << "a digit typed twice";
    QTest::newRow("unit") << QByteArray("wrong-unit") << "another unit";
    QTest::newRow("fraction") << QByteArray("wrong-fraction") << "another fraction";
    QTest::newRow("case") << QByteArray("tape-case") << "the tape’s case";
    QTest::newRow("swapped") << QByteArray("swapped") << "exchanged with Sill to head, left";
    QTest::newRow("copied") << QByteArray("copied") << "same as Head to ceiling, left";
    QTest::newRow("unexplained") << QByteArray("unexplained") << "no slip explains it";
    QTest::newRow("a later version's") << QByteArray("fell-off") << "fell off";
}

void AppSettlingTest::slipsInPlainWords() {
    QFETCH(QByteArray, slip);
    QFETCH(QString, words);
    Suspect suspect = suspect_of("below.left", slip.constData(), 148, 860, 0.4);
    if (slip == "swapped") {
        suspect.also = {{"opening.height.left", Length::mm(1130), Length::mm(148)}};
    }
    QCOMPARE(slip_in_words(suspect, crooked_window(), in_mm), words);
}

void AppSettlingTest::howLikelyByRule_data() {
    QTest::addColumn<QList<double>>("weights");
    QTest::addColumn<QStringList>("words");
    QTest::newRow("stands out") << QList<double>{0.6, 0.2} << QStringList{"likely", "possible"};
    QTest::newRow("below a half") << QList<double>{0.49, 0.1} << QStringList{"possible", "possible"};
    QTest::newRow("not three times") << QList<double>{0.6, 0.21} << QStringList{"possible", "possible"};
    QTest::newRow("alone") << QList<double>{0.8} << QStringList{"likely"};
    QTest::newRow("a tie") << QList<double>{0.3, 0.27, 0.1}
                           << QStringList{"as likely as the next", "just as likely", "possible"};
    QTest::newRow("no tie") << QList<double>{0.3, 0.269} << QStringList{"possible", "possible"};
    QTest::newRow("three tied") << QList<double>{0.3, 0.3, 0.3}
                                << QStringList{"as likely as the next", "as likely as the next", "just as likely"};
    QTest::newRow("no weight") << QList<double>{0.0} << QStringList{QString()};
}

void AppSettlingTest::howLikelyByRule() {
    QFETCH(QList<double>, weights);
    QFETCH(QStringList, words);
    std::vector<Suspect> suspects;
    for (const double weight : weights) {
        suspects.push_back(suspect_of("ceiling.left", "wrong-digit", 2183, 2138, weight));
    }
    QCOMPARE(likelihoods(suspects), words);
}

void AppSettlingTest::suspectsOfOneStationStandApart() {
    Flag flag;
    flag.suspects = {suspect_of("ceiling.left", "transposed-digits", 2183, 2138, 0.6),
                     suspect_of("ceiling.left", "wrong-digit", 2183, 2143, 0.1),
                     suspect_of("below.left", "unexplained", 860, std::nullopt, 0.05)};
    ShownRows rows(suspect_roles());
    rows.setRows(suspect_rows(flag, crooked_window(), in_mm));
    QCOMPARE(rows.count(), 3);
    QCOMPARE(rows.value(0, "says").toString(), QString("Floor to ceiling, left"));
    QCOMPARE(rows.value(0, "figure").toString(), QString("2183, perhaps 2138"));
    QCOMPARE(rows.value(0, "offer").toString(), QString("It should read 2138"));
    QCOMPARE(rows.value(0, "spoken").toString(),
             QString("Floor to ceiling, left: 2183, perhaps 2138, two digits exchanged, likely"));
    QVERIFY(rows.value(0, "isLikely").toBool());
    QCOMPARE(rows.value(1, "offerSpoken").toString(), QString("Floor to ceiling, left should read 2143"));
    QCOMPARE(rows.value(2, "figure").toString(), QString("860"));
    QCOMPARE(rows.value(2, "offer").toString(), QString());
    for (int row = 0; row < rows.count(); ++row) {
        const Suspect* found = find_suspect(flag, rows.value(row, "suspect").toString());
        QCOMPARE(found, &flag.suspects[static_cast<std::size_t>(row)]);
    }
    QVERIFY(find_suspect(flag, "another") == nullptr);
    QCOMPARE(none_of_these(flag), QString("None of these, or two slips at once: less likely"));
    flag.suspects.resize(1);
    flag.suspects[0].weight = 0.2;  // 0.8 is left: more than half, and three times as much
    QCOMPARE(none_of_these(flag), QString("None of these, or two slips at once: likely"));
    flag.suspects[0].weight = 0.45;
    QCOMPARE(none_of_these(flag), QString("None of these, or two slips at once: possible"));
    // A sixteenth isn't rounded to an eighth: 48 5/16 in.
    Flag inches;
    inches.suspects = {suspect_of("below.left", "wrong-fraction", 48.375 * 25.4, 48.3125 * 25.4, 0.3)};
    QCOMPARE(suspect_rows(inches, crooked_window(), in_inches).at(0).at(3).toString(),
             QString("48 3/8, perhaps 48 5/16"));
}

// An angle is offered in degrees; without a slip it says only what was read.
void AppSettlingTest::anAngleSaysWhatItShouldRead() {
    Flag angles;
    angles.suspects = {suspect_of("corner.1.angle_deg", "unexplained", 0, std::nullopt, 0.3),
                       suspect_of("corner.1.angle_deg", "supplement", 0, std::nullopt, 0.3)};
    angles.suspects[0].angle = angles.suspects[1].angle = Angle::degrees(44.5);
    angles.suspects[1].proposed_angle = Angle::degrees(135.5);
    const auto told = suspect_rows(angles, crooked_window(), in_mm);
    QCOMPARE(told.at(0).at(3).toString(), QString("44.5°"));
    QCOMPARE(told.at(0).at(7).toString(), QString());
    QCOMPARE(told.at(1).at(3).toString(), QString("44.5°, perhaps 135.5°"));
    QCOMPARE(told.at(1).at(4).toString(), QString("read off the other side of the bevel"));
    QCOMPARE(told.at(1).at(7).toString(), QString("It should read 135.5°"));
}

// A value that was copied tells nothing of what should stand there: what the others expect is no reading.
void AppSettlingTest::aCopyOffersNoValue() {
    Flag flag;
    flag.suspects = {suspect_of("opening.height.left", "copied", 860, 1130, 0.4)};
    const auto told = suspect_rows(flag, crooked_window(), in_mm);
    QCOMPARE(told.at(0).at(3).toString(), QString("860"));
    QCOMPARE(told.at(0).at(4).toString(), QString("same as Floor to sill, left"));
    QCOMPARE(told.at(0).at(7).toString(), QString());
    QVERIFY(proposed_readings(crooked_window(), flag.suspects[0], "", [] { return std::string("p"); }).empty());
}

void AppSettlingTest::anAngleIsProposedInDegrees() {
    Bench bench;
    const QString window = open_half_octagon(bench);
    WalkModel* walk = bench.notebook().walk();
    QVERIFY(walk->differs());
    QCOMPARE(walk->againStation(), QString("corner.1.angle_deg"));
    QVERIFY2(walk->againWhy().contains("the bevel says whether it reads 135°"), qPrintable(walk->againWhy()));
    const QString key = offered_key(walk->suspects(), "corner.1.angle_deg", "It should read 135°");
    QVERIFY(!key.isEmpty());
    walk->propose(key);
    bench.settle();
    QVERIFY(!walk->differs());
    bench.reopen();
    bench.settle();
    walk = bench.notebook().walk();
    const auto& readings = bench.notebook().open()->window(window)->readings;
    QCOMPARE(readings.size(), std::size_t{7});
    QCOMPARE(readings[3].angle->degrees(), 153.0);
    QCOMPARE(readings[6].angle->degrees(), 135.0);
    QVERIFY(!readings[6].value.has_value() && readings[6].how->is(How::proposed));
    QCOMPARE(readings[6].replaces, readings[3].id);
    QVERIFY(bench.notebook().visit()->undoSays().endsWith(": 135°, proposed"));
    QCOMPARE(value(walk->stations(), "corner.1.angle_deg", "figure").toString(), QString("135°, proposed"));
    walk->jumpTo("corner.1.angle_deg");
    QCOMPARE(walk->typed(), QString("135"));
    QCOMPARE(walk->lineKind(), QString("proposed"));
    QCOMPARE(walk->history()->value(0, "figure").toString(), QString("135°"));
    QCOMPARE(walk->history()->value(0, "how").toString(), QString("proposed"));
    QCOMPARE(walk->history()->value(1, "figure").toString(), QString("153°"));
    // The bevel has the last word.
    take(bench, "corner.1.angle_deg", "135.5");
    const auto& again = bench.notebook().open()->window(window)->readings.back();
    QVERIFY(!again.how.has_value());
    QCOMPARE(again.typed, std::string("135.5°"));
}

void AppSettlingTest::whatNothingSuspectsIsNamed() {
    Flag flag;
    flag.stations = {"below.left", "ceiling.left"};
    const auto rows = suspect_rows(flag, crooked_window(), in_mm);
    QCOMPARE(rows.size(), 2);
    QCOMPARE(rows.at(1).at(2).toString(), QString("Floor to ceiling, left"));
    QCOMPARE(rows.at(1).at(3).toString(), QString("2183"));
    QCOMPARE(none_of_these(flag), QString());
}

void AppSettlingTest::proposingKeepsEveryReading() {
    Bench bench;
    const QString window = open_crooked(bench);
    WalkModel* walk = bench.notebook().walk();
    QVERIFY(walk->differs());
    QCOMPARE(walk->differsTitle(), QString("These differ by 45 mm"));
    QVERIFY(walk->differsText().startsWith("In one go 2183, in 3 parts 2138."));
    const QString station = walk->station();
    const QString key = offered_key(walk->suspects(), "ceiling.left", "It should read 2138");
    QVERIFY(!key.isEmpty());
    walk->propose("no such suspect");
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->readings.size(), std::size_t{4});
    walk->propose(key);
    bench.settle();
    QVERIFY(!walk->differs());
    QCOMPARE(walk->station(), station);  // nothing moves
    QVERIFY(walk->line().contains("proposed"));
    bench.reopen();
    bench.settle();
    walk = bench.notebook().walk();
    const auto& readings = bench.notebook().open()->window(window)->readings;
    QCOMPARE(readings.size(), std::size_t{5});
    QCOMPARE(readings[3].value->mm(), 2183.0);
    QCOMPARE(readings[3].typed, std::string("2183 mm"));
    QCOMPARE(readings[4].value->mm(), 2138.0);
    QVERIFY(readings[4].how->is(How::proposed));
    QCOMPARE(readings[4].replaces, readings[3].id);
    QCOMPARE(readings[4].typed, std::string());  // nobody typed it
    QVERIFY(!readings[4].taken_at.empty());
    QVERIFY(walk->canUndo());
    QCOMPARE(bench.notebook().visit()->undoSays(), QString("Floor to ceiling, left: 2138, proposed"));
    walk->undo();
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->readings.size(), std::size_t{4});
    QVERIFY(walk->differs());
    walk->redo();
    bench.settle();
    QVERIFY(!walk->differs());
}

void AppSettlingTest::anExchangeIsProposedAsOneEdit() {
    const Window window = crooked_window();
    Suspect suspect = suspect_of("below.left", "swapped", 860, 148, 0.4);
    suspect.also = {{"above.left", Length::mm(148), Length::mm(860)}, {"below.right", Length::mm(1), std::nullopt}};
    int ids = 0;
    const auto readings =
        proposed_readings(window, suspect, "2026-03-14T10:00:00Z", [&] { return "p" + std::to_string(++ids); });
    QCOMPARE(readings.size(), std::size_t{2});
    QCOMPARE(readings[0].replaces, std::string("b"));
    QCOMPARE(readings[1].replaces, std::string("a"));
    QCOMPARE(readings[1].value->mm(), 860.0);
    QVERIFY(readings[0].id != readings[1].id);
    QVERIFY(is_proposed(readings[0]) && is_proposed(readings[1]));
    suspect.proposed.reset();
    QVERIFY(proposed_readings(window, suspect, "", [] { return std::string("p"); }).empty());
}

void AppSettlingTest::aProposalNeverLooksTaped() {
    Bench bench;
    const QString window = open_crooked(bench);
    WalkModel* walk = bench.notebook().walk();
    walk->propose(offered_key(walk->suspects(), "ceiling.left", "It should read 2138"));
    bench.settle();
    const auto told = [&](const char* role) { return value(walk->stations(), "ceiling.left", role); };
    QCOMPARE(told("figure").toString(), QString("2138 mm, proposed"));
    QVERIFY(told("spoken").toString().contains("proposed"));
    QVERIFY(told("isProposed").toBool());
    QCOMPARE(told("mark").value<Stitch>(), Stitch::UnderWay);
    walk->jumpTo("ceiling.left");
    QCOMPARE(walk->typed(), QString("2138"));
    QVERIFY(walk->shownIsKept());
    QCOMPARE(walk->lineKind(), QString("proposed"));
    QVERIFY(walk->hasEarlier());
    QCOMPARE(walk->history()->value(0, "how").toString(), QString("proposed"));
    // It isn't taken for measured where the visit's state is told either.
    Window other = *bench.notebook().open()->window(window);
    const QString with_proposal = standing_of(other).words;
    other.readings.pop_back();
    other.readings.push_back(reading_of("m", "ceiling.left", 2138));
    other.readings.back().replaces = other.readings[3].id;
    QVERIFY(standing_of(other).words != with_proposal);
}

void AppSettlingTest::aProposalGivesWayToTheTape() {
    Bench bench;
    const QString window = open_crooked(bench);
    WalkModel* walk = bench.notebook().walk();
    walk->propose(offered_key(walk->suspects(), "ceiling.left", "It should read 2138"));
    bench.settle();
    // The walk leads there before it ends: with all others taken, it is the one that is left.
    for (int stations = walk->count(); stations > 0 && walk->station() != "ceiling.left"; --stations) {
        walk->cantReach("later");
        bench.settle();
    }
    QCOMPARE(walk->station(), QString("ceiling.left"));
    bench.type("2138");
    QVERIFY(walk->next());
    bench.settle();
    const auto& readings = bench.notebook().open()->window(window)->readings;
    QCOMPARE(readings.size(), std::size_t{6});
    QVERIFY(!readings[5].how.has_value());
    QCOMPARE(readings[5].replaces, readings[4].id);
    QCOMPARE(value(walk->stations(), "ceiling.left", "figure").toString(), QString("2138 mm"));
    QCOMPARE(value(walk->stations(), "ceiling.left", "mark").value<Stitch>(), Stitch::Kept);
}

void AppSettlingTest::aRetakeKeepsTheStage() {
    Window window = crooked_window();
    window.readings[3].stage = Stage::fixed;
    const auto readings = proposed_readings(window, suspect_of("ceiling.left", "transposed-digits", 2183, 2138, 0.6),
                                            "", [] { return std::string("p"); });
    QVERIFY(readings.at(0).stage->is(Stage::fixed));
    Bench bench;
    const QString id = bench.openNewWindow();
    take(bench, "ceiling.left", "2183");
    bench.notebook().open()->editWindow("fixed", id, [](Window& one) {
        one.readings[0].stage = Stage::fixed;
        return true;
    });
    take(bench, "ceiling.left", "2138");
    const auto& kept = bench.notebook().open()->window(id)->readings;
    QCOMPARE(kept[1].replaces, kept[0].id);
    QVERIFY(kept[1].stage->is(Stage::fixed));
}

void AppSettlingTest::historyNewestFirst() {
    Window window = crooked_window();
    window.readings[3].taken_at = "2026-03-14T10:32:05+00:00";
    window.readings[3].typed = "2183";
    Reading proposal = reading_of("p", "ceiling.left", 2138);
    proposal.how = How::proposed;
    proposal.replaces = "c";
    proposal.taken_at = "2026-03-14T10:33:00+00:00";
    Reading again = reading_of("n", "ceiling.left", 2139, "2139 mm");
    again.replaces = "p";
    again.taken_at = "2026-03-14T12:40:00+02:00";  // 10:40 by the clock of the others
    Reading guess = reading_of("g", "ceiling.left", 2100);
    guess.how = How::estimated;
    guess.u = Length::mm(20);
    guess.taken_at = "2026-03-14T09:00:00+00:00";
    window.readings.insert(window.readings.begin(), again);
    window.readings.push_back(proposal);
    window.readings.push_back(guess);
    ShownRows rows(history_roles());
    rows.setRows(history_rows(window, "ceiling.left", in_mm));
    QCOMPARE(rows.count(), 4);
    const auto told = [&](int row, const char* role) { return rows.value(row, role).toString(); };
    QCOMPARE(told(0, "figure"), QString("2139 mm"));
    QCOMPARE(told(0, "when"), QString("14 March 2026, 12:40"));
    QCOMPARE(told(0, "how"), QString("measured"));
    QCOMPARE(told(0, "standing"), QString("counts"));
    QVERIFY(rows.value(0, "counts").toBool());
    QCOMPARE(told(1, "how"), QString("proposed"));
    QCOMPARE(told(1, "standing"), QString("replaced"));
    QCOMPARE(told(2, "figure"), QString("2183 mm"));
    QCOMPARE(told(2, "standing"), QString("replaced"));
    // ± is twice the standard uncertainty.
    QCOMPARE(told(3, "how"), QString("estimated, ± 40"));
    QCOMPARE(told(3, "standing"), QString("stands beside the one that counts"));
}

void AppSettlingTest::putOffStaysPutOff() {
    Bench bench;
    open_crooked(bench);
    WalkModel* walk = bench.notebook().walk();
    QVERIFY(walk->differs());
    walk->later();
    QVERIFY(!walk->differs());
    QVERIFY(walk->hasPutOff());
    take(bench, "wall.left", "300");  // another reading: the walk isn't held up again
    QVERIFY(!walk->differs());
    walk->lookAgain();
    QVERIFY(walk->differs());
    QVERIFY(!walk->hasPutOff());
    walk->takeAgain();
    QCOMPARE(walk->typed(), QString());
    const QString again = walk->station();
    take(bench, "ceiling.left", "2183");  // taken again and the same: it is said again
    QVERIFY(walk->differs());
    QVERIFY(!again.isEmpty());
}

void AppSettlingTest::theClosedLoopIsSaidAtTheNextStation() {
    Bench bench;
    bench.openNewWindow();
    take(bench, "below.left", "860");
    take(bench, "opening.height.left", "1130");
    take(bench, "above.left", "148");
    QVERIFY(bench.notebook().walk()->line().isEmpty());
    take(bench, "ceiling.left", "2140");
    WalkModel* walk = bench.notebook().walk();
    QVERIFY(walk->station() != "ceiling.left");
    QVERIFY2(walk->line().startsWith("Floor to ceiling, left: adds up, to 2 mm"), qPrintable(walk->line()));
    bench.type("1");
    QCOMPARE(walk->line(), QString());
    walk->rubOut();
    walk->jumpTo("ceiling.left");
    QVERIFY2(walk->line().startsWith("Adds up, to 2 mm (tape and edges allow"), qPrintable(walk->line()));
}

void AppSettlingTest::theLevelLineJoinsTheWalk() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    const int asked = walk->count();
    QVERIFY(walk->canTakeLevel());
    walk->takeLevel();
    QCOMPARE(walk->station(), QString("level.left"));
    QCOMPARE(walk->count(), asked + 3);
    bench.type("10");
    // Something else changes meanwhile: the person stays where they are.
    bench.notebook().open()->editWindow("renamed", window, [](Window& one) {
        one.name = "North window";
        return true;
    });
    bench.settle();
    QCOMPARE(walk->station(), QString("level.left"));
    QCOMPARE(walk->typed(), QString("10"));
    bench.reopen();
    walk = bench.notebook().walk();
    QCOMPARE(walk->station(), QString("level.left"));
    QCOMPARE(walk->typed(), QString("10"));
    bench.type("00");
    QVERIFY(walk->next());
    QCOMPARE(walk->station(), QString("level.centre"));
    take(bench, "level.centre", "1003");
    QCOMPARE(walk->station(), QString("level.right"));
    take(bench, "level.right", "1007");
    QVERIFY(!walk->canTakeLevel());
    QCOMPARE(walk->levelWhy(), QString());
}

QTEST_GUILESS_MAIN(AppSettlingTest)
#include "app_settling_test.moc"
