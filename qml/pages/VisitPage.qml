// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// One visit: its rooms and windows, who it is for, what is to be bought, the sign-off.
Page {
    id: page

    readonly property VisitModel visit: page.notebook.visit
    property string roomId // of the panel that is open

    function askForWindow(room: string) {
        page.roomId = room;
        page.panel = "window";
    }
    function takePanel() {
        const wanted = page.notebook.takePanel();
        if (wanted !== "") {
            page.roomId = "";
            page.panel = wanted;
        }
    }

    function back(): bool {
        if (page.panel === "") {
            return false;
        }
        page.panel = page.panel === "erase" ? "removed" : "";
        return true;
    }

    Component.onCompleted: page.takePanel()

    Connections {
        target: page.notebook

        function onPanelAsked() {
            page.takePanel();
        }
    }

    Screen {
        id: screen

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: page.visit.title
        word: page.visit.nextStep === "send" ? "" : qsTr("send")
        wordExplained: qsTr("Send to the workroom")
        action: page.visit.nextSays
        sideContent: wide && width >= Theme.twoPanesFrom ? visits : null
        onWordChosen: page.notebook.screen = "send"
        onBackAsked: page.leave()
        onActed: page.notebook.takeNext()
        footWords: [
            WordButton {
                visible: page.visit.windows.count > 0
                text: qsTr("before leaving")
                explained: qsTr("What is missing before leaving")
                onClicked: page.notebook.screen = "leaving"
            },
            WordButton {
                visible: page.visit.canUndo
                text: qsTr("undo")
                onClicked: page.visit.undo()
            },
            WordButton {
                visible: page.visit.canRedo
                text: qsTr("redo")
                onClicked: page.visit.redo()
            }
        ]

        Sentence {
            width: parent.width
            text: page.visit.state
            bottomPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            second: true
            text: page.notebook.twice.cameLine
            bottomPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.visit.erasedSays
            bottomPadding: Theme.rowGap
        }
        ListRow {
            width: parent.width
            visible: line !== ""
            text: qsTr("Keep it as a file")
            line: page.notebook.visitFile.waits
            spoken: qsTr("%1 Keep it as a file").arg(line)
            onClicked: page.notebook.screen = "file"
        }
        FlagLine {
            width: parent.width
            visible: page.notebook.agreement.gaps.count > 0
            severity: "decide"
            word: qsTr("Decide")
            text: page.notebook.agreement.line
        }
        VisitAsks {
            width: parent.width
            notebook: page.notebook
        }
        ListRow {
            width: parent.width
            text: page.visit.clientName !== "" ? page.visit.clientName : qsTr("Client and address")
            line: page.visit.address
            stateWords: page.visit.positionLine
            spoken: page.visit.clientName === "" ? qsTr("Client and site") : qsTr("Client and site: %1").arg(page.visit.clientName)
            onClicked: page.panel = "site"
        }

        Repeater {
            model: page.visit.rooms

            RoomPart {
                width: parent.width
                visit: page.visit
                onWindowChosen: windowId => page.notebook.openWindow(windowId)
                onWindowAsked: page.askForWindow(roomId)
                onRoomChosen: {
                    page.roomId = roomId;
                    page.panel = "room";
                }
            }
        }
        Rule {
            width: parent.width
        }
        Item {
            width: 1
            height: Theme.gap
        }
        WordButton {
            text: qsTr("add a room")
            explained: qsTr("Add a room")
            onClicked: {
                page.roomId = page.visit.addRoom("");
                page.panel = "room";
            }
        }
        VisitRest {
            width: parent.width
            notebook: page.notebook
            onAskedFor: panel => page.panel = panel
        }
    }

    Component {
        id: visits

        FocusScope {
            VisitsList {
                x: -Theme.margin // its own margin
                width: parent.width + Theme.margin + Theme.edge
                height: parent.height
                rows: page.notebook.visits
                openId: page.visit.visitId
                onVisitChosen: visitId => page.notebook.openVisit(visitId)
                onDamagedChosen: page.notebook.screen = "visits"
            }
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel !== ""
        focus: active
        sourceComponent: page.panel === "site" ? site : page.panel === "room" ? room : page.panel === "window" ? newWindow : page.panel === "measuring" ? measuring : page.panel === "removed" || page.panel === "erase" ? bin : sign
    }
    Component {
        id: site

        SitePanel {
            notebook: page.notebook
            onBackAsked: page.leave()
            onActed: page.leave()
        }
    }
    Component {
        id: room

        RoomPanel {
            visit: page.visit
            roomId: page.roomId
            onBackAsked: page.leave()
            onActed: page.leave()
        }
    }
    Component {
        id: newWindow

        WindowPanel {
            visit: page.visit
            roomId: page.roomId
            onBackAsked: page.leave()
            onMade: windowId => {
                page.back();
                page.notebook.openWindow(windowId);
            }
        }
    }
    Component {
        id: measuring

        Screen {
            title: qsTr("How this house is measured")
            action: qsTr("Back to the visit")
            onBackAsked: page.leave()
            onActed: page.leave()

            FormFields {
                width: parent.width
                form: page.visit.measuring
            }
        }
    }
    Component {
        id: bin

        BinPanel {
            id: removed

            heading: qsTr("Taken out")
            says: count > 0 ? qsTr("Tap a window to bring it back.") : qsTr("Nothing is taken out.")
            question: qsTr("Erase for good what was taken out, readings and photos too? What was done to this visit until now can then no longer be undone.")
            explained: qsTr("Erase what was taken out for good")
            count: page.visit.removedWindows.count
            asking: page.panel === "erase"
            onBackAsked: page.leave()
            onEraseAsked: page.panel = "erase"
            onEraseChosen: {
                page.visit.eraseRemovedWindows();
                page.panel = "";
            }

            Repeater {
                model: removed.asking ? null : page.visit.removedWindows

                ListRow {
                    required property string windowId
                    required property string title
                    required spoken

                    width: removed.contentWidth
                    text: title
                    onClicked: {
                        page.visit.bringWindowBack(windowId);
                        page.panel = "";
                    }
                }
            }
        }
    }
    Component {
        id: sign

        SignPanel {
            agreement: page.notebook.agreement
            onBackAsked: page.leave()
        }
    }
}
