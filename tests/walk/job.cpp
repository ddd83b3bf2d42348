// SPDX-License-Identifier: Apache-2.0
#include "job.h"

#include "document/document.h"
#include "print.h"
#include "survey/stations.h"

#include <QElapsedTimer>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <cstdio>
#include <stdexcept>

namespace truehang::walk {

namespace {

constexpr auto photo = TRUEHANG_PHOTOS "/02460b05fe6e3a58ff1e9297bf35e0554735d072390d28b53e554ca82304b4ec.jpg";
constexpr auto photo_name = "radiator-valve.jpg";
constexpr auto out_of_reach = "below.right";
constexpr QSize tablet{1024, 768};

QString says(const char* station) {
    const auto found = find_station(Shape::recess, station);
    return found ? QString::fromUtf8(found->says.data(), static_cast<qsizetype>(found->says.size())) : QString();
}

}  // namespace

Job::Job(const QString& out) : leavings_(out), program_(data_.path()), person_(program_) {}

void Job::step(const char* name, const std::function<void()>& what) {
    QElapsedTimer time;
    time.start();
    try {
        what();
        const QStringList warnings = take_warnings();
        if (!warnings.isEmpty()) {
            throw std::runtime_error("warned: " + warnings.join(QStringLiteral(" / ")).toStdString());
        }
    } catch (const std::exception& error) {
        throw std::runtime_error(std::string(name) + ": " + error.what());
    }
    std::printf("%-46s %6lld ms\n", name, static_cast<long long>(time.elapsed()));
    std::fflush(stdout);
}

void Job::run() {
    step("open an empty notebook", [this] {
        program_.open();
        person_.expectBeginning(QStringLiteral("Nothing here yet"));
        leavings_.picture(program_, QStringLiteral("visits"));
    });
    step("write down who and where", [this] { newVisit(); });
    step("ask for a position where there is none", [this] { askPosition(); });
    step("write down the cloths", [this] { addCloths(); });
    step("add a room and a window", [this] { addWindow(); });
    step("measure across, once with a comma", [this] { walkAcross(); });
    step("measure up, once out of reach, once a slip", [this] { walkUp(); });
    step("measure again what differs", [this] { settleWhatDiffers(); });
    step("measure on to the pole", [this] { walkOn(); });
    step("note the radiator", [this] { addRadiator(); });
    step("hang a tab headed pair on a pole", [this] { hangCurtains(); });
    step("measure the wall, once in inches", [this] { measureWall(); });
    step("read the figures, ask why, turn round", [this] { readFigures(); });
    step("look at the light, off a plan", [this] { lookAtLight(); });
    step("take in a photo from a file", [this] { takePhoto(); });
    step("agree and sign", [this] { sign(); });
    step("close in the middle of a number, open again", [this] { closeMidNumber(); });
    step("finish the number", [this] { finishNumber(); });
    step("pair with the workroom and send", [this] { send(); });
    step("look at it in the dark and on a tablet", [this] { lookAround(); });
    step("compare what arrived with what was typed", [this] { readWhatArrived(); });
    step("print the sheet", [this] { printSheet(); });
}

void Job::newVisit() {
    person_.touch(QStringLiteral("New visit"));
    person_.touchBeginning(QStringLiteral("Client and site"));
    person_.write(QStringLiteral("House or visit"), QStringLiteral("Pilot house"));
    person_.write(QStringLiteral("Client"), QStringLiteral("R. Oduya"));
    person_.write(QStringLiteral("Phone"), QStringLiteral("+44 1632 960 111"));
    person_.write(QStringLiteral("Mail"), QStringLiteral("r.oduya@example.org"));
    person_.write(QStringLiteral("Address"), QStringLiteral("4 Slipway Row, Ferrymouth"));
    person_.write(QStringLiteral("Measured by"), QStringLiteral("J. Tamm"));
    leavings_.picture(program_, QStringLiteral("client"));
}

void Job::askPosition() {
    person_.touch(QStringLiteral("Take the position here"));
    person_.expectBeginning(QStringLiteral("No position here"));
    leavings_.picture(program_, QStringLiteral("no-position"));
    person_.touch(QStringLiteral("Back to the visit"));
    person_.expect(QStringLiteral("Client and site: R. Oduya"));
    leavings_.picture(program_, QStringLiteral("visit"));
}

void Job::addCloths() {
    person_.touch(QStringLiteral("Cloths of this house"));
    person_.touch(QStringLiteral("Add a cloth"));
    person_.touch(QStringLiteral("Face, what is seen"));
    person_.write(QStringLiteral("Name"), QStringLiteral("Herring sailcloth, chalk"));
    person_.write(QStringLiteral("Width of the roll"), QStringLiteral("1400"));
    person_.write(QStringLiteral("Selvedge, each side"), QStringLiteral("10"));
    person_.write(QStringLiteral("Pattern repeat, along the roll"), QStringLiteral("320"));
    person_.choose(QStringLiteral("Match"), QStringLiteral("Straight match"));
    leavings_.picture(program_, QStringLiteral("cloth"));
    person_.write(QStringLiteral("Mass"), QStringLiteral("290"));
    person_.write(QStringLiteral("Shrinkage"), QStringLiteral("2"));
    person_.touch(QStringLiteral("Back to the cloths"));
    person_.touch(QStringLiteral("Add a cloth"));
    person_.touch(QStringLiteral("Lining"));
    person_.write(QStringLiteral("Name"), QStringLiteral("Cotton sateen lining, dove grey"));
    person_.write(QStringLiteral("Width of the roll"), QStringLiteral("1370"));
    person_.write(QStringLiteral("Selvedge, each side"), QStringLiteral("10"));
    person_.write(QStringLiteral("Mass"), QStringLiteral("150"));
    person_.write(QStringLiteral("Shrinkage"), QStringLiteral("2"));
    person_.touch(QStringLiteral("Back to the cloths"));
    leavings_.picture(program_, QStringLiteral("cloths"));
    person_.touch(QStringLiteral("Back"));
}

void Job::addWindow() {
    person_.touch(QStringLiteral("Add a room"));
    person_.write(QStringLiteral("Name"), QStringLiteral("Parlour"));
    person_.choose(QStringLiteral("Small children live or visit here"), QStringLiteral("yes"));
    leavings_.picture(program_, QStringLiteral("room"));
    person_.touch(QStringLiteral("Back to the visit"));
    person_.touch(QStringLiteral("Add a window to Parlour"));
    person_.write(QStringLiteral("Name"), QStringLiteral("South window"));
    leavings_.picture(program_, QStringLiteral("new-window"));
    person_.touch(QStringLiteral("Recess"));
    leavings_.picture(program_, QStringLiteral("walk-first"));
}

void Job::standAt(const char* station) { person_.expect(QStringLiteral("Measuring: %1").arg(says(station))); }

void Job::pressKeys(const QString& keys) {
    for (const QChar key : keys) {
        if (key == QLatin1Char('.')) {
            person_.touch(QStringLiteral("Decimal mark"));
        } else if (key.isDigit()) {
            person_.touch(QString(key));
        } else {
            person_.press(key);  // a comma where the keypad shows a point: from a keyboard
        }
    }
}

void Job::measure(const char* station, const QString& keys, double mm) {
    standAt(station);
    pressKeys(keys);
    typed_.push_back({station, keys, mm, false});
    person_.touch(QStringLiteral("Next"));
}

void Job::changeUnit(const QString& now, const QString& wanted) {
    const QStringList round{QStringLiteral("mm"), QStringLiteral("cm"), QStringLiteral("m"), QStringLiteral("in")};
    for (qsizetype at = round.indexOf(now); round.at(at) != wanted; at = (at + 1) % round.size()) {
        person_.touch(QStringLiteral("Unit, now %1").arg(round.at(at)));
    }
    person_.expect(QStringLiteral("Unit, now %1").arg(wanted));
}

void Job::walkAcross() {
    measure("opening.width.top", QStringLiteral("1242"), 1242);
    standAt("opening.width.middle");
    changeUnit(QStringLiteral("mm"), QStringLiteral("cm"));
    pressKeys(QStringLiteral("124,0"));
    leavings_.picture(program_, QStringLiteral("walk-comma"));
    person_.touch(QStringLiteral("Next"));
    typed_.push_back({"opening.width.middle", QStringLiteral("124,0"), 1240, false});
    changeUnit(QStringLiteral("cm"), QStringLiteral("mm"));
    measure("opening.width.bottom", QStringLiteral("1238"), 1238);
}

void Job::walkUp() {
    measure("below.left", QStringLiteral("860"), 860);
    measure("opening.height.left", QStringLiteral("1130"), 1130);
    standAt("above.left");
    pressKeys(QStringLiteral("14"));
    leavings_.picture(program_, QStringLiteral("walk"));
    leavings_.pictureAt(program_, QStringLiteral("walk-tablet"), tablet);
    pressKeys(QStringLiteral("8"));
    person_.touch(QStringLiteral("Next"));
    typed_.push_back({"above.left", QStringLiteral("148"), 148, false});
    standAt("ceiling.left");
    pressKeys(QStringLiteral("2183"));  // 2138 with two digits changed round
    leavings_.picture(program_, QStringLiteral("walk-does-not-fit"));
    person_.touch(QStringLiteral("Next"));
    typed_.push_back({"ceiling.left", QStringLiteral("2183"), 2183, true});
}

void Job::settleWhatDiffers() {
    person_.expect(QStringLiteral("These differ by 45 mm"));
    leavings_.picture(program_, QStringLiteral("differs"));
    leavings_.pictureAt(program_, QStringLiteral("differs-tablet"), tablet);
    person_.touchBeginning(QStringLiteral("Measure again: floor to ceiling"));
    measure("ceiling.left", QStringLiteral("2138"), 2138);
    measure("below.centre", QStringLiteral("861"), 861);
    measure("opening.height.centre", QStringLiteral("1131"), 1131);
    standAt(out_of_reach);
    person_.touch(QStringLiteral("Can’t reach this station"));
    leavings_.picture(program_, QStringLiteral("cannot-reach"));
    person_.touch(QStringLiteral("Something stands in the way"));
}

void Job::walkOn() {
    measure("opening.height.right", QStringLiteral("1132"), 1132);
    measure("pole.above", QStringLiteral("80"), 80);
    person_.expect(QStringLiteral("That was the last station"));
}

/// Asked for once the pole is known to pass the window's edges.
void Job::measureWall() {
    person_.touch(QStringLiteral("Measure this window"));
    person_.expect(QStringLiteral("That was the last station"));
    person_.touchBeginning(says("wall.left"));
    standAt("wall.left");
    changeUnit(QStringLiteral("mm"), QStringLiteral("in"));
    pressKeys(QStringLiteral("24"));
    person_.touch(QStringLiteral("Fractions"));
    leavings_.picture(program_, QStringLiteral("walk-fractions"));
    person_.touch(QStringLiteral("3/8"));
    leavings_.picture(program_, QStringLiteral("walk-inches"));
    person_.touch(QStringLiteral("Next"));
    typed_.push_back({"wall.left", QStringLiteral("24 3/8"), 619.125, false});  // 24.375 in of 25.4 mm (ISO 80000-3)
    changeUnit(QStringLiteral("in"), QStringLiteral("mm"));
    standAt("wall.right");
    person_.touch(QStringLiteral("All stations of this window"));
    leavings_.picture(program_, QStringLiteral("stations"));
    person_.touch(QStringLiteral("Go on measuring"));
    person_.touch(QStringLiteral("Next"));  // wall to the right is left for later
    person_.expect(QStringLiteral("That was the last station"));
    leavings_.picture(program_, QStringLiteral("last-station"));
    person_.touch(QStringLiteral("What is in the way"));
    person_.touch(QStringLiteral("What hangs here"));
    person_.touch(QStringLiteral("See the figures"));
}

void Job::addRadiator() {
    person_.touch(QStringLiteral("What is in the way"));
    person_.touch(QStringLiteral("Add something"));
    leavings_.picture(program_, QStringLiteral("what-is-in-the-way"));
    person_.touch(QStringLiteral("Radiator"));
    person_.write(QStringLiteral("From the opening’s left edge"), QStringLiteral("120"));
    person_.write(QStringLiteral("Width"), QStringLiteral("1000"));
    person_.write(QStringLiteral("Lower edge above the floor"), QStringLiteral("150"));
    person_.write(QStringLiteral("Height"), QStringLiteral("600"));
    person_.write(QStringLiteral("Out from the wall"), QStringLiteral("95"));
    person_.write(QStringLiteral("Note"), QStringLiteral("valve on the right"));
    leavings_.picture(program_, QStringLiteral("radiator"));
    person_.touch(QStringLiteral("Done with this one"));
    leavings_.picture(program_, QStringLiteral("in-the-way"));
}

void Job::hangCurtains() {
    person_.touch(QStringLiteral("What hangs here"));
    person_.touch(QStringLiteral("Hang something here"));
    person_.choose(QStringLiteral("Heading"), QStringLiteral("Tab"));
    person_.choose(QStringLiteral("Layout"), QStringLiteral("A pair"));
    person_.choose(QStringLiteral("Length"), QStringLiteral("To the floor"));
    person_.write(QStringLiteral("Fullness"), QStringLiteral("1.5"));
    leavings_.picture(program_, QStringLiteral("hanging"));
    person_.choose(QStringLiteral("Face cloth"), QStringLiteral("Herring sailcloth, chalk"));
    person_.choose(QStringLiteral("Lining"), QStringLiteral("Cotton sateen lining, dove grey"));
    person_.choose(QStringLiteral("Hangs from"), QStringLiteral("Pole"));
    person_.choose(QStringLiteral("Supply"), QStringLiteral("We supply it"));
    person_.write(QStringLiteral("Diameter"), QStringLiteral("28"));
    person_.write(QStringLiteral("Length, without finials"), QStringLiteral("1720"));
    person_.write(QStringLiteral("Wall to its centre line"), QStringLiteral("110"));
    person_.write(QStringLiteral("Finial, each end"), QStringLiteral("60"));
    person_.write(QStringLiteral("Brackets"), QStringLiteral("2"));
    person_.write(QStringLiteral("Return, each end"), QStringLiteral("0"));
    person_.write(QStringLiteral("Overlap, in all"), QStringLiteral("0"));
    leavings_.picture(program_, QStringLiteral("pole"));
}

void Job::readFigures() {
    person_.expectBeginning(QStringLiteral("Finished width"));
    leavings_.picture(program_, QStringLiteral("figures"));
    leavings_.pictureAt(program_, QStringLiteral("figures-tablet"), tablet);
    person_.touchBeginning(QStringLiteral("Cut drop"));
    person_.expect(QStringLiteral("How it came about"));
    leavings_.picture(program_, QStringLiteral("why"));
    person_.touch(QStringLiteral("Back to the figures"));
    person_.touch(QStringLiteral("Look from the side"));
    leavings_.picture(program_, QStringLiteral("turned-round"));
    person_.touch(QStringLiteral("Look from the front"));
    person_.touch(QStringLiteral("draw them shut"));
    leavings_.picture(program_, QStringLiteral("drawn-shut"));
}

void Job::lookAtLight() {
    person_.touch(QStringLiteral("Light of this window"));
    person_.expectBeginning(QStringLiteral("Which way it faces isn’t known"));
    person_.write(QStringLiteral("Or its latitude and longitude, off a map"), QStringLiteral("54.6, -1.1"));
    person_.touch(QStringLiteral("which way it faces"));
    person_.touch(QStringLiteral("Off a plan"));
    person_.write(QStringLiteral("The street’s line"), QStringLiteral("94"));
    person_.choose(QStringLiteral("The window looks"), QStringLiteral("To the right of the line"));
    leavings_.picture(program_, QStringLiteral("bearing"));
    person_.touch(QStringLiteral("Done with this one"));
    person_.expectBeginning(QStringLiteral("Faces south, 184°"));  // square to the street: 94° and 90°
    person_.touch(QStringLiteral("Back"));
    person_.touch(QStringLiteral("what stands outside"));
    person_.touch(QStringLiteral("a house"));
    person_.touch(QStringLiteral("higher"));
    leavings_.picture(program_, QStringLiteral("outside"));
    person_.touch(QStringLiteral("Done with this one"));
    person_.touch(QStringLiteral("Done"));
    person_.touch(QStringLiteral("glass and room"));
    person_.write(QStringLiteral("Width, along this wall"), QStringLiteral("4100"));
    person_.write(QStringLiteral("Depth, away from it"), QStringLiteral("3800"));
    person_.write(QStringLiteral("Height"), QStringLiteral("2140"));
    person_.touch(QStringLiteral("Done"));
    leavings_.picture(program_, QStringLiteral("light"));
    leavings_.pictureAt(program_, QStringLiteral("light-tablet"), tablet);
    person_.touch(QStringLiteral("What hangs here"));
    person_.touch(QStringLiteral("See the figures"));
}

void Job::takePhoto() {
    if (!QFile::copy(QLatin1String(photo), card_.filePath(QLatin1String(photo_name)))) {
        throw std::runtime_error("the demo photo isn't there");
    }
    QDir::setCurrent(card_.path());  // where the dialog begins to look
    person_.touch(QStringLiteral("Photos of this window"));
    person_.touch(person_.sees(QStringLiteral("choose a file")) ? QStringLiteral("choose a file")
                                                                : QStringLiteral("Choose a file"));
    person_.expect(QLatin1String(photo_name));
    leavings_.picture(program_, QStringLiteral("choose-a-file"));
    person_.touchWords(QLatin1String(photo_name));
    person_.touchWords(QLatin1String(photo_name));  // twice opens it
    person_.write(QStringLiteral("What it shows"), QStringLiteral("radiator valve"));
    leavings_.picture(program_, QStringLiteral("photos"));
}

void Job::sign() {
    person_.touch(QStringLiteral("Back"));
    person_.touch(QStringLiteral("Agree and sign"));
    leavings_.picture(program_, QStringLiteral("sign"));
    person_.touch(QStringLiteral("I agree"));
    person_.expectBeginning(QStringLiteral("Agreed by R. Oduya"));
    leavings_.picture(program_, QStringLiteral("visit-signed"));
}

void Job::closeMidNumber() {
    person_.touch(QStringLiteral("Measure the next window"));
    standAt("wall.right");
    pressKeys(QStringLiteral("48"));
    const QString before = person_.reading();
    program_.end();
    program_.open();
    standAt("wall.right");
    const QString after = person_.reading();
    if (before != QStringLiteral("48") || after != before) {
        throw std::runtime_error("48 was typed, \"" + before.toStdString() + "\" shown, then \"" + after.toStdString() +
                                 "\"");
    }
    leavings_.picture(program_, QStringLiteral("opened-again"));
}

void Job::finishNumber() {
    pressKeys(QStringLiteral("0"));
    typed_.push_back({"wall.right", QStringLiteral("480"), 480, false});
    person_.touch(QStringLiteral("Next"));
    person_.expect(QStringLiteral("That was the last station"));
    person_.touch(QStringLiteral("Back to the visit"));
    leavings_.picture(program_, QStringLiteral("measured"));
}

void Job::send() {
    workroom_.emplace(leavings_.path(QStringLiteral("workroom")));
    person_.touch(QStringLiteral("Send to the workroom"));
    person_.write(QStringLiteral("Address"), workroom_->address());
    person_.write(QStringLiteral("Code"), workroom_->code());
    person_.touch(QStringLiteral("Pair with the workroom"));
    person_.expectBeginning(QStringLiteral("Send now"));
    person_.touch(QStringLiteral("Send now"));
    person_.expectBeginning(QStringLiteral("All at the workroom"));
    leavings_.picture(program_, QStringLiteral("all-there"));
    person_.touch(QStringLiteral("Back"));
    leavings_.picture(program_, QStringLiteral("visit-there"));
}

void Job::lookAround() {
    person_.touch(QStringLiteral("Back"));
    leavings_.picture(program_, QStringLiteral("visits-there"));
    person_.touch(QStringLiteral("Settings"));
    leavings_.picture(program_, QStringLiteral("settings"));
    person_.choose(QStringLiteral("Look"), QStringLiteral("dark"));
    person_.touch(QStringLiteral("Back to the visits"));
    leavings_.picture(program_, QStringLiteral("visits-dark"));
    person_.touchBeginning(QStringLiteral("Pilot house"));
    leavings_.picture(program_, QStringLiteral("visit-dark"));
    QStringList heard = person_.names();
    person_.touchBeginning(QStringLiteral("Parlour, south window"));
    person_.touch(QStringLiteral("All stations of this window"));
    person_.touchBeginning(says("above.left"));
    standAt("above.left");
    leavings_.picture(program_, QStringLiteral("walk-dark"));
    person_.touch(QStringLiteral("All stations of this window"));
    person_.touch(QStringLiteral("Figures of this window"));
    person_.expectBeginning(QStringLiteral("Finished width"));
    leavings_.picture(program_, QStringLiteral("figures-dark"));
    leavings_.pictureAt(program_, QStringLiteral("figures-dark-tablet"), tablet);
    leavings_.write(QStringLiteral("screen.json"),
                    QJsonDocument(QJsonArray::fromStringList(heard << person_.names())).toJson());
}

void Job::readWhatArrived() {
    received_ = workroom_->received();
    leavings_.write(QStringLiteral("survey.json"), received_);
    const QStringList differ = differences(received_, typed_, out_of_reach);
    if (!differ.isEmpty()) {
        throw std::runtime_error(differ.join(QStringLiteral("; ")).toStdString());
    }
    leavings_.write(QStringLiteral("figures.json"),
                    Workroom::asked({QStringLiteral("figures"), leavings_.path(QStringLiteral("survey.json"))}));
    const auto survey = read_survey(received_.toStdString());
    const Room& room = survey->rooms.front();
    const auto page = QStringLiteral("/surveys/%1/rooms/%2/windows/%3")
                          .arg(QString::fromStdString(survey->id), QString::fromStdString(room.id),
                               QString::fromStdString(room.windows.front().id));
    leavings_.write(QStringLiteral("sheet.html"), workroom_->page(page));
    leavings_.write(QStringLiteral("page.txt"), page.toUtf8());
}

void Job::printSheet() {
    const auto survey = read_survey(received_.toStdString());
    const auto printed = print_sheet(*survey, QString::fromStdString(survey->rooms.front().windows.front().id),
                                     leavings_.path(QStringLiteral("sheet.pdf")));
    if (!printed) {
        throw std::runtime_error(printed.error().text);
    }
    program_.end();
    workroom_.reset();
}

}  // namespace truehang::walk
