// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The walk through one window: where the tape is on the drawing, the number being typed, the keypad under the thumb.
Page {
    id: page

    readonly property WalkModel walk: page.notebook.walk
    readonly property bool measuring: page.panel === "" && !page.walk.atEnd && !page.walk.differs

    function back(): bool {
        if (page.panel !== "") {
            page.panel = "";
            return true;
        }
        if (page.walk.differs) {
            page.walk.later();
            return true;
        }
        return false;
    }

    // What is typed belongs to the reading, wherever the keyboard is; Return presses a button that the keyboard is at.
    Keys.onPressed: event => {
        const plain = event.modifiers === Qt.NoModifier || event.modifiers === Qt.KeypadModifier || event.modifiers === Qt.ShiftModifier;
        const presses = (event.key === Qt.Key_Return || event.key === Qt.Key_Enter) && page.Window.activeFocusItem as PressItem !== null;
        if (page.measuring && plain && !presses) {
            event.accepted = station.keypad.hardware(event.key, event.text);
            if (event.accepted) {
                station.takeFocus();
            }
        }
    }

    StationPart {
        id: station

        anchors.fill: parent
        visible: page.measuring
        enabled: visible
        focus: visible
        notebook: page.notebook
        onPanelAsked: panel => page.panel = panel
    }

    Stage {
        anchors.fill: parent
        active: !page.measuring
        focus: active
        sourceComponent: page.panel === "reach" ? reach : page.panel === "window" ? overview : page.panel === "history" ? history : page.walk.differs ? differs : end
    }

    Component {
        id: reach

        ReachPanel {
            notebook: page.notebook
            onBackAsked: page.leave()
        }
    }
    Component {
        id: history

        HistoryPanel {
            notebook: page.notebook
            onBackAsked: page.leave()
            onActed: {
                page.panel = "";
                page.walk.takeHereAgain();
            }
        }
    }
    Component {
        id: overview

        OverviewPanel {
            notebook: page.notebook
            onBackAsked: page.leave()
            onActed: page.panel = ""
            onStationChosen: station => {
                page.panel = "";
                page.walk.jumpTo(station);
            }
        }
    }
    Component {
        id: differs

        DiffersPanel {
            notebook: page.notebook
        }
    }
    Component {
        id: end

        EndPanel {
            notebook: page.notebook
            onPanelAsked: panel => page.panel = panel
        }
    }
}
