// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What hangs at the window beside other choices, with what each takes: columns where there is room for them, else one
// under the other.
Page {
    id: page

    readonly property ChoicesModel choices: page.notebook.choices

    panel: page.choices.edited < 0 ? "" : "choice"

    function back(): bool {
        if (page.choices.edited < 0) {
            return false;
        }
        page.choices.done();
        return true;
    }

    Screen {
        id: screen

        readonly property int columns: Math.min(4, Math.floor(screen.contentWidth / (185 * Theme.textFactor)) - 1)

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        broad: true
        title: page.notebook.hanging.windowTitle
        action: page.choices.canAdd ? qsTr("Compare another choice") : qsTr("Back to the figures")
        onBackAsked: page.leave()
        onActed: {
            if (page.choices.canAdd) {
                page.choices.add();
            } else {
                page.leave();
            }
        }
        footWords: [
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
            text: page.choices.choices.count > 0 ? qsTr("Other ways to hang it") : qsTr("Nothing hangs here yet")
        }
        Repeater {
            model: page.notebook.hanging.layers.count > 1 ? page.notebook.hanging.layers : null

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
                onClicked: page.notebook.hanging.editLayer(layerNumber)
            }
        }
        Sentence {
            width: parent.width
            second: true
            visible: page.choices.choices.count > 1
            text: qsTr("Flags stand here where a choice brings a new one; the others stand with the figures.")
            topPadding: Theme.rowGap
            bottomPadding: Theme.gap
        }
        Column {
            visible: screen.columns >= 2
            width: parent.width
            spacing: 2 * Theme.gap

            Repeater {
                model: screen.columns < 2 ? 0 : Math.ceil(page.choices.choices.count / screen.columns)

                ChoiceTable {
                    required property int index

                    width: parent.width
                    compared: page.choices
                    first: index * screen.columns
                    columns: screen.columns
                }
            }
        }
        Place {
            width: parent.width
            active: screen.contentWidth > 0 && screen.columns < 2
            sourceComponent: ChoiceBlocks {
                compared: page.choices
            }
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.choices.note
            topPadding: Theme.gap
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel !== ""
        focus: active
        sourceComponent: Screen {
            title: qsTr("Choice %1").arg(page.choices.edited + 1)
            action: qsTr("See what it takes")
            onBackAsked: page.leave()
            onActed: page.leave()

            Sentence {
                width: parent.width
                second: true
                text: qsTr("What you leave open stays as it hangs now.")
            }
            FormFields {
                width: parent.width
                form: page.choices.form
            }
        }
    }
}
