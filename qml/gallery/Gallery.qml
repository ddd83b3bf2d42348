// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Every control once, for looking at and for tests. The look is the theme's.
Screen {
    id: gallery

    title: qsTr("Controls")
    word: Theme.dark ? qsTr("light") : qsTr("dark")
    action: qsTr("Measure floor to ceiling again")
    onWordChosen: Theme.dark = !Theme.dark
    footWords: [
        WordButton {
            text: qsTr("undo")
        }
    ]

    Heading {
        width: parent.width
        text: qsTr("These differ by 45 mm")
    }
    Sentence {
        width: parent.width
        text: qsTr("In one go it was 2183; in three parts, 2138.")
    }
    Sentence {
        width: parent.width
        second: true
        text: qsTr("two digits swapped most likely")
    }
    Repeater {
        model: [ThreadMark.ToDo, ThreadMark.UnderWay, ThreadMark.Kept, ThreadMark.HalfThere, ThreadMark.There, ThreadMark.Asked]

        ListRow {
            required property int modelData

            width: parent.width
            marked: true
            mark: modelData
            text: qsTr("Pilot house")
            line: qsTr("6 windows")
            stateWords: [qsTr("to measure"), qsTr("measuring, 2 windows left"), qsTr("measured, on this phone only"), qsTr("there, 3 of 5 photos"), qsTr("there"), qsTr("question from the workroom")][modelData]
        }
    }
    Rule {
        width: parent.width
    }
    FigureRow {
        width: parent.width
        label: qsTr("Finished drop")
        figure: "1992"
        unit: "± 6 mm"
    }
    FigureRow {
        width: parent.width
        label: qsTr("Sailcloth to buy")
        figure: "4.9"
        unit: "m"
        canAsk: false
    }
    SuspectRow {
        width: parent.width
        says: qsTr("Floor to ceiling, left")
        figure: qsTr("2183, perhaps 2138")
        slip: qsTr("two digits exchanged")
        likely: qsTr("likely")
        isLikely: true
        offer: qsTr("It should read 2138")
    }
    Asked {
        width: parent.width
        text: qsTr("From floor to head differs by 14 mm along the window. It may be the floor or the head: take a level line.")
        word: qsTr("take a level line")
    }
    ListStep {
        width: parent.width
        what: qsTr("pole to floor, left")
        figure: "2070 mm"
        from: qsTr("from the readings below, height and above")
    }
    FieldRow {
        width: parent.width
        label: qsTr("Pole’s length")
        text: "1720"
        unit: "mm"
        figures: true
    }
    FieldRow {
        width: parent.width
        label: qsTr("From the left edge")
        text: "12o"
        unit: "mm"
        figures: true
        fault: qsTr("12o can’t be read as a length. Understood are 120, 12.5 cm, 4 3/8 in.")
    }
    ChoiceList {
        width: parent.width
        label: qsTr("Heading")
        chosen: "tab"
        choices: [
            {
                word: "tab",
                says: qsTr("tab")
            },
            {
                word: "eyelet",
                says: qsTr("eyelet")
            },
            {
                word: "goblet",
                says: qsTr("goblet")
            }
        ]
    }
    Repeater {
        model: [["stop", qsTr("Stop")], ["remeasure", qsTr("Measure again")], ["decide", qsTr("Decide")], ["caution", qsTr("Caution")], ["note", qsTr("Note")]]

        FlagLine {
            required property var modelData

            width: parent.width
            severity: modelData[0]
            word: modelData[1]
            text: qsTr("The curtains hang in front of the radiator. Keep its clearance.")
        }
    }
    Keypad {
        id: pad

        property string shown

        width: parent.width
        onTyped: characters => pad.shown += characters
        onRubbedOut: pad.shown = pad.shown.slice(0, -1)
        onCleared: pad.shown = ""
    }
    Sentence {
        width: parent.width
        text: pad.shown
        Accessible.name: qsTr("Typed: %1").arg(pad.shown)
    }
}
