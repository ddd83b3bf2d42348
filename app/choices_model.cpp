// SPDX-License-Identifier: Apache-2.0
#include "choices_model.h"

#include "choice_lines.h"
#include "form_fields.h"
#include "hanging_edits.h"
#include "hanging_model.h"
#include "open_visit.h"
#include "sheet/words.h"
#include "trade_words.h"
#include "units/saying.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

constexpr int most = 3;  ///< choices of the surveyor's own

constexpr std::array field_names{"heading", "length", "fullness", "fabric", "lining", "hardware"};

// What the choice of a lining says: no lining, or the one with the id that follows.
constexpr QLatin1String unlined("no");
constexpr QLatin1String lined("is:");

bool is_fabric(const Survey& survey, const QString& id) {
    return std::ranges::any_of(survey.fabrics, [&](const Fabric& one) { return shown(one.id) == id; });
}

QString name_of(const Survey& survey, const std::string& id) {
    const auto fabric = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return fabric == survey.fabrics.end() ? shown(id) : shown(short_name(*fabric));
}

bool may_be_face(const Fabric& fabric) {
    return !fabric.role || fabric.role->is(FabricRole::face) || fabric.role->is(FabricRole::sheer);
}

/// Whether any of what a variation can change differs.
bool differ(const Layer& one, const Layer& other) {
    const Treatment a = one.treatment.value_or(Treatment());
    const Treatment b = other.treatment.value_or(Treatment());
    const auto length = [](const Layer& of) { return of.hardware ? of.hardware->length : std::nullopt; };
    return a.heading != b.heading || a.fullness != b.fullness || a.length != b.length || a.fabric != b.fabric ||
           a.lining != b.lining || a.decided != b.decided || length(one) != length(other);
}

QVariantList flag_list(const std::vector<Flag>& flags) {
    QVariantList list;
    for (const Severity severity :
         {Severity::stop, Severity::remeasure, Severity::decide, Severity::caution, Severity::note}) {
        for (const Flag& flag : flags) {
            if (flag.severity == severity) {
                list.append(QVariantMap{{QStringLiteral("severity"), shown(word_of(severity))},
                                        {QStringLiteral("word"), shown(worded(flag_word(severity)))},
                                        {QStringLiteral("text"), shown(flag.text)}});
            }
        }
    }
    return list;
}

}  // namespace

ChoicesModel::ChoicesModel(OpenVisit& open, HangingModel& hanging, QObject* parent)
    : QObject(parent),
      open_(open),
      hanging_(hanging),
      choices_({"choice", "title", "says", "number", "canTake", "flags", "spoken"}),
      lines_({"line", "label", "cells"}),
      form_({[this](const QString& field, const QString& text) { ask(edited_, field, text); },
             [this](const QString& field, const QString& text) { return leave(field, text); },
             [this](const QString& field, const QString& word) { return leave(field, word); }}) {
    connect(&open_, &OpenVisit::windowChanged, this, &ChoicesModel::done);
    connect(&hanging_, &HangingModel::changed, this, &ChoicesModel::show);
}

const Layer* ChoicesModel::layer() const {
    const Window* window = open_.window();
    const int current = hanging_.current();
    return window && current >= 0 && current < static_cast<int>(window->layers.size())
               ? &window->layers[static_cast<std::size_t>(current)]
               : nullptr;
}

std::string ChoicesModel::layerId() const {
    const Window* window = open_.window();
    return window && window->layered && layer() ? layer()->id : std::string();
}

QString ChoicesModel::placeOf(const QString& what) const {
    return QStringLiteral("choices/%1/%2/%3").arg(open_.windowId(), shown(layerId()), what);
}

QString ChoicesModel::placeOf(int number, const QString& field) const {
    return placeOf(QStringLiteral("%1/%2").arg(number).arg(field));
}

int ChoicesModel::count() const {
    return std::clamp(open_.place().text(placeOf(QStringLiteral("count"))).toInt(), 0, most);
}

void ChoicesModel::setCount(int count) {
    open_.place().setText(placeOf(QStringLiteral("count")), QString::number(count));
}

QString ChoicesModel::asked(int number, const QString& field) const {
    return open_.place().text(placeOf(number, field));
}

void ChoicesModel::ask(int number, const QString& field, const QString& text) {
    if (number >= 0 && number < count() && asked(number, field) != text) {
        open_.place().setText(placeOf(number, field), text);
    }
}

bool ChoicesModel::canAdd() const { return layer() != nullptr && count() < most; }

/// What a choice changes; a field that can't be read changes nothing.
Variation ChoicesModel::variation(int number) const {
    const Survey& survey = open_.survey();
    Variation wanted;
    wanted.heading = Word<Heading>::find(bytes(asked(number, QStringLiteral("heading"))));
    wanted.length = Word<HemAt>::find(bytes(asked(number, QStringLiteral("length"))));
    if (const auto fullness = read_fullness(asked(number, QStringLiteral("fullness")))) {
        wanted.fullness = *fullness;
    }
    if (const QString fabric = asked(number, QStringLiteral("fabric")); is_fabric(survey, fabric)) {
        wanted.fabric = bytes(fabric);
    }
    const QString lining = asked(number, QStringLiteral("lining"));
    if (lining == unlined) {
        wanted.lining = "";
    } else if (lining.startsWith(lined) && is_fabric(survey, lining.mid(lined.size()))) {
        wanted.lining = bytes(lining.mid(lined.size()));
    }
    if (const auto length = read_field_length(survey, asked(number, QStringLiteral("hardware")))) {
        wanted.hardware_length = *length;
    }
    return wanted;
}

