// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

Window {
    id: window

    required property Notebook notebook
    /// What a keyboard on the screen takes at the foot.
    property real keyboardHeight: InputMethod.visible ? InputMethod.keyboardRectangle.height : 0

    width: 360
    height: 760
    minimumWidth: 320
    minimumHeight: 320
    visible: true
    title: qsTr("Truehang")
    color: Theme.paper

    SystemPalette {
        id: system
    }
    Binding {
        target: Theme
        property: "dark"
        value: {
            switch (window.notebook.settings.look) {
            case "dark":
                return true;
            case "room":
                return window.notebook.light.dim;
            case "system":
                return system.window.hslLightness < 0.5;
            default:
                return false;
            }
        }
    }
    Binding {
        target: Theme
        property: "leftHand"
        value: window.notebook.settings.hand === "left"
    }
    Binding {
        target: Theme
        property: "textFactor"
        value: window.notebook.settings.textScale
    }

    Pages {
        // Pages run from the right where the language does; what is drawn of a window never mirrors.
        LayoutMirroring.enabled: Application.layoutDirection === Qt.RightToLeft
        LayoutMirroring.childrenInherit: true
        anchors.fill: parent
        anchors.bottomMargin: window.keyboardHeight
        notebook: window.notebook
        focus: true
    }
}
