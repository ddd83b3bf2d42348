// SPDX-License-Identifier: Apache-2.0
#include "notebook.h"

#include "devices.h"
#include "kept_lists.h"
#include "room_light.h"
#include "survey_keeping.h"
#include "visit_list.h"
#include "walk_aloud.h"
#include "whereabouts.h"
#include "workroom_rules.h"
#include "writing.h"

#include <QDir>
#include <QFileInfo>
#include <QHash>
#include <QTimeZone>
#include <algorithm>
#include <array>
#include <utility>

namespace truehang {

namespace {

/// The screens of a window; they need one that is open.
constexpr std::array window_screens{"walk",    "obstructions", "hanging", "figures",
                                    "choices", "client",       "photos",  "outlook"};
/// Screens beside the way: they lead back to where they were opened from.
constexpr std::array aside_screens{"settings", "lists"};
/// Screens beside those of a window to which a list of what is left leads.
constexpr std::array from_lists{"send", "twice", "questions"};
constexpr std::array visit_screens{"visit", "fabrics", "send",  "sheets",   "file",
                                   "rules", "leaving", "twice", "questions"};

template <class Screens>
bool is_one_of(const Screens& screens, const QString& screen) {
    return std::ranges::any_of(screens, [&](const char* one) { return screen == QLatin1String(one); });
}

/// Beside the way, or reached from the visit and from its windows.
bool leads_back(const QString& screen) {
    return is_one_of(aside_screens, screen) || screen == QStringLiteral("twice") ||
           screen == QStringLiteral("questions");
}

}  // namespace

class Notebook::Parts {
public:
    Parts(SurveyKeeping& keeping_in, Devices& devices, const QString& settings_file)
        : keeping(keeping_in),
          settings(settings_file),
          light(settings, *devices.light),
          list(keeping_in),
          open(keeping_in),
          visit(open),
          fabrics(open),
          walk(open, settings),
          aloud(walk, settings, *devices.voice),
          obstructions(open),
          kept_lists(keeping_in, QFileInfo(settings_file).absoluteDir().filePath(QStringLiteral("lists.json"))),
          hanging(open, kept_lists),
          lists(open, kept_lists, hanging),
          figures(open),
          outlook(open, *devices.compass),
          choices(open, hanging),
          client(open, hanging, choices),
          agreement(open),
          photos(open, devices, settings),
          send(open, keeping_in, devices),
          sheets(open, devices),
          visit_file(open, devices),
          workroom_rules(QFileInfo(settings_file).absoluteDir().filePath(QStringLiteral("house-rules.json"))),
          rules(open, workroom_rules),
          leaving(open),
          twice(open),
          questions(open),
          position(open, devices) {}

