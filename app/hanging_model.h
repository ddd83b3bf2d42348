// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "shown_rows.h"
#include "survey/findings.h"
#include "survey/survey.h"

#include <QObject>
#include <functional>
#include <vector>

namespace truehang {

class KeptLists;
class OpenVisit;

/// What hangs at the open window: layers from glass to room, each with its hardware and its treatment.
class HangingModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowTitle READ windowTitle NOTIFY changed)
    /// From glass to room. Roles: `layerNumber` (key, from 0), `title` ("Layer 1, nearest the glass"), `line` ("A
    /// pair, tab headed, to the floor"), `current`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* layers READ layers CONSTANT)
    /// The layer being edited, from 0; -1 where nothing hangs there yet.
    Q_PROPERTY(int current READ current NOTIFY changed)
    /// "A pair, tab headed, to the floor", of the layer being edited; "Nothing hangs here yet" where none.
    Q_PROPERTY(QString summary READ summary NOTIFY changed)
    /// Fields `own` (a choice over the surveyor's own list), `name`, `kind`, `supply`, `hang`, of a bay `run`, once its
    /// place is planned `stage` (choices), `diameter`, `length`, `left`, `projection`, `finial`, `brackets`, `return`,
    /// `overlap`, `mass`, `rated`, `bracketRated`, `fixingRated`; only those that apply.
    Q_PROPERTY(truehang::FieldForm* hardware READ hardware CONSTANT)
    /// Fields `heading`, `fit`, `layout`, `length`, under an arch or gable `top`, over a crooked floor `drops`
    /// (choices), `bottom`, `fullness`, `fabric`, `lining`, `interlining`, `secondLining` (choices over the visit's
    /// cloths), `liningHung`, `operation`, `weights`, `tieBack`, `pelmet` (choices), `tabCut`, `tieBackHeight`,
    /// `tieBackLength`, `pelmetDepth`, `pelmetReturn`; only those that the chosen heading uses.
    Q_PROPERTY(truehang::FieldForm* treatment READ treatment CONSTANT)
    /// Flags of the layer being edited that stand at no field: cautions and what is to decide. Roles: `flag` (key),
    /// `severity`, `word`, `text`.
    Q_PROPERTY(truehang::ShownRows* flags READ flags CONSTANT)
    /// Where nothing hangs yet: the other windows of the visit where something does. Roles: `windowId` (key), `title`
    /// ("As at Parlour, south window"), `line` ("A pair, tab headed, to the floor"), `spoken`.
    Q_PROPERTY(truehang::ShownRows* elsewhere READ elsewhere CONSTANT)

public:
    /// Both must outlive it.
    HangingModel(OpenVisit& open, const KeptLists& lists, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] ShownRows* layers() { return &layers_; }
    [[nodiscard]] int current() const { return current_; }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] FieldForm* hardware() { return &hardware_; }
    [[nodiscard]] FieldForm* treatment() { return &treatment_; }
    [[nodiscard]] ShownRows* flags() { return &flags_; }
    [[nodiscard]] ShownRows* elsewhere() { return &elsewhere_; }

    /// Hangs here what hangs at another window, where nothing hangs here yet.
    Q_INVOKABLE void hangAsAt(const QString& windowId);
    /// Hangs the layer being edited from this hardware of the surveyor's list; false where there is neither.
    Q_INVOKABLE bool takeHardware(const QString& name);
    /// Adds a layer on the room's side and edits it.
    Q_INVOKABLE void addLayer();
    Q_INVOKABLE void editLayer(int layer);
    Q_INVOKABLE void removeLayer(int layer);

signals:
    void changed();

private:
    void show();
    void showHardware();
    void showTreatment();
    void showFlags();
    void showElsewhere();
    void hangOwnCloth(const QString& field, const std::string& id);
    [[nodiscard]] std::vector<Flag> flagsHere() const;
    void put(FieldForm& form, QList<FormField> fields) const;
    [[nodiscard]] const Layer* layer() const;
    void addLinings(QList<FormField>& fields, const Treatment& held, bool blind) const;
    void addTieBack(QList<FormField>& fields, const Treatment& held) const;
    void addShape(QList<FormField>& fields, const Hardware& held) const;
    void addEdges(QList<FormField>& fields, const Treatment& held) const;
    [[nodiscard]] QList<FormField> ownFields(const Hardware& held) const;
    void addLoads(QList<FormField>& fields, const Hardware& held) const;
    void addPelmet(QList<FormField>& fields, const Treatment& held) const;
    [[nodiscard]] QString placeOf(const QString& field) const;
    void editLayerWith(const QString& says, const QString& place, const QString& text,
                       const std::function<bool(Layer&)>& change);
    [[nodiscard]] FormField clothField(const QString& field, const QString& label,
                                       const std::optional<std::string>& stored) const;
    [[nodiscard]] QString leaveHardware(const QString& field, const QString& text);
    [[nodiscard]] QString chooseHardware(const QString& field, const QString& word);
    [[nodiscard]] QString leaveTreatment(const QString& field, const QString& text);
    [[nodiscard]] QString chooseTreatment(const QString& field, const QString& word);

    OpenVisit& open_;
    const KeptLists& lists_;
    ShownRows layers_;
    FieldForm hardware_;
    FieldForm treatment_;
    ShownRows flags_;
    ShownRows elsewhere_{{"windowId", "title", "line", "spoken"}};
    int current_ = -1;
};

}  // namespace truehang
