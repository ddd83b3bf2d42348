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
        value: window.notebook.settings.look === "dark" || (window.notebook.settings.look === "system" && system.window.hslLightness < 0.5)
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
        anchors.fill: parent
        anchors.bottomMargin: window.keyboardHeight
        notebook: window.notebook
        focus: true
    }
}