QString ChoicesModel::says(const Variation& variation) const {
    const Survey& survey = open_.survey();
    QStringList parts;
    if (variation.heading) {
        parts.append(truehang::says(*variation.heading));
    }
    if (variation.fullness) {
        parts.append(tr("%1 × fullness").arg(truehang::shown(variation.fullness)));
    }
    if (variation.length) {
        parts.append(truehang::says(*variation.length));
    }
    if (variation.fabric) {
        parts.append(name_of(survey, *variation.fabric));
    }
    if (variation.lining) {
        parts.append(variation.lining->empty() ? tr("Unlined")
                                               : tr("Lined with %1").arg(name_of(survey, *variation.lining)));
    }
    if (variation.hardware_length) {
        parts.append(tr("Hardware %1 %2 long")
                         .arg(truehang::shown(survey, variation.hardware_length), shown(word_of(entry_unit(survey)))));
    }
    for (int part = 1; part < parts.size(); ++part) {
        if (!variation.fabric || parts[part] != name_of(survey, *variation.fabric)) {
            parts[part] = within_sentence(parts[part]);
        }
    }
    return parts.isEmpty() ? tr("Nothing changed yet") : parts.join(QStringLiteral(", "));
}

void ChoicesModel::setShown(bool shown) {
    if (shown_ != shown) {
        shown_ = shown;
        show();
    }
}

/// Sets out what is usually worth comparing.
void ChoicesModel::setOutUsual() {
    const Survey& survey = open_.survey();
    const auto& layers = open_.figuresOf(open_.windowId()).layers;
    const auto at = static_cast<std::size_t>(hanging_.current());
    const auto usual = at < layers.size() ? usual_variations(survey, *layer(), layers[at]) : std::vector<Variation>{};
    const int set_out = std::min(most, static_cast<int>(usual.size()));
    setCount(set_out);
    for (int number = 0; number < set_out; ++number) {
        const Variation& one = usual[static_cast<std::size_t>(number)];
        ask(number, QStringLiteral("fullness"), truehang::shown(one.fullness));
        ask(number, QStringLiteral("fabric"), one.fabric ? shown(*one.fabric) : QString());
        ask(number, QStringLiteral("lining"),
            !one.lining           ? QString()
            : one.lining->empty() ? QString(unlined)
                                  : lined + shown(*one.lining));
        ask(number, QStringLiteral("hardware"), truehang::shown(survey, one.hardware_length));
    }
}

void ChoicesModel::show() {
    if (!shown_) {
        return;
    }
    if (!layer()) {
        edited_ = -1;
        note_.clear();
        compared_.clear();
        choices_.setRows({});
        lines_.setRows({});
        showForm();
        emit changed();
        return;
    }
    if (!open_.place().has(placeOf(QStringLiteral("count")))) {
        setOutUsual();
    }
    std::vector<Variation> own;
    for (int number = 0; number < count(); ++number) {
        own.push_back(variation(number));
    }
    const Room* room = open_.roomOf(open_.windowId());
    const auto compared = compare(open_.survey(), room ? room->id : "", bytes(open_.windowId()), layerId(), own);
    const auto choices = compared ? compared->choices : std::vector<Choice>{};
    showLines(choices);
    showForm();
    emit changed();
}

std::optional<ChoicesModel::AsDrawn> ChoicesModel::asDrawn(int row) const {
    const Window* window = open_.window();
    if (row < 0 || row >= static_cast<int>(compared_.size()) || !layer()) {
        return std::nullopt;
    }
    AsDrawn drawn{*window, open_.figuresOf(open_.windowId())};
    const Choice& choice = compared_[static_cast<std::size_t>(row)];
    const auto at = static_cast<std::size_t>(hanging_.current());
    drawn.window.layers[at] = varied(std::move(drawn.window.layers[at]), choice.variation);
    if (at < drawn.figures.layers.size()) {
        drawn.figures.layers[at] = choice.figures;
    }
    return drawn;
}

