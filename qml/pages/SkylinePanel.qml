// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What stands before the sky outside, sketched over the window.
Screen {
    id: panel

    required property Notebook notebook
    readonly property SkylineModel skyline: panel.notebook.outlook.skyline
    readonly property bool one: panel.skyline.current !== ""

    title: qsTr("What stands outside")
    action: panel.one ? qsTr("Done with this one") : qsTr("Done")
    sideHeight: height * 0.36
    onActed: panel.backAsked()
    footWords: WordButton {
        visible: panel.notebook.visit.canUndo
        text: qsTr("undo")
        onClicked: panel.notebook.visit.undo()
    }
    sideContent: SunDrawing {
        outlook: panel.notebook.outlook
    }

    Column {
        visible: !panel.one
        width: parent.width

        Sentence {
            width: parent.width
            bottomPadding: Theme.rowGap
            text: qsTr("Stand in the middle of the window. A fist at arm’s length is about 10° high, and 10° wide.")
        }
        Repeater {
            model: panel.skyline.parts

            ListRow {
                required property string partId
                required property string kind
                required line
                required spoken

                width: panel.contentWidth
                text: kind
                onClicked: panel.skyline.edit(partId)
            }
        }
        Rule {
            width: parent.width
        }
        Flow {
            width: parent.width
            spacing: Theme.edge

            WordButton {
                text: qsTr("a house")
                onClicked: panel.skyline.add("house")
            }
            WordButton {
                text: qsTr("a tree")
                onClicked: panel.skyline.add("tree")
            }
            WordButton {
                text: qsTr("a hill")
                onClicked: panel.skyline.add("hill")
            }
            WordButton {
                text: qsTr("a wall")
                onClicked: panel.skyline.add("wall")
            }
        }
    }
    Column {
        visible: panel.one
        width: parent.width

        Heading {
            width: parent.width
            text: panel.skyline.currentSays
        }
        Sentence {
            width: parent.width
            text: panel.skyline.currentLine

            Announced {
                words: panel.one ? panel.skyline.currentLine : ""
            }
        }
        Flow {
            width: parent.width
            spacing: Theme.edge

            WordButton {
                text: qsTr("higher")
                onClicked: panel.skyline.step("higher")
            }
            WordButton {
                text: qsTr("lower")
                onClicked: panel.skyline.step("lower")
            }
            WordButton {
                text: qsTr("to the left")
                onClicked: panel.skyline.step("left")
            }
            WordButton {
                text: qsTr("to the right")
                onClicked: panel.skyline.step("right")
            }
            WordButton {
                text: qsTr("wider")
                onClicked: panel.skyline.step("wider")
            }
            WordButton {
                text: qsTr("narrower")
                onClicked: panel.skyline.step("narrower")
            }
        }
        FormFields {
            width: parent.width
            form: panel.skyline.form
        }
        Item {
            width: 1
            height: 2 * Theme.gap
        }
        WordButton {
            text: qsTr("take it out")
            explained: qsTr("Take it out; undo brings it back")
            onClicked: panel.skyline.remove(panel.skyline.current)
        }
    }
}
