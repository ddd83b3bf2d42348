// SPDX-License-Identifier: Apache-2.0
#include "obstructions_model.h"

#include "form_fields.h"
#include "open_visit.h"
#include "sheet/words.h"
#include "trade_words.h"
#include "units/saying.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

const Obstruction* find_obstruction(const Window* window, const QString& id) {
    if (!window) {
        return nullptr;
    }
    const auto found =
        std::ranges::find_if(window->obstructions, [&](const Obstruction& o) { return shown(o.id) == id; });
    return found == window->obstructions.end() ? nullptr : &*found;
}

/// The length that a field of the form holds.
std::optional<Length> Obstruction::*length_of(const QString& field) {
    if (field == QStringLiteral("left")) {
        return &Obstruction::left;
    }
    if (field == QStringLiteral("width")) {
        return &Obstruction::width;
    }
    if (field == QStringLiteral("bottom")) {
        return &Obstruction::bottom;
    }
    if (field == QStringLiteral("height")) {
        return &Obstruction::height;
    }
    return field == QStringLiteral("depth") ? &Obstruction::depth : nullptr;
}

/// Changes one obstruction of a window.
auto changing(const QString& id, const std::function<bool(Obstruction&)>& change) {
    return [id, change](Window& window) {
        for (Obstruction& one : window.obstructions) {
            if (shown(one.id) == id) {
                return change(one);
            }
        }
        return false;
    };
}

}  // namespace

ObstructionsModel::ObstructionsModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      obstructions_({"obstructionId", "kind", "kindWord", "line", "note", "caution", "spoken"}),
      kinds_({"word", "says"}),
      form_({[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
             [this](const QString& field, const QString& text) { return leaveField(field, text); },
             [this](const QString& field, const QString& word) { return chooseField(field, word); }}),
      placing_(open),
      wall_(open) {
    QList<ShownRows::Row> kinds;
    for (const auto& [word, kind] : Words<ObstructionKind>::list) {
        kinds.append({shown(word), truehang::says(kind)});
    }
    kinds_.setRows(kinds);
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        done();
        show();
    });
    connect(&open_, &OpenVisit::changed, this, &ObstructionsModel::show);
    connect(&placing_, &ObstructionPlacing::moved, this, &ObstructionsModel::follow);
    show();
}

QString ObstructionsModel::windowTitle() const { return open_.titleOf(open_.windowId()); }

QString ObstructionsModel::placeOf(const QString& field) const {
    return QStringLiteral("obstruction/%1/%2").arg(current_, field);
}

QString ObstructionsModel::kindSays(const Obstruction& one) {
    return one.kind ? truehang::says(*one.kind) : tr("Something");
}

QString ObstructionsModel::lineOf(const Obstruction& one, bool with_units) const {
    QStringList parts;
    const QString unit = with_units ? QLatin1Char(' ') + shown(word_of(entry_unit(open_.survey()))) : QString();
    const auto part = [&](const QString& words, const std::optional<Length>& length) {
        if (length) {
            parts.append(words.arg(truehang::shown(open_.survey(), length) + unit));
        }
    };
    part(tr("%1 from the left edge"), one.left);
    part(tr("%1 wide"), one.width);
    part(tr("%1 above the floor"), one.bottom);
    part(tr("%1 high"), one.height);
    part(tr("%1 out from the wall"), one.depth);
    return parts.isEmpty() ? tr("not measured yet") : parts.join(QStringLiteral(", "));
}

QString ObstructionsModel::cautionOf(const Obstruction& one) const {
    const auto& flags = open_.figuresOf(open_.windowId()).flags;
    const auto flag = std::ranges::find_if(flags, [&](const Flag& f) { return f.obstruction == one.id; });
    return flag == flags.end() ? QString() : shown(flag->text);
}

QString ObstructionsModel::standsAt() const {
    const Obstruction* one = edited();
    return one ? QStringLiteral("%1, %2").arg(kindSays(*one), lineOf(*one, true)) : QString();
}

QString ObstructionsModel::placeLine() const {
    const Obstruction* one = edited();
    if (!one || !one->left || !one->bottom) {
        return {};
    }
    return tr("%1 from the left edge, %2 above the floor")
        .arg(truehang::shown(open_.survey(), one->left), truehang::shown(open_.survey(), one->bottom));
}

std::vector<Flag> ObstructionsModel::met() const {
    std::vector<Flag> met;
    const Obstruction* one = edited();
    if (!one) {
        return met;
    }
    for (const Flag& flag : placing_.moving() ? placing_.flags() : open_.figuresOf(open_.windowId()).flags) {
        if (meets_something(flag) && flag.obstruction == one->id) {
            met.push_back(flag);
        }
    }
    std::ranges::stable_partition(met, [](const Flag& flag) { return flag.severity == Severity::caution; });
    return met;
}

QString ObstructionsModel::meets() const {
    QStringList texts;
    for (const Flag& flag : met()) {
        texts.append(shown(flag.text));
    }
    return texts.join(QLatin1Char(' '));
}

