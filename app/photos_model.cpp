// SPDX-License-Identifier: Apache-2.0
#include "photos_model.h"

#include "devices.h"
#include "open_visit.h"
#include "photo_import.h"
#include "settings.h"
#include "survey_keeping.h"
#include "whereabouts.h"
#include "writing.h"

#include <QDir>
#include <QFile>
#include <QPointer>
#include <QThreadPool>
#include <algorithm>

namespace truehang {

namespace {

/// Does `work` on a thread of the pool, then `then` with its result on the thread of `owner`, if it is there still.
template <class Work, class Then>
void aside(QObject* owner, Work work, Then then) {
    QThreadPool::globalInstance()->start([still = QPointer(owner), work = std::move(work), then = std::move(then)] {
        auto result = work();
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [still, then, result = std::move(result)] {
                if (still) {
                    then(result);
                }
            },
            Qt::QueuedConnection);
    });
}

}  // namespace

PhotosModel::PhotosModel(OpenVisit& open, Devices& devices, Settings& settings, QObject* parent)
    : QObject(parent),
      open_(open),
      devices_(devices),
      settings_(settings),
      marks_(open),
      photos_({"sha256", "caption", "thumbnail", "picture", "state", "marked", "spoken"}) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        setFault({});
        show();
    });
    connect(&open_, &OpenVisit::changed, this, &PhotosModel::show);
    connect(&open_, &OpenVisit::standingChanged, this, &PhotosModel::askArrived);
    connect(&settings_, &Settings::changed, this, &PhotosModel::changed);
    show();
}

QString PhotosModel::windowTitle() const { return open_.titleOf(open_.windowId()); }
QUrl PhotosModel::cameraSource() const { return devices_.camera->source(); }
bool PhotosModel::keepsOrigin() const { return settings_.keepsPhotoOrigin(); }
bool PhotosModel::canPaste() const { return devices_.clipboard->hasPicture(); }

QString PhotosModel::placeOf(const QString& sha256) const {
    return QStringLiteral("photo/%1/%2").arg(open_.windowId(), sha256);
}

void PhotosModel::show() {
    QList<ShownRows::Row> rows;
    if (const Window* window = open_.window()) {
        for (const Photo& photo : window->photos) {
            const QString sha = shown(photo.sha256);
            const QString place = placeOf(sha);
            const QString caption = open_.place().has(place) ? open_.place().text(place) : shown(photo.caption);
            const Files files = files_.value(sha);
            const QString state = arrived_.contains(sha) ? tr("there") : tr("on this phone");
            const int count = static_cast<int>(photo.marks.size());
            const QString marked = count == 0 ? QString() : count == 1 ? tr("1 mark") : tr("%1 marks").arg(count);
            QStringList spoken{caption.isEmpty() ? tr("Photo") : caption, state};
            if (count > 0) {
                spoken.append(marked);
            }
            rows.append(
                {sha, caption, files.thumbnail, files.picture, state, marked, spoken.join(QStringLiteral(", "))});
            if (!files_.contains(sha)) {
                files_.insert(sha, {});
                findFiles(sha);
            }
        }
    }
    photos_.setRows(rows);
    emit changed();
}

void PhotosModel::findFiles(const QString& sha256) {
    const QString folder = open_.keeping().folder() + QStringLiteral("/thumbnails");
    open_.keeping().post(
        this, [sha = bytes(sha256)](Store& store) { return store.photo_file(sha); },
        [this, sha256, folder](const Result<std::filesystem::path>& found) {
            if (!found) {
                return;
            }
            const QString file = QString::fromStdString(found->string());
            const QString small = folder + QLatin1Char('/') + sha256 + QStringLiteral(".jpg");
            aside(
                this,
                [file, small, folder] {
                    if (QFile::exists(small)) {
                        return true;
                    }
                    QFile kept(file);
                    QDir().mkpath(folder);
                    return kept.open(QIODevice::ReadOnly) && thumbnail_of(kept.readAll()).save(small, "jpeg", 85);
                },
                [this, sha256, file, small](bool made) {
                    files_.insert(sha256, {QUrl::fromLocalFile(file), made ? QUrl::fromLocalFile(small) : QUrl()});
                    show();
                });
        });
}

