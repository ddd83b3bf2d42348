// SPDX-License-Identifier: Apache-2.0
#include "visit_model.h"

#include "agreement_model.h"
#include "arranging.h"
#include "open_visit.h"
#include "sheet/cutting_list.h"
#include "sheet/words.h"
#include "survey/stations.h"
#include "survey_keeping.h"
#include "trade_words.h"
#include "visit_state.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

/// One text of the survey's head: its field, and where it lies.
struct SiteField {
    const char* field;
    const char* label;
    const char* kind;
    QString (*read)(const Survey&);
    void (*write)(Survey&, const std::string&);
};

Client& client_of(Survey& survey) {
    if (!survey.client) {
        survey.client.emplace();
    }
    return *survey.client;
}

Site& site_of(Survey& survey) {
    if (!survey.site) {
        survey.site.emplace();
    }
    return *survey.site;
}

const std::array<SiteField, 6>& site_fields() {
    static const std::array<SiteField, 6> fields{{
        {"title", QT_TRANSLATE_NOOP("truehang::VisitModel", "House or visit"), "text",
         [](const Survey& s) { return shown(s.title); }, [](Survey& s, const std::string& t) { s.title = t; }},
        {"clientName", QT_TRANSLATE_NOOP("truehang::VisitModel", "Client"), "text",
         [](const Survey& s) { return s.client ? shown(s.client->name) : QString(); },
         [](Survey& s, const std::string& t) { client_of(s).name = t; }},
        {"clientPhone", QT_TRANSLATE_NOOP("truehang::VisitModel", "Phone"), "text",
         [](const Survey& s) { return s.client ? shown(s.client->phone) : QString(); },
         [](Survey& s, const std::string& t) { client_of(s).phone = t; }},
        {"clientEmail", QT_TRANSLATE_NOOP("truehang::VisitModel", "Mail"), "text",
         [](const Survey& s) { return s.client ? shown(s.client->email) : QString(); },
         [](Survey& s, const std::string& t) { client_of(s).email = t; }},
        {"address", QT_TRANSLATE_NOOP("truehang::VisitModel", "Address"), "long-text",
         [](const Survey& s) { return s.site ? shown(s.site->address) : QString(); },
         [](Survey& s, const std::string& t) { site_of(s).address = t; }},
        {"measuredBy", QT_TRANSLATE_NOOP("truehang::VisitModel", "Measured by"), "text",
         [](const Survey& s) { return shown(s.measured_by); },
         [](Survey& s, const std::string& t) { s.measured_by = t; }},
    }};
    return fields;
}

/// How sharply an edge is defined: the trade rules' three examples, section 1.
struct EdgeKind {
    const char* word;
    const char* says;
    double u_mm;
};
constexpr std::array<EdgeKind, 3> edge_kinds{
    {{"planed", QT_TRANSLATE_NOOP("truehang::VisitModel", "Planed frame"), 1.0},
     {"plaster", QT_TRANSLATE_NOOP("truehang::VisitModel", "Sound plaster"), 2.0},
     {"rough", QT_TRANSLATE_NOOP("truehang::VisitModel", "Rough stone"), 4.0}}};
constexpr const char* edge_key = "edge_u_mm";

Room* find_room(Survey& survey, const QString& id) {
    const auto found = std::ranges::find_if(survey.rooms, [&](const Room& room) { return shown(room.id) == id; });
    return found == survey.rooms.end() ? nullptr : &*found;
}

}  // namespace

