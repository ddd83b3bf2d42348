// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rules_document.h"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <optional>

namespace truehang {

/// The house rules as the workroom last gave them, in a file of their own beside the store. A visit doesn't follow them
/// by itself.
class WorkroomRules : public QObject {
    Q_OBJECT

public:
    explicit WorkroomRules(const QString& file, QObject* parent = nullptr);

    /// None where a workroom never gave any.
    [[nodiscard]] const std::optional<HouseRuleEntries>& held() const { return held_; }
    /// Why what came last couldn't be taken; empty where it was. The earlier ones stay.
    [[nodiscard]] QString fault() const { return fault_; }

    /// Takes a document as it came over the wire.
    void take(const QByteArray& document);

signals:
    void changed();

private:
    QString file_;
    std::optional<HouseRuleEntries> held_;
    QString fault_;
};

}  // namespace truehang
