// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/lists_document.h"

#include <QObject>
#include <QString>
#include <functional>

namespace truehang {

/// The surveyor's own lists, in a file of their own beside the store. What is taken out of a list is marked as removed
/// and stays, until it is emptied out.
class KeptLists : public QObject {
    Q_OBJECT

public:
    explicit KeptLists(const QString& file, QObject* parent = nullptr);

    [[nodiscard]] const OwnLists& held() const { return held_; }
    /// Why the file couldn't be read or written; empty where all is well. A file that can't be read isn't written over.
    [[nodiscard]] QString fault() const { return fault_; }

    /// Changes the lists and writes them; where that fails they stay as they were, with the reason in `fault`. False
    /// where `change` returns false, too.
    bool change(const std::function<bool(OwnLists&)>& change);

signals:
    void changed();

private:
    void setFault(const QString& fault);

    QString file_;
    OwnLists held_;
    QString fault_;
    bool is_unread_ = false;
};

/// Whether an item, by its unknown keys, was taken out of its list; and taking it out or putting it back.
[[nodiscard]] bool is_removed(const Extra& extra);
void set_removed(Extra& extra, bool removed);

}  // namespace truehang
