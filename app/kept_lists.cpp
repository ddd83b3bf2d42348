// SPDX-License-Identifier: Apache-2.0
#include "kept_lists.h"

#include "writing.h"

#include <QFile>
#include <QSaveFile>
#include <algorithm>

namespace truehang {

namespace {

constexpr auto removed_key = "removed";

}  // namespace

bool is_removed(const Extra& extra) {
    return std::ranges::any_of(extra, [](const auto& one) { return one.first == removed_key && one.second == "true"; });
}

void set_removed(Extra& extra, bool removed) {
    std::erase_if(extra, [](const auto& one) { return one.first == removed_key; });
    if (removed) {
        extra.emplace_back(removed_key, "true");
    }
}

KeptLists::KeptLists(const QString& file, QObject* parent) : QObject(parent), file_(file) {
    QFile kept(file_);
    if (!kept.exists()) {
        return;
    }
    is_unread_ = true;
    if (!kept.open(QIODevice::ReadOnly)) {
        fault_ = tr("Your lists can’t be opened: %1").arg(kept.errorString());
        return;
    }
    auto read = read_own_lists(kept.readAll().toStdString());
    if (!read) {
        const Fault& first = read.error().front();
        fault_ = tr("Your lists can’t be read, and stay as they are in %1: %2: %3")
                     .arg(file_, shown(first.pointer), shown(first.text));
        return;
    }
    held_ = std::move(*read);
    is_unread_ = false;
}

bool KeptLists::change(const std::function<bool(OwnLists&)>& change) {
    OwnLists after = held_;
    if (is_unread_ || !change(after)) {
        return false;
    }
    const QByteArray text = QByteArray::fromStdString(write_own_lists(after));
    QSaveFile kept(file_);
    if (!kept.open(QIODevice::WriteOnly) || kept.write(text) != text.size() || !kept.flush() || !kept.commit()) {
        setFault(tr("Your lists can’t be written, and stay as they were: %1").arg(kept.errorString()));
        return false;
    }
    held_ = std::move(after);
    fault_.clear();
    emit changed();
    return true;
}

void KeptLists::setFault(const QString& fault) {
    fault_ = fault;
    emit changed();
}

}  // namespace truehang
