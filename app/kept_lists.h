// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/lists_document.h"

#include <QObject>
#include <QString>
#include <functional>

namespace truehang {

class SurveyKeeping;

/// The surveyor's own lists, in a file of their own beside the store, read and written on the store's thread. What is
/// taken out of a list is marked as removed and stays, until it is emptied out.
class KeptLists : public QObject {
    Q_OBJECT

public:
    /// `keeping` must outlive it.
    KeptLists(SurveyKeeping& keeping, const QString& file, QObject* parent = nullptr);

    /// With every change so far, on the disk or on its way there.
    [[nodiscard]] const OwnLists& held() const { return held_; }
    /// Why the file couldn't be read or written; empty where all is well. A file that can't be read isn't written over.
    [[nodiscard]] QString fault() const { return fault_; }

    /// Changes the lists and writes them; `kept` is called once they are on the disk. Where they can't be written they
    /// go back to what is there, with the reason in `fault`. Nothing happens where `change` returns false.
    void change(const std::function<bool(OwnLists&)>& change, std::function<void()> kept = {});

signals:
    void changed();

private:
    void read();
    void settle(const OwnLists& written, const QString& fault);

    SurveyKeeping& keeping_;
    QString file_;
    OwnLists held_;
    OwnLists on_disk_;
    QString fault_;
    int on_their_way_ = 0;
    bool is_read_ = false;
};

/// Whether an item, by its unknown keys, was taken out of its list; and taking it out or putting it back.
[[nodiscard]] bool is_removed(const Extra& extra);
void set_removed(Extra& extra, bool removed);

}  // namespace truehang