VisitModel::VisitModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      site_({[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
             [this](const QString& field, const QString& text) { return leaveSite(field, text); },
             {}}),
      measuring_(
          {[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
           [this](const QString& field, const QString& text) { return leaveSite(field, text); },
           [this](const QString& field, const QString& word) { return chooseMeasuring(field, word); }}),
      rooms_({"roomId", "name", "line", "children", "spoken", "use", "place"}),
      windows_({"windowId", "roomId", "room", "name", "title", "shape", "state", "mark", "firstOfRoom", "asks",
                "spoken", "place"}),
      shapes_({"word", "says", "offered", "tells"}),
      removed_windows_({"windowId", "title", "spoken"}),
      orders_({"fabricId", "name", "figure", "unit", "line", "provisional", "spoken"}) {
    QList<ShownRows::Row> shapes;
    for (const auto& [word, shape] : Words<Shape>::list) {
        shapes.append({shown(word), truehang::says(shape), !stations_of(shape).empty(), tells(shape)});
    }
    shapes_.setRows(shapes);
    connect(&open_, &OpenVisit::opened, this, [this] {
        removed_.clear();
        asked_with_.clear();
        site_.forgetFaults();
        measuring_.forgetFaults();
    });
    connect(&open_, &OpenVisit::changed, this, [this] { erased_ = false; });
    connect(&open_, &OpenVisit::changed, this, &VisitModel::show);
    connect(&open_, &OpenVisit::windowChanged, this, &VisitModel::changed);
    connect(&open_, &OpenVisit::standingChanged, this, &VisitModel::show);
    connect(&open_, &OpenVisit::standingChanged, this, &VisitModel::askRemoved);
    connect(&open_, &OpenVisit::wasKept, this, [this](const QString& what) { emit told(tr("Kept: %1").arg(what)); });
    connect(&open_, &OpenVisit::wasUndone, this,
            [this](const QString& what) { emit told(tr("Undone: %1").arg(what)); });
    connect(&open_, &OpenVisit::wasDoneAgain, this,
            [this](const QString& what) { emit told(tr("Done again: %1").arg(what)); });
    show();
}

QString VisitModel::visitId() const { return open_.visitId(); }

QString VisitModel::title() const {
    return open_.survey().title.empty() ? tr("New visit") : shown(open_.survey().title);
}

QString VisitModel::clientName() const {
    return open_.survey().client ? shown(open_.survey().client->name) : QString();
}

QString VisitModel::address() const { return open_.survey().site ? shown(open_.survey().site->address) : QString(); }
QString VisitModel::state() const { return standing_of(open_.survey(), open_.summary()).words; }
thread_mark::Mark VisitModel::mark() const { return standing_of(open_.survey(), open_.summary()).mark; }

QString VisitModel::positionLine() const {
    const auto& site = open_.survey().site;
    if (!site || !site->latitude || !site->longitude) {
        return {};
    }
    const QString where = QStringLiteral("%1, %2").arg(*site->latitude, 0, 'f', 5).arg(*site->longitude, 0, 'f', 5);
    return site->accuracy_m ? tr("%1, within %2 m").arg(where).arg(*site->accuracy_m, 0, 'f', 0) : where;
}

bool VisitModel::signedOff() const { return open_.survey().signed_off.has_value(); }

QString VisitModel::signedLine() const {
    const auto& signed_off = open_.survey().signed_off;
    return signed_off ? tr("Agreed by %1, %2").arg(shown(signed_off->by), shown(day_text(signed_off->at))) : QString();
}

bool VisitModel::canUndo() const { return open_.canUndo(); }
bool VisitModel::canRedo() const { return open_.canRedo(); }
QString VisitModel::undoSays() const { return open_.undoSays(); }
QString VisitModel::redoSays() const { return open_.redoSays(); }
void VisitModel::undo() {
    if (open_.isOpen() && !canUndo()) {
        emit told(erased_ ? erasedSays() : tr("There is nothing to undo."));
    }
    open_.undo();
}

void VisitModel::redo() { open_.redo(); }

QString VisitModel::erasedSays() const {
    return erased_ ? tr("Erased for good. What was done to this visit before can’t be undone any more.") : QString();
}

QString VisitModel::placeOf(const QString& field) const {
    return QStringLiteral("site/%1/%2").arg(open_.visitId(), field);
}

void VisitModel::show() {
    next_ = open_.isOpen() ? next_of(open_.survey(), open_.figures(), mark() == thread_mark::Mark::There) : Next();
    showSite();
    showMeasuring();
    showRooms();
    showOrders();
    showRemoved();
    emit changed();
}

void VisitModel::showSite() {
    QList<FormField> fields;
    for (const SiteField& site : site_fields()) {
        FormField field;
        field.field = QLatin1String(site.field);
        field.label = tr(site.label);
        field.kind = QLatin1String(site.kind);
        const QString place = placeOf(field.field);
        field.text = open_.place().has(place) ? open_.place().text(place) : site.read(open_.survey());
        fields.append(field);
    }
    site_.setFields(fields);
}

QString VisitModel::leaveSite(const QString& field, const QString& text) {
    if (field == QStringLiteral("rulesName")) {
        open_.edit(tr("House rules"), [text](Survey& survey) {
            const bool differs = survey.rules.name != bytes(text);
            survey.rules.name = bytes(text);
            return differs;
        });
        open_.place().forget(placeOf(field));
        return {};
    }
    const auto site =
        std::ranges::find_if(site_fields(), [&](const SiteField& f) { return field == QLatin1String(f.field); });
    if (site == site_fields().end()) {
        return {};
    }
    const QString place = placeOf(field);
    const bool changed = open_.edit(
        tr("%1: %2").arg(tr(site->label), text),
        [site, text](Survey& survey) {
            if (site->read(survey) == text) {
                return false;
            }
            site->write(survey, bytes(text));
            return true;
        },
        [this, place, text, field](const QString& fault) {
            if (fault.isEmpty() && open_.place().text(place) == text) {
                open_.place().forget(place);
            } else if (!fault.isEmpty()) {
                open_.place().setText(place, text, true);
                showSite();
            }
        });
    if (!changed) {
        open_.place().forget(place);
    }
    return {};
}

void VisitModel::showMeasuring() {
    const Survey& survey = open_.survey();
    FormField unit{QStringLiteral("entryUnit"), tr("Readings in"), QStringLiteral("choice"), {}, {}, {}, {}, {}};
    for (const LengthUnit one : {LengthUnit::mm, LengthUnit::cm, LengthUnit::m, LengthUnit::in}) {
        unit.choices.append(choice(shown(word_of(one)), truehang::says(one)));
    }
    unit.word = shown(word_of(entry_unit(survey)));
    unit.text = truehang::says(entry_unit(survey));

    FormField tape{QStringLiteral("tapeClass"), tr("Tape"),    QStringLiteral("choice"), {}, {}, {},
                   choices_of<TapeClass>(),     tr("Class II")};
    if (survey.tape && survey.tape->accuracy) {
        tape.word = shown(survey.tape->accuracy->text());
        tape.text = truehang::says(*survey.tape->accuracy);
    }

    FormField edge{QStringLiteral("edge"), tr("Edges"), QStringLiteral("choice"), {}, {}, {}, {}, tr("Sound plaster")};
    const auto set = survey.rules.numbers.find(edge_key);
    for (const EdgeKind& kind : edge_kinds) {
        edge.choices.append(choice(QLatin1String(kind.word), tr(kind.says)));
        if (set != survey.rules.numbers.end() && set->second == kind.u_mm) {
            edge.word = QLatin1String(kind.word);
            edge.text = tr(kind.says);
        }
    }
    if (set != survey.rules.numbers.end() && edge.text.isEmpty()) {
        edge.text = tr("%1 mm, by the house rules").arg(shown(std::optional(set->second)));
    }

    FormField name{
        QStringLiteral("rulesName"), tr("House rules"), QStringLiteral("text"), shown(survey.rules.name), {}, {}, {},
        tr("the defaults")};
    if (open_.place().has(placeOf(name.field))) {
        name.text = open_.place().text(placeOf(name.field));
    }
    measuring_.setFields({unit, tape, edge, name});
}

QString VisitModel::chooseMeasuring(const QString& field, const QString& word) {
    if (field == QStringLiteral("entryUnit") && length_unit(bytes(word))) {
        open_.edit(tr("Readings in %1").arg(word), [word](Survey& survey) {
            const bool differs = survey.entry_unit != bytes(word);
            survey.entry_unit = bytes(word);
            return differs;
        });
    } else if (field == QStringLiteral("tapeClass") && Word<TapeClass>::find(bytes(word))) {
        open_.edit(tr("Tape of class %1").arg(word), [word](Survey& survey) {
            if (!survey.tape) {
                survey.tape.emplace();
            }
            const Word<TapeClass> chosen(bytes(word));
            const bool differs = survey.tape->accuracy != chosen;
            survey.tape->accuracy = chosen;
            return differs;
        });
    } else if (field == QStringLiteral("edge")) {
        const auto kind =
            std::ranges::find_if(edge_kinds, [&](const EdgeKind& k) { return word == QLatin1String(k.word); });
        if (kind != edge_kinds.end()) {
            open_.edit(tr("Edges: %1").arg(tr(kind->says)), [kind](Survey& survey) {
                const auto set = survey.rules.numbers.find(edge_key);
                const bool differs = set == survey.rules.numbers.end() || set->second != kind->u_mm;
                survey.rules.numbers[edge_key] = kind->u_mm;
                return differs;
            });
        }
    }
    return {};
}

void VisitModel::showRooms() {
    QList<ShownRows::Row> rooms;
    QList<ShownRows::Row> windows;
    for (const Room& room : open_.survey().rooms) {
        const QString name = shown(room.name);
        const auto count = static_cast<int>(room.windows.size());
        const QString line = count == 0   ? tr("no windows yet")
                             : count == 1 ? tr("1 window")
                                          : tr("%1 windows").arg(count);
        const QString children = !room.young_children   ? tr("young children: not known, counts as yes")
                                 : *room.young_children ? tr("young children: yes")
                                                        : tr("young children: no");
        rooms.append({shown(room.id), name, line, children, QStringLiteral("%1, %2").arg(name, line), shown(room.use),
                      tr("Room %1 of %2").arg(rooms.size() + 1).arg(open_.survey().rooms.size())});
        int number = 0;
        for (const Window& window : room.windows) {
            const StandsAs stands = standing_of(window);
            const auto& flags = open_.figuresOf(shown(window.id)).flags;
            const bool asks =
                std::ranges::any_of(flags, [](const Flag& f) { return f.severity == Severity::remeasure; });
            const QString title = shown(window_title(room, window));
            windows.append({shown(window.id), shown(room.id), name, shown(window.name), title,
                            truehang::says(window.shape), stands.words, QVariant::fromValue(stands.mark), number == 0,
                            asks, QStringLiteral("%1, %2").arg(title, stands.words),
                            tr("Window %1 of %2 in %3").arg(number + 1).arg(count).arg(name)});
            ++number;
        }
    }
    rooms_.setRows(rooms);
    windows_.setRows(windows);
}

void VisitModel::showOrders() {
    QList<ShownRows::Row> rows;
    if (open_.isOpen()) {
        const SheetStyle style{entry_unit(open_.survey()), decimal_mark()};
        const Figures& figures = open_.figures();
        const CuttingList list = cutting_list(open_.survey(), figures, style);
        for (const ClothCuts& cloth : list.cloths) {
            QString figure = shown(cloth.order);
            QString unit;
            if (const auto space = figure.lastIndexOf(QLatin1Char(' ')); space > 0) {
                unit = figure.mid(space + 1);
                figure.truncate(space);
            }
            const QString provisional =
                cloth.provisional ? tr("provisional: something is to be measured again") : QString();
            rows.append({shown(cloth.fabric), shown(cloth.name), figure, unit, shown(cloth.summary), provisional,
                         QStringLiteral("%1: %2. %3 %4")
                             .arg(shown(cloth.name), shown(cloth.order), shown(cloth.summary), provisional)});
        }
    }
    orders_.setRows(rows);
}

void VisitModel::showRemoved() {
    QList<ShownRows::Row> rows;
    for (const RemovedWindow& removed : removed_) {
        if (!open_.window(shown(removed.window.id))) {
            const QString title = shown(window_title(removed.room, removed.window));
            rows.append({shown(removed.window.id), title, tr("%1, taken out").arg(title)});
        }
    }
    removed_windows_.setRows(rows);
}

/// What was taken out changes only as the windows that are there do.
void VisitModel::askRemoved() {
    QStringList windows{open_.visitId()};
    for (const Room& room : open_.survey().rooms) {
        for (const Window& window : room.windows) {
            windows.append(shown(window.id));
        }
    }
    if (!open_.isOpen() || windows == asked_with_) {
        return;
    }
    asked_with_ = windows;
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return store.removed_windows(visit); },
        [this, visit = open_.visitId()](Result<std::vector<RemovedWindow>> removed) {
            if (removed && visit == open_.visitId()) {
                removed_ = std::move(removed).value();
                showRemoved();
            }
        });
}

