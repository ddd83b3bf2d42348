// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "scene.h"

#include <QImage>
#include <QRect>
#include <optional>
#include <vector>

namespace truehang::test {

/// How the gallery is dressed for its pictures.
struct GalleryLook {
    const char* name;
    const char* look;
    double letters;
    bool from_right;
    const char* hand;
};
inline constexpr GalleryLook gallery_looks[] = {{"light", "light", 1.0, false, "right"},
                                                {"dark", "dark", 1.0, false, "right"},
                                                {"largest", "light", 2.0, false, "right"},
                                                {"from-right", "light", 1.0, true, "right"},
                                                {"left-hand", "light", 1.0, false, "left"}};

/// A control in one of its states.
struct StatePicture {
    QString what;  ///< the state, as the gallery names it
    QImage picture;
};

/// Where two pictures differ.
struct Difference {
    QRect box;   ///< the smallest that holds every pixel that differs; empty where the sizes differ
    int pixels;  ///< how many
};

/// A colour's part may differ by so much of 255: what rounding does on other processors.
inline constexpr int golden_tolerance = 8;

/// Nothing where the pictures are the same within `golden_tolerance`.
[[nodiscard]] std::optional<Difference> difference(const QImage& one, const QImage& other);

/// Call it before QGuiApplication is made: the shipped fonts alone, the software back end, scale 1, no locale.
void pin_what_pictures_hang_on();

/// The gallery, and what a finger and a key do there.
class Plates {
public:
    Plates();

    [[nodiscard]] Scene& scene() { return scene_; }
    [[nodiscard]] QStringList controls() const;
    /// Whether a control is pictured in this look: the left hand changes only what stands at the hand's side.
    [[nodiscard]] static bool pictured(const QString& control, const GalleryLook& look);
    void dress(const GalleryLook& look);
    /// Shows this control's plate alone, whole.
    void show(const QString& control);
    /// The states of the control that is shown, and what brings each about (`press`, `focus`, or nothing).
    [[nodiscard]] QList<std::pair<QString, QString>> states() const;
    /// Each state of the control that is shown, in their order.
    [[nodiscard]] std::vector<StatePicture> taken();
    /// The gallery as one sees it, all plates, in a window of this size.
    void showAll(QSize size);
    [[nodiscard]] QQuickItem* shown() const { return shown_; }

private:
    [[nodiscard]] QList<QQuickItem*> specimens() const;
    [[nodiscard]] QImage under(QQuickItem* specimen, const QString& act);
    [[nodiscard]] static QQuickItem* firstTouched(QQuickItem* in);
    [[nodiscard]] static QRect placeOf(QQuickItem* specimen);
    void waitForPictures();
    void fillForm();

    Scene scene_;
    FieldForm form_;
    std::unique_ptr<QObject> made_;
    QQuickItem* gallery_ = nullptr;
    QList<QQuickItem*> plates_;
    QQuickItem* shown_ = nullptr;
    QQuickItem* nowhere_ = nullptr;  ///< has the focus where nothing is to show it
};

/// The pieces one under the other.
[[nodiscard]] QImage stacked(const std::vector<StatePicture>& pieces);

}  // namespace truehang::test
