// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// One photo as a rough tape: the corners of a sheet and of the opening, tapped one after another, and what it makes of
// the opening beside what the tape read.
Screen {
    id: panel

    required property Notebook notebook
    required property url file
    readonly property PhotoTapeModel tape: panel.notebook.photos.tape

    title: qsTr("A photo as a tape")
    action: panel.tape.aimed ? qsTr("Set this corner") : qsTr("Done with the photo")
    sideHeight: height * 0.4
    onActed: {
        if (panel.tape.aimed) {
            panel.tape.set();
        } else {
            panel.backAsked();
        }
    }
    footWords: [
        WordButton {
            visible: panel.notebook.visit.canUndo
            text: qsTr("undo")
            onClicked: panel.notebook.visit.undo()
        },
        WordButton {
            visible: panel.notebook.visit.canRedo
            text: qsTr("redo")
            onClicked: panel.notebook.visit.redo()
        }
    ]
    sideContent: TapedPicture {
        tape: panel.tape
        file: panel.file
    }

    function asked(): string {
        if (panel.tape.aimed) {
            return qsTr("%1: move the cross onto it, then set it.").arg(panel.tape.asks);
        }
        if (panel.tape.complete) {
            return qsTr("Every corner is tapped. Tapped again, each gets surer. Next: %1.").arg(panel.tape.asks);
        }
        return qsTr("%1: touch it in the picture.").arg(panel.tape.asks);
    }
    function cornerChoices(): var {
        const rows = [];
        for (let row = 0; row < panel.tape.corners.count; ++row) {
            rows.push({
                word: panel.tape.corners.value(row, "key"),
                says: panel.tape.corners.value(row, "says")
            });
        }
        return rows;
    }

    Sentence {
        width: parent.width
        text: panel.asked()

        Announced {
            words: panel.asked()
        }
    }
    Flow {
        width: parent.width
        spacing: Theme.edge

        Repeater {
            model: [
                {
                    says: qsTr("left"),
                    explained: qsTr("The cross one pixel to the left"),
                    right: -1,
                    down: 0
                },
                {
                    says: qsTr("up"),
                    explained: qsTr("The cross one pixel up"),
                    right: 0,
                    down: -1
                },
                {
                    says: qsTr("down"),
                    explained: qsTr("The cross one pixel down"),
                    right: 0,
                    down: 1
                },
                {
                    says: qsTr("right"),
                    explained: qsTr("The cross one pixel to the right"),
                    right: 1,
                    down: 0
                }
            ]

            WordButton {
                required property var modelData

                text: modelData.says
                explained: modelData.explained
                enabled: panel.tape.aimed
                onClicked: panel.tape.nudge(modelData.right, modelData.down)
            }
        }
    }
    FlagLine {
        visible: panel.tape.trouble !== ""
        width: parent.width
        severity: "note"
        word: qsTr("Says nothing yet")
        text: panel.tape.trouble
        live: true
    }
    FlagLine {
        visible: panel.tape.disagrees !== ""
        width: parent.width
        severity: "remeasure"
        word: qsTr("Measure again")
        text: panel.tape.disagrees
        live: true
    }
    SectionTitle {
        visible: panel.tape.sizes.count > 0
        width: parent.width
        text: qsTr("By this photo")
    }
    Repeater {
        model: panel.tape.sizes

        FigureRow {
            required unit
            required property string says
            required property string taped

            width: panel.contentWidth
            label: taped === "" ? says : qsTr("%1 (%2)").arg(says).arg(taped)
            canAsk: false
        }
    }
    Sentence {
        visible: panel.tape.sizes.count > 0
        width: parent.width
        second: true
        text: qsTr("± is twice the standard uncertainty. A photo is only rough: it checks the tape and changes no size.")
    }
    ChoiceList {
        width: parent.width
        label: panel.tape.corners.count > 8 ? qsTr("Size of the sheet in hand") : qsTr("Size of the sheet")
        chosen: panel.tape.sheetSize
        choices: [
            {
                word: "a4",
                says: qsTr("A4")
            },
            {
                word: "letter",
                says: qsTr("Letter")
            },
            {
                word: "own",
                says: qsTr("another size")
            }
        ]
        onChose: word => panel.tape.chooseSize(word)
    }
    ChoiceList {
        visible: panel.tape.sheetSize !== "own"
        width: parent.width
        label: qsTr("How it lies on the wall")
        chosen: panel.tape.sheetLies
        choices: [
            {
                word: "upright",
                says: qsTr("upright")
            },
            {
                word: "across",
                says: qsTr("across")
            }
        ]
        onChose: word => panel.tape.chooseLies(word)
    }
    FieldRow {
        visible: panel.tape.sheetSize === "own"
        width: parent.width
        label: qsTr("Its width, from its first corner to its second")
        figures: true
        unit: panel.tape.unit
        text: panel.tape.sheetWidth
        fault: panel.tape.sheetFault
        onEdited: words => panel.tape.typingSide(true, words)
        onCommitted: words => panel.tape.writeSide(true, words)
    }
    FieldRow {
        visible: panel.tape.sheetSize === "own"
        width: parent.width
        label: qsTr("Its height")
        figures: true
        unit: panel.tape.unit
        text: panel.tape.sheetHeight
        onEdited: words => panel.tape.typingSide(false, words)
        onCommitted: words => panel.tape.writeSide(false, words)
    }
    ChoiceList {
        width: parent.width
        label: qsTr("The corner to tap")
        chosen: panel.tape.corner
        choices: panel.cornerChoices()
        onChose: word => panel.tape.choose(word)
    }
    Flow {
        width: parent.width
        spacing: Theme.edge

        WordButton {
            text: qsTr("forget its taps")
            explained: qsTr("Forget the taps of this corner; undo brings them back")
            onClicked: panel.tape.forgetTaps()
        }
        WordButton {
            visible: panel.tape.complete
            text: qsTr("one more sheet")
            explained: qsTr("One more sheet on this photo: on the other side of the opening it makes the sizes much surer")
            onClicked: panel.tape.addSheet()
        }
        WordButton {
            visible: panel.tape.used
            text: qsTr("no tape any more")
            explained: qsTr("This photo is no tape any more; undo brings it back")
            onClicked: panel.tape.takeOff()
        }
    }
}
