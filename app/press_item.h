// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "key_stop.h"

#include <QBasicTimer>
#include <QString>

namespace truehang {

/// What is pressed, by finger, mouse or Space: it says that it is pressed and that it was let go over itself, and draws
/// nothing. Each finger is followed by itself, so that keys pressed one into the other are all heard. Where something
/// around it takes the finger over, as a list that is dragged, nothing was pressed. What is held as long as the system
/// calls a hold says that in place of a press, where somebody listens for it.
class PressItem : public truehang::KeyStop {  // in full: qmllint looks for it by the name that stands here
    Q_OBJECT
    Q_PROPERTY(QString text MEMBER text_ NOTIFY textChanged)
    Q_PROPERTY(bool pressed READ pressed NOTIFY pressedChanged)
    Q_PROPERTY(Qt::FocusPolicy focusPolicy READ focusPolicy WRITE setFocusPolicy NOTIFY focusPolicyChanged)

public:
    explicit PressItem(QQuickItem* parent = nullptr);

    [[nodiscard]] bool pressed() const { return pressed_; }
    /// Whether Tab stops here, and whether a press takes the focus.
    [[nodiscard]] Qt::FocusPolicy focusPolicy() const { return focus_policy_; }
    void setFocusPolicy(Qt::FocusPolicy policy);

signals:
    void clicked();
    void pressAndHold();
    void textChanged();
    void pressedChanged();
    void focusPolicyChanged();

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;
    void touchEvent(QTouchEvent* event) override;
    void touchUngrabEvent() override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void timerEvent(QTimerEvent* event) override;

private:
    void press();
    void moveTo(QPointF at);
    void letGo();
    void forget();
    void setPressed(bool pressed);
    [[nodiscard]] bool follows(const QEventPoint& finger);

    static constexpr int no_finger = -1;

    QString text_;
    Qt::FocusPolicy focus_policy_ = Qt::TabFocus;
    bool pressed_ = false;
    int finger_ = no_finger;
    bool was_held_ = false;
    QBasicTimer hold_;  // runs while it may become one
};

}  // namespace truehang
