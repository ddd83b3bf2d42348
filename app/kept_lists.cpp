// SPDX-License-Identifier: Apache-2.0
#include "kept_lists.h"

#include "survey_keeping.h"
#include "writing.h"

#include <QFile>
#include <QSaveFile>
#include <algorithm>

namespace truehang {

namespace {

constexpr auto removed_key = "removed";

Error unread(const QString& why) { return {ErrorCode::io, "lists", bytes(why)}; }

/// What the file holds; empty lists where there is none.
Result<OwnLists> lists_in(const QString& file) {
    QFile kept(file);
    if (!kept.exists()) {
        return OwnLists{};
    }
    if (!kept.open(QIODevice::ReadOnly)) {
        return unread(KeptLists::tr("Your lists can’t be opened: %1").arg(kept.errorString()));
    }
    auto read = read_own_lists(kept.readAll().toStdString());
    if (!read) {
        const Fault& first = read.error().front();
        return unread(KeptLists::tr("Your lists can’t be read, and stay as they are in %1: %2: %3")
                          .arg(file, shown(first.pointer), shown(first.text)));
    }
    return std::move(*read);
}

Result<Done> write(const QString& file, const OwnLists& lists) {
    const QByteArray text = QByteArray::fromStdString(write_own_lists(lists));
    QSaveFile kept(file);
    // What a full disk refuses shows in `flush` alone: `commit` would put a shortened file in place.
    if (!kept.open(QIODevice::WriteOnly) || kept.write(text) != text.size() || !kept.flush() || !kept.commit()) {
        return unread(KeptLists::tr("Your lists can’t be written, and stay as they were: %1").arg(kept.errorString()));
    }
    return Done{};
}

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

KeptLists::KeptLists(SurveyKeeping& keeping, const QString& file, QObject* parent)
    : QObject(parent), keeping_(keeping), file_(file) {
    read();
}

void KeptLists::read() {
    keeping_.post(
        this, [file = file_](Store&) { return lists_in(file); },
        [this](const Result<OwnLists>& lists) {
            is_read_ = lists.ok();
            fault_ = fault_of(lists);
            held_ = on_disk_ = lists ? *lists : OwnLists{};
            emit changed();
        });
}

void KeptLists::change(const std::function<bool(OwnLists&)>& change, std::function<void()> kept) {
    OwnLists after = held_;
    if (!is_read_ || !change(after)) {
        return;
    }
    held_ = after;
    ++on_their_way_;
    emit changed();
    keeping_.post(
        this, [file = file_, after](Store&) { return write(file, after); },
        [this, after, kept = std::move(kept)](const Result<Done>& written) {
            settle(after, fault_of(written));
            if (written && kept) {
                kept();
            }
        });
}

void KeptLists::settle(const OwnLists& written, const QString& fault) {
    fault_ = fault;
    if (fault.isEmpty()) {
        on_disk_ = written;
    }
    if (--on_their_way_ == 0) {
        held_ = on_disk_;
    }
    emit changed();
}

}  // namespace truehang
