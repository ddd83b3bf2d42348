// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One line of what was taken twice: where, what, one of its values to take, or the way to the tape.
Item {
    id: line

    required property string row
    required property string kind // place, thing, choice, again
    required property string says
    required property string who
    required property bool stands
    required property bool broad
    required property string spoken

    signal chosen

    implicitHeight: kind === "place" ? place.implicitHeight : kind === "thing" ? thing.implicitHeight : kind === "again" ? again.height + Theme.gap : button.implicitHeight

    SectionTitle {
        id: place

        visible: line.kind === "place"
        width: parent.width
        text: line.says
    }
    Sentence {
        id: thing

        visible: line.kind === "thing"
        width: parent.width
        topPadding: Theme.rowGap
        bottomPadding: Theme.rowGap
        text: line.says
    }
    WordButton {
        id: again

        visible: line.kind === "again"
        text: line.says
        explained: line.spoken
        onClicked: line.chosen()
    }
    PressItem {
        id: button

        visible: line.kind === "choice"
        width: parent.width
        height: parent.height
        implicitHeight: Math.max(Theme.action, words.implicitHeight + 2 * Theme.gap)
        focusPolicy: Qt.StrongFocus
        Accessible.role: Accessible.Button
        Accessible.name: line.spoken
        Accessible.onPressAction: if (enabled) clicked()
        onClicked: line.chosen()

        Column {
            id: words

            width: parent.width - Theme.gap
            y: Theme.gap

            Sentence {
                width: parent.width
                text: line.says
                font.pixelSize: line.broad ? Theme.body : Theme.figure
                strong: true
                Accessible.ignored: true
            }
            Sentence {
                visible: text !== ""
                width: parent.width
                second: true
                text: line.who
                Accessible.ignored: true
            }
            Sentence {
                visible: line.stands
                width: parent.width
                second: true
                text: qsTr("holds meanwhile")
                Accessible.ignored: true
            }
        }
        Rectangle {
            anchors.fill: parent
            z: -1
            color: button.pressed ? Theme.wash : "transparent"

            Rule {
                width: parent.width
                firm: button.pressed || line.stands
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
