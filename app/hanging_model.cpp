// SPDX-License-Identifier: Apache-2.0
#include "hanging_model.h"

#include "cautions/cautions.h"
#include "form_fields.h"
#include "hanging_edits.h"
#include "kept_lists.h"
#include "open_visit.h"
#include "own_items.h"
#include "pole_up.h"
#include "sheet/words.h"
#include "sizing/layer.h"
#include "trade_words.h"
#include "units/saying.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

/// The field whose choice brings a caution; empty where none does by itself.
QString field_of_caution(const Layer& layer, const std::string& code) {
    const bool is_said = layer.treatment && layer.treatment->operation;
    // A blind counts as corded as soon as it is chosen.
    return code == "cord-within-reach"        ? (is_said ? QStringLiteral("operation") : QStringLiteral("heading"))
           : code == "power-at-the-window"    ? QStringLiteral("operation")
           : code == "loop-within-reach"      ? QStringLiteral("tieBack")
           : code == "lead-weights"           ? QStringLiteral("weights")
           : code == "curtain-over-heat"      ? QStringLiteral("length")
           : code == "heavy-curtain"          ? QStringLiteral("fabric")
           : code == "cloth-for-public-place" ? QStringLiteral("fabric")
           : code == "load-over-rating"       ? QStringLiteral("rated")
                                              : QString();
}

}  // namespace

HangingModel::HangingModel(OpenVisit& open, const KeptLists& lists, QObject* parent)
    : QObject(parent),
      open_(open),
      lists_(lists),
      layers_({"layerNumber", "title", "line", "current", "spoken"}),
      hardware_(
          {[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
           [this](const QString& field, const QString& text) { return leaveHardware(field, text); },
           [this](const QString& field, const QString& word) { return chooseHardware(field, word); }}),
      treatment_(
          {[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
           [this](const QString& field, const QString& text) { return leaveTreatment(field, text); },
           [this](const QString& field, const QString& word) { return chooseTreatment(field, word); }}),
      flags_({"flag", "severity", "word", "text"}) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        current_ = 0;
        hardware_.forgetFaults();
        treatment_.forgetFaults();
        show();
    });
    connect(&open_, &OpenVisit::changed, this, &HangingModel::show);
    connect(&lists_, &KeptLists::changed, this, &HangingModel::show);
    show();
}

QString HangingModel::windowTitle() const { return open_.titleOf(open_.windowId()); }

QString HangingModel::placeOf(const QString& field) const {
    return QStringLiteral("hanging/%1/%2/%3").arg(open_.windowId()).arg(current_).arg(field);
}

const Layer* HangingModel::layer() const {
    const Window* window = open_.window();
    return window && current_ >= 0 && current_ < static_cast<int>(window->layers.size())
               ? &window->layers[static_cast<std::size_t>(current_)]
               : nullptr;
}

QString HangingModel::summary() const {
    const Layer* there = layer();
    const SheetStyle style{entry_unit(open_.survey()), decimal_mark()};
    return there ? shown(treatment_text(*there, style)) : tr("Nothing hangs here yet");
}

void HangingModel::show() {
    QList<ShownRows::Row> rows;
    const Window* window = open_.window();
    const int count = window ? static_cast<int>(window->layers.size()) : 0;
    current_ = count == 0 ? -1 : std::clamp(current_, 0, count - 1);
    const SheetStyle style{entry_unit(open_.survey()), decimal_mark()};
    for (int number = 0; number < count; ++number) {
        const QString line = shown(treatment_text(window->layers[static_cast<std::size_t>(number)], style));
        const QString title = count == 1            ? tr("What hangs here")
                              : number == 0         ? tr("Layer 1, nearest the glass")
                              : number == count - 1 ? tr("Layer %1, nearest the room").arg(number + 1)
                                                    : tr("Layer %1").arg(number + 1);
        rows.append({number, title, line, number == current_, QStringLiteral("%1: %2").arg(title, line)});
    }
    layers_.setRows(rows);
    showHardware();
    showTreatment();
    showFlags();
    showElsewhere();
    emit changed();
}

