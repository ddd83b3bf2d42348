// SPDX-License-Identifier: Apache-2.0
#include "survey_keeping.h"

#include <QMetaObject>

namespace truehang {

SurveyKeeping::SurveyKeeping(const QString& folder, std::function<std::string()> now,
                             std::function<std::string()> new_id, QObject* parent)
    : QObject(parent), folder_(folder), now_(std::move(now)), new_id_(std::move(new_id)) {
    const std::filesystem::path path(folder.toStdString());
    store_ = std::make_unique<AsyncStore>(
        [path, surroundings = StoreSurroundings{now_, new_id_, {}}] { return Store::open(path, surroundings); },
        [this](AsyncStore::Task task) { QMetaObject::invokeMethod(this, std::move(task), Qt::QueuedConnection); });
}

SurveyKeeping::~SurveyKeeping() = default;

}  // namespace truehang
