// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What is in the way of the curtains, on the drawing: placed by numbers, or dragged there.
Page {
    id: page

    readonly property ObstructionsModel obstructions: page.notebook.obstructions
    property bool adding: false
    property bool turned: false // seen from the side

    panel: page.obstructions.current !== "" ? "one" : page.adding ? "add" : ""

    function back(): bool {
        if (page.obstructions.current !== "") {
            page.obstructions.done();
            return true;
        }
        if (page.adding) {
            page.adding = false;
            return true;
        }
        return false;
    }

    Screen {
        id: list

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: page.obstructions.windowTitle
        word: qsTr("add")
        wordExplained: qsTr("Add something that is in the way")
        sideHeight: height * 0.4
        action: qsTr("What hangs here")
        onWordChosen: page.adding = true
        onBackAsked: page.leave()
        onActed: page.notebook.screen = "hanging"
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
        sideContent: Placing {
            source: page.notebook.open
            placing: page.obstructions.placing
            wall: page.obstructions.wall
            turned: page.turned
            dimensions: page.turned
            onObstructionPicked: obstructionId => page.obstructions.edit(obstructionId)
        }

        Heading {
            width: parent.width
            text: page.obstructions.obstructions.count === 0 ? qsTr("Is anything in the way?") : qsTr("In the way")
            bottomPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            visible: page.obstructions.obstructions.count === 0
            text: qsTr("A radiator, a sill board, a switch, a door that opens across. Add what a curtain or a drill would meet.")
        }
        Repeater {
            model: page.obstructions.obstructions

            Column {
                id: one

                required property string obstructionId
                required property string kind
                required property string line
                required property string note
                required property string caution
                required property string spoken

                width: list.contentWidth

                ListRow {
                    width: parent.width
                    text: one.kind
                    line: one.line
                    stateWords: one.note
                    spoken: one.spoken
                    onClicked: page.obstructions.edit(one.obstructionId)
                }
                FlagLine {
                    visible: one.caution !== ""
                    width: parent.width
                    severity: "caution"
                    word: qsTr("Caution")
                    text: one.caution
                }
            }
        }
        Rule {
            width: parent.width
        }
        OnPhoto {
            width: parent.width
            wall: page.obstructions.wall
        }
        WordButton {
            text: qsTr("add something")
            explained: qsTr("Add something")
            onClicked: page.adding = true
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "one"
        focus: active
        sourceComponent: Screen {
            title: qsTr("In the way")
            sideHeight: height * 0.4
            action: qsTr("Done with this one")
            onBackAsked: page.leave()
            onActed: page.leave()
            word: page.turned ? qsTr("from the front") : qsTr("from the side")
            wordExplained: page.turned ? qsTr("Look from the front") : qsTr("Look from the side")
            onWordChosen: page.turned = !page.turned
            sideContent: Placing {
                source: page.notebook.open
                placing: page.obstructions.placing
                wall: page.obstructions.wall
                movable: page.turned ? "" : page.obstructions.current
                turned: page.turned
                dimensions: page.turned
                Accessible.description: page.obstructions.standsAt
                onObstructionPicked: obstructionId => page.obstructions.edit(obstructionId)
            }
            footWords: WordButton {
                visible: page.notebook.visit.canUndo
                text: qsTr("undo")
                onClicked: page.notebook.visit.undo()
            }

            Sentence {
                width: parent.width
                visible: page.obstructions.placing.moving
                text: page.obstructions.placing.lies !== "" ? qsTr("%1. On: %2").arg(page.obstructions.placeLine).arg(page.obstructions.placing.lies) : page.obstructions.placeLine
            }
            FlagLine {
                visible: page.obstructions.meets !== ""
                width: parent.width
                severity: page.obstructions.meetsSeverity
                word: page.obstructions.meetsWord
                text: page.obstructions.meets
                live: true
            }
            Sentence {
                width: parent.width
                second: true
                text: page.turned ? qsTr("Type how far it stands out from the wall.") : qsTr("Drag it on the drawing, or type the numbers. Arrow keys move it too.")
                visible: !page.obstructions.placing.moving
            }
            OnPhoto {
                visible: !page.turned && page.obstructions.wall.there
                width: parent.width
                wall: page.obstructions.wall
            }
            FormFields {
                width: parent.width
                form: page.obstructions.form
            }
            Item {
                width: 1
                height: 2 * Theme.gap
            }
            WordButton {
                text: qsTr("photos of it")
                explained: qsTr("Photos: what comes in is of this")
                onClicked: {
                    page.notebook.photos.comesOf(page.obstructions.current);
                    page.notebook.screen = "photos";
                }
            }
            WordButton {
                text: qsTr("take it out")
                explained: qsTr("Take it out; undo brings it back")
                onClicked: page.obstructions.remove(page.obstructions.current)
            }
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "add"
        focus: active
        sourceComponent: Screen {
            title: qsTr("What is in the way?")
            onBackAsked: page.leave()

            ChoiceList {
                width: parent.width
                label: qsTr("What is in the way?")
                titled: false
                choices: page.kinds()
                onChose: word => {
                    page.adding = false;
                    page.obstructions.add(word);
                }
            }
        }
    }

    function kinds(): var {
        const rows = [];
        for (let row = 0; row < page.obstructions.kinds.count; ++row) {
            rows.push({
                word: page.obstructions.kinds.value(row, "word"),
                says: page.obstructions.kinds.value(row, "says")
            });
        }
        return rows;
    }
}
