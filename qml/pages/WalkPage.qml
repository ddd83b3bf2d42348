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

    Keys.onPressed: event => {
        if (page.measuring && event.modifiers === Qt.NoModifier || event.modifiers === Qt.KeypadModifier || event.modifiers === Qt.ShiftModifier) {
            event.accepted = page.measuring && station.keypad.hardware(event.key, event.text);
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

    Place {
        anchors.fill: parent
        fills: true
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