QString VisitModel::addRoom(const QString& name) {
    Room room;
    room.id = open_.newId();
    const QString called =
        name.trimmed().isEmpty() ? tr("Room %1").arg(open_.survey().rooms.size() + 1) : name.trimmed();
    room.name = bytes(called);
    const bool added = open_.edit(tr("Room: %1").arg(called), [room](Survey& survey) {
        survey.rooms.push_back(room);
        return true;
    });
    return added ? shown(room.id) : QString();
}

void VisitModel::renameRoom(const QString& roomId, const QString& name) {
    open_.edit(tr("Room: %1").arg(name), [roomId, name](Survey& survey) {
        Room* room = find_room(survey, roomId);
        if (!room || room->name == bytes(name)) {
            return false;
        }
        room->name = bytes(name);
        return true;
    });
}

void VisitModel::setRoomUse(const QString& roomId, const QString& use) {
    open_.edit(tr("Room used as %1").arg(use), [roomId, use = bytes(use.trimmed())](Survey& survey) {
        Room* room = find_room(survey, roomId);
        const bool differs = room && room->use != use;
        if (differs) {
            room->use = use;
        }
        return differs;
    });
}

void VisitModel::setYoungChildren(const QString& roomId, const QString& children) {
    open_.edit(tr("Young children: %1").arg(children), [roomId, children](Survey& survey) {
        Room* room = find_room(survey, roomId);
        if (!room) {
            return false;
        }
        const auto said = children == QStringLiteral("yes")  ? std::optional(true)
                          : children == QStringLiteral("no") ? std::optional(false)
                                                             : std::nullopt;
        const bool differs = room->young_children != said;
        room->young_children = said;
        return differs;
    });
}

