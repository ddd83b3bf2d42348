// SPDX-License-Identifier: Apache-2.0
#include "demo.h"

#include "document/document.h"
#include "survey_keeping.h"
#include "writing.h"

#include <QDir>
#include <QFile>
#include <cstdio>

namespace truehang {

namespace {

std::string whole(const QString& file) {
    QFile opened(file);
    return opened.open(QIODevice::ReadOnly) ? opened.readAll().toStdString() : std::string();
}

void complain(const QString& file, const std::string& text) {
    std::fprintf(stderr, "%s: %s\n", qPrintable(file), text.c_str());
}

/// Keeps the photos that stand beside the documents; a survey whose photo isn't there names it all the same.
void take_photos(Store& store, const QDir& folder) {
    const QDir photos(folder.filePath(QStringLiteral("photos")));
    for (const QString& name : photos.entryList({QStringLiteral("*.jpg")}, QDir::Files)) {
        const auto kept = store.keep_photo(whole(photos.filePath(name)), "image/jpeg");
        if (!kept) {
            complain(name, kept.error().text);
        }
    }
}

Result<Done> take_all(Store& store, const QDir& folder) {
    const auto visits = store.visits();
    if (!visits || !visits->empty()) {
        return visits ? Result<Done>(Done{}) : Result<Done>(visits.error());
    }
    take_photos(store, folder);
    for (const QString& name : folder.entryList({QStringLiteral("*.json")}, QDir::Files, QDir::Name | QDir::Reversed)) {
        const auto survey = read_survey(whole(folder.filePath(name)));
        if (!survey) {
            for (const Fault& fault : survey.error()) {
                complain(name, fault.pointer + ": " + fault.text);
            }
            continue;
        }
        if (const auto kept = store.keep(*survey, "Taken in"); !kept) {
            complain(name, kept.error().text);
        }
    }
    return Done{};
}

}  // namespace

void import_demo(SurveyKeeping& keeping, const QString& folder) {
    keeping.post(
        &keeping, [dir = QDir(folder)](Store& store) { return take_all(store, dir); },
        [folder](const Result<Done>& done) {
            if (!done) {
                complain(folder, done.error().text);
            }
        });
}

}  // namespace truehang