void HangingModel::showHardware() {
    const Layer* there = layer();
    if (!there) {
        hardware_.setFields({});
        return;
    }
    const Hardware held = there->hardware.value_or(Hardware());
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const auto asked = asked_of(*there);
    const FormField off_wall =
        make.length(QStringLiteral("projection"), tr("Wall to its centre line"), held.projection);
    QList<FormField> fields = ownFields(held);
    fields.append({make.choice(QStringLiteral("kind"), tr("Hangs from"), held.kind, tr("Pole")),
                   make.choice(QStringLiteral("supply"), tr("Supply"), held.supply, {})});
    if (asked && asked->is_shaped()) {  // it lies along the edge itself
        fields.append(off_wall);
        addLoads(fields, held);
        put(hardware_, fields);
        return;
    }
    fields.append(make.choice(QStringLiteral("hang"), tr("Runs"), held.hang, tr("Level")));
    addShape(fields, held);
    if (!held.kind || held.kind->is(HardwareKind::pole)) {
        fields.append(make.length(QStringLiteral("diameter"), tr("Diameter"), held.diameter));
    }
    const bool bent = asked && asked->is_bent();
    if (!bent || held.length) {  // bent, it is measured: a length that was given stays to be taken out
        fields.append(make.length(QStringLiteral("length"), tr("Length, without finials"), held.length));
    }
    if (!bent) {
        fields.append(make.length(QStringLiteral("left"), tr("Left end, from the opening’s left edge"), held.left,
                                  tr("centred")));
    }
    fields.append({off_wall, make.length(QStringLiteral("finial"), tr("Finial, each end"), held.finial)});
    const auto brackets = held.brackets ? std::optional<double>(*held.brackets) : std::nullopt;
    fields.append({make.number(QStringLiteral("brackets"), tr("Brackets"), brackets, {}),
                   make.length(QStringLiteral("return"), tr("Return, each end"), held.return_depth),
                   make.length(QStringLiteral("overlap"), tr("Overlap, in all"), held.overlap)});
    addLoads(fields, held);
    put(hardware_, fields);
}

/// The surveyor's own hardware, where some is kept.
QList<FormField> HangingModel::ownFields(const Hardware& held) const {
    const QVariantList own = own_hardware_choices(lists_.held());
    if (own.isEmpty()) {
        return {};
    }
    FormField field{QStringLiteral("own"), tr("From your list"), QStringLiteral("choice"), {}, {}, {}, own, {}};
    field.word = find_hardware(lists_.held(), held.name) ? shown(held.name) : QString();
    return {field};
}

/// What is flagged at the layer being edited: what its choices bring by themselves, and what was worked.
std::vector<Flag> HangingModel::flagsHere() const {
    const Layer* there = layer();
    const Room* room = open_.roomOf(open_.windowId());
    std::vector<Flag> flags;
    if (there && room && there->treatment) {
        flags = cautions_of_choice(*room, *there->treatment);
    }
    for (const Flag& flag : there ? open_.figuresOf(open_.windowId()).flags : std::vector<Flag>{}) {
        const bool here = flag.layer.empty() || flag.layer == there->id;
        if (here && std::ranges::none_of(
                        flags, [&](const Flag& said) { return said.code == flag.code && said.text == flag.text; })) {
            flags.push_back(flag);
        }
    }
    return flags;
}

/// Shows the fields, each caution at the one whose choice brings it.
void HangingModel::put(FieldForm& form, QList<FormField> fields) const {
    for (const Flag& flag : flagsHere()) {
        const QString at = flag.severity == Severity::caution ? field_of_caution(*layer(), flag.code) : QString();
        for (FormField& field : fields) {
            if (field.field == at) {
                field.cautions.append(shown(flag.text));
            }
        }
    }
    form.setFields(fields);
}

void HangingModel::showFlags() {
    QList<ShownRows::Row> rows;
    for (const Flag& flag : flagsHere()) {
        const bool at_a_field = flag.severity == Severity::caution && !field_of_caution(*layer(), flag.code).isEmpty();
        if (!at_a_field && (flag.severity == Severity::caution || flag.severity == Severity::decide)) {
            rows.append({static_cast<int>(rows.size()), shown(word_of(flag.severity)),
                         shown(worded(flag_word(flag.severity))), shown(flag.text)});
        }
    }
    flags_.setRows(rows);
}

