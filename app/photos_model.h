// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "marks_model.h"
#include "photo_import.h"
#include "photo_tape_model.h"
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

/// The photos of the open window, of what is in its way, and of its room. What comes in is turned upright and
/// re-encoded without location or owner data, off the interface's thread; its row shows once it is kept.
class PhotosModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowTitle READ windowTitle NOTIFY changed)
    /// Roles: `sha256` (key), `caption`, `thumbnail` (url), `picture` (url), `state` (words: "on this phone", "at the
    /// workroom"), `marked` ("2 marks", empty where none), `of` (a word of `subjects`) and what that says, `spoken`.
    Q_PROPERTY(truehang::ShownRows* photos READ photos CONSTANT)
    /// What a photo may show: this window, each thing that is in its way, the room. Roles: `word` (key), `says`.
    Q_PROPERTY(truehang::ShownRows* subjects READ subjects CONSTANT)
    /// What the photos that come in show: a word of `subjects`.
    Q_PROPERTY(QString comesAs READ comesAs WRITE setComesAs NOTIFY changed)
    /// How many are being read in just now.
    Q_PROPERTY(int coming READ coming NOTIFY changed)
    /// Why a picture couldn't be taken in; empty where all could.
    Q_PROPERTY(QString fault READ fault NOTIFY changed)
    /// The QML file for a Loader that shows the camera and calls `takeIn`; empty: "No camera here, choose a file".
    Q_PROPERTY(QUrl cameraSource READ cameraSource CONSTANT)
    /// The marks over one of the photos.
    Q_PROPERTY(truehang::MarksModel* marks READ marks CONSTANT)
    /// One of the photos as a rough tape.
    Q_PROPERTY(truehang::PhotoTapeModel* tape READ tape CONSTANT)
    /// Place and owner stay in the photos that come in.
    Q_PROPERTY(bool keepsOrigin READ keepsOrigin NOTIFY changed)
    /// The system can be asked for a picture in its clipboard.
    Q_PROPERTY(bool canPaste READ canPaste CONSTANT)

public:
    PhotosModel(OpenVisit& open, Devices& devices, Settings& settings, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] ShownRows* photos() { return &photos_; }
    [[nodiscard]] ShownRows* subjects() { return &subjects_; }
    [[nodiscard]] QString comesAs() const { return comes_as_; }
    void setComesAs(const QString& word);
    /// What comes in shows this thing that is in the way.
    Q_INVOKABLE void comesOf(const QString& obstructionId);
    [[nodiscard]] int coming() const { return coming_; }
    [[nodiscard]] QString fault() const { return fault_; }
    [[nodiscard]] QUrl cameraSource() const;
    [[nodiscard]] bool canPaste() const;
    [[nodiscard]] MarksModel* marks() { return &marks_; }
    [[nodiscard]] PhotoTapeModel* tape() { return &tape_; }
    [[nodiscard]] bool keepsOrigin() const;

    /// Takes in a file that was chosen or captured.
    Q_INVOKABLE void takeIn(const QUrl& file);
    /// Takes in the picture in the clipboard.
    Q_INVOKABLE void paste();
    Q_INVOKABLE void setCaption(const QString& sha256, const QString& caption);
    /// Each keystroke of a caption, kept as a draft.
    Q_INVOKABLE void typingCaption(const QString& sha256, const QString& caption);
    /// Says what a photo shows: a word of `subjects`.
    Q_INVOKABLE void give(const QString& sha256, const QString& word);
    /// Takes it off this window or its room; undo brings it back.
    Q_INVOKABLE void remove(const QString& sha256);

signals:
    void changed();

private:
    struct Files {
        QUrl picture;
        QUrl thumbnail;
    };

    void show();
    void showSubjects();
    void findFiles(const QString& sha256);
    void askArrived();
    void takeInWith(std::function<Result<ImportedPhoto>()> import);
    void keep(const QByteArray& jpeg, const QString& windowId, const QString& of);
    [[nodiscard]] QString placeOf(const QString& sha256) const;
    void setFault(const QString& fault);

    OpenVisit& open_;
    Devices& devices_;
    Settings& settings_;
    MarksModel marks_;
    PhotoTapeModel tape_;
    ShownRows photos_;
    ShownRows subjects_;
    QString comes_as_;
    QHash<QString, Files> files_;
    QSet<QString> arrived_;
    int coming_ = 0;
    QString fault_;
};

}  // namespace truehang
