// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "store/store.h"
#include "survey/findings.h"
#include "survey/stations.h"

#include <QObject>
#include <QString>
#include <set>
#include <vector>

namespace truehang {

class OpenVisit;

/// Before leaving: what of the open visit is missing or doesn't add up, window by window, then the visit itself; each
/// line knows the place where it is mended.
class LeavingModel : public QObject {
    Q_OBJECT
    /// Roles: `item` (key), `heading` (the window's title, on its first line; else empty), `severity` (`stop` … as
    /// flags have it), `word` ("Measure again"), `says`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* items READ items CONSTANT)
    /// "Nothing is missing", "4 things are left".
    Q_PROPERTY(QString line READ line NOTIFY changed)

public:
    explicit LeavingModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* items() { return &items_; }
    [[nodiscard]] QString line() const;
    /// Works the list out while it is looked at only.
    void setShown(bool shown);
    /// Leads to where the line is mended; a caution counts as seen from then on, until its words change.
    Q_INVOKABLE void open(const QString& item);

signals:
    void changed();
    /// A page of the open visit, and the window and station on it where it is one of those.
    void wanted(const QString& screen, const QString& windowId, const QString& station);

private:
    struct Item {
        QString key, window, station, screen, word, says;
        Severity severity = Severity::note;
        SeenMark caution;  ///< what is kept once it was looked at
    };
    void readSeen();
    void show();
    void addWindow(QList<Item>& items, const QString& windowId) const;
    void addFlags(QList<Item>& items, const QString& windowId, const std::vector<Station>& left) const;
    void addVisit(QList<Item>& items) const;
    void addAgreement(QList<Item>& items) const;

    OpenVisit& open_;
    bool shown_ = false;
    std::set<SeenMark> seen_;
    QList<Item> all_;
    ShownRows items_;
};

}  // namespace truehang
