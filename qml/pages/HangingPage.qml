// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What hangs at the window, layer by layer from the glass to the room, seen on the drawing as it is chosen.
Page {
    id: page

    readonly property HangingModel hanging: page.notebook.hanging

    Screen {
        id: screen

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: page.hanging.windowTitle
        word: page.hanging.current < 0 ? "" : qsTr("cloths")
        wordExplained: qsTr("Cloths of this house")
        sideHeight: height * 0.36 / Theme.textFactor
        action: page.hanging.current < 0 ? qsTr("Hang something here") : qsTr("See the figures")
        onWordChosen: page.notebook.screen = "fabrics"
        onBackAsked: page.leave()
        onActed: {
            if (page.hanging.current < 0) {
                page.hanging.addLayer();
            } else {
                page.notebook.screen = "figures";
            }
        }
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
        sideContent: Elevation {
            source: page.notebook.open
            hanging: ElevationItem.Back
            dimensions: false
        }

        Heading {
            width: parent.width
            text: page.hanging.summary
            bottomPadding: Theme.rowGap
        }
        Repeater {
            model: page.hanging.layers.count > 1 ? page.hanging.layers : null

            ListRow {
                required property int layerNumber
                required property string title
                required property bool current
                required line
                required spoken

                width: parent.width
                text: title
                strong: current
                Accessible.checkable: true
                Accessible.checked: current
                onClicked: page.hanging.editLayer(layerNumber)
            }
        }
        // Nothing hangs here yet: what hangs at another window can be hung here too.
        Repeater {
            model: page.hanging.elsewhere

            ListRow {
                required property string windowId
                required property string title
                required line
                required spoken

                width: screen.contentWidth
                text: title
                onClicked: page.hanging.hangAsAt(windowId)
            }
        }
        Column {
            visible: page.hanging.current >= 0
            width: parent.width

            SectionTitle {
                width: parent.width
                text: qsTr("The curtain or blind")
            }
            FormFields {
                width: parent.width
                form: page.hanging.treatment
                onWarned: caution => screen.show(caution)
            }
            SectionTitle {
                width: parent.width
                text: qsTr("What it hangs from")
            }
            FormFields {
                width: parent.width
                form: page.hanging.hardware
                onWarned: caution => screen.show(caution)
            }
            Item {
                width: 1
                height: 2 * Theme.gap
            }
            // What is still to decide, and cautions that no one choice brings.
            Repeater {
                model: page.hanging.flags

                FlagLine {
                    required severity
                    required word
                    required text

                    live: screen.opened

                    width: screen.contentWidth
                }
            }
            Sentence {
                width: parent.width
                visible: text !== ""
                text: page.notebook.lists.said

                Announced {
                    words: page.notebook.lists.said
                }
            }
            Flow {
                width: parent.width
                spacing: Theme.edge

                WordButton {
                    text: qsTr("keep this hardware in your list")
                    onClicked: page.notebook.lists.keepHardware()
                }
                WordButton {
                    visible: page.notebook.lists.hasAny
                    text: qsTr("your list")
                    explained: qsTr("Take hardware or a cloth from your list")
                    onClicked: page.notebook.screen = "lists"
                }
                WordButton {
                    text: qsTr("add a layer")
                    explained: qsTr("Add a layer on the room’s side")
                    onClicked: page.hanging.addLayer()
                }
                WordButton {
                    text: qsTr("take this layer out")
                    onClicked: page.hanging.removeLayer(page.hanging.current)
                }
            }
        }
    }
}
