// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The visits, the newest nearest the thumb.
Page {
    id: page

    property bool finding: page.notebook.search !== ""
    property string damaged // the title of the visit that a file is wanted for; empty: of none
    readonly property bool narrowed: page.notebook.narrowed !== ""

    function back(): bool {
        if (page.panel === "") {
            return false;
        }
        page.panel = page.panel === "erase" ? "removed" : "";
        return true;
    }

    function narrowedTo(): string {
        const states = page.notebook.states;
        return page.narrowed ? states.value(states.indexOf(page.notebook.narrowed), "says") ?? "" : "";
    }

    onPanelChanged: {
        if (page.panel === "") {
            page.damaged = "";
            page.notebook.visitFile.forget();
        }
    }

    Screen {
        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: qsTr("Visits")
        bigTitle: true
        word: page.finding || page.narrowed ? qsTr("show all") : qsTr("find")
        action: qsTr("New visit")
        canGoBack: false
        onWordChosen: {
            if (page.finding || page.narrowed) {
                page.notebook.search = "";
                page.notebook.narrowed = "";
                page.finding = false;
            } else {
                page.finding = true;
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
                text: qsTr("from a file")
                explained: qsTr("Take in a visit from a file")
                onClicked: page.panel = "takeIn"
            },
            WordButton {
                visible: page.notebook.visits.count > 0 || page.narrowed
                text: qsTr("by state")
                explained: qsTr("Show the visits of one state")
                onClicked: page.panel = "states"
            },
            WordButton {
                visible: page.notebook.removedVisits.count > 0
                text: qsTr("removed")
                explained: qsTr("Removed visits")
                onClicked: page.panel = "removed"
            }
        ]
        listContent: VisitsList {
            rows: page.notebook.visits
            cameFrom: page.notebook.visit.visitId
            finding: page.finding
            search: page.notebook.search
            narrowedTo: page.narrowedTo()
            whenEmpty: page.finding ? qsTr("No visit has these words.") : page.narrowed ? qsTr("No visit stands so.") : qsTr("Nothing here yet. A visit holds one house: its rooms, its windows, and what is to hang there.")
            onVisitChosen: visitId => page.notebook.openVisit(visitId)
            onDamagedChosen: title => {
                page.damaged = title;
                page.panel = "takeIn";
            }
            onSearched: words => page.notebook.search = words
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel !== ""
        focus: active
        sourceComponent: page.panel === "states" ? states : page.panel === "takeIn" ? takeIn : bin
    }
    Component {
        id: states

        Screen {
            title: qsTr("Which visits")
            growsUp: true
            onBackAsked: page.leave()

            ListRow {
                width: parent.width
                text: qsTr("all of them")
                strong: !page.narrowed
                Accessible.checkable: true
                Accessible.checked: !page.narrowed
                onClicked: {
                    page.notebook.narrowed = "";
                    page.back();
                }
            }
            Repeater {
                model: page.notebook.states

                ListRow {
                    required property string word
                    required property string says
                    required property bool chosen

                    width: parent.width
                    text: says
                    strong: chosen
                    Accessible.checkable: true
                    Accessible.checked: chosen
                    onClicked: {
                        page.notebook.narrowed = word;
                        page.back();
                    }
                }
            }
        }
    }
    Component {
        id: takeIn

        TakeInPanel {
            notebook: page.notebook
            damaged: page.damaged
            onBackAsked: page.leave()
            onDone: page.back()
        }
    }
    Component {
        id: bin

        BinPanel {
            id: removed

            heading: qsTr("Removed visits")
            says: count > 0 ? "" : qsTr("Nothing is removed.")
            question: page.notebook.binQuestion
            explained: qsTr("Erase the removed visits for good")
            count: page.notebook.removedVisits.count
            asking: page.panel === "erase"
            listContent: removed.asking || removed.count === 0 ? null : removedRows
            onBackAsked: page.leave()
            onEraseAsked: page.panel = "erase"
            onEraseChosen: {
                page.notebook.emptyBin();
                page.panel = "";
            }

        }
    }
    Component {
        id: removedRows

        VisitsList {
            rows: page.notebook.removedVisits
            removed: true
            says: qsTr("Tap a visit to bring it back.")
            onVisitChosen: visitId => {
                page.notebook.bringBack(visitId);
                page.panel = "";
            }
        }
    }
}
