// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// An underlined word that does something; its target is larger than the word.
PressItem {
    id: button

    property string explained: text // for those who hear it
    property bool dim: false
    property bool alignRight: false

    implicitWidth: Math.max(Theme.target, word.implicitWidth)
    implicitHeight: Math.max(Theme.target, word.implicitHeight + Theme.gap)
    width: parent ? Math.min(implicitWidth, parent.width) : implicitWidth // long words go on in a next line
    focusPolicy: Qt.StrongFocus
    opacity: enabled ? 1 : 0.45
    Accessible.role: Accessible.Button
    Accessible.name: explained
    Accessible.onPressAction: if (enabled) clicked()

    Item {
        anchors.fill: parent

        Text {
            id: word

            width: parent.width
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: button.alignRight ? Text.AlignRight : Text.AlignLeft
            text: button.text
            color: Theme.ink
            font.family: Theme.figures
            font.pixelSize: button.dim ? Theme.dim : Theme.body
            wrapMode: Text.Wrap
            Accessible.ignored: true
        }
        Rectangle {
            width: word.contentWidth
            height: button.pressed || button.visualFocus ? Theme.focus : Theme.underline
            x: word.effectiveHorizontalAlignment === Text.AlignRight ? parent.width - width : 0
            anchors.top: word.bottom
            anchors.topMargin: 1
            color: Theme.ink
        }
    }
    Rectangle {
        anchors.fill: parent
        z: -1
        color: button.pressed ? Theme.wash : "transparent"

        FocusFrame {
            anchors.fill: parent
            anchors.margins: -Theme.focus
            anchors.leftMargin: -Theme.frameGap
            anchors.rightMargin: -Theme.frameGap
            shown: button.visualFocus
        }
    }
}
