// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What light the window gives: where the sun comes in, when, how much daylight the room has, and what follows from it.
Page {
    id: page

    readonly property OutlookModel outlook: page.notebook.outlook
    property string opened // the panel that a word has opened

    panel: page.outlook.bearings.current !== "" ? "bearing" : page.outlook.skyline.current !== "" ? "part" : page.opened

    function back(): bool {
        if (page.outlook.bearings.current !== "") {
            page.outlook.bearings.done();
            return true;
        }
        if (page.outlook.skyline.current !== "") {
            page.outlook.skyline.done();
            return true;
        }
        if (page.opened !== "") {
            page.outlook.bearings.leaveCompass();
            page.opened = "";
            return true;
        }
        return false;
    }

    Component {
        id: ways

        SunDrawing {
            outlook: page.outlook
        }
    }
    Component {
        id: plain

        Elevation {
            source: page.notebook.open
            dimensions: false
        }
    }

    Screen {
        id: screen

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: page.outlook.windowTitle
        sideHeight: height * 0.4
        action: qsTr("What hangs here")
        onBackAsked: page.leave()
        onActed: page.notebook.screen = "hanging"
        sideContent: page.outlook.hasSun ? ways : plain
        footWords: [
            WordButton {
                text: qsTr("measure")
                explained: qsTr("Measure this window")
                onClicked: page.notebook.screen = "walk"
            },
            WordButton {
                visible: page.notebook.visit.canUndo
                text: qsTr("undo")
                onClicked: page.notebook.visit.undo()
            },
            WordButton {
                visible: page.notebook.visit.canRedo
                text: qsTr("redo")
                onClicked: page.notebook.visit.redo()
            }
        ]

        Heading {
            width: parent.width
            text: page.outlook.facing
            bottomPadding: Theme.rowGap
        }
        PlaceAsked {
            width: parent.width
            notebook: page.notebook
        }
        Flow {
            width: parent.width
            spacing: Theme.edge

            WordButton {
                text: qsTr("which way it faces")
                onClicked: page.opened = "facing"
            }
            WordButton {
                text: qsTr("what stands outside")
                onClicked: page.opened = "outside"
            }
            WordButton {
                text: qsTr("glass and room")
                onClicked: page.opened = "room"
            }
        }
        LightFigures {
            width: parent.width
            outlook: page.outlook
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "facing"
        focus: active
        sourceComponent: FacingPanel {
            notebook: page.notebook
            onBackAsked: page.leave()
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "bearing"
        focus: active
        sourceComponent: BearingPanel {
            notebook: page.notebook
            onBackAsked: page.leave()
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "outside" || page.panel === "part"
        focus: active
        sourceComponent: SkylinePanel {
            notebook: page.notebook
            onBackAsked: page.leave()
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "room"
        focus: active
        sourceComponent: Screen {
            title: qsTr("Glass and room")
            action: qsTr("Done")
            onBackAsked: page.leave()
            onActed: page.leave()

            SectionTitle {
                width: parent.width
                text: qsTr("The room, for its daylight")
            }
            FormFields {
                width: parent.width
                form: page.outlook.room
            }
            SectionTitle {
                width: parent.width
                text: qsTr("The glass of this window")
            }
            FormFields {
                width: parent.width
                form: page.outlook.glass
            }
        }
    }
}
