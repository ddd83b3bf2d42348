// SPDX-License-Identifier: Apache-2.0
#include "workroom_rules.h"

#include "document/survey_parts.h"
#include "rules_model.h"
#include "writing.h"

#include <QFile>
#include <QSaveFile>

namespace truehang {

WorkroomRules::WorkroomRules(const QString& file, QObject* parent) : QObject(parent), file_(file) {
    QFile kept(file_);
    if (kept.open(QIODevice::ReadOnly)) {
        if (const auto read = read_rules_document(kept.readAll().toStdString())) {
            held_ = read->rules;
        }
    }
}

namespace {

constexpr QLatin1String rules_pointer("/rules/");

/// The rule that a fault of the document is about, as people call it, and what it may be; nothing where it is about
/// none.
QString faulty_rule(const Fault& fault) {
    const QString pointer = shown(fault.pointer);
    if (!pointer.startsWith(rules_pointer)) {
        return {};
    }
    const std::string key = bytes(pointer.mid(rules_pointer.size()).replace(QLatin1Char('/'), QLatin1Char('.')));
    const QString says = rule_says(key);
    if (says.isEmpty()) {
        return {};
    }
    const NumberRange range = range_of_rule(key);
    const QString unit = is_length_rule(key) ? QStringLiteral(" mm") : QString();
    return (range.low_open ? WorkroomRules::tr("“%1” must be a number of more than %2, up to %3.")
                           : WorkroomRules::tr("“%1” must be a number from %2 to %3."))
        .arg(says, shown(std::optional(range.low)) + unit, shown(std::optional(range.high)) + unit);
}

}  // namespace

void WorkroomRules::take(const QByteArray& document) {
    const auto read = read_rules_document(document.toStdString());
    if (!read) {
        const Fault& first = read.error().front();
        const QString rule = faulty_rule(first);
        fault_ = tr("What the workroom gave as its house rules can’t be used. %1 The earlier ones stay. Ask the "
                    "workroom to look at them.")
                     .arg(rule.isEmpty() ? shown(first.text) : rule);
        emit changed();
        return;
    }
    QSaveFile kept(file_);
    const bool is_kept =
        kept.open(QIODevice::WriteOnly) && kept.write(document) == document.size() && kept.flush() && kept.commit();
    held_ = read->rules;
    fault_ = is_kept ? QString() : tr("The workroom’s house rules came, but can’t be kept: %1").arg(kept.errorString());
    emit changed();
}

}  // namespace truehang
