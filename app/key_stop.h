// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QQuickItem>

namespace truehang {

/// A stop of the Tab key that is no button and no field, as the reading that is typed: it says whether the keyboard
/// came there by keys, so that a frame is drawn.
class KeyStop : public QQuickItem {
    Q_OBJECT
    Q_PROPERTY(bool visualFocus READ visualFocus NOTIFY visualFocusChanged)

public:
    explicit KeyStop(QQuickItem* parent = nullptr);

    [[nodiscard]] bool visualFocus() const { return visual_focus_; }

signals:
    void visualFocusChanged();

protected:
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void setVisualFocus(bool is_seen);

    bool visual_focus_ = false;
};

}  // namespace truehang