void VisitModel::removeRoom(const QString& roomId) {
    open_.edit(tr("Room taken out"), [roomId](Survey& survey) {
        return std::erase_if(survey.rooms, [&](const Room& room) { return shown(room.id) == roomId; }) > 0;
    });
}

QString VisitModel::addWindow(const QString& roomId, const QString& name, const QString& shape) {
    const auto known = Word<Shape>::find(bytes(shape));
    if (!known || stations_of(*known).empty()) {
        return {};
    }
    const QString in_room = roomId.isEmpty() ? addRoom({}) : roomId;
    Window window;
    window.id = open_.newId();
    window.shape = *known;
    const auto count = windows_.count() + 1;
    window.name = bytes(name.trimmed().isEmpty() ? tr("Window %1").arg(count) : name.trimmed());
    const bool added = open_.edit(tr("Window: %1").arg(shown(window.name)), [in_room, window](Survey& survey) {
        Room* room = find_room(survey, in_room);
        if (!room) {
            return false;
        }
        room->windows.push_back(window);
        return true;
    });
    return added ? shown(window.id) : QString();
}

void VisitModel::renameWindow(const QString& windowId, const QString& name) {
    open_.editWindow(tr("Window: %1").arg(name), windowId, [name](Window& window) {
        const bool differs = window.name != bytes(name);
        window.name = bytes(name);
        return differs;
    });
}

