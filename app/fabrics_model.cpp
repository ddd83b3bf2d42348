// SPDX-License-Identifier: Apache-2.0
#include "fabrics_model.h"

#include "form_fields.h"
#include "open_visit.h"
#include "sheet/cloth_colour.h"
#include "trade_words.h"
#include "units/saying.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

Fabric* find_fabric(Survey& survey, const QString& id) {
    const auto found = std::ranges::find_if(survey.fabrics, [&](const Fabric& f) { return shown(f.id) == id; });
    return found == survey.fabrics.end() ? nullptr : &*found;
}

const Fabric* find_fabric(const Survey& survey, const QString& id) {
    const auto found = std::ranges::find_if(survey.fabrics, [&](const Fabric& f) { return shown(f.id) == id; });
    return found == survey.fabrics.end() ? nullptr : &*found;
}

/// Titles of the windows that a fabric hangs at.
QStringList windows_with(const Survey& survey, const QString& id) {
    QStringList titles;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            const bool hangs = std::ranges::any_of(window.layers, [&](const Layer& layer) {
                const auto is = [&](const std::optional<std::string>& cloth) { return cloth && shown(*cloth) == id; };
                return layer.treatment && (is(layer.treatment->fabric) || is(layer.treatment->lining) ||
                                           is(layer.treatment->interlining) || is(layer.treatment->second_lining));
            });
            if (hangs) {
                titles.append(QStringLiteral("%1, %2").arg(shown(room.name), shown(window.name)));
            }
        }
    }
    return titles;
}

using FabricChange = Result<std::function<bool(Fabric&)>>;

FabricChange fabric_length(const Survey& survey, const Fabric& fabric, const QString& field, const QString& text) {
    const auto read = read_field_length(survey, text);
    if (!read) {
        return read.error();
    }
    const Length length = read->value_or(Length());
    const Length width = field == QStringLiteral("width") ? length : fabric.width;
    const Length selvedge = field == QStringLiteral("selvedge") ? length : fabric.selvedge;
    if ((width - 2 * selvedge).mm() <= 0) {
        return Error{
            ErrorCode::out_of_range,
            {},
            bytes(FabricsModel::tr("The width must be more than twice the selvedge: cloth must be left between."))};
    }
    Length Fabric::*const member = field == QStringLiteral("width")      ? &Fabric::width
                                   : field == QStringLiteral("selvedge") ? &Fabric::selvedge
                                                                         : &Fabric::repeat;
    return std::function<bool(Fabric&)>([member, length](Fabric& held) { return replace(held.*member, length); });
}

/// A colour that was typed; an empty text takes it away.
FabricChange fabric_colour(const QString& text) {
    const QString typed = text.trimmed();
    const auto read = read_colour(bytes(typed));
    if (!typed.isEmpty() && !read) {
        return Error{
            ErrorCode::unreadable,
            {},
            bytes(FabricsModel::tr("Six digits 0 to 9 and a to f are understood, as #8f2f2f: two each for red, "
                                   "green and blue."))};
    }
    return std::function<bool(Fabric&)>(
        [colour = read ? write_colour(*read) : std::string()](Fabric& held) { return replace(held.colour, colour); });
}

/// The dyes to choose from; one that was typed is none of them.
FormField dye_field(const Fabric& fabric) {
    FormField made{QStringLiteral("dye"),
                   FabricsModel::tr("Its colour, to draw it with"),
                   QStringLiteral("choice"),
                   {},
                   {},
                   {},
                   {},
                   FabricsModel::tr("not said")};
    made.choices.append(choice({}, FabricsModel::tr("not said")));
    for (const Dye& dye : dyes()) {
        made.choices.append(choice(shown(dye.colour), shown(worded(dye.says))));
        if (dye.colour == fabric.colour) {
            made.text = shown(worded(dye.says));
        }
    }
    made.word = shown(fabric.colour);
    return made;
}

/// What leaving a field changes, or why its text can't be taken.
FabricChange fabric_field(const Survey& survey, const Fabric& fabric, const QString& field, const QString& text) {
    using Change = std::function<bool(Fabric&)>;
    if (field == QStringLiteral("name")) {
        return Change([name = bytes(text.trimmed())](Fabric& held) { return replace(held.name, name); });
    }
    if (field == QStringLiteral("colour")) {
        return fabric_colour(text);
    }
    if (field != QStringLiteral("mass") && field != QStringLiteral("shrinkage")) {
        return fabric_length(survey, fabric, field, text);
    }
    const bool mass = field == QStringLiteral("mass");
    const auto read = read_field_number(text, 0, mass ? 5000 : 50);  // shrinkage: the document's own range
    if (!read) {
        return read.error();
    }
    return mass ? Change([n = *read](Fabric& held) { return replace(held.mass_gsm, n); })
                : Change([n = *read](Fabric& held) { return replace(held.shrinkage_pct, n.value_or(0.0)); });
}

/// A choice of two: the flag set, or not.
FormField yes_or_no(const QString& field, const QString& label, const std::optional<bool>& stored, const QString& no,
                    const QString& yes) {
    const bool is_so = stored.value_or(false);
    FormField made{field, label, QStringLiteral("choice"), is_so ? yes : no, {}, {}, {}, no};
    made.choices = {choice(QStringLiteral("no"), no), choice(QStringLiteral("yes"), yes)};
    made.word = is_so ? QStringLiteral("yes") : QStringLiteral("no");
    return made;
}

bool choose_one_way(std::optional<bool>& held, const QString& word) {
    const bool wanted = word == QStringLiteral("yes");
    return wanted != held.value_or(false) && replace(held, std::optional(wanted));
}

}  // namespace