    SurveyKeeping& keeping;
    Settings settings;
    RoomLight light;
    VisitList list;
    OpenVisit open;
    VisitModel visit;
    FabricsModel fabrics;
    WalkModel walk;
    WalkAloud aloud;
    ObstructionsModel obstructions;
    KeptLists kept_lists;
    HangingModel hanging;
    ListsModel lists;
    FiguresModel figures;
    OutlookModel outlook;
    ChoicesModel choices;
    ClientModel client;
    AgreementModel agreement;
    PhotosModel photos;
    SendModel send;
    SheetsModel sheets;
    VisitFileModel visit_file;
    WorkroomRules workroom_rules;
    RulesModel rules;
    LeavingModel leaving;
    TakenTwiceModel twice;
    QuestionsModel questions;
    PositionModel position;
    QString screen = QStringLiteral("visits");
    QHash<QString, QString> before_aside;  // where each was opened from
    QString panel;                         // to be shown first by the page that comes
    QString led_from;                      // the list that led here: going back leads to it
    QString fault;
    bool ready = false;
};

Notebook::Notebook(SurveyKeeping& keeping, Devices& devices, const QString& settingsFile, QObject* parent)
    : QObject(parent), parts_(std::make_unique<Parts>(keeping, devices, settingsFile)) {
    Whereabouts& place = parts_->open.place();
    place.on_fault = [this](const QString& fault) {
        if (!fault.isEmpty()) {
            setFault(fault);
        }
    };
    connect(&parts_->open, &OpenVisit::notKept, this, &Notebook::setFault);
    connect(&parts_->open, &OpenVisit::keptAll, this, [this] { setFault({}); });
    connect(&parts_->open, &OpenVisit::standingChanged, this, [this] { parts_->list.renew(parts_->open.visitId()); });
    connect(&parts_->list, &VisitList::faulty, this, &Notebook::setFault);
    connect(&parts_->send, &SendModel::arrived, this, [this] { parts_->list.read(); });
    connect(&parts_->visit_file, &VisitFileModel::tookIn, &parts_->list, &VisitList::renew);
    connect(&parts_->visit_file, &VisitFileModel::tookIn, &parts_->send, &SendModel::visitCame);
    connect(&parts_->send, &SendModel::rulesCame, &parts_->workroom_rules, &WorkroomRules::take);
    connect(&parts_->send, &SendModel::came, &parts_->twice, &TakenTwiceModel::lookAt);
    connect(&parts_->leaving, &LeavingModel::wanted, this, &Notebook::openPlace);
    connect(&parts_->twice, &TakenTwiceModel::wanted, this, [this](const QString& window, const QString& station) {
        openPlace(QStringLiteral("walk"), window, station);
    });
    connect(&parts_->send, &SendModel::questionsCame, this, [this] {
        parts_->questions.read();
        parts_->open.askStanding();
        parts_->list.read();
    });
    connect(&parts_->questions, &QuestionsModel::answered, &parts_->send, &SendModel::sendNow);
    connect(&parts_->questions, &QuestionsModel::wanted, this, [this](const QString& window, const QString& station) {
        openPlace(QStringLiteral("walk"), window, station);
    });
    connect(parts_->list.removed(), &ShownRows::countChanged, this, &Notebook::binChanged);
    connect(parts_->list.removed(), &QAbstractItemModel::dataChanged, this, &Notebook::binChanged);
    start();
}

Notebook::~Notebook() = default;

ShownRows* Notebook::visits() { return parts_->list.shown(); }
ShownRows* Notebook::removedVisits() { return parts_->list.removed(); }
QString Notebook::search() const { return parts_->list.search(); }
QString Notebook::screen() const { return parts_->screen; }
bool Notebook::ready() const { return parts_->ready; }
QString Notebook::fault() const { return parts_->fault; }
OpenVisit* Notebook::open() { return &parts_->open; }
VisitModel* Notebook::visit() { return &parts_->visit; }
FabricsModel* Notebook::fabrics() { return &parts_->fabrics; }
WalkModel* Notebook::walk() { return &parts_->walk; }
WalkAloud* Notebook::aloud() { return &parts_->aloud; }
ObstructionsModel* Notebook::obstructions() { return &parts_->obstructions; }
HangingModel* Notebook::hanging() { return &parts_->hanging; }
FiguresModel* Notebook::figures() { return &parts_->figures; }
ChoicesModel* Notebook::choices() { return &parts_->choices; }
ClientModel* Notebook::client() { return &parts_->client; }
AgreementModel* Notebook::agreement() { return &parts_->agreement; }
PhotosModel* Notebook::photos() { return &parts_->photos; }
ListsModel* Notebook::lists() { return &parts_->lists; }
SendModel* Notebook::send() { return &parts_->send; }
SheetsModel* Notebook::sheets() { return &parts_->sheets; }
OutlookModel* Notebook::outlook() { return &parts_->outlook; }
LeavingModel* Notebook::leaving() { return &parts_->leaving; }
TakenTwiceModel* Notebook::twice() { return &parts_->twice; }
QuestionsModel* Notebook::questions() { return &parts_->questions; }
QString Notebook::binQuestion() const { return parts_->list.binQuestion(); }
VisitFileModel* Notebook::visitFile() { return &parts_->visit_file; }
RulesModel* Notebook::rules() { return &parts_->rules; }
PositionModel* Notebook::position() { return &parts_->position; }
RoomLight* Notebook::light() { return &parts_->light; }
Settings* Notebook::settings() { return &parts_->settings; }

void Notebook::setSearch(const QString& words) {
    if (words != search()) {
        parts_->list.setSearch(words);
        emit searchChanged();
    }
}

ShownRows* Notebook::states() { return parts_->list.states(); }
QString Notebook::narrowed() const { return parts_->list.narrowed(); }

void Notebook::setNarrowed(const QString& word) {
    if (word != narrowed()) {
        parts_->list.setNarrowed(word);
        emit searchChanged();
    }
}

void Notebook::setFault(const QString& fault) {
    if (parts_->fault != fault) {
        parts_->fault = fault;
        emit faultChanged();
    }
}

/// Opens where the program was last; what can't be opened leaves the person one screen up.
void Notebook::start() {
    parts_->open.place().restore([this](const QString& fault) {
        if (!fault.isEmpty()) {
            setFault(fault);
            setReady();
            return;
        }
        parts_->list.read();
        parts_->send.begin();
        const Whereabouts& place = parts_->open.place();
        const QString screen = place.screen().isEmpty() ? QStringLiteral("visits") : place.screen();
        const QString visit = place.visit();
        if (visit.isEmpty()) {
            show(is_one_of(aside_screens, screen) ? screen : QStringLiteral("visits"));
            setReady();
            return;
        }
        parts_->open.openSurvey(visit,
                                [this, screen, window = place.window(), station = place.station()](const QString& why) {
                                    if (!why.isEmpty()) {
                                        setFault(why);
                                    } else if (parts_->open.window(window)) {
                                        parts_->open.openWindow(window);
                                        parts_->walk.openWindow(window, station);
                                    }
                                    show(screen);
                                    setReady();
                                });
    });
}

void Notebook::setReady() {
    if (!parts_->ready) {
        parts_->ready = true;
        emit readyChanged();
    }
}

void Notebook::tryAgain() {
    setFault({});
    if (!parts_->open.isOpen() && parts_->list.shown()->count() == 0) {
        start();
    } else {
        parts_->open.askStanding();
        parts_->list.read();
    }
}

/// Shows a screen, or the nearest one up that what is open allows.
void Notebook::show(const QString& asked) {
    QString screen = asked;
    if (is_one_of(window_screens, screen) && !parts_->open.window()) {
        screen = QStringLiteral("visit");
    }
    if (is_one_of(visit_screens, screen) && !parts_->open.isOpen()) {
        screen = QStringLiteral("visits");
    }
    const bool known = is_one_of(window_screens, screen) || is_one_of(visit_screens, screen) ||
                       is_one_of(aside_screens, screen) || screen == QStringLiteral("visits");
    if (!known) {
        return;
    }
    if (leads_back(screen) && parts_->screen != screen && parts_->led_from != screen) {
        parts_->before_aside[screen] = parts_->screen;
    }
    parts_->open.place().standOn(screen);
    parts_->choices.setShown(screen == QStringLiteral("choices") || screen == QStringLiteral("client"));
    parts_->outlook.setShown(screen == QStringLiteral("outlook"));
    parts_->leaving.setShown(screen == QStringLiteral("leaving"));
    parts_->twice.setShown(screen == QStringLiteral("twice"),
                           is_one_of(window_screens, parts_->screen) ? parts_->open.windowId() : QString());
    if (screen == parts_->led_from || !(is_one_of(window_screens, screen) || is_one_of(from_lists, screen))) {
        parts_->led_from.clear();
    }
    if (screen != parts_->screen) {
        if (screen == QStringLiteral("visits")) {
            parts_->list.lookAtClock();
        }
        if (parts_->screen == QStringLiteral("visits") || parts_->screen == QStringLiteral("file")) {
            parts_->visit_file.forget();
        }
        parts_->visit_file.lookAtClock();
        parts_->screen = screen;
        emit screenChanged();
    }
}

void Notebook::setScreen(const QString& screen) { show(screen); }

void Notebook::newVisit() {
    Survey survey;
    survey.id = parts_->open.newId();
    survey.revision = 1;
    survey.measured_at = parts_->open.now();
    survey.entry_unit = "mm";
    if (const auto& rules = parts_->workroom_rules.held(); rules && rules->version) {
        survey.rules = *rules;
    }
    survey.time_zone = QTimeZone::systemTimeZoneId().toStdString();
    parts_->open.openNew(survey, tr("A new visit"), [this, id = shown(survey.id)](const QString& fault) {
        setFault(fault);
        parts_->list.renew(id);
    });
    parts_->open.place().standIn(shown(survey.id), {});
    show(QStringLiteral("visit"));
}

void Notebook::openVisit(const QString& visitId) {
    if (parts_->open.visitId() == visitId) {
        show(QStringLiteral("visit"));
        return;
    }
    parts_->open.openSurvey(visitId, [this, visitId](const QString& fault) {
        setFault(fault);
        if (fault.isEmpty()) {
            parts_->open.place().standIn(visitId, {});
            show(QStringLiteral("visit"));
        }
    });
}

void Notebook::openWindow(const QString& windowId) {
    if (!parts_->open.window(windowId)) {
        return;
    }
    parts_->open.place().standIn(parts_->open.visitId(), windowId);
    parts_->open.openWindow(windowId);
    parts_->walk.openWindow(windowId);
    show(QStringLiteral("walk"));
}

void Notebook::openNextWindow() {
    if (const QString next = parts_->visit.windowAfter(); !next.isEmpty()) {
        openWindow(next);
    } else if (parts_->visit.nextStep() == QStringLiteral("done")) {
        show(QStringLiteral("visit"));
    } else {
        takeNext();
    }
}

void Notebook::takeNext() {
    const QString step = parts_->visit.nextStep();
    if (step == QStringLiteral("window")) {
        showPanel(step);
    } else if (step == QStringLiteral("measure")) {
        openWindow(parts_->visit.windowToMeasure());
    } else if (step == QStringLiteral("agree")) {
        agree();
    } else {
        show(step == QStringLiteral("send") ? step : QStringLiteral("visits"));
    }
}

void Notebook::agree() { showPanel(QStringLiteral("sign")); }

void Notebook::showPanel(const QString& panel) {
    parts_->panel = panel;
    show(QStringLiteral("visit"));
    emit panelAsked();
}

bool Notebook::goBack() {
    const QString screen = parts_->screen;
    if (screen == QStringLiteral("visits")) {
        return false;
    }
    if (leads_back(screen)) {
        show(parts_->before_aside.value(screen, QStringLiteral("visits")));
    } else if (screen == QStringLiteral("choices") || screen == QStringLiteral("client")) {
        show(QStringLiteral("figures"));
    } else if (screen == QStringLiteral("visit")) {
        show(QStringLiteral("visits"));
    } else {
        show(parts_->led_from.isEmpty() ? QStringLiteral("visit") : parts_->led_from);
    }
    return true;
}

void Notebook::removeVisit(const QString& visitId) {
    parts_->keeping.post(
        this, [id = bytes(visitId)](Store& store) { return store.remove_visit(id); },
        [this, visitId](const Result<Done>& removed) {
            setFault(fault_of(removed));
            if (removed && parts_->open.visitId() == visitId) {
                parts_->open.close();
                parts_->open.place().standIn({}, {});
                show(QStringLiteral("visits"));
            }
            parts_->list.renew(visitId);
        });
}

void Notebook::emptyBin() {
    parts_->list.emptyBin([this](const QString& fault, const QStringList& gone) {
        setFault(fault);
        parts_->open.place().forgetNaming(gone);
    });
}

/// Where something of the open visit is mended. Signing stands on the visit's own page.
void Notebook::openPlace(const QString& screen, const QString& windowId, const QString& station) {
    if (!windowId.isEmpty()) {
        parts_->open.place().standIn(parts_->open.visitId(), windowId);
        parts_->open.openWindow(windowId);
        parts_->walk.openWindow(windowId, station);
    }
    if (screen == QStringLiteral("sign")) {
        agree();
    } else {
        const QString from = parts_->screen;
        show(screen);
        parts_->led_from = screen != QStringLiteral("visit") ? from : QString();
    }
}

QString Notebook::takePanel() { return std::exchange(parts_->panel, {}); }

void Notebook::bringBack(const QString& visitId) {
    parts_->keeping.post(
        this, [id = bytes(visitId)](Store& store) { return store.bring_back(id); },
        [this, visitId](const Result<Done>& brought) {
            setFault(fault_of(brought));
            parts_->list.renew(visitId);
        });
}

}  // namespace truehang
