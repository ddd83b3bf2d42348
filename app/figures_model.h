// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "shown_rows.h"

#include <QObject>

namespace truehang {

class OpenVisit;

/// The figures of the open window as the core worked them, with why, and its flags.
class FiguresModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowTitle READ windowTitle NOTIFY changed)
    /// "A pair, tab headed, to the floor"
    Q_PROPERTY(QString summary READ summary NOTIFY changed)
    /// Roles: `path` (key: the figure's place, as `finished.drop_mm`, with the layer before it where layered), `label`,
    /// `figure` ("1992"), `unit` ("mm"), `plusMinus` ("± 6", empty where there is none), `layerTitle` (empty where
    /// not layered), `asks` (true: there is a why to open), `spoken`.
    Q_PROPERTY(truehang::ShownRows* figures READ figures CONSTANT)
    /// Heights and widths that the readings give. Roles as `figures`.
    Q_PROPERTY(truehang::ShownRows* sizes READ sizes CONSTANT)
    /// How the asked figure came about. Roles: `step` (key, from 0), `what`, `figure` (with unit), `from` (words),
    /// `spoken`.
    Q_PROPERTY(truehang::ShownRows* why READ why CONSTANT)
    /// The path of the figure that is being asked about; empty where none.
    Q_PROPERTY(QString asked READ asked NOTIFY askedChanged)
    Q_PROPERTY(QString askedLabel READ askedLabel NOTIFY askedChanged)
    /// Gravest first. Roles: `flag` (key, from 0), `code`, `severity` (`stop` …), `word` ("Caution"), `shape`
    /// (`bar`, `broken-circle`, `square`, `triangle`, `circle`), `text`, `station` (the first it names), `spoken`.
    Q_PROPERTY(truehang::ShownRows* flags READ flags CONSTANT)
    /// The next action: a station to take ("Measure floor to ceiling again"), else empty and the next window's turn.
    Q_PROPERTY(QString nextStation READ nextStation NOTIFY changed)
    Q_PROPERTY(QString nextSays READ nextSays NOTIFY changed)
    /// "± is twice the standard uncertainty", once a screen; empty where no figure has one.
    Q_PROPERTY(QString plusMinusSays READ plusMinusSays NOTIFY changed)

public:
    explicit FiguresModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] ShownRows* figures() { return &figures_; }
    [[nodiscard]] ShownRows* sizes() { return &sizes_; }
    [[nodiscard]] ShownRows* why() { return &why_; }
    [[nodiscard]] QString asked() const { return asked_; }
    [[nodiscard]] QString askedLabel() const;
    [[nodiscard]] ShownRows* flags() { return &flags_; }
    [[nodiscard]] QString nextStation() const;
    [[nodiscard]] QString nextSays() const;
    [[nodiscard]] QString plusMinusSays() const;

    /// Opens why for this figure; the same again, or an empty path, closes it.
    Q_INVOKABLE void ask(const QString& path);

signals:
    void changed();
    void askedChanged();

private:
    void show();
    void showFlags(const WindowFigures& worked);
    void showWhy();

    OpenVisit& open_;
    ShownRows figures_;
    ShownRows sizes_;
    ShownRows why_;
    ShownRows flags_;
    QString asked_;
    QString next_station_;
    QString next_says_;
};

}  // namespace truehang
