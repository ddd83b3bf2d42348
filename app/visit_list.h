// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "store/store.h"
#include "visit_state.h"

#include <QHash>
#include <QObject>
#include <QString>
#include <vector>

namespace truehang {

class SurveyKeeping;

/// One visit of the list: what the store tells of it, and what its document says.
struct VisitLine {
    VisitSummary summary;
    StandsAs stands;
    QString client;
    bool asks = false;
};

/// The visits of the notebook, read from the store; a document is read again only when its revision is another.
class VisitList : public QObject {
    Q_OBJECT

public:
    explicit VisitList(SurveyKeeping& keeping, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* shown() { return &shown_; }
    [[nodiscard]] ShownRows* removed() { return &removed_; }
    [[nodiscard]] QString search() const { return search_; }
    void setSearch(const QString& words);
    void read();

signals:
    void faulty(const QString& fault);

private:
    void show();

    SurveyKeeping& keeping_;
    std::vector<VisitLine> lines_;
    QString search_;
    ShownRows shown_;
    ShownRows removed_;
};

}  // namespace truehang
