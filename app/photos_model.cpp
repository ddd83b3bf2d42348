// SPDX-License-Identifier: Apache-2.0
#include "photos_model.h"

#include "devices.h"
#include "obstructions_model.h"
#include "open_visit.h"
#include "photo_import.h"
#include "settings.h"
#include "survey/photos.h"
#include "survey_keeping.h"
#include "whereabouts.h"
#include "work_aside.h"
#include "writing.h"

#include <QDir>
#include <QFile>
#include <algorithm>

namespace truehang {

namespace {

constexpr auto window_word = "window";
constexpr auto room_word = "room";
constexpr auto obstruction_word = "obstruction/";  // its id follows

QString word_of(const PhotoOf& of) {
    return of.room                  ? QString::fromLatin1(room_word)
           : of.obstruction.empty() ? QString::fromLatin1(window_word)
                                    : QLatin1String(obstruction_word) + shown(of.obstruction);
}

PhotoOf of_word(const QString& word) {
    if (word.startsWith(QLatin1String(obstruction_word))) {
        return {.room = false, .obstruction = bytes(word.mid(QLatin1String(obstruction_word).size()))};
    }
    return {.room = word == QLatin1String(room_word), .obstruction = {}};
}

}  // namespace

PhotosModel::PhotosModel(OpenVisit& open, Devices& devices, Settings& settings, QObject* parent)
    : QObject(parent),
      open_(open),
      devices_(devices),
      settings_(settings),
      marks_(open),
      tape_(open),
      photos_({"sha256", "caption", "thumbnail", "picture", "state", "marked", "of", "ofSays", "spoken"}),
      subjects_({"word", "says"}),
      comes_as_(QLatin1String(window_word)) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        comes_as_ = QLatin1String(window_word);
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
    showSubjects();
    QList<ShownRows::Row> rows;
    if (open_.isOpen()) {
        for (const PhotoPlace& with : photos_with(open_.survey(), bytes(open_.windowId()))) {
            const Photo& photo = *with.photo;
            const QString sha = shown(photo.sha256);
            const QString place = placeOf(sha);
            const QString caption = open_.place().has(place) ? open_.place().text(place) : shown(photo.caption);
            const Files files = files_.value(sha);
            const QString state = arrived_.contains(sha) ? tr("at the workroom") : tr("on this phone");
            const int count = static_cast<int>(photo.marks.size());
            const QString marked = count == 0 ? QString() : count == 1 ? tr("1 mark") : tr("%1 marks").arg(count);
            const QString of = word_of(shown_by(with));
            const QString of_says = subjects_.value(subjects_.indexOf(of), QStringLiteral("says")).toString();
            QStringList spoken{caption.isEmpty() ? tr("Photo") : caption, of_says, state};
            if (count > 0) {
                spoken.append(marked);
            }
            rows.append({sha, caption, files.thumbnail, files.picture, state, marked, of, of_says,
                         spoken.join(QStringLiteral(", "))});
            if (!files_.contains(sha)) {
                files_.insert(sha, {});
                findFiles(sha);
            }
        }
    }
    photos_.setRows(rows);
    emit changed();
}

void PhotosModel::showSubjects() {
    QList<ShownRows::Row> rows;
    if (const Window* window = open_.window()) {
        rows.append({QLatin1String(window_word), tr("the window")});
        for (const Obstruction& one : window->obstructions) {
            const bool alike = std::ranges::count(window->obstructions, one.kind, &Obstruction::kind) > 1;
            const QString kind = ObstructionsModel::kindSays(one);
            const QString says =
                alike && one.left ? tr("%1, %2 from the left edge").arg(kind, truehang::shown(open_.survey(), one.left))
                                  : kind;
            rows.append({word_of({.room = false, .obstruction = one.id}), says});
        }
        rows.append({QLatin1String(room_word), tr("the room")});
    }
    subjects_.setRows(rows);
    if (subjects_.indexOf(comes_as_) < 0) {
        comes_as_ = QLatin1String(window_word);
    }
}

void PhotosModel::setComesAs(const QString& word) {
    if (word != comes_as_ && subjects_.indexOf(word) >= 0) {
        comes_as_ = word;
        emit changed();
    }
}

void PhotosModel::comesOf(const QString& obstructionId) {
    setComesAs(word_of({.room = false, .obstruction = bytes(obstructionId)}));
}

void PhotosModel::give(const QString& sha256, const QString& word) {
    const QString says = subjects_.value(subjects_.indexOf(word), QStringLiteral("says")).toString();
    open_.edit(tr("A photo is of: %1").arg(says),
               [window = bytes(open_.windowId()), sha = bytes(sha256), of = of_word(word)](Survey& survey) {
                   return give_photo(survey, window, sha, of);
               });
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
    aside(this, std::move(import),
          [this, window = open_.windowId(), of = comes_as_](const Result<ImportedPhoto>& photo) {
              if (!photo) {
                  --coming_;
                  setFault(fault_of(photo));
                  return;
              }
              keep(photo->jpeg, window, of);
          });
}

void PhotosModel::keep(const QByteArray& jpeg, const QString& windowId, const QString& of) {
    open_.keeping().post(
        this, [kept = jpeg.toStdString()](Store& store) { return store.keep_photo(kept, "image/jpeg"); },
        [this, windowId, of, size = jpeg.size()](const Result<std::string>& sha256) {
            --coming_;
            if (!sha256) {
                setFault(fault_of(sha256));
                return;
            }
            Photo photo;
            photo.sha256 = *sha256;
            photo.media_type = "image/jpeg";
            photo.bytes = size;
            const bool added = open_.edit(
                tr("A photo"),
                [photo, window = bytes(windowId), as = of_word(of)](Survey& survey) {
                    return add_photo(survey, window, photo, as);
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
    const bool changed = open_.edit(
        tr("Caption: %1").arg(caption),
        [window = bytes(open_.windowId()), sha256, caption](Survey& survey) {
            Photo* const photo = photo_with(survey, window, bytes(sha256));
            if (photo == nullptr || photo->caption == bytes(caption)) {
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
    open_.edit(tr("A photo taken off"), [window = bytes(open_.windowId()), sha = bytes(sha256)](Survey& survey) {
        return take_photo_off(survey, window, sha);
    });
}

void PhotosModel::setFault(const QString& fault) {
    fault_ = fault;
    emit changed();
}

}  // namespace truehang
