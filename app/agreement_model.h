// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/survey.h"

#include <QObject>
#include <QVariantList>
#include <optional>

namespace truehang {

class OpenVisit;

/// What the client agrees to: the figures as they stand while nobody has signed, the frozen copy of them afterwards,
/// and where what stands in the visit now is no longer covered by it.
class AgreementModel : public QObject {
    Q_OBJECT
    /// Roles: `key`, `title`, `says` ("Tab headed pair"), `sizes`, `cloth`, `spoken`. Worked while `shown`.
    Q_PROPERTY(truehang::ShownRows* layers READ layers CONSTANT)
    /// What isn't settled, while nobody has signed. Roles: `text` (key).
    Q_PROPERTY(truehang::ShownRows* unsettled READ unsettled CONSTANT)
    /// Where the agreement no longer covers the visit. Roles: `key`, `title`, `text`, `windowId`.
    Q_PROPERTY(truehang::ShownRows* gaps READ gaps CONSTANT)
    /// Whether anyone looks at `layers` and `unsettled`.
    Q_PROPERTY(bool shown READ isShown WRITE setShown NOTIFY changed)
    Q_PROPERTY(bool canSign READ canSign NOTIFY changed)
    Q_PROPERTY(bool signedOff READ signedOff NOTIFY changed)
    /// "Agreed by R. Oduya, 14 March 2026", with "no longer covers 2 windows" where it doesn't; empty before.
    Q_PROPERTY(QString line READ line NOTIFY changed)
    /// "Cloth in all 236.04 GBP. …", with that it is no quotation; empty where no price is given.
    Q_PROPERTY(QString sum READ sum NOTIFY changed)
    /// That the frozen copy isn't what was sealed; empty where it is, or nothing was sealed.
    Q_PROPERTY(QString broken READ broken NOTIFY changed)
    /// The signature as it was drawn, lists of points; empty where the typed name alone signed. Before the signing:
    /// what is drawn of it so far.
    Q_PROPERTY(QVariantList signature READ signature NOTIFY changed)
    Q_PROPERTY(qreal aspect READ aspect NOTIFY changed)
    /// The name as it is typed so far, the client's where none is.
    Q_PROPERTY(QString name READ name NOTIFY changed)
    /// Why the last signing wasn't taken.
    Q_PROPERTY(QString fault READ fault NOTIFY changed)

public:
    explicit AgreementModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* layers() { return &layers_; }
    [[nodiscard]] ShownRows* unsettled() { return &unsettled_; }
    [[nodiscard]] ShownRows* gaps() { return &gaps_; }
    [[nodiscard]] bool isShown() const { return shown_; }
    void setShown(bool shown);
    [[nodiscard]] bool canSign() const { return !signedOff() && layers_.count() > 0; }
    [[nodiscard]] bool signedOff() const;
    [[nodiscard]] QString line() const;
    [[nodiscard]] QString sum() const { return sum_; }
    [[nodiscard]] QString broken() const { return broken_; }
    [[nodiscard]] QVariantList signature() const;
    [[nodiscard]] qreal aspect() const;
    [[nodiscard]] QString name() const;
    [[nodiscard]] QString fault() const { return fault_; }

    /// Signs what stands there now: one edit, which undo turns back. `strokes` as a `SignatureItem` has them, empty for
    /// the name alone. An empty name is refused.
    Q_INVOKABLE bool sign(const QString& name, const QVariantList& strokes, qreal aspect);
    Q_INVOKABLE void takeBack();
    /// Keep what is drawn and typed so far, so that it is there when the program opens again.
    Q_INVOKABLE void drawing(const QVariantList& strokes);
    Q_INVOKABLE void typing(const QString& name);

signals:
    void changed();

private:
    void show();
    void showLayers();
    void showGaps();
    [[nodiscard]] QString placeOf(const char* part) const;

    OpenVisit& open_;
    ShownRows layers_;
    ShownRows unsettled_;
    ShownRows gaps_;
    bool shown_ = false;
    QString sum_;
    QString broken_;
    QString fault_;
};

/// The sign-off of a survey as it stands: its figures frozen and sealed.
[[nodiscard]] SignedOff signed_now(const Survey& survey, const QString& name, const std::string& at,
                                   const std::optional<Signature>& signature = {});

}  // namespace truehang
