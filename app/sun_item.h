// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "elevation_item.h"
#include "outlook_model.h"

#include <QPointer>

namespace truehang {

/// The open window with the sun’s ways over it, or its calendar of sun: what the outlook has worked.
class SunItem : public truehang::ElevationItem {  // in full: by this name QML finds its base
    Q_OBJECT
    Q_PROPERTY(truehang::OutlookModel* outlook READ outlook WRITE setOutlook NOTIFY asked)
    Q_PROPERTY(bool calendar MEMBER calendar_ NOTIFY asked)
    /// How high the calendar stands at its width.
    Q_PROPERTY(qreal needed READ needed NOTIFY drawn)

public:
    using ElevationItem::ElevationItem;

    [[nodiscard]] OutlookModel* outlook() const { return outlook_; }
    void setOutlook(OutlookModel* outlook);
    [[nodiscard]] qreal needed() const;

protected:
    void updatePolish() override;

private:
    QPointer<OutlookModel> outlook_;
    bool calendar_ = false;
};

}  // namespace truehang