/// What it is called, weighs, and what it and its fixings carry.
void HangingModel::addLoads(QList<FormField>& fields, const Hardware& held) const {
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const auto kg = [](const std::optional<Mass>& mass) { return mass ? std::optional(mass->kg()) : std::nullopt; };
    const QString unrated = tr("not known");
    fields.append(
        {make.text(QStringLiteral("name"), tr("What it is called"), shown(held.name)),
         make.number(QStringLiteral("mass"), tr("Its own mass"), kg(held.mass), tr("kg"), tr("not known: weigh it")),
         make.number(QStringLiteral("rated"), tr("Its maker says it carries"), kg(held.rated), tr("kg"), unrated),
         make.number(QStringLiteral("bracketRated"), tr("A bracket’s maker says it carries"), kg(held.bracket_rated),
                     tr("kg"), unrated),
         make.number(QStringLiteral("fixingRated"), tr("A bracket’s fixings hold in this wall"), kg(held.fixing_rated),
                     tr("kg"), unrated)});
}

/// Whether it follows the corners, where there are some, and whether it is up, once its place was planned.
void HangingModel::addShape(QList<FormField>& fields, const Hardware& held) const {
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const auto asked = asked_of(*layer());
    const Window& window = *open_.window();
    const bool has_corners = window.shape.is(Shape::bay) || window.shape.is(Shape::corner);
    if (held.run || (has_corners && !(asked && asked->is_blind()))) {
        fields.append(make.choice(QStringLiteral("run"), tr("Round the corners"), held.run, tr("Straight across")));
    }
    const bool is_planned = std::ranges::any_of(
        window.readings, [](const Reading& reading) { return reading.station.starts_with("pole."); });
    if (held.stage || (is_planned && hangs_by_pole_readings(*layer()))) {
        fields.append(make.choice(QStringLiteral("stage"), tr("Is it up?"), held.stage, tr("Not up yet")));
    }
}

/// A top that follows an arch or slopes, and a hem that follows a crooked floor: offered where there is one.
void HangingModel::addEdges(QList<FormField>& fields, const Treatment& held) const {
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const Window& window = *open_.window();
    if (held.top || window.shape.is(Shape::arch) || window.shape.is(Shape::gable)) {
        fields.append(make.choice(QStringLiteral("top"), tr("Top"), held.top, tr("Straight across")));
    }
    const auto& flags = open_.figuresOf(open_.windowId()).flags;
    const bool is_crooked = std::ranges::any_of(
        flags, [](const Flag& flag) { return flag.code == "floor-not-level" || flag.code == "sill-not-level"; });
    if (held.drops || is_crooked) {
        fields.append(make.choice(QStringLiteral("drops"), tr("Hem"), held.drops, tr("Straight, one drop")));
    }
}

FormField HangingModel::clothField(const QString& field, const QString& label,
                                   const std::optional<std::string>& stored) const {
    FormField made{field, label, QStringLiteral("choice"), {}, {}, {}, {}, tr("none")};
    made.choices.append(choice({}, tr("None")));
    for (const Fabric& fabric : open_.survey().fabrics) {
        const QString name = fabric.name.empty() ? shown(fabric.id) : shown(fabric.name);
        made.choices.append(choice(shown(fabric.id), name));
        if (stored == fabric.id) {
            made.word = shown(fabric.id);
            made.text = name;
        }
    }
    made.choices += own_cloth_choices(lists_.held(), open_.survey(), field);
    return made;
}

void HangingModel::showTreatment() {
    const Layer* there = layer();
    if (!there) {
        treatment_.setFields({});
        return;
    }
    const Treatment held = there->treatment.value_or(Treatment());
    const bool blind = held.heading && held.heading->is(Heading::roman);
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    QList<FormField> fields{make.choice(QStringLiteral("heading"), tr("Heading"), held.heading, {})};
    if (blind) {
        fields.append(make.choice(QStringLiteral("fit"), tr("Fit"), held.fit, tr("Inside the recess")));
    } else {
        fields.append(make.choice(QStringLiteral("layout"), tr("Layout"), held.layout, tr("A pair")));
    }
    fields.append(make.choice(QStringLiteral("length"), tr("Length"), held.length, tr("To the floor")));
    if (held.length && held.length->is(HemAt::given)) {
        fields.append(make.length(QStringLiteral("bottom"), tr("Hem above the floor"), held.bottom));
    }
    if (!blind) {
        addEdges(fields, held);
        fields.append(
            make.number(QStringLiteral("fullness"), tr("Fullness"), held.fullness, tr("×"), tr("the heading’s own")));
    }
    fields.append(clothField(QStringLiteral("fabric"), tr("Face cloth"), held.fabric));
    addLinings(fields, held, blind);
    if (held.heading && held.heading->is(Heading::tab)) {
        fields.append(
            make.length(QStringLiteral("tabCut"), tr("Tab, cut length"), held.tab_cut, tr("by the house rules")));
    }
    const QString unsaid = blind ? tr("Not said: counts as a cord") : tr("By hand");
    FormField moved = make.choice(QStringLiteral("operation"), tr("Moved by"), held.operation, unsaid);
    moved.choices.prepend(choice({}, unsaid));
    fields.append(moved);
    if (!blind) {
        fields.append(make.choice(QStringLiteral("weights"), tr("Corner weights"), held.weights, tr("Steel or chain")));
        addTieBack(fields, held);
    }
    addPelmet(fields, held);
    put(treatment_, fields);
}