void VisitModel::removeWindow(const QString& windowId) {
    const Window* window = open_.window(windowId);
    const Room* room = open_.roomOf(windowId);
    if (!window || !room) {
        return;
    }
    Room emptied = *room;
    emptied.windows.clear();
    removed_.insert(removed_.begin(), {std::move(emptied), *window});
    open_.edit(tr("Window taken out: %1").arg(shown(window->name)), [windowId](Survey& survey) {
        std::size_t taken = 0;
        for (Room& one : survey.rooms) {
            taken += std::erase_if(one.windows, [&](const Window& w) { return shown(w.id) == windowId; });
        }
        return taken > 0;
    });
}

void VisitModel::bringWindowBack(const QString& windowId) {
    const auto found =
        std::ranges::find_if(removed_, [&](const RemovedWindow& r) { return shown(r.window.id) == windowId; });
    if (found == removed_.end() || open_.window(windowId)) {
        return;
    }
    open_.edit(tr("Window back: %1").arg(shown(found->window.name)), [back = *found](Survey& survey) {
        Room* room = find_room(survey, shown(back.room.id));
        if (!room) {
            survey.rooms.push_back(back.room);
            room = &survey.rooms.back();
        }
        room->windows.push_back(back.window);
        return true;
    });
}

void VisitModel::eraseRemovedWindows() {
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return store.erase_removed_windows(visit); },
        [this](const Result<Done>& erased) {
            asked_with_.clear();
            if (erased) {
                QStringList gone;
                for (int row = 0; row < removed_windows_.count(); ++row) {
                    gone.append(removed_windows_.value(row, QStringLiteral("windowId")).toString());
                }
                open_.place().forgetNaming(gone);
                erased_ = true;
                emit told(erasedSays());
            } else {
                emit open_.notKept(fault_of(erased));
            }
            open_.askStanding();
        });
}

