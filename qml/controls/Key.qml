// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One key of the keypad: a hairline cell with a figure or a word.
PressItem {
    id: key

    property bool word: false // letters, not a figure
    property bool next: false // the one next action
    property bool held: false // its row of keys is open
    property string said: text // for those who hear it

    implicitWidth: Theme.target
    implicitHeight: Theme.keyHeight
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: said
    Accessible.onPressAction: if (enabled) clicked()

    Text {
        anchors.fill: parent
        anchors.leftMargin: 4
        anchors.rightMargin: 4
        text: key.text
        color: key.next ? Theme.paper : Theme.ink
        font.family: Theme.figures
        font.pixelSize: key.word || key.next ? Theme.keyWord : Theme.key
        font.bold: key.next
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: 14
        textFormat: Text.PlainText
        horizontalAlignment: Text.AlignHCenter
        verticalAlignment: Text.AlignVCenter
        Accessible.ignored: true
    }
    Rectangle {
        anchors.fill: parent
        z: -1
        color: key.next ? Theme.thread : key.pressed ? Theme.wash : Theme.paper

        Rectangle {
            visible: key.held
            anchors.bottom: parent.bottom
            anchors.bottomMargin: 8
            anchors.horizontalCenter: parent.horizontalCenter
            width: 28
            height: Theme.focus
            color: Theme.ink
        }
        Rectangle {
            visible: key.pressed
            anchors.fill: parent
            anchors.margins: 4
            color: "transparent"
            border.width: Theme.firm
            border.color: key.next ? Theme.paper : Theme.ink
        }
        FocusFrame {
            anchors.fill: parent
            anchors.margins: key.next ? 3 : 1
            border.color: key.next ? Theme.paper : Theme.ink
            shown: key.visualFocus
        }
    }
}