void PhotosModel::askArrived() {
    if (!open_.isOpen()) {
        return;
    }
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return store.items_of(visit); },
        [this](const Result<std::vector<OutboxItem>>& items) {
            if (!items) {
                return;
            }
            arrived_.clear();
            for (const OutboxItem& item : *items) {
                if (item.kind == ItemKind::photo && item.state == ItemState::confirmed) {
                    arrived_.insert(shown(item.id));
                }
            }
            show();
        });
}

void PhotosModel::takeIn(const QUrl& file) {
    const auto read = devices_.files->read(file, photo_file_limit);
    if (!read) {
        setFault(fault_of(read));
        return;
    }
    const SaidBeside said = keepsOrigin() ? SaidBeside::kept : SaidBeside::dropped;
    takeInWith([bytes = *read, said] { return import_photo(bytes, said); });
}

void PhotosModel::paste() {
    takeInWith([picture = devices_.clipboard->picture()] { return import_photo(picture); });
}

void PhotosModel::takeInWith(std::function<Result<ImportedPhoto>()> import) {
    if (!open_.window()) {
        return;
    }
    ++coming_;
    setFault({});
    aside(this, std::move(import), [this, window = open_.windowId()](const Result<ImportedPhoto>& photo) {
        if (!photo) {
            --coming_;
            setFault(fault_of(photo));
            return;
        }
        keep(photo->jpeg, window);
    });
}

void PhotosModel::keep(const QByteArray& jpeg, const QString& windowId) {
    open_.keeping().post(
        this, [kept = jpeg.toStdString()](Store& store) { return store.keep_photo(kept, "image/jpeg"); },
        [this, windowId, size = jpeg.size()](const Result<std::string>& sha256) {
            --coming_;
            if (!sha256) {
                setFault(fault_of(sha256));
                return;
            }
            Photo photo;
            photo.sha256 = *sha256;
            photo.media_type = "image/jpeg";
            photo.bytes = size;
            const bool added = open_.editWindow(
                tr("A photo"), windowId,
                [photo](Window& window) {
                    if (std::ranges::count(window.photos, photo.sha256, &Photo::sha256) > 0) {
                        return false;
                    }
                    window.photos.push_back(photo);
                    return true;
                },
                [this](const QString& fault) { setFault(fault); });
            setFault(added ? QString() : tr("This photo is here already."));
        });
}

void PhotosModel::typingCaption(const QString& sha256, const QString& caption) {
    open_.place().setText(placeOf(sha256), caption, true);
}

void PhotosModel::setCaption(const QString& sha256, const QString& caption) {
    const QString place = placeOf(sha256);
    const bool changed = open_.editWindow(
        tr("Caption: %1").arg(caption), open_.windowId(),
        [sha256, caption](Window& window) {
            const auto photo = std::ranges::find(window.photos, bytes(sha256), &Photo::sha256);
            if (photo == window.photos.end() || photo->caption == bytes(caption)) {
                return false;
            }
            photo->caption = bytes(caption);
            return true;
        },
        [this, place, caption](const QString& fault) {
            if (!fault.isEmpty()) {
                open_.place().setText(place, caption, true);
            } else if (open_.place().text(place) == caption) {
                open_.place().forget(place);
            }
        });
    if (!changed) {
        open_.place().forget(place);
    }
}

void PhotosModel::remove(const QString& sha256) {
    open_.editWindow(tr("A photo taken off"), open_.windowId(), [sha256](Window& window) {
        return std::erase_if(window.photos, [&](const Photo& p) { return shown(p.sha256) == sha256; }) > 0;
    });
}

void PhotosModel::setFault(const QString& fault) {
    fault_ = fault;
    emit changed();
}

}  // namespace truehang
