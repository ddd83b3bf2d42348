// SPDX-License-Identifier: Apache-2.0
#include "places.h"

#include <QTest>

namespace truehang::test {

namespace {

/// The page on the screen: what has a panel and a notebook.
QQuickItem* page_of(Scene& scene) {
    for (QQuickItem* item : scene.items()) {
        if (item->metaObject()->indexOfProperty("panel") >= 0 && item->metaObject()->indexOfProperty("notebook") >= 0) {
            return item;
        }
    }
    return nullptr;
}

}  // namespace

QString first_key(const ShownRows* rows, const char* role) { return rows->value(0, QLatin1String(role)).toString(); }

static void edit_first_obstruction(Notebook& n) {
    n.obstructions()->edit(first_key(n.obstructions()->obstructions(), "obstructionId"));
}

static void edit_bearing(Notebook& n, int row) {
    BearingsModel& bearings = *n.outlook()->bearings();
    bearings.edit(bearings.taken()->value(row, QStringLiteral("bearingId")).toString());
}

static void edit_first_outside(Notebook& n) {
    n.outlook()->skyline()->edit(first_key(n.outlook()->skyline()->parts(), "partId"));
}

/// Those of a window.
static std::vector<Stop> window_places() {
    const auto at_first = [](Notebook& n) { n.walk()->jumpTo(first_key(n.walk()->stations(), "station")); };
    return {{"walk", "", at_first},
            {"walk", "reach", at_first},
            {"walk", "window", at_first},
            {"walk", "history", at_first},
            {"walk", "end"},
            {"obstructions"},
            {"obstructions", "add"},
            {"obstructions", "", edit_first_obstruction},
            {"hanging"},
            {"figures"},
            {"figures", "", [](Notebook& n) { n.figures()->ask(QStringLiteral("finished.drop_mm")); }},
            {"choices"},
            {"choices", "", [](Notebook& n) { n.choices()->edit(1); }},
            {"client"},
            {"photos"},
            {"photos", "marks"},
            {"photos", "tape"},
            {"outlook"},
            {"outlook", "facing"},
            {"outlook", "outside"},
            {"outlook", "room"},
            {"outlook", "", [](Notebook& n) { edit_bearing(n, 0); }},
            {"outlook", "", [](Notebook& n) { edit_bearing(n, 1); }},
            {"outlook", "", edit_first_outside}};
}

const std::vector<Stop>& places() {
    static const std::vector<Stop> all = [] {
        std::vector<Stop> made{
            {"visits"},
            {"visits", "removed"},
            {"visits", "states"},
            {"visits", "takeIn"},
            {"visit"},
            {"visit", "site"},
            {"visit", "measuring"},
            {"visit", "window"},
            {"visit", "sign"},
            {"fabrics"},
            {"fabrics", "add"},
            {"fabrics", "", [](Notebook& n) { n.fabrics()->edit(first_key(n.fabrics()->fabrics(), "fabricId")); }}};
        std::ranges::copy(window_places(), std::back_inserter(made));
        const std::vector<Stop> aside{{"send"},
                                      {"sheets"},
                                      {"file"},
                                      {"leaving"},
                                      {"lists"},
                                      {"rules"},
                                      {"rules", "", [](Notebook& n) { n.rules()->edit(QStringLiteral("hem_mm")); }},
                                      {"settings"},
                                      {"twice"},
                                      {"questions"}};
        std::ranges::copy(aside, std::back_inserter(made));
        return made;
    }();
    return all;
}

void open_house(Scene& scene) {
    scene.openWindow(QStringLiteral("Pilot house"), {});
    scene.openWindow(QStringLiteral("Pilot house"), first_key(scene.notebook().visit()->windows(), "title"));
}

void go_to(Scene& scene, const Stop& place) {
    scene.notebook().figures()->ask({});
    scene.notebook().fabrics()->done();
    scene.notebook().obstructions()->done();
    scene.notebook().choices()->done();
    scene.notebook().outlook()->bearings()->done();
    scene.notebook().outlook()->skyline()->done();
    scene.notebook().rules()->done();
    scene.notebook().setScreen(QLatin1String(place.screen));
    scene.settle();
    scene.settle();  // a list lays its rows out once their heights are known
    if (place.open) {
        place.open(scene.notebook());
        scene.settle();
    }
    if (*place.panel != '\0') {
        QQuickItem* page = page_of(scene);
        QVERIFY(page != nullptr);
        page->setProperty("panel", QLatin1String(place.panel));
        scene.settle();
    }
}

}  // namespace truehang::test
