// SPDX-License-Identifier: Apache-2.0
#include "rules_model.h"

#include "document/rules_document.h"
#include "document/survey_parts.h"
#include "form_fields.h"
#include "open_visit.h"
#include "sheet/words.h"
#include "survey/house_rules.h"
#include "trade_words.h"
#include "units/saying.h"
#include "whereabouts.h"
#include "workroom_rules.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

constexpr std::string_view own_rule = "edge_u_mm";  ///< read at each house
constexpr double any = 1e9;                         ///< the rule's own range is looked at after this

/// One rule of the list.
struct Listed {
    std::string rule;
    QString group, says;
};

std::vector<Listed> all_rules() {
    std::vector<Listed> all;
    for (const RuleWords& words : rule_words()) {
        all.push_back({std::string(words.key), shown(worded(words.group)), shown(worded(words.says))});
    }
    for (const auto& [word, heading] : Words<Heading>::list) {
        if (heading != Heading::slot && heading != Heading::roman) {
            all.push_back(
                {"head_mm." + std::string(word), RulesModel::tr("Heads"),
                 RulesModel::tr("Cloth taken above the finished top: %1").arg(within_sentence(says(heading)))});
        }
    }
    return all;
}

/// What stands behind the number of a rule that is no length.
QString unit_of(std::string_view rule) {
    return rule == "angle_u_deg"                                     ? QStringLiteral("°")
           : rule.ends_with("_m")                                    ? QStringLiteral("m")
           : rule == "fullness_slack" || rule == "separate_fullness" ? RulesModel::tr("× fullness")
           : rule == "weight_every"                                  ? RulesModel::tr("widths")
           : rule == "pleats_per_width"                              ? RulesModel::tr("pleats")
           : rule == "placing_repeats"                               ? RulesModel::tr("repeats")
           : rule == "tie_back_share"                                ? RulesModel::tr("of the drop")
           : rule == "pelmet_share"                                  ? RulesModel::tr("of the length")
           : rule == "making_per_width"                              ? RulesModel::tr("a width")
                                                                     : QString();
}

QString number_of(const Survey& survey, std::string_view rule, double value) {
    return is_length_rule(rule) ? shown(survey, Length::mm(value)) : shown(std::optional(value));
}

QString value_of(const Survey& survey, std::string_view rule, double value) {
    const QString unit = is_length_rule(rule) ? shown(word_of(entry_unit(survey))) : unit_of(rule);
    const QString number = number_of(survey, rule, value);
    return unit == QStringLiteral("°") ? number + unit : QStringLiteral("%1 %2").arg(number, unit).trimmed();
}

/// "Harbour workroom, version 3, 14 March 2026".
QString label_of(const HouseRuleEntries& rules) {
    QStringList parts{rules.name.empty() ? RulesModel::tr("The defaults of the trade") : shown(rules.name)};
    if (rules.version) {
        parts.append(RulesModel::tr("version %1").arg(*rules.version));
    }
    if (!rules.date.empty()) {
        parts.append(shown(day_text(rules.date)));
    }
    return parts.join(QStringLiteral(", "));
}

std::map<std::string, double> values_of(HouseRuleEntries rules) {
    rules.numbers.erase(std::string(own_rule));
    std::map<std::string, double> values = std::move(rules.numbers);
    for (const Listed& listed : all_rules()) {
        if (listed.rule != own_rule) {
            values[listed.rule] = worth_of_rule(rules, listed.rule).value_or(0.0);
        }
    }
    return values;
}

}  // namespace

bool is_length_rule(std::string_view rule) { return rule.ends_with("_mm") || rule.starts_with("head_mm."); }

QString rule_says(std::string_view rule) {
    const auto all = all_rules();
    const auto found = std::ranges::find(all, rule, &Listed::rule);
    return found == all.end() ? QString() : found->says;
}

RulesModel::RulesModel(OpenVisit& open, WorkroomRules& workroom, QObject* parent)
    : QObject(parent),
      open_(open),
      workroom_(workroom),
      rules_({"rule", "group", "says", "figure", "line", "spoken"}),
      form_({[this](const QString&, const QString& text) { open_.place().setText(placeOf(edited_), text, true); },
             [this](const QString&, const QString& text) { return leave(text); },
             {}}) {
    connect(&open_, &OpenVisit::opened, this, &RulesModel::done);
    connect(&open_, &OpenVisit::changed, this, &RulesModel::show);
    connect(&workroom_, &WorkroomRules::changed, this, &RulesModel::show);
    show();
}

QString RulesModel::placeOf(const QString& rule) const {
    return QStringLiteral("rules/%1/%2").arg(open_.visitId(), rule);
}

QString RulesModel::workedBy() const { return label_of(open_.survey().rules); }

bool RulesModel::canTake() const {
    const auto& theirs = workroom_.held();
    const HouseRuleEntries& ours = open_.survey().rules;
    return theirs &&
           (values_of(ours) != values_of(*theirs) || (theirs->version && label_of(ours) != label_of(*theirs)));
}

QString RulesModel::workroomSays() const {
    const QString fault = workroom_.fault();
    if (!workroom_.held()) {
        return fault;
    }
    const QString label = label_of(*workroom_.held());
    const QString stands = canTake()
                               ? tr("The workroom has: %1. This visit stays as it is until you take them.").arg(label)
                               : tr("As the workroom has them: %1.").arg(label);
    return fault.isEmpty() ? stands : fault + QLatin1Char('\n') + stands;
}

