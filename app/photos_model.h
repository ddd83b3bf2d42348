// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "marks_model.h"
#include "photo_import.h"
#include "shown_rows.h"

#include <QHash>
#include <QObject>
#include <QSet>
#include <QUrl>
#include <functional>

namespace truehang {

class OpenVisit;
class Settings;
struct Devices;

/// The photos of the open window. What comes in is turned upright and re-encoded without location or owner data, off
/// the interface's thread; its row shows once it is kept.
class PhotosModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowTitle READ windowTitle NOTIFY changed)
    /// Roles: `sha256` (key), `caption`, `thumbnail` (url), `picture` (url), `state` (words: "on this phone", "there"),
    /// `marked` ("2 marks", empty where none), `spoken`.
    Q_PROPERTY(truehang::ShownRows* photos READ photos CONSTANT)
    /// How many are being read in just now.
    Q_PROPERTY(int coming READ coming NOTIFY changed)
    /// Why a picture couldn't be taken in; empty where all could.
    Q_PROPERTY(QString fault READ fault NOTIFY changed)
    /// The QML file for a Loader that shows the camera and calls `takeIn`; empty: "No camera here, choose a file".
    Q_PROPERTY(QUrl cameraSource READ cameraSource CONSTANT)
    /// The marks over one of the photos.
    Q_PROPERTY(truehang::MarksModel* marks READ marks CONSTANT)
    /// Place and owner stay in the photos that come in.
    Q_PROPERTY(bool keepsOrigin READ keepsOrigin NOTIFY changed)
    /// The system can be asked for a picture in its clipboard.
    Q_PROPERTY(bool canPaste READ canPaste CONSTANT)

public:
    PhotosModel(OpenVisit& open, Devices& devices, Settings& settings, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] ShownRows* photos() { return &photos_; }
    [[nodiscard]] int coming() const { return coming_; }
    [[nodiscard]] QString fault() const { return fault_; }
    [[nodiscard]] QUrl cameraSource() const;
    [[nodiscard]] bool canPaste() const;
    [[nodiscard]] MarksModel* marks() { return &marks_; }
    [[nodiscard]] bool keepsOrigin() const;

    /// Takes in a file that was chosen or captured.
    Q_INVOKABLE void takeIn(const QUrl& file);
    /// Takes in the picture in the clipboard.
    Q_INVOKABLE void paste();
    Q_INVOKABLE void setCaption(const QString& sha256, const QString& caption);
    /// Each keystroke of a caption, kept as a draft.
    Q_INVOKABLE void typingCaption(const QString& sha256, const QString& caption);
    /// Takes it off this window; undo brings it back.
    Q_INVOKABLE void remove(const QString& sha256);

signals:
    void changed();

private:
    struct Files {
        QUrl picture;
        QUrl thumbnail;
    };

    void show();
    void findFiles(const QString& sha256);
    void askArrived();
    void takeInWith(std::function<Result<ImportedPhoto>()> import);
    void keep(const QByteArray& jpeg, const QString& windowId);
    [[nodiscard]] QString placeOf(const QString& sha256) const;
    void setFault(const QString& fault);

    OpenVisit& open_;
    Devices& devices_;
    Settings& settings_;
    MarksModel marks_;
    ShownRows photos_;
    QHash<QString, Files> files_;
    QSet<QString> arrived_;
    int coming_ = 0;
    QString fault_;
};

}  // namespace truehang
