// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QObject>
#include <QString>
#include <QVariant>

class QSettings;

namespace truehang {

/// How this phone is used. Kept in a small file beside the store.
class Settings : public QObject {
    Q_OBJECT
    /// The thumb that reaches the keypad: `right` or `left`.
    Q_PROPERTY(QString hand READ hand WRITE setHand NOTIFY changed)
    /// `system`, `light`, `dark`, or `room`: by the light around.
    Q_PROPERTY(QString look READ look WRITE setLook NOTIFY changed)
    /// 1.0, 1.25, 1.5 or 2.0.
    Q_PROPERTY(qreal textScale READ textScale WRITE setTextScale NOTIFY changed)
    /// `system`, `en` or `de`; spoken from the next start of the face on.
    Q_PROPERTY(QString language READ language WRITE setLanguage NOTIFY languageChanged)
    /// The languages there are, each as `word` and `says`, in its own words.
    Q_PROPERTY(QVariantList languages READ languages CONSTANT)
    /// Inches to the nearest 1/8 or 1/16: 8 or 16.
    Q_PROPERTY(int inchDenominator READ inchDenominator WRITE setInchDenominator NOTIFY changed)
    /// Stations are said aloud, and what was typed is read back.
    Q_PROPERTY(bool aloud READ aloud WRITE setAloud NOTIFY changed)
    /// Photos keep what their files say of place, owner, camera and time; else only the pixels are kept.
    Q_PROPERTY(bool keepsPhotoOrigin READ keepsPhotoOrigin WRITE setKeepsPhotoOrigin NOTIFY changed)
    /// "." or ",", as the system's locale writes numbers.
    Q_PROPERTY(QString decimalMark READ decimalMark CONSTANT)

public:
    explicit Settings(const QString& file, QObject* parent = nullptr);
    ~Settings() override;

    [[nodiscard]] QString hand() const;
    void setHand(const QString& hand);
    [[nodiscard]] QString look() const;
    void setLook(const QString& look);
    [[nodiscard]] qreal textScale() const;
    void setTextScale(qreal scale);
    [[nodiscard]] QString language() const;
    void setLanguage(const QString& language);
    [[nodiscard]] QVariantList languages() const;
    [[nodiscard]] int inchDenominator() const;
    void setInchDenominator(int denominator);
    [[nodiscard]] bool aloud() const;
    void setAloud(bool aloud);
    [[nodiscard]] bool keepsPhotoOrigin() const;
    void setKeepsPhotoOrigin(bool keeps);
    [[nodiscard]] QString decimalMark() const;

signals:
    void changed();
    void languageChanged();

private:
    void set(const char* key, const QVariant& value, bool differs);

    QSettings* file_;
};

}  // namespace truehang
