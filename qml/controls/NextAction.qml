// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The one next action, at the foot, said as what it does.
PressItem {
    id: button

    implicitWidth: 200
    implicitHeight: Math.max(Theme.action, word.implicitHeight + 2 * Theme.gap)
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: text
    Accessible.onPressAction: if (enabled) clicked()

    Text {
        id: word

        x: Theme.edge + 2
        width: parent.width - 2 * x
        height: parent.height
        text: button.text
        color: Theme.paper
        font.family: Theme.figures
        font.pixelSize: Theme.body + 1
        font.bold: true
        wrapMode: Text.Wrap
        verticalAlignment: Text.AlignVCenter
        horizontalAlignment: Theme.leftHand ? Text.AlignLeft : Text.AlignRight
        Accessible.ignored: true
    }
    Rectangle {
        anchors.fill: parent
        z: -1
        color: button.enabled ? Theme.thread : Theme.soft

        Rectangle {
            visible: button.pressed
            anchors.fill: parent
            anchors.margins: 4
            color: "transparent"
            border.width: Theme.firm
            border.color: Theme.paper
        }
        FocusFrame {
            anchors.fill: parent
            anchors.margins: -2 * Theme.focus
            shown: button.visualFocus
        }
    }
}
