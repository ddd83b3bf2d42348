// SPDX-License-Identifier: Apache-2.0
#include "workroom_rules.h"

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

void WorkroomRules::take(const QByteArray& document) {
    const auto read = read_rules_document(document.toStdString());
    if (!read) {
        const Fault& first = read.error().front();
        fault_ = tr("What the workroom gave as its house rules can’t be used: %1: %2 The earlier ones stay. Ask the "
                    "workroom to look at them.")
                     .arg(shown(first.pointer), shown(first.text));
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