FabricsModel::FabricsModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      fabrics_({"fabricId", "name", "role", "line", "used", "spoken"}),
      form_({[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
             [this](const QString& field, const QString& text) { return leaveField(field, text); },
             [this](const QString& field, const QString& word) { return chooseField(field, word); }}) {
    connect(&open_, &OpenVisit::opened, this, [this] { done(); });
    connect(&open_, &OpenVisit::changed, this, &FabricsModel::show);
    show();
}

QString FabricsModel::placeOf(const QString& field) const {
    return QStringLiteral("fabric/%1/%2").arg(current_, field);
}

void FabricsModel::show() {
    const Survey& survey = open_.survey();
    QList<ShownRows::Row> rows;
    for (const Fabric& fabric : survey.fabrics) {
        const QString id = shown(fabric.id);
        const QString name = fabric.name.empty() ? tr("Cloth without a name") : shown(fabric.name);
        const QString role = fabric.role ? truehang::says(*fabric.role) : QString();
        QString line = tr("%1 wide").arg(truehang::shown(survey, fabric.width));
        if (fabric.repeat.mm() > 0) {
            line = tr("%1, repeat %2").arg(line, truehang::shown(survey, fabric.repeat));
        }
        if (fabric.one_way.value_or(false)) {
            line = tr("%1, runs one way").arg(line);
        }
        const QStringList hangs = windows_with(survey, id);
        rows.append({id, name, role, line, hangs.join(QStringLiteral("; ")),
                     QStringLiteral("%1, %2, %3").arg(name, role, line)});
    }
    fabrics_.setRows(rows);
    if (!current_.isEmpty() && !find_fabric(survey, current_)) {
        done();
    }
    showForm();
}

void FabricsModel::showForm() {
    const Fabric* fabric = find_fabric(open_.survey(), current_);
    if (!fabric) {
        form_.setFields({});
        return;
    }
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    form_.setFields({make.text(QStringLiteral("name"), tr("Name"), shown(fabric->name)),
                     make.choice(QStringLiteral("role"), tr("Role"), fabric->role, {}),
                     make.length(QStringLiteral("width"), tr("Width of the roll"), fabric->width),
                     make.length(QStringLiteral("selvedge"), tr("Selvedge, each side"), fabric->selvedge),
                     make.length(QStringLiteral("repeat"), tr("Pattern repeat, along the roll"), fabric->repeat),
                     make.choice(QStringLiteral("match"), tr("Match"), fabric->match, tr("No match")),
                     yes_or_no(QStringLiteral("oneWay"), tr("Its design or nap"), fabric->one_way,
                               tr("No way up, or not said"), tr("Runs one way: all pieces top to top")),
                     dye_field(*fabric),
                     make.text(QStringLiteral("colour"), tr("Or its colour as red, green and blue"),
                               shown(fabric->colour), tr("as #8f2f2f")),
                     make.number(QStringLiteral("mass"), tr("Mass"), fabric->mass_gsm, tr("g/m²")),
                     make.number(QStringLiteral("shrinkage"), tr("Shrinkage"), fabric->shrinkage_pct, tr("%"))});
}

QString FabricsModel::leaveField(const QString& field, const QString& text) {
    const Fabric* fabric = find_fabric(open_.survey(), current_);
    if (!fabric) {
        return {};
    }
    const auto change = fabric_field(open_.survey(), *fabric, field, text);
    if (!change) {
        return fault_of(change);
    }
    keep_field(open_, placeOf(field), text, tr("Cloth: %1").arg(text),
               [id = current_, change = *change](Survey& edited) {
                   Fabric* there = find_fabric(edited, id);
                   return there && change(*there);
               });
    return {};
}

QString FabricsModel::chooseField(const QString& field, const QString& word) {
    open_.edit(tr("Cloth: %1").arg(word), [id = current_, field, word](Survey& edited) {
        Fabric* fabric = find_fabric(edited, id);
        if (!fabric) {
            return false;
        }
        return field == QStringLiteral("role")     ? choose_word(fabric->role, word)
               : field == QStringLiteral("match")  ? choose_word(fabric->match, word)
               : field == QStringLiteral("dye")    ? replace(fabric->colour, bytes(word))
               : field == QStringLiteral("oneWay") ? choose_one_way(fabric->one_way, word)
                                                   : false;
    });
    return {};
}

void FabricsModel::edit(const QString& fabricId) {
    if (current_ != fabricId) {
        current_ = fabricId;
        form_.forgetFaults();
        setFault({});
        emit currentChanged();
        showForm();
    }
}

QString FabricsModel::add(const QString& role) {
    Fabric fabric;
    fabric.id = open_.newId();
    fabric.width = Length::mm(1400);
    if (Word<FabricRole>::find(bytes(role))) {
        fabric.role = Word<FabricRole>(bytes(role));
    }
    const bool added = open_.edit(tr("A new cloth"), [fabric](Survey& survey) {
        survey.fabrics.push_back(fabric);
        return true;
    });
    if (!added) {
        return {};
    }
    edit(shown(fabric.id));
    return shown(fabric.id);
}

void FabricsModel::remove(const QString& fabricId) {
    const QStringList hangs = windows_with(open_.survey(), fabricId);
    if (!hangs.isEmpty()) {
        setFault(tr("It hangs at %1. Choose another cloth there first.").arg(hangs.join(QStringLiteral("; "))));
        return;
    }
    open_.edit(tr("A cloth taken out"), [fabricId](Survey& survey) {
        return std::erase_if(survey.fabrics, [&](const Fabric& f) { return shown(f.id) == fabricId; }) > 0;
    });
}

void FabricsModel::done() { edit({}); }

void FabricsModel::setFault(const QString& fault) {
    if (fault_ != fault) {
        fault_ = fault;
        emit faultChanged();
    }
}

}  // namespace truehang
