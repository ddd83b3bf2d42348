// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A window with all its stations, and the ways from here to everything else of it.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    signal stationChosen(string station)

    title: panel.walk.title
    word: qsTr("visit")
    wordExplained: qsTr("Back to the visit")
    sideHeight: height * 0.34
    action: qsTr("Go on measuring")
    onWordChosen: panel.notebook.screen = "visit"
    sideContent: Elevation {
        source: panel.notebook.open
        dimensions: panel.wide
        hanging: ElevationItem.Back
        onStationPicked: station => panel.stationChosen(station)
    }

    WindowWords {
        width: parent.width
        notebook: panel.notebook
    }
    WordButton {
        visible: panel.notebook.aloud.offered
        text: panel.notebook.settings.aloud ? qsTr("stop saying it aloud") : qsTr("say it aloud")
        explained: qsTr("Stations and readings said aloud")
        onClicked: panel.notebook.settings.aloud = !panel.notebook.settings.aloud
    }
    Repeater {
        model: panel.walk.stations

        ListRow {
            required property string station
            required property string says
            required property string reason
            required property bool asks
            required property bool isProposed
            required mark
            required figure
            required spoken

            width: parent.width
            marked: true
            text: says
            line: reason !== "" ? qsTr("not taken: %1").arg(reason) : ""
            stateWords: isProposed ? qsTr("no tape has confirmed it yet") : asks ? qsTr("doesn’t add up with the others") : figure === "" && reason === "" ? qsTr("to measure") : ""
            strong: asks
            onClicked: panel.stationChosen(station)
        }
    }
    Rule {
        width: parent.width
    }
    Asked {
        visible: panel.walk.canTakeLevel
        width: parent.width
        text: panel.walk.levelWhy
        word: qsTr("take a level line")
        onChosen: {
            panel.acted();
            panel.walk.takeLevel();
        }
    }
    FieldRow {
        width: parent.width
        label: qsTr("Name of this window")
        text: panel.notebook.visit.windows.count > 0 ? panel.notebook.visit.windows.value(panel.notebook.visit.windows.indexOf(panel.walk.windowId), "name") ?? "" : ""
        onCommitted: words => panel.notebook.visit.renameWindow(panel.walk.windowId, words)
    }
    SectionTitle {
        visible: panel.walk.more.count > 0
        width: parent.width
        text: qsTr("What else can be measured")
    }
    Repeater {
        model: panel.walk.more

        ListRow {
            required property string station
            required property string says

            width: parent.width
            text: says
            onClicked: panel.stationChosen(station)
        }
    }
    WindowPlace {
        width: parent.width
        notebook: panel.notebook
        windowId: panel.walk.windowId
        onCopied: panel.acted()
    }
    Item {
        width: 1
        height: 3 * Theme.gap
    }
    WordButton {
        text: qsTr("take this window out")
        explained: qsTr("Take this window out of the visit; it can be brought back")
        onClicked: {
            const gone = panel.walk.windowId;
            panel.notebook.screen = "visit";
            panel.notebook.visit.removeWindow(gone);
        }
    }
}
