// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Arrows, lines, words and stations over one photo, drawn with a finger.
Screen {
    id: panel

    required property Notebook notebook
    required property url file
    readonly property MarksModel marks: panel.notebook.photos.marks

    title: qsTr("Marks")
    action: qsTr("Done with the marks")
    sideHeight: height * 0.4
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
        },
        WordButton {
            visible: panel.marks.chosen > 0
            text: qsTr("take it off")
            explained: qsTr("Take this mark off; undo brings it back")
            onClicked: panel.marks.remove()
        }
    ]
    sideContent: MarkedPicture {
        source: panel.notebook.open
        photo: panel.marks.photo
        file: panel.file
        marks: panel.marks
        spoken: qsTr("The photo to draw on")
    }

    ChoiceList {
        width: parent.width
        label: qsTr("The finger draws")
        chosen: panel.marks.tool
        choices: [
            {
                word: "arrow",
                says: qsTr("an arrow")
            },
            {
                word: "line",
                says: qsTr("a line")
            },
            {
                word: "text",
                says: qsTr("words")
            },
            {
                word: "station",
                says: qsTr("a station")
            },
            {
                word: "choose",
                says: qsTr("nothing: it chooses")
            }
        ]
        onChose: word => panel.marks.tool = word
    }
    FlagLine {
        visible: panel.marks.fault !== ""
        width: parent.width
        severity: "note"
        word: qsTr("Not drawn")
        text: panel.marks.fault
        live: true
    }
    FieldRow {
        visible: panel.marks.tool !== "station" && (panel.marks.tool !== "choose" || panel.marks.chosen > 0)
        width: parent.width
        label: panel.marks.tool === "text" ? qsTr("The words, then touch where they go") : qsTr("Words beside it")
        text: panel.marks.words
        onEdited: words => panel.marks.typingWords(words)
        onCommitted: words => panel.marks.writeWords(words)
    }
    ChoiceList {
        visible: panel.marks.tool === "station"
        width: parent.width
        label: qsTr("The station, then touch where it is")
        chosen: panel.marks.station
        choices: panel.stations()
        onChose: word => panel.marks.station = word
    }
    Repeater {
        model: panel.marks.marks

        ListRow {
            required property int number
            required property string says

            width: panel.contentWidth
            text: says
            line: number === panel.marks.chosen ? qsTr("chosen") : ""
            Accessible.checkable: true
            Accessible.checked: number === panel.marks.chosen
            onClicked: panel.marks.choose(number)
        }
    }

    function stations(): var {
        const rows = [];
        for (let row = 0; row < panel.marks.stations.count; ++row) {
            rows.push({
                word: panel.marks.stations.value(row, "word"),
                says: panel.marks.stations.value(row, "says")
            });
        }
        return rows;
    }
}
