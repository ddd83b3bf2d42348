// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One look at which way the window faces: what is read of it.
Screen {
    id: panel

    required property Notebook notebook
    readonly property BearingsModel bearings: panel.notebook.outlook.bearings

    title: qsTr("Which way it faces")
    action: qsTr("Done with this one")
    onActed: panel.backAsked()
    footWords: WordButton {
        visible: panel.notebook.visit.canUndo
        text: qsTr("undo")
        onClicked: panel.notebook.visit.undo()
    }

    Heading {
        width: parent.width
        text: panel.bearings.currentSays
    }
    Sentence {
        width: parent.width
        visible: text !== ""
        bottomPadding: Theme.rowGap
        text: panel.bearings.currentMinds
    }
    Column {
        visible: panel.bearings.way === "shadow"
        width: parent.width

        Sentence {
            width: parent.width
            text: panel.bearings.timeSays
        }
        WordButton {
            text: qsTr("the shadow lies on the mark now")
            explained: qsTr("The shadow lies on the mark now: take this time")
            onClicked: panel.bearings.timeAgain()
        }
    }
    FormFields {
        width: parent.width
        form: panel.bearings.form
    }
    Item {
        width: 1
        height: 2 * Theme.gap
    }
    WordButton {
        text: qsTr("take it out")
        explained: qsTr("Take it out; undo brings it back")
        onClicked: panel.bearings.remove(panel.bearings.current)
    }
}
