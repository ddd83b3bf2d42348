// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Turned round to the client: one window large, the curtains open or closed, the choices and what each takes. One word
// leads back.
Page {
    id: page

    readonly property ClientModel client: page.notebook.client
    readonly property int columns: Math.min(3, page.client.choices.count, Math.floor((page.width - Theme.margin - Theme.edge) / (260 * Theme.textFactor)))
    readonly property bool beside: page.columns >= 2 && page.height > Theme.wideFrom * 0.75

    Screen {
        id: screen

        anchors.fill: parent
        focus: true
        broad: page.beside
        title: page.notebook.hanging.windowTitle
        bigTitle: page.beside
        sideHeight: height * 0.4
        sideContent: page.beside ? null : one
        action: page.client.turnSays
        backWord: qsTr("back to the figures")
        footWords: [
            WordButton {
                visible: !page.notebook.visit.signedOff
                text: qsTr("agree and sign")
                onClicked: page.notebook.agree()
            }
        ]
        onActed: page.client.turn()
        onBackAsked: page.leave()

        // One under the other, where there is no room beside each other.
        Column {
            visible: !page.beside
            width: parent.width

            Heading {
                width: parent.width
                text: page.client.says
                bottomPadding: Theme.rowGap
            }
            ClientTakes {
                width: parent.width
                lines: page.client.takes
            }
            Rule {
                width: parent.width
            }
            Item {
                width: 1
                height: Theme.gap
            }
            Repeater {
                model: !page.beside && page.client.choices.count > 1 ? page.client.choices : null

                ListRow {
                    id: choice

                    required property int index
                    required property string title
                    required property string says
                    required property bool picked
                    required spoken

                    width: screen.contentWidth
                    text: qsTr("%1: %2").arg(choice.title).arg(choice.says)
                    strong: picked
                    onClicked: {
                        page.client.pick(index);
                        screen.toTop();
                    }
                }
            }
        }
        Grid {
            visible: page.beside
            width: parent.width
            columns: Math.max(1, page.columns)
            columnSpacing: 2 * Theme.edge
            rowSpacing: 2 * Theme.gap

            Repeater {
                model: page.beside ? page.client.choices : null

                Column {
                    id: block

                    required property int row
                    required property string title
                    required property string says
                    required property var takes

                    width: (screen.contentWidth - (page.columns - 1) * 2 * Theme.edge) / page.columns

                    SectionTitle {
                        width: parent.width
                        text: block.title
                    }
                    Sentence {
                        width: parent.width
                        height: Math.max(implicitHeight, 2 * Theme.leading * font.pixelSize + Theme.gap)
                        strong: true
                        text: block.says
                        bottomPadding: Theme.rowGap
                    }
                    Elevation {
                        width: parent.width
                        height: Math.max(Theme.drawingLowest, page.height * 0.4)
                        source: page.notebook.open
                        choices: page.notebook.choices
                        choice: block.row
                        dimensions: false
                        hanging: page.client.shut ? ElevationItem.Shut : ElevationItem.Back
                    }
                    ClientTakes {
                        width: parent.width
                        lines: block.takes
                    }
                }
            }
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.client.note
            topPadding: Theme.gap
        }
    }

    Component {
        id: one

        Elevation {
            source: page.notebook.open
            choices: page.notebook.choices
            choice: page.client.drawn
            dimensions: false
            hanging: page.client.shut ? ElevationItem.Shut : ElevationItem.Back
        }
    }
}
