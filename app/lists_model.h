// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"

#include <QObject>
#include <functional>

namespace truehang {

class HangingModel;
class KeptLists;
class OpenVisit;
struct OwnLists;

/// The surveyor's own cloths, hardware and house rules, apart from visits: found, taken into the open visit, put there
/// from it, taken out and brought back. A list changed later changes no visit.
class ListsModel : public QObject {
    Q_OBJECT
    /// Roles: `item` (key), `section` (words), `name`, `line` ("Lining, 1370 wide"), `isRemoved`, `spoken`. By section,
    /// then by name; what was taken out stands last.
    Q_PROPERTY(truehang::ShownRows* items READ items CONSTANT)
    /// What the rows are narrowed to: words in a name or its line; empty shows all.
    Q_PROPERTY(QString search READ search WRITE setSearch NOTIFY changed)
    /// Something stands in the lists, found or not.
    Q_PROPERTY(bool hasAny READ hasAny NOTIFY changed)
    Q_PROPERTY(bool hasRemoved READ hasRemoved NOTIFY changed)
    /// What was done last ("In your list: Oak pole"); empty: nothing since the lists were opened.
    Q_PROPERTY(QString said READ said NOTIFY changed)
    Q_PROPERTY(QString fault READ fault NOTIFY changed)

public:
    /// All must outlive it.
    ListsModel(OpenVisit& open, KeptLists& lists, HangingModel& hanging, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* items() { return &items_; }
    [[nodiscard]] QString search() const { return search_; }
    void setSearch(const QString& words);
    [[nodiscard]] bool hasAny() const;
    [[nodiscard]] bool hasRemoved() const;
    [[nodiscard]] QString said() const { return said_; }
    [[nodiscard]] QString fault() const;

    /// Puts a cloth of the visit, the hardware of the layer being edited, the visit's house rules into the list; one of
    /// the same name there is replaced.
    Q_INVOKABLE void keepCloth(const QString& fabricId);
    Q_INVOKABLE void keepHardware();
    Q_INVOKABLE void keepRules();
    /// Takes an item into the open visit: a cloth among its cloths, hardware at the layer being edited, rules as its
    /// own. False where there is nowhere to.
    Q_INVOKABLE bool take(const QString& item);
    Q_INVOKABLE void remove(const QString& item);
    Q_INVOKABLE void bringBack(const QString& item);
    /// Takes what was removed out of the file for good.
    Q_INVOKABLE void emptyRemoved();

signals:
    void changed();

private:
    void show();
    void say(const QString& said);
    void keep(const std::function<bool(OwnLists&)>& into, const QString& name);
    void setRemoved(const QString& item, bool removed);
    bool takeCloth(const std::string& id);
    bool takeRules(const std::string& name);

    OpenVisit& open_;
    KeptLists& lists_;
    HangingModel& hanging_;
    ShownRows items_;
    QString search_;
    QString said_;
};

}  // namespace truehang