void VisitModel::moveRoom(const QString& roomId, int by) {
    open_.edit(tr("Order of the rooms"),
               [id = bytes(roomId), by](Survey& survey) { return move_room(survey, id, by); });
}

void VisitModel::moveWindow(const QString& windowId, int by) {
    open_.edit(tr("Order of the windows"),
               [id = bytes(windowId), by](Survey& survey) { return move_window(survey, id, by); });
}

void VisitModel::moveWindowTo(const QString& windowId, const QString& roomId) {
    open_.edit(tr("Window to another room"),
               [id = bytes(windowId), to = bytes(roomId)](Survey& survey) { return move_window_to(survey, id, to); });
}

QString VisitModel::copyWindow(const QString& windowId) {
    const Window* window = open_.window(windowId);
    const Room* room = open_.roomOf(windowId);
    if (!window || !room) {
        return {};
    }
    const QString name = tr("Window %1").arg(windows_.count() + 1);
    const Window made = window_like(*window, bytes(name), [this] { return open_.newId(); });
    const bool added = open_.edit(tr("Window: %1").arg(name), [room = shown(room->id), made, windowId](Survey& survey) {
        Room* const there = find_room(survey, room);
        if (!there) {
            return false;
        }
        auto& windows = there->windows;
        const auto other = std::ranges::find(windows, bytes(windowId), &Window::id);
        windows.insert(other == windows.end() ? other : other + 1, made);
        return true;
    });
    return added ? shown(made.id) : QString();
}

}  // namespace truehang