void HangingModel::addLinings(QList<FormField>& fields, const Treatment& held, bool blind) const {
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    fields.append(clothField(QStringLiteral("lining"), tr("Lining"), held.lining));
    if (held.lining || held.second_lining) {
        fields.append(clothField(QStringLiteral("secondLining"), tr("Second lining"), held.second_lining));
        if (!blind) {
            fields.append(
                make.choice(QStringLiteral("liningHung"), tr("Lining hangs"), held.lining_hung, tr("Sewn in")));
        }
    }
    fields.append(clothField(QStringLiteral("interlining"), tr("Interlining"), held.interlining));
}

void HangingModel::addTieBack(QList<FormField>& fields, const Treatment& held) const {
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const auto kind = held.tie_back ? std::optional(held.tie_back->kind.value_or(TieBackKind::tie_back)) : std::nullopt;
    FormField field = make.choice(QStringLiteral("tieBack"), tr("Held back by"), kind, tr("nothing"));
    field.choices.prepend(choice({}, tr("Nothing")));
    fields.append(field);
    if (!kind) {
        return;
    }
    fields.append(make.length(QStringLiteral("tieBackHeight"), tr("Height above the floor"), held.tie_back->height,
                              tr("two thirds down")));
    if (!kind->is(TieBackKind::holdback)) {
        fields.append(make.length(QStringLiteral("tieBackLength"), tr("Tie-back length"), held.tie_back->length,
                                  tr("round the drawn-back curtain")));
    }
}

void HangingModel::addPelmet(QList<FormField>& fields, const Treatment& held) const {
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    FormField pelmet{QStringLiteral("pelmet"), tr("Pelmet"), QStringLiteral("choice"), {}, {}, {}, {}, {}};
    pelmet.choices = {choice(QStringLiteral("no"), tr("None")), choice(QStringLiteral("yes"), tr("With a pelmet"))};
    pelmet.word = held.pelmet ? QStringLiteral("yes") : QStringLiteral("no");
    pelmet.text = held.pelmet ? tr("With a pelmet") : tr("None");
    fields.append(pelmet);
    if (held.pelmet) {
        fields.append(make.length(QStringLiteral("pelmetDepth"), tr("Pelmet depth"), held.pelmet->depth,
                                  tr("by the house rules")));
        fields.append(
            make.length(QStringLiteral("pelmetReturn"), tr("Pelmet return, each end"), held.pelmet->return_depth));
    }
}

void HangingModel::editLayerWith(const QString& says, const QString& place, const QString& text,
                                 const std::function<bool(Layer&)>& change) {
    const auto at = static_cast<std::size_t>(std::max(current_, 0));
    const bool changed = open_.editWindow(
        says, open_.windowId(),
        [at, change](Window& window) { return at < window.layers.size() && change(window.layers[at]); },
        [this, place, text](const QString& fault) {
            if (!fault.isEmpty() && !text.isEmpty()) {
                open_.place().setText(place, text, true);
            } else if (open_.place().text(place) == text) {
                open_.place().forget(place);
            }
        });
    if (!changed) {
        open_.place().forget(place);
    }
}

QString HangingModel::leaveHardware(const QString& field, const QString& text) {
    const auto change = hardware_field(open_.survey(), field, text);
    if (!change) {
        return fault_of(change);
    }
    editLayerWith(tr("Hardware: %1").arg(text), placeOf(field), text, *change);
    return {};
}

QString HangingModel::leaveTreatment(const QString& field, const QString& text) {
    const auto change = treatment_field(open_.survey(), field, text);
    if (!change) {
        return fault_of(change);
    }
    editLayerWith(tr("Treatment: %1").arg(text), placeOf(field), text, *change);
    return {};
}

