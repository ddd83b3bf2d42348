// SPDX-License-Identifier: Apache-2.0
#include "../app/fake_workroom.h"
#include "scene.h"

#include "workroom_rules.h"
#include "writing.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// The house rules of a visit: seen, changed, refused out of range, taken from the workroom when it gave others.
class RulesTest : public QObject {
    Q_OBJECT

private:
    static constexpr const char* theirs =
        R"({"format": "truehang.rules/1", "name": "Harbour workroom", "version": 3, "date": "2026-03-14",
            "rules": {"hem_mm": 160, "edge_u_mm": 1, "head_mm": {"tab": 15}}})";

    static void openRules(Scene& scene) {
        scene.openWindow("Pilot house", {});
        scene.notebook().open()->edit("no rules of its own", [](Survey& survey) {
            survey.rules = {};
            return true;
        });
        scene.notebook().setScreen("rules");
        scene.settle();
    }

    /// A workroom that pairs with whoever asks and gives these rules.
    static FakeWorkroom::Answers gives(const QByteArray& rules) {
        return [rules](QTcpSocket& socket, const Heard& heard) {
            if (heard.path == "/pair") {
                FakeWorkroom::answer(socket, 201, R"({"token": "token-1", "workroom": "Harbour workroom"})",
                                     "Content-Type: application/json\r\n");
            } else if (heard.path == "/rules") {
                FakeWorkroom::answer(socket, 200, rules, "Content-Type: application/json\r\n");
            } else {
                FakeWorkroom::answer(socket, 503, "{}");
            }
        };
    }

    static bool pairWith(Scene& scene, FakeWorkroom& workroom) {
        scene.notebook().send()->pair(workroom.address(), "1234-5678");
        const bool came = QTest::qWaitFor([&] { return !scene.notebook().rules()->workroomSays().isEmpty(); }, 20'000);
        scene.settle();
        return came;
    }

    static void write(Scene& scene, const QString& field, const QString& typed) {
        scene.find(field)->forceActiveFocus();
        scene.key(Qt::Key_A, "a", Qt::ControlModifier);
        scene.typeOnKeyboard(typed);
        scene.key(Qt::Key_Return);
    }

    static QString faultSaid(Scene& scene) {
        return value(scene.notebook().rules()->form(), "value", "fault").toString();
    }

    static const HouseRuleEntries& held(Scene& scene) { return scene.notebook().open()->survey().rules; }

private slots:
    void theyAreSeenInPlainWords_data() { Scene::sizesAndLooks(); }
    void theyAreSeenInPlainWords() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openRules(scene);
        const QString hem = "Cloth taken by the hem, in all: 150 mm";  // the trade rules, section 1
        QVERIFY2(scene.find(hem), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.find("Corner weights: one each this many widths: " +
                           QString(QLatin1String(decimal_mark() == ',' ? "0,5" : "0.5")) + " widths"));
        scene.grabDressed("rules");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach(hem));
        scene.grabDressed("rule");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.find("From 0 to 100000 mm."), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.touch("Back to the rules"));
        QCOMPARE(scene.notebook().rules()->edited(), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // Derived: a hem 10 deeper makes each cut drop 10 longer, where no repeat takes it up.
    void oneIsChangedAndTheFiguresFollow() {
        Scene scene;
        openRules(scene);
        QVERIFY(scene.reach("Cloth taken by the hem, in all: 150 mm"));
        const QString field = "Cloth taken by the hem, in all";
        write(scene, field, "-3");
        QCOMPARE(faultSaid(scene), QString("-3 lies outside its range: from 0, up to 100000."));
        QVERIFY(scene.find(faultSaid(scene)));
        QVERIFY(!held(scene).numbers.contains("hem_mm"));
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        write(scene, field, "160");
        QCOMPARE(faultSaid(scene), QString());
        QCOMPARE(held(scene).numbers.at("hem_mm"), 160.0);
        QVERIFY(QString::fromStdString(held(scene).name).endsWith("changed for this visit"));
        QVERIFY(!held(scene).version);
        QVERIFY(scene.touch("Back to the rules"));
        QVERIFY(scene.find("Cloth taken by the hem, in all: 160 mm"));
        QVERIFY(scene.touch("undo"));
        QVERIFY(!held(scene).numbers.contains("hem_mm"));
        QVERIFY(scene.find("Cloth taken by the hem, in all: 150 mm"));
        // A share lies between none and all.
        const QString share = "A pelmet’s depth as a share of the curtain’s length";
        QVERIFY(scene.reach(share + ": 0.1667 of the length"));
        write(scene, share, "1.5");
        QCOMPARE(faultSaid(scene), QString("1.5 lies outside its range: from 0, up to 1."));
        QVERIFY(!held(scene).numbers.contains("pelmet_share"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void theWorkroomsAreFetchedAndTakenOnlyWhenAsked() {
        FakeWorkroom workroom(gives(theirs));
        Scene scene;
        openRules(scene);
        const std::string before = held(scene).name;
        QVERIFY(pairWith(scene, workroom));
        QVERIFY(std::ranges::any_of(workroom.heard(), [](const Heard& heard) {
            return heard.path == "/rules" && heard.head.contains("Bearer token-1");
        }));
        QCOMPARE(held(scene).name, before);  // it keeps what it was worked by
        QVERIFY(scene.notebook().rules()->workroomSays().contains("Harbour workroom, version 3, 14 March 2026"));
        const auto edge = held(scene).numbers.find("edge_u_mm");
        const auto own = edge == held(scene).numbers.end() ? std::nullopt : std::optional(edge->second);
        scene.grabDressed("rules-newer");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.touch("Take the workroom’s rules"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(held(scene).numbers.at("hem_mm"), 160.0);
        QCOMPARE(held(scene).head_mm.at("tab"), 15.0);
        QCOMPARE(held(scene).version, std::optional(3LL));
        const auto after = held(scene).numbers.find("edge_u_mm");
        QCOMPARE(after == held(scene).numbers.end() ? std::nullopt : std::optional(after->second), own);
        QVERIFY(!scene.notebook().rules()->canTake());
        QCOMPARE(scene.notebook().rules()->workedBy(), QString("Harbour workroom, version 3, 14 March 2026"));
        QVERIFY(scene.touch("undo"));
        QCOMPARE(held(scene).name, before);
        scene.notebook().newVisit();  // the next visit begins with them
        scene.settle();
        QCOMPARE(held(scene).version, std::optional(3LL));
        const WorkroomRules kept(scene.bench().folder() + "/house-rules.json");  // and they outlive the program
        QVERIFY(kept.held() && kept.held()->version == 3);
    }

    void rulesThatCantBeUsedLeaveTheEarlierOnes() {
        const QByteArray wrong = R"({"format": "truehang.rules/1", "name": "X", "rules": {"tab_gap_mm": 0}})";
        FakeWorkroom workroom(gives(wrong));
        Scene scene;
        openRules(scene);
        QVERIFY(pairWith(scene, workroom));
        const QString says = scene.notebook().rules()->workroomSays();
        QVERIFY2(says.contains("“Largest spacing of tabs, centre to centre” must be a number of more than 0 mm, up to "
                               "100000 mm."),
                 qPrintable(says));
        QVERIFY2(!says.contains('/') && !says.contains('_'), qPrintable(says));
        QVERIFY(!scene.notebook().rules()->canTake());
        scene.grabDressed("rules-wrong");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    RulesTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "rules_test.moc"
