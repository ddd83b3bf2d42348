// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/store.h"

#include <QMap>
#include <QObject>
#include <QString>
#include <QStringList>
#include <functional>

namespace truehang {

class SurveyKeeping;

/// Where the person is and what is half typed anywhere: kept at every change, without waiting for the disk, so that the
/// program opens where it was. Texts stand by place ("walk/WINDOW/STATION", "site/VISIT/address").
class Whereabouts {
public:
    /// `owner` must outlive it.
    Whereabouts(const QObject& owner, SurveyKeeping& keeping) : owner_(owner), keeping_(keeping) {}

    [[nodiscard]] QString visit() const;
    [[nodiscard]] QString window() const;
    [[nodiscard]] QString screen() const;
    [[nodiscard]] QString station() const;
    /// The unit that readings are typed in at the moment; empty: the survey's own.
    [[nodiscard]] QString unit() const { return unit_; }

    void standIn(const QString& visit, const QString& window);
    void standOn(const QString& screen);
    void standAt(const QString& station);
    void setUnit(const QString& unit);

    [[nodiscard]] QString text(const QString& place) const { return texts_.value(place); }
    [[nodiscard]] bool has(const QString& place) const { return texts_.contains(place); }
    /// Empty text forgets the place, unless `even_empty`: a field that was rubbed out.
    void setText(const QString& place, const QString& text, bool even_empty = false);
    void forget(const QString& place);
    /// Forgets every place that begins so.
    void forgetUnder(const QString& beginning);

    /// Forgets every place that names one of these ids.
    void forgetNaming(const QStringList& ids);

    /// `then` comes when all that was told before is kept, or couldn't be (`on_fault` has said so).
    void onceKept(std::function<void()> then);

    /// What was kept when the program last ran; `then` comes once, with the fault or none.
    void restore(std::function<void(const QString& fault)> then);
    /// Told when a text couldn't be kept (empty: it can again).
    std::function<void(const QString& fault)> on_fault;

private:
    void keep();
    void take(const Draft& draft);

    const QObject& owner_;
    SurveyKeeping& keeping_;
    Draft draft_;
    QString unit_;
    QMap<QString, QString> texts_;
};

}  // namespace truehang
