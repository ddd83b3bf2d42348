// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// A row to open: its stitch in the margin, a name, and one or two lines that say where it stands.
PressItem {
    id: row

    property string line // of second rank
    property string stateWords // what the stitch says
    property string quietWords // below it, of second rank
    property string figure // at the right
    property bool strong: false
    property bool marked: false
    property int mark: ThreadMark.ToDo
    property string spoken: text

    // What is heard after the name, where that is only what stands first.
    function aside(parts: var): string {
        return parts.filter(words => words !== "").join(", ");
    }

    implicitWidth: 200
    implicitHeight: Math.max(Theme.action, body.implicitHeight + 2 * Theme.gap - 4)
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: spoken
    Accessible.onPressAction: if (enabled) clicked()
    Accessible.description: spoken === text ? row.aside([figure, line, stateWords, quietWords]) : ""

    Item {
        anchors.fill: parent

        Column {
            id: body

            width: parent.width
            anchors.verticalCenter: parent.verticalCenter

            Item {
                readonly property bool stacked: number.implicitWidth + name.implicitWidth + Theme.gap > width

                width: parent.width
                height: stacked && number.visible ? name.height + number.height : name.height

                Sentence {
                    id: name

                    anchors.left: parent.left
                    width: parent.stacked || !number.visible ? parent.width : parent.width - number.implicitWidth - Theme.gap
                    text: row.text
                    font.pixelSize: Theme.body + 1
                    strong: row.strong
                    Accessible.ignored: true
                }
                Sentence {
                    id: number

                    visible: row.figure !== ""
                    width: parent.stacked ? parent.width : implicitWidth
                    anchors.right: parent.right
                    anchors.bottom: parent.bottom
                    horizontalAlignment: Text.AlignRight
                    text: row.figure
                    Accessible.ignored: true
                }
            }
            Sentence {
                width: parent.width
                visible: row.line !== ""
                second: true
                text: row.line
                Accessible.ignored: true
            }
            Sentence {
                width: parent.width
                visible: row.stateWords !== ""
                text: row.stateWords
                font.pixelSize: Theme.dim
                Accessible.ignored: true
            }
            Sentence {
                width: parent.width
                visible: row.quietWords !== ""
                second: true
                text: row.quietWords
                Accessible.ignored: true
            }
        }
    }
    Rectangle {
        anchors.fill: parent
        z: -1
        color: row.pressed ? Theme.wash : "transparent"

        Stitches {
            visible: row.marked
            x: -Theme.margin
            height: 40
            firstAt: Theme.gap + 2
            mark: row.mark
        }
        Rule {
            width: parent.width
            firm: row.pressed
        }
        FocusFrame {
            anchors.fill: parent
            anchors.leftMargin: -Theme.frameGap
            anchors.rightMargin: -Theme.frameGap
            shown: row.visualFocus
        }
    }
}
