// SPDX-License-Identifier: Apache-2.0
#include "sun_item.h"

#include "sheet/sun_drawing.h"

namespace truehang {

void SunItem::setOutlook(OutlookModel* outlook) {
    if (outlook_ == outlook) {
        return;
    }
    if (outlook_) {
        outlook_->disconnect(this);
    }
    outlook_ = outlook;
    if (outlook_) {
        connect(outlook_, &OutlookModel::changed, this, &QQuickItem::polish);
    }
    emit asked();
}

qreal SunItem::needed() const { return elevation().height; }

void SunItem::updatePolish() {
    Elevation made;
    if (outlook_ && outlook_->light() && width() >= 120) {
        const OpenVisit& open = outlook_->open();
        const Window& window = *open.window();
        const SunDrawingOptions options{.width = width(),
                                        .height = calendar_ ? 1000.0 : height(),
                                        .label_size = labelSize(),
                                        .text_width = textWidth()};
        made = calendar_ ? sun_calendar_of(*outlook_->light(), options)
                         : sun_drawing_of(*open.roomOf(open.windowId()), window, open.figuresOf(open.windowId()),
                                          *outlook_->light(), options);
    }
    show(std::move(made));
}

}  // namespace truehang