/// The workroom's value, or the default's.
std::optional<double> RulesModel::otherwise(const std::string& rule) const {
    static const HouseRuleEntries defaults;
    const auto& theirs = workroom_.held();
    return worth_of_rule(theirs ? *theirs : defaults, rule);
}

void RulesModel::show() {
    const Survey& survey = open_.survey();
    QList<ShownRows::Row> rows;
    for (const Listed& listed : all_rules()) {
        const double value = worth_of_rule(survey.rules, listed.rule).value_or(0.0);
        const auto other = otherwise(listed.rule);
        const QString figure = value_of(survey, listed.rule, value);
        QString line;
        if (other && *other != value && listed.rule != own_rule) {
            line = (workroom_.held() ? tr("the workroom has %1") : tr("by default %1"))
                       .arg(value_of(survey, listed.rule, *other));
        }
        rows.append({shown(listed.rule), listed.group, listed.says, figure, line,
                     QStringLiteral("%1: %2").arg(listed.says, figure)});
    }
    rules_.setRows(rows);
    showForm();
    emit changed();
}

void RulesModel::showForm() {
    if (edited_.isEmpty()) {
        form_.setFields({});
        return;
    }
    const std::string rule = bytes(edited_);
    const double value = worth_of_rule(open_.survey().rules, rule).value_or(0.0);
    const FieldMaker make{open_, [this](const QString&) { return placeOf(edited_); }};
    const QString hint = value_of(open_.survey(), rule, worth_of_rule({}, rule).value_or(0.0));
    form_.setFields({is_length_rule(rule)
                         ? make.length(QStringLiteral("value"), editedSays(), Length::mm(value), hint)
                         : make.number(QStringLiteral("value"), editedSays(), value, unit_of(rule), hint)});
}

QString RulesModel::editedSays() const {
    return rules_.value(rules_.indexOf(edited_), QStringLiteral("says")).toString();
}

QString RulesModel::editedRange() const {
    if (edited_.isEmpty()) {
        return {};
    }
    const std::string rule = bytes(edited_);
    const NumberRange range = range_of_rule(rule);
    return (range.low_open ? tr("More than %1, up to %2.") : tr("From %1 to %2."))
        .arg(number_of(open_.survey(), rule, range.low), value_of(open_.survey(), rule, range.high));
}

QString RulesModel::editedOtherwise() const {
    if (edited_.isEmpty()) {
        return {};
    }
    const std::string rule = bytes(edited_);
    QString text = tr("Left empty: %1, the trade’s default.")
                       .arg(value_of(open_.survey(), rule, worth_of_rule({}, rule).value_or(0.0)));
    if (workroom_.held()) {
        text += QLatin1Char(' ') +
                tr("The workroom has %1.").arg(value_of(open_.survey(), rule, otherwise(rule).value_or(0.0)));
    }
    return text;
}

void RulesModel::edit(const QString& rule) {
    edited_ = rules_.indexOf(rule) < 0 ? QString() : rule;
    form_.forgetFaults();
    show();
}

void RulesModel::done() { edit({}); }

/// Sets the rule; what was agreed with the workroom is then no more what the visit is worked by, and its name says so.
void RulesModel::set(const QString& rule, std::optional<double> value, const QString& typed) {
    const QString mark = tr(", changed for this visit");
    keep_field(open_, placeOf(rule), typed, tr("House rule: %1").arg(editedSays()),
               [rule = bytes(rule), value, mark = bytes(mark), plain = bytes(tr("Defaults"))](Survey& survey) {
                   HouseRuleEntries rules = survey.rules;
                   const auto before = worth_of_rule(rules, rule);
                   if (!set_rule(rules, rule, value) || worth_of_rule(rules, rule) == before) {
                       return false;
                   }
                   if (rule != own_rule && !rules.name.ends_with(mark)) {
                       rules.name = (rules.name.empty() ? plain : rules.name) + mark;
                       rules.version.reset();
                       rules.date.clear();
                   }
                   survey.rules = std::move(rules);
                   return true;
               });
}

QString RulesModel::leave(const QString& text) {
    const std::string rule = bytes(edited_);
    std::optional<double> value;
    if (is_length_rule(rule)) {
        const auto read = read_field_length(open_.survey(), text, true);
        if (!read) {
            return fault_of(read);
        }
        value = *read ? std::optional((*read)->mm()) : std::nullopt;
    } else {
        const auto read = read_field_number(text, -any, any);
        if (!read) {
            return fault_of(read);
        }
        value = *read;
    }
    HouseRuleEntries tried = open_.survey().rules;
    if (const auto set = set_rule(tried, rule, value); !set) {
        return fault_of(set);
    }
    set(edited_, value, text);
    return {};
}

void RulesModel::takeOtherwise() {
    if (!edited_.isEmpty()) {
        form_.forgetFaults();
        open_.place().forget(placeOf(edited_));
        set(edited_, otherwise(bytes(edited_)), {});
        showForm();
    }
}

void RulesModel::takeWorkrooms() {
    if (!canTake()) {
        return;
    }
    open_.edit(tr("The workroom’s house rules"), [theirs = *workroom_.held()](Survey& survey) {
        HouseRuleEntries rules = theirs;
        rules.numbers.erase(std::string(own_rule));
        if (const auto own = survey.rules.numbers.find(std::string(own_rule)); own != survey.rules.numbers.end()) {
            rules.numbers.insert(*own);
        }
        survey.rules = std::move(rules);
        return true;
    });
}

}  // namespace truehang
