// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What two people took or changed differently, side by side: one tap says which one counts, or the tape does.
Page {
    id: page

    readonly property TakenTwiceModel twice: page.notebook.twice

    Screen {
        id: screen

        anchors.fill: parent
        focus: true
        title: qsTr("Taken twice")
        action: page.twice.count === 0 ? qsTr("Done") : ""
        onBackAsked: page.leave()
        onActed: page.leave()
        footWords: [
            WordButton {
                visible: page.notebook.visit.canUndo
                text: qsTr("undo")
                explained: qsTr("Undo: %1").arg(page.notebook.visit.undoSays)
                onClicked: page.notebook.visit.undo()
            },
            WordButton {
                visible: page.notebook.visit.canRedo
                text: qsTr("redo")
                onClicked: page.notebook.visit.redo()
            }
        ]

        Sentence {
            width: parent.width
            text: page.twice.count === 0 ? qsTr("Nothing is left to be said: one of each counts.") : page.twice.line
        }
        Sentence {
            width: parent.width
            visible: page.twice.count > 0
            second: true
            text: qsTr("A tap says what counts; undo brings both back.")
        }
        FlagLine {
            width: parent.width
            visible: page.twice.fault !== ""
            severity: "stop"
            word: qsTr("Stop")
            text: page.twice.fault
            live: true
        }
        Flow {
            id: sides

            width: parent.width

            Repeater {
                model: page.twice.rows

                TwiceRow {
                    width: broad ? sides.width : Math.floor(sides.width / 2)
                    onChosen: page.twice.choose(row)
                }
            }
        }
    }
}
