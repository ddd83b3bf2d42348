// SPDX-License-Identifier: Apache-2.0
#include "outlook_model.h"

#include "form_fields.h"
#include "open_visit.h"
#include "outlook_edits.h"
#include "sheet/light_sheet.h"
#include "trade_words.h"
#include "whereabouts.h"
#include "writing.h"

namespace truehang {

namespace {

QList<ShownRows::Row> rows_of(const std::vector<std::string>& texts) {
    QList<ShownRows::Row> rows;
    for (const std::string& text : texts) {
        rows.append({shown(text)});
    }
    return rows;
}

/// A changed length of the room that a window is in.
auto changing_interior(const QString& window, std::function<bool(Interior&)> change) {
    return [id = bytes(window), change = std::move(change)](Survey& survey) {
        for (Room& room : survey.rooms) {
            if (std::ranges::find(room.windows, id, &Window::id) != room.windows.end()) {
                Interior interior = room.interior.value_or(Interior());
                if (!change(interior)) {
                    return false;
                }
                const bool empty = !interior.width && !interior.depth && !interior.height && !interior.surfaces &&
                                   interior.extra.empty();
                room.interior = empty ? std::nullopt : std::optional(interior);
                return true;
            }
        }
        return false;
    };
}

std::optional<Length> Outlook::*glass_field(const QString& field) {
    return field == QStringLiteral("glassWidth")    ? &Outlook::glass_width
           : field == QStringLiteral("glassHeight") ? &Outlook::glass_height
                                                    : &Outlook::outer_depth;
}

std::optional<Length> Interior::*room_field(const QString& field) {
    return field == QStringLiteral("width")   ? &Interior::width
           : field == QStringLiteral("depth") ? &Interior::depth
                                              : &Interior::height;
}

}  // namespace

OutlookModel::OutlookModel(OpenVisit& open, CompassDevice& compass, QObject* parent)
    : QObject(parent),
      open_(open),
      minds_({"mind", "severity", "word", "text"}),
      sun_({"label", "glass", "cloth", "spoken"}),
      daylight_({"label", "figure", "unit"}),
      advice_({"text", "reason"}),
      assumed_({"text"}),
      wanted_({"text"}),
      glass_({[this](const QString& field, const QString& text) {
                  open_.place().setText(placeOf(QStringLiteral("glass"), field), text, true);
              },
              [this](const QString& field, const QString& text) { return leaveGlass(field, text); },
              [](const QString&, const QString&) { return QString(); }}),
      room_({[this](const QString& field, const QString& text) {
                 open_.place().setText(placeOf(QStringLiteral("room"), field), text, true);
             },
             [this](const QString& field, const QString& text) { return leaveRoom(field, text); },
             [this](const QString& field, const QString& word) { return chooseRoom(field, word); }}),
      place_({[this](const QString& field, const QString& text) {
                  open_.place().setText(placeOf(QStringLiteral("place"), field), text, true);
              },
              [this](const QString&, const QString& text) { return leavePlace(text); },
              [](const QString&, const QString&) { return QString(); }}),
      bearings_(open, compass),
      skyline_(open) {
    connect(&open_, &OpenVisit::windowChanged, this, &OutlookModel::work);
    connect(&open_, &OpenVisit::changed, this, &OutlookModel::work);
}

QString OutlookModel::windowTitle() const { return open_.titleOf(open_.windowId()); }

bool OutlookModel::lacksPlace() const { return open_.isOpen() && !place_of(open_.survey()); }

void OutlookModel::setShown(bool shown) {
    if (shown != shown_) {
        shown_ = shown;
        if (!shown) {
            bearings_.leaveCompass();
        }
        work();
    }
}

void OutlookModel::work() {
    light_.reset();
    const Window* window = open_.window();
    if (shown_ && window != nullptr) {
        light_ = light_of(open_.survey(), *open_.roomOf(open_.windowId()), *window,
                          [this](const Window& one) { return &open_.figuresOf(truehang::shown(one.id)); });
    }
    show();
}

void OutlookModel::show() {
    LightPanel panel;
    if (light_) {
        SheetStyle style = sheet_style_for(open_.survey());
        style.decimal = decimal_mark();
        panel = light_panel(*open_.roomOf(open_.windowId()), *light_, style);
    }
    facing_ = truehang::shown(panel.facing);
    QList<ShownRows::Row> minds;
    for (const SheetMind& one : panel.minds) {
        if (one.severity == Severity::note) {  // it stands beside the bearing it is of
            continue;
        }
        minds.append({QString::number(minds.size()), truehang::shown(word_of(one.severity)), truehang::shown(one.word),
                      truehang::shown(one.text)});
    }
    minds_.setRows(minds);
    showSun(panel.sun);
    QList<ShownRows::Row> daylight;
    for (const SheetRow& row : panel.daylight.rows) {
        const QString figure = truehang::shown(row.cells[1].text);
        daylight.append({truehang::shown(row.cells[0].text), figure.chopped(2), QStringLiteral("%")});
    }
    daylight_.setRows(daylight);
    QList<ShownRows::Row> advice;
    for (const LightAdvice& one : panel.advice) {
        advice.append({truehang::shown(one.text), truehang::shown(one.reason)});
    }
    advice_.setRows(advice);
    assumed_.setRows(rows_of(panel.assumed));
    wanted_.setRows(rows_of(panel.wanted));
    showForms();
    emit changed();
}

void OutlookModel::showSun(const SheetBlock& block) {
    QList<ShownRows::Row> rows;
    for (const SheetRow& row : block.rows) {
        const QString label = truehang::shown(row.cells[0].text);
        const QString glass = truehang::shown(row.cells[1].text);
        const QString cloth = truehang::shown(row.cells[2].text);
        rows.append({label, glass, cloth,
                     cloth.isEmpty() ? tr("%1: %2 hours on the glass").arg(label, glass)
                                     : tr("%1: %2 hours on the glass, %3 on the cloth").arg(label, glass, cloth)});
    }
    sun_.setRows(rows);
    sun_note_ = truehang::shown(block.note);
}

QString OutlookModel::placeOf(const QString& form, const QString& field) const {
    return QStringLiteral("outlook/%1/%2/%3").arg(open_.windowId(), form, field);
}

void OutlookModel::showForms() {
    const Window* window = open_.window();
    if (!shown_ || window == nullptr) {
        glass_.setFields({});
        place_.setFields({});
        room_.setFields({});
        return;
    }
    const Outlook outlook = window->outlook.value_or(Outlook());
    const FieldMaker glass{open_, [this](const QString& field) { return placeOf(QStringLiteral("glass"), field); }};
    glass_.setFields({glass.length(QStringLiteral("glassWidth"), tr("Width of the glass"), outlook.glass_width,
                                   tr("the opening’s, but for its frame")),
                      glass.length(QStringLiteral("glassHeight"), tr("Height of the glass"), outlook.glass_height,
                                   tr("the opening’s, but for its frame")),
                      glass.length(QStringLiteral("outerDepth"), tr("How far it stands back outside"),
                                   outlook.outer_depth, truehang::shown(open_.survey(), Length::mm(100.0)))});
    const FieldMaker place{open_, [this](const QString& field) { return placeOf(QStringLiteral("place"), field); }};
    place_.setFields(lacksPlace() ? QList<FormField>{place.text(QStringLiteral("coordinates"),
                                                                tr("Or its latitude and longitude, off a map"), {},
                                                                tr("as 54.6, -1.1"))}
                                  : QList<FormField>());
    const Interior interior = open_.roomOf(open_.windowId())->interior.value_or(Interior());
    const FieldMaker room{open_, [this](const QString& field) { return placeOf(QStringLiteral("room"), field); }};
    room_.setFields({room.length(QStringLiteral("width"), tr("Width, along this wall"), interior.width),
                     room.length(QStringLiteral("depth"), tr("Depth, away from it"), interior.depth),
                     room.length(QStringLiteral("height"), tr("Height"), interior.height),
                     room.choice(QStringLiteral("surfaces"), tr("Its surfaces"), interior.surfaces,
                                 truehang::says(Surfaces::middling))});
}

QString OutlookModel::leavePlace(const QString& text) {
    const auto read = read_coordinates(text);
    if (!read) {
        return fault_of(read);
    }
    if (*read) {
        keep_field(open_, placeOf(QStringLiteral("place"), QStringLiteral("coordinates")), text,
                   tr("Where the house stands: %1").arg(text), [at = **read](Survey& survey) {
                       Site site = survey.site.value_or(Site());
                       site.latitude = at.latitude;
                       site.longitude = at.longitude;
                       survey.site = site;
                       return true;
                   });
    }
    return {};
}

QString OutlookModel::leaveGlass(const QString& field, const QString& text) {
    const auto read = read_field_length(open_.survey(), text);
    if (!read) {
        return fault_of(read);
    }
    keep_field(open_, placeOf(QStringLiteral("glass"), field), text, tr("The glass: %1").arg(text),
               within(open_.windowId(), changing_outlook([member = glass_field(field), length = *read](Outlook& held) {
                          return replace(held.*member, length);
                      })));
    return {};
}

QString OutlookModel::leaveRoom(const QString& field, const QString& text) {
    const auto read = read_field_length(open_.survey(), text);
    if (!read) {
        return fault_of(read);
    }
    keep_field(open_, placeOf(QStringLiteral("room"), field), text, tr("The room: %1").arg(text),
               changing_interior(open_.windowId(), [member = room_field(field), length = *read](Interior& held) {
                   return replace(held.*member, length);
               }));
    return {};
}

QString OutlookModel::chooseRoom(const QString& field, const QString& word) {
    if (field == QStringLiteral("surfaces")) {
        open_.edit(tr("The room’s surfaces"), changing_interior(open_.windowId(), [word](Interior& held) {
                       return choose_word(held.surfaces, word);
                   }));
    }
    return {};
}

}  // namespace truehang