QString ObstructionsModel::meetsSeverity() const {
    const auto flags = met();
    return flags.empty() ? QString() : shown(word_of(flags.front().severity));
}

QString ObstructionsModel::meetsWord() const {
    const auto flags = met();
    return flags.empty() ? QString() : shown(worded(flag_word(flags.front().severity)));
}

const Obstruction* ObstructionsModel::edited() const {
    const Obstruction* moved = placing_.held(current_);
    return moved ? moved : find_obstruction(open_.window(), current_);
}

void ObstructionsModel::follow() {
    if (placing_.moving()) {
        for (const QString& field : {QStringLiteral("left"), QStringLiteral("bottom")}) {
            open_.place().forget(placeOf(field));
        }
        form_.forgetFaults();
    }
    showForm();
    emit placeChanged();
}

void ObstructionsModel::show() {
    QList<ShownRows::Row> rows;
    if (const Window* window = open_.window()) {
        for (const Obstruction& one : window->obstructions) {
            const QString kind = kindSays(one);
            const QString line = lineOf(one);
            const QString caution = cautionOf(one);
            QStringList spoken{kind, lineOf(one, true), shown(one.note)};
            spoken.removeAll(QString());
            rows.append({shown(one.id), kind, one.kind ? shown(one.kind->text()) : QString(), line, shown(one.note),
                         caution, spoken.join(QStringLiteral(", "))});
        }
    }
    obstructions_.setRows(rows);
    showForm();
    emit changed();
    emit placeChanged();
}

void ObstructionsModel::showForm() {
    const Obstruction* one = edited();
    if (!one) {
        current_.clear();
        form_.setFields({});
        return;
    }
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    form_.setFields({make.length(QStringLiteral("left"), tr("From the opening’s left edge"), one->left,
                                 tr("with a minus: to the left of it")),
                     make.length(QStringLiteral("width"), tr("Width"), one->width),
                     make.length(QStringLiteral("bottom"), tr("Lower edge above the floor"), one->bottom),
                     make.length(QStringLiteral("height"), tr("Height"), one->height),
                     make.length(QStringLiteral("depth"), tr("Out from the wall"), one->depth),
                     make.text(QStringLiteral("note"), tr("Note"), shown(one->note)),
                     make.choice(QStringLiteral("kind"), tr("What it is"), one->kind, {})});
}

QString ObstructionsModel::leaveField(const QString& field, const QString& text) {
    const QString window = open_.windowId();
    const QString place = placeOf(field);
    std::function<bool(Obstruction&)> change;
    if (field == QStringLiteral("note")) {
        change = [text](Obstruction& one) { return replace(one.note, bytes(text.trimmed())); };
    } else if (const auto member = length_of(field)) {
        const auto read = read_field_length(open_.survey(), text, field == QStringLiteral("left"));
        if (!read) {
            return fault_of(read);
        }
        change = [member, length = *read](Obstruction& one) { return replace(one.*member, length); };
    } else {
        return {};
    }
    const bool changed = open_.editWindow(tr("In the way: %1").arg(text), window, changing(current_, change),
                                          [this, place, text](const QString& fault) {
                                              if (!fault.isEmpty()) {
                                                  open_.place().setText(place, text, true);
                                              } else if (open_.place().text(place) == text) {
                                                  open_.place().forget(place);
                                              }
                                          });
    if (!changed) {
        open_.place().forget(place);
    }
    return {};
}

QString ObstructionsModel::chooseField(const QString& field, const QString& word) {
    if (field == QStringLiteral("kind")) {
        open_.editWindow(tr("In the way: %1").arg(word), open_.windowId(),
                         changing(current_, [word](Obstruction& one) { return choose_word(one.kind, word); }));
    }
    return {};
}

QString ObstructionsModel::add(const QString& kind) {
    if (!Word<ObstructionKind>::find(bytes(kind))) {
        return {};
    }
    Obstruction one;
    one.id = open_.newId();
    one.kind = Word<ObstructionKind>(bytes(kind));
    const bool added =
        open_.editWindow(tr("In the way: %1").arg(truehang::says(*one.kind)), open_.windowId(), [one](Window& window) {
            window.obstructions.push_back(one);
            return true;
        });
    if (!added) {
        return {};
    }
    edit(shown(one.id));
    return shown(one.id);
}

void ObstructionsModel::edit(const QString& obstructionId) {
    current_ = obstructionId;
    form_.forgetFaults();
    showForm();
    emit changed();
    emit placeChanged();
}

void ObstructionsModel::remove(const QString& obstructionId) {
    open_.editWindow(tr("No longer in the way"), open_.windowId(), [obstructionId](Window& window) {
        return std::erase_if(window.obstructions, [&](const Obstruction& o) { return shown(o.id) == obstructionId; }) >
               0;
    });
}

void ObstructionsModel::done() { edit({}); }

}  // namespace truehang
