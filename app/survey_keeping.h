// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/async_store.h"

#include <QObject>
#include <QPointer>
#include <QString>
#include <filesystem>
#include <memory>

namespace truehang {

/// The asynchronous store on Qt's event loop: what is posted runs on the store's thread, answers come as events of the
/// thread that this object lives in, never before `post` returns. After its end no answer comes any more.
class SurveyKeeping : public QObject {
    Q_OBJECT

public:
    /// `folder` holds the store; it is made where it isn't there. `now` gives RFC 3339 with an offset.
    SurveyKeeping(const QString& folder, std::function<std::string()> now, std::function<std::string()> new_id,
                  QObject* parent = nullptr);
    ~SurveyKeeping() override;

    /// `work(Store&)` gives a Result<T>; `then(Result<T>)` gets it, unless `asker` has gone by then.
    template <class Work, class Then>
    void post(const QObject* asker, Work work, Then then) {
        store_->post(std::move(work), [still = QPointer(asker), then = std::move(then)](auto answer) mutable {
            if (still) {
                then(std::move(answer));
            }
        });
    }

    [[nodiscard]] std::string now() const { return now_(); }
    [[nodiscard]] std::string newId() const { return new_id_(); }
    [[nodiscard]] QString folder() const { return folder_; }

private:
    QString folder_;
    std::function<std::string()> now_;
    std::function<std::string()> new_id_;
    std::unique_ptr<AsyncStore> store_;
};

}  // namespace truehang
