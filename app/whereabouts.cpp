// SPDX-License-Identifier: Apache-2.0
#include "whereabouts.h"

#include "survey_keeping.h"
#include "writing.h"

#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

namespace truehang {

QString Whereabouts::visit() const { return shown(draft_.visit); }
QString Whereabouts::window() const { return shown(draft_.window); }
QString Whereabouts::screen() const { return shown(draft_.screen); }
QString Whereabouts::station() const { return shown(draft_.station); }

void Whereabouts::standIn(const QString& visit, const QString& window) {
    if (bytes(visit) != draft_.visit || bytes(window) != draft_.window) {
        draft_.visit = bytes(visit);
        draft_.window = bytes(window);
        draft_.station.clear();
        keep();
    }
}

void Whereabouts::standOn(const QString& screen) {
    if (bytes(screen) != draft_.screen) {
        draft_.screen = bytes(screen);
        keep();
    }
}

void Whereabouts::standAt(const QString& station) {
    if (bytes(station) != draft_.station) {
        draft_.station = bytes(station);
        keep();
    }
}

void Whereabouts::setUnit(const QString& unit) {
    if (unit != unit_) {
        unit_ = unit;
        keep();
    }
}

void Whereabouts::setText(const QString& place, const QString& text, bool even_empty) {
    if (text.isEmpty() && !even_empty) {
        forget(place);
    } else if (!has(place) || texts_.value(place) != text) {
        texts_.insert(place, text);
        keep();
    }
}

void Whereabouts::forget(const QString& place) {
    if (texts_.remove(place) > 0) {
        keep();
    }
}

void Whereabouts::forgetUnder(const QString& beginning) {
    const auto before = texts_.size();
    texts_.removeIf([&](const auto& entry) { return entry.key().startsWith(beginning); });
    if (texts_.size() != before) {
        keep();
    }
}

void Whereabouts::forgetNaming(const QStringList& ids) {
    texts_.removeIf([&](const auto& entry) {
        const QStringList parts = entry.key().split(QLatin1Char('/'));
        return std::ranges::any_of(parts, [&](const QString& part) { return ids.contains(part); });
    });
    keep();
}

void Whereabouts::keep() {
    QJsonObject texts;
    for (auto place = texts_.cbegin(); place != texts_.cend(); ++place) {
        texts.insert(place.key(), place.value());
    }
    const QJsonObject more{{QStringLiteral("texts"), texts}, {QStringLiteral("unit"), unit_}};
    draft_.more = QJsonDocument(more).toJson(QJsonDocument::Compact).toStdString();
    draft_.typed = bytes(texts_.value(QStringLiteral("walk/%1/%2").arg(window(), station())));
    keeping_.post(
        &owner_, [draft = draft_](Store& store) { return store.keep_draft(draft); },
        [this](const Result<Done>& kept) {
            if (on_fault) {
                on_fault(fault_of(kept));
            }
        });
}

void Whereabouts::onceKept(std::function<void()> then) {
    // The store works in order: when this comes back, what was posted before it has been done.
    keeping_.post(
        &owner_, [](Store&) -> Result<Done> { return Done{}; },
        [then = std::move(then)](const Result<Done>&) { then(); });
}

void Whereabouts::restore(std::function<void(const QString&)> then) {
    keeping_.post(
        &owner_, [](Store& store) { return store.draft(); },
        [this, then = std::move(then)](const Result<Draft>& draft) {
            if (draft) {
                take(*draft);
            }
            then(fault_of(draft));
        });
}

void Whereabouts::take(const Draft& draft) {
    draft_ = draft;
    texts_.clear();
    const QJsonObject more = QJsonDocument::fromJson(QByteArray::fromStdString(draft.more)).object();
    unit_ = more.value(QStringLiteral("unit")).toString();
    const QJsonObject texts = more.value(QStringLiteral("texts")).toObject();
    for (auto place = texts.constBegin(); place != texts.constEnd(); ++place) {
        texts_.insert(place.key(), place.value().toString());
    }
}

}  // namespace truehang
