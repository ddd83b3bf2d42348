// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One thing that is left, as a flag to tap; above the first of a window, the window.
Column {
    id: row

    required property string item
    required property string heading
    required property string severity
    required property string word
    required property string says
    required property string spoken

    signal chosen

    SectionTitle {
        visible: row.heading !== ""
        width: parent.width
        text: row.heading
    }
    PressItem {
        id: button

        width: parent.width
        implicitHeight: Math.max(Theme.action, line.implicitHeight + Theme.gap)
        focusPolicy: Qt.StrongFocus
        Accessible.role: Accessible.Button
        Accessible.name: row.spoken
        Accessible.onPressAction: if (enabled) clicked()
        onClicked: row.chosen()

        FlagLine {
            id: line

            width: parent.width
            anchors.verticalCenter: parent.verticalCenter
            severity: row.severity
            word: row.word
            text: row.says
            Accessible.ignored: true
        }
        Rectangle {
            anchors.fill: parent
            z: -1
            color: button.pressed ? Theme.wash : "transparent"

            Rule {
                width: parent.width
                firm: button.pressed
            }
            FocusFrame {
                anchors.fill: parent
                anchors.leftMargin: -Theme.frameGap
                anchors.rightMargin: -Theme.frameGap
                shown: button.visualFocus
            }
        }
    }
}
