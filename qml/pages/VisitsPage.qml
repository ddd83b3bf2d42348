// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The visits, the newest nearest the thumb.
Page {
    id: page

    property bool finding: page.notebook.search !== ""

    Screen {
        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: qsTr("Visits")
        bigTitle: true
        word: page.finding ? qsTr("show all") : qsTr("find")
        action: qsTr("New visit")
        canGoBack: false
        growsUp: true
        onWordChosen: {
            if (page.finding) {
                page.notebook.search = "";
                page.finding = false;
            } else {
                page.finding = true;
                find.forceActiveFocus();
            }
        }
        onActed: page.notebook.newVisit()
        footWords: [
            WordButton {
                text: qsTr("settings")
                explained: qsTr("Settings")
                onClicked: page.notebook.screen = "settings"
            },
            WordButton {
                visible: page.notebook.removedVisits.count > 0
                text: qsTr("removed")
                explained: qsTr("Removed visits")
                onClicked: page.panel = "removed"
            }
        ]

        Sentence {
            width: parent.width
            visible: page.notebook.visits.count === 0 && !page.finding
            text: qsTr("Nothing here yet. A visit holds one house: its rooms, its windows, and what is to hang there.")
            bottomPadding: Theme.gap
        }
        Sentence {
            width: parent.width
            visible: page.notebook.visits.count === 0 && page.finding
            text: qsTr("No visit has these words.")
            bottomPadding: Theme.gap
        }
        Repeater {
            model: page.notebook.visits

            ListRow {
                required property string visitId
                required property string title
                required property string state
                required property bool asks
                required line
                required mark
                required spoken

                width: parent.width
                marked: true
                text: title
                strong: asks
                stateWords: state
                onClicked: page.notebook.openVisit(visitId)
            }
        }
        FieldRow {
            id: find

            visible: page.finding
            width: parent.width
            label: qsTr("Find by title, client or address")
            text: page.notebook.search
            onEdited: words => page.notebook.search = words
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "removed"
        focus: active
        sourceComponent: Screen {
            title: qsTr("Removed visits")
            growsUp: true
            onBackAsked: page.leave()

            Sentence {
                width: parent.width
                text: qsTr("Tap a visit to bring it back.")
            }
            Repeater {
                model: page.notebook.removedVisits

                ListRow {
                    required property string visitId
                    required property string title

                    width: parent.width
                    text: title
                    onClicked: {
                        page.notebook.bringBack(visitId);
                        page.back();
                    }
                }
            }
        }
    }
}
