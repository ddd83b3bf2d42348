// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Which way the window faces: what was taken of it, and three ways to take it.
Screen {
    id: panel

    required property Notebook notebook
    readonly property BearingsModel bearings: panel.notebook.outlook.bearings

    title: qsTr("Which way it faces")
    action: panel.bearings.watching && panel.bearings.compassTells ? qsTr("Keep this bearing") : ""
    onActed: panel.bearings.takeCompass()
    footWords: WordButton {
        visible: panel.notebook.visit.canUndo
        text: qsTr("undo")
        onClicked: panel.notebook.visit.undo()
    }

    Heading {
        width: parent.width
        text: panel.notebook.outlook.facing
        bottomPadding: Theme.rowGap
    }
    Repeater {
        model: panel.bearings.taken

        ListRow {
            required property string bearingId
            required property string says
            required property string minds
            required spoken

            width: panel.contentWidth
            enabled: bearingId !== ""
            text: says
            line: minds
            onClicked: panel.bearings.edit(bearingId)
        }
    }
    SectionTitle {
        width: parent.width
        text: qsTr("Take it")
    }
    ListRow {
        visible: panel.bearings.hasCompass && !panel.bearings.watching
        width: parent.width
        text: qsTr("By compass")
        line: qsTr("Quick and rough. Iron near it turns it.")
        onClicked: panel.bearings.watchCompass()
    }
    Column {
        visible: panel.bearings.watching
        width: parent.width

        Sentence {
            width: parent.width
            text: qsTr("Hold the phone level, its upper edge straight out of the window, an arm’s length from radiator and lintel.")
        }
        Heading {
            width: parent.width
            text: panel.bearings.compassSays
        }
        WordButton {
            text: qsTr("leave the compass")
            onClicked: panel.bearings.leaveCompass()
        }
    }
    ListRow {
        width: parent.width
        text: qsTr("By a shadow on the sill")
        line: qsTr("The best, while the sun shines in. Mark where an upright edge’s shadow lies, and tap here at that moment.")
        onClicked: panel.bearings.takeShadow()
    }
    FlagLine {
        width: parent.width
        severity: "caution"
        word: qsTr("Caution")
        text: qsTr("Look at the shadow, never into the sun.")
    }
    ListRow {
        width: parent.width
        text: qsTr("Off a plan")
        line: qsTr("The line of the street, read off a map.")
        onClicked: panel.bearings.takePlan()
    }
    Rule {
        width: parent.width
    }
}