QString HangingModel::chooseHardware(const QString& field, const QString& word) {
    if (field == QStringLiteral("own")) {
        takeHardware(word);
        return {};
    }
    editLayerWith(tr("Hardware: %1").arg(word), placeOf(field), {}, hardware_choice(field, word));
    return {};
}

QString HangingModel::chooseTreatment(const QString& field, const QString& word) {
    if (const std::string own = own_cloth_of(word); !own.empty()) {
        hangOwnCloth(field, own);
        return {};
    }
    editLayerWith(tr("Treatment: %1").arg(word), placeOf(field), {}, treatment_choice(field, word));
    return {};
}

/// The cloth joins the visit and hangs here in one edit.
void HangingModel::hangOwnCloth(const QString& field, const std::string& id) {
    const auto& cloths = lists_.held().fabrics;
    const auto own = std::ranges::find(cloths, id, &Fabric::id);
    if (own == cloths.end()) {
        return;
    }
    const auto at = static_cast<std::size_t>(std::max(current_, 0));
    open_.edit(tr("Treatment: %1").arg(shown(own->name)),
               [own = *own, at, field, id = open_.newId(), window = bytes(open_.windowId())](Survey& survey) {
                   const QString cloth = shown(take_cloth(survey, own, id));
                   for (Room& room : survey.rooms) {
                       const auto there = std::ranges::find(room.windows, window, &Window::id);
                       if (there != room.windows.end() && at < there->layers.size()) {
                           return treatment_choice(field, cloth)(there->layers[at]);
                       }
                   }
                   return false;
               });
}

bool HangingModel::takeHardware(const QString& name) {
    const Hardware* own = find_hardware(lists_.held(), bytes(name));
    if (!own || !layer()) {
        return false;
    }
    editLayerWith(tr("Hardware: %1").arg(name), {}, {}, [taken = for_another_place(*own)](Layer& layer) {
        layer.hardware = taken;
        return true;
    });
    return true;
}

void HangingModel::showElsewhere() {
    QList<ShownRows::Row> rows;
    const Window* here = open_.window();
    const SheetStyle style{entry_unit(open_.survey()), decimal_mark()};
    if (here && here->layers.empty()) {
        for (const Room& room : open_.survey().rooms) {
            for (const Window& window : room.windows) {
                if (&window != here && !window.layers.empty()) {
                    const QString title = tr("As at %1").arg(open_.titleOf(shown(window.id)));
                    const QString line = shown(treatment_text(window.layers.front(), style));
                    rows.append({shown(window.id), title, line, QStringLiteral("%1: %2").arg(title, line)});
                }
            }
        }
    }
    elsewhere_.setRows(rows);
}

void HangingModel::hangAsAt(const QString& windowId) {
    const Window* there = open_.window(windowId);
    if (!there || there->layers.empty()) {
        return;
    }
    const auto copied = for_another_window(there->layers, [this] { return open_.newId(); });
    const bool layered = there->layered;
    open_.editWindow(tr("Hung as at %1").arg(open_.titleOf(windowId)), open_.windowId(), [=](Window& window) {
        if (!window.layers.empty()) {
            return false;
        }
        window.layers = copied;
        window.layered = layered;
        return true;
    });
}

void HangingModel::addLayer() {
    const auto was = open_.window() ? open_.window()->layers.size() : 0;
    const bool added = open_.editWindow(tr("A layer more"), open_.windowId(),
                                        [first = open_.newId(), second = open_.newId()](Window& window) {
                                            Layer layer;
                                            layer.hardware.emplace().kind = Word<HardwareKind>(HardwareKind::pole);
                                            layer.treatment.emplace();
                                            if (!window.layers.empty()) {  // from two on, each has its id
                                                window.layered = true;
                                                for (Layer& one : window.layers) {
                                                    if (one.id.empty()) {
                                                        one.id = first;
                                                    }
                                                }
                                                layer.id = second;
                                            }
                                            window.layers.push_back(layer);
                                            return true;
                                        });
    if (added) {
        editLayer(static_cast<int>(was));
    }
}

void HangingModel::editLayer(int layer) {
    current_ = layer;
    hardware_.forgetFaults();
    treatment_.forgetFaults();
    show();
}

void HangingModel::removeLayer(int layer) {
    open_.editWindow(tr("A layer taken out"), open_.windowId(), [layer](Window& window) {
        if (layer < 0 || layer >= static_cast<int>(window.layers.size())) {
            return false;
        }
        window.layers.erase(window.layers.begin() + layer);
        return true;
    });
}

}  // namespace truehang
