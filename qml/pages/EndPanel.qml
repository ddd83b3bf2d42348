// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Past the last station: what is left open, and what comes next.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    signal panelAsked(string panel)

    title: panel.walk.title
    word: qsTr("photo")
    wordExplained: qsTr("Photos of this window")
    threadRows: panel.walk.stations
    sideHeight: Math.max(Theme.drawingLowest, height * 0.38 / Theme.textFactor)
    action: qsTr("What is in the way")
    backWord: qsTr("last station")
    onWordChosen: panel.notebook.screen = "photos"
    onActed: panel.notebook.screen = "obstructions"
    onBackAsked: panel.walk.back()
    footWords: [
        WordButton {
            text: qsTr("all stations")
            explained: qsTr("All stations of this window")
            onClicked: panel.panelAsked("window")
        },
        WordButton {
            text: qsTr("visit")
            explained: qsTr("Back to the visit")
            onClicked: panel.notebook.screen = "visit"
        }
    ]
    sideContent: Elevation {
        source: panel.notebook.open
        dimensions: panel.wide
        onStationPicked: station => panel.walk.jumpTo(station)
    }

    Heading {
        width: parent.width
        text: qsTr("That was the last station")
    }
    FlagLine {
        visible: panel.walk.notKept !== ""
        width: parent.width
        severity: "stop"
        word: qsTr("Not kept")
        text: panel.walk.notKept
        live: true
    }
    Sentence {
        visible: text !== ""
        width: parent.width
        topPadding: Theme.rowGap
        text: panel.walk.line
    }
    Asked {
        width: parent.width
        text: panel.walk.nextWhy !== "" ? panel.walk.nextWhy : panel.walk.nothingMore
        word: panel.walk.nextSays
        onChosen: panel.walk.takeNext()
    }
    Asked {
        visible: panel.walk.levelWhy !== "" && panel.walk.levelWhy !== panel.walk.nextWhy
        width: parent.width
        text: panel.walk.levelWhy
        word: qsTr("take a level line")
        onChosen: panel.walk.takeLevel()
    }
    Asked {
        visible: panel.walk.hasPutOff
        width: parent.width
        word: qsTr("what differs")
        explained: qsTr("The readings that don’t add up")
        onChosen: panel.walk.lookAgain()
    }
    Repeater {
        model: panel.walk.stations

        Place {
            id: place

            required property string station
            required property string says
            required property string reason
            required property string figure
            required property bool asks
            required property bool isProposed

            width: parent.width
            active: asks || isProposed || figure === ""
            visible: active
            sourceComponent: ListRow {
                text: place.says
                figure: place.figure
                line: place.reason !== "" ? qsTr("not taken: %1").arg(place.reason) : place.figure === "" ? qsTr("not measured") : place.isProposed ? qsTr("no tape has confirmed it yet") : qsTr("doesn’t add up with the others")
                strong: place.asks
                onClicked: panel.walk.jumpTo(place.station)
            }
        }
    }
}