void ChoicesModel::showLines(const std::vector<Choice>& choices) {
    compared_ = choices;
    QList<ShownRows::Row> rows;
    const int before = static_cast<int>(choices.size()) - count();  // what hangs now and its edges
    for (int at = 0; at < static_cast<int>(choices.size()); ++at) {
        const Choice& choice = choices[static_cast<std::size_t>(at)];
        const int number = at < before ? -1 : at - before;
        const QString key = number >= 0 ? QStringLiteral("own%1").arg(number) : QStringLiteral("%1").arg(at);
        const QString title = number >= 0          ? tr("Choice %1").arg(number + 1)
                              : choice.on_the_edge ? tr("On the edge")
                                                   : tr("As it hangs now");
        const QString text = number >= 0          ? says(choice.variation)
                             : choice.on_the_edge ? shown(choice.says)
                                                  : hanging_.summary();
        const bool takes = differ(*layer(), varied(*layer(), choice.variation));
        rows.append({key, title, text, number, takes, at == 0 ? QVariantList() : flag_list(choice.flags),
                     QStringLiteral("%1: %2").arg(title, text)});
    }
    choices_.setRows(rows);
    lines_.setRows(choice_lines(open_.survey(), choices));
    answers_.clear();
    for (int at = 0; at < before; ++at) {
        answers_.push_back(choices[static_cast<std::size_t>(at)].variation);
    }
    note_ = has_sums(choices) ? shown(worded(not_a_quotation)) : QString();
}

void ChoicesModel::showForm() {
    const Layer* there = layer();
    if (!there || edited_ < 0 || edited_ >= count()) {
        form_.setFields({});
        return;
    }
    const QString stays = tr("as it hangs now");
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(edited_, field); }};
    const auto chosen = [&](const QString& field, const QString& label, QVariantList among) {
        FormField made{field, label, QStringLiteral("choice"), {}, {}, asked(edited_, field), {}, stays};
        among.prepend(choice({}, tr("As it hangs now")));
        for (const QVariant& one : among) {
            if (one.toMap().value(QStringLiteral("word")) == made.word) {
                made.text = one.toMap().value(QStringLiteral("says")).toString();
            }
        }
        made.choices = among;
        return made;
    };
    QVariantList lengths = choices_of<HemAt>();
    const QString given = shown(Word<HemAt>::word_for(HemAt::given));  // would ask for a height
    lengths.removeIf([&](const QVariant& one) { return one.toMap().value(QStringLiteral("word")) == given; });
    QVariantList faces;
    QVariantList linings{choice(unlined, tr("Unlined"))};
    for (const Fabric& fabric : open_.survey().fabrics) {
        const QString name = shown(short_name(fabric));
        may_be_face(fabric) ? faces.append(choice(shown(fabric.id), name))
                            : linings.append(choice(lined + shown(fabric.id), name));
    }
    form_.setFields({chosen(QStringLiteral("heading"), tr("Heading"), choices_of<Heading>()),
                     make.number(QStringLiteral("fullness"), tr("Fullness"), {}, tr("×"), stays),
                     chosen(QStringLiteral("length"), tr("Length"), lengths),
                     chosen(QStringLiteral("fabric"), tr("Face cloth"), faces),
                     chosen(QStringLiteral("lining"), tr("Lining"), linings),
                     make.length(QStringLiteral("hardware"), tr("Hardware length, without finials"), {}, stays)});
}

QString ChoicesModel::leave(const QString& field, const QString& text) {
    QString fault;
    if (field == QStringLiteral("fullness")) {
        fault = fault_of(read_fullness(text));
    } else if (field == QStringLiteral("hardware")) {
        fault = fault_of(read_field_length(open_.survey(), text));
    }
    ask(edited_, field, text);
    show();
    return fault;
}

void ChoicesModel::add() {
    if (canAdd()) {
        const int number = count();
        open_.place().forgetUnder(placeOf(number, {}));
        setCount(number + 1);
        edit(number);
    }
}

void ChoicesModel::edit(int number) {
    edited_ = number >= 0 && number < count() ? number : -1;
    form_.forgetFaults();
    show();
}

void ChoicesModel::done() {
    edited_ = -1;
    form_.forgetFaults();
    show();
}

void ChoicesModel::leaveOut(int number) {
    const int last = count() - 1;
    if (number < 0 || number > last) {
        return;
    }
    for (int at = number; at < last; ++at) {
        for (const char* name : field_names) {
            const QString field = QLatin1String(name);
            ask(at, field, asked(at + 1, field));
        }
    }
    open_.place().forgetUnder(placeOf(last, {}));
    setCount(last);
    done();
}

/// Hangs the layer as the variation has it; false where that changes nothing.
bool ChoicesModel::hang(const QString& step, const Variation& wanted) {
    const auto at = static_cast<std::size_t>(hanging_.current());
    return open_.editWindow(step, open_.windowId(), [wanted, at](Window& window) {
        if (at >= window.layers.size()) {
            return false;
        }
        Layer hung = varied(window.layers[at], wanted);
        const bool changes = differ(window.layers[at], hung);
        window.layers[at] = std::move(hung);
        return changes;
    });
}

void ChoicesModel::take(int number) {
    if (number < 0 || number >= count() || !layer()) {
        return;
    }
    const Variation wanted = variation(number);
    if (hang(tr("Hung as chosen: %1").arg(says(wanted)), wanted)) {
        leaveOut(number);
    }
}

void ChoicesModel::settle(int row) {
    if (row < 0 || row >= static_cast<int>(answers_.size()) || !layer()) {
        return;
    }
    const Variation wanted = answers_[static_cast<std::size_t>(row)];
    hang(tr("Decided: %1").arg(choices_.value(row, QStringLiteral("says")).toString()), wanted);
}

}  // namespace truehang
