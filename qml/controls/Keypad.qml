// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang.Face

// The keypad for readings. It says what was pressed and knows nothing of what is being typed. For the left hand the
// column with Next stands on the left. The key of fractions opens eighths, and from there sixteenths, in the place of
// the figures. A physical keyboard, or a measuring device that
// types like one, does the same through `hardware`; it may write a unit behind the number.
Item {
    id: pad

    property string decimalMark: "." // by locale
    property string unit: "mm"
    property bool nextEnabled: true
    property bool backEnabled: true
    property int fractions: 0 // 0 shut, 8 eighths, 16 sixteenths
    readonly property bool degrees: unit === "°" // an angle: no fractions, no other unit
    readonly property real keyHeight: height / 4

    onDegreesChanged: pad.fractions = 0

    signal typed(string characters)
    signal rubbedOut
    signal cleared
    signal unitAsked
    signal back
    signal next

    // True when the key was for the keypad.
    function hardware(key: int, characters: string): bool {
        if (key === Qt.Key_Backspace) {
            pad.rubbedOut();
        } else if (key === Qt.Key_Delete) {
            pad.cleared();
        } else if (key === Qt.Key_Return || key === Qt.Key_Enter) {
            pad.next();
        } else if (characters.length === 1 && "0123456789.,/'\" -mcinft°".indexOf(characters) >= 0) {
            pad.typed(characters);
        } else {
            return false;
        }
        return true;
    }

    readonly property var figureKeys: ["1", "2", "3", "4", "5", "6", "7", "8", "9"]
    readonly property var eighths: ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8", "'", "\""]
    readonly property var sixteenths: ["1/16", "3/16", "5/16", "7/16", "9/16", "11/16", "13/16", "15/16", "/"]
    readonly property var shownKeys: fractions === 16 ? sixteenths : fractions === 8 ? eighths : figureKeys

    function saidOf(characters: string): string {
        switch (characters) {
        case "'":
            return qsTr("feet");
        case "\"":
            return qsTr("inches");
        case "/":
            return qsTr("over");
        default:
            return characters;
        }
    }

    function press(characters: string) {
        pad.typed(characters);
        pad.fractions = 0;
    }

    implicitHeight: 4 * Theme.keyHeight
    implicitWidth: 4 * Theme.keyHeight
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("Keypad")

    // The hairlines between the keys are the ground showing through.
    Rectangle {
        anchors.fill: parent
        color: Theme.soft
    }

    component Cell: Key {
        property int column: 0 // 0 to 2 the figures, 3 the hand's column
        property int row: 0
        property int figure: -1 // its number among the figures; -1: it is another key
        readonly property int place: Theme.leftHand ? (column === 3 ? 0 : column + 1) : column

        x: Math.round(place * pad.width / 4) + (place > 0 ? 1 : 0)
        y: Math.round(row * pad.keyHeight) + 1
        width: Math.round((place + 1) * pad.width / 4) - x
        height: Math.round((row + 1) * pad.keyHeight) - y
        text: figure < 0 ? "" : pad.shownKeys[figure]
        said: pad.saidOf(text)
        word: figure >= 0 && text.length > 3
        onClicked: {
            if (figure >= 0) {
                pad.press(text);
            }
        }
    }

    // Row by row, as Tab goes through them.
    Repeater {
        model: 3

        Cell {
            required property int index

            row: 0
            column: index
            figure: index
        }
    }
    Cell {
        row: 0
        column: 3
        text: qsTr("rub out")
        said: qsTr("Rub out")
        word: true
        onClicked: pad.rubbedOut()
        onPressAndHold: pad.cleared()
    }
    Repeater {
        model: 3

        Cell {
            required property int index

            row: 1
            column: index
            figure: 3 + index
        }
    }
    Cell {
        row: 1
        column: 3
        text: pad.degrees ? "" : "½"
        said: qsTr("Fractions")
        enabled: !pad.degrees
        held: pad.fractions > 0
        onClicked: pad.fractions = pad.fractions > 0 ? 0 : 8
    }
    Repeater {
        model: 3

        Cell {
            required property int index

            row: 2
            column: index
            figure: 6 + index
        }
    }
    Cell {
        row: 2
        column: 3
        text: pad.unit
        said: pad.degrees ? qsTr("Degrees") : qsTr("Unit, now %1").arg(pad.unit)
        word: true
        enabled: !pad.degrees
        onClicked: pad.unitAsked()
    }
    Cell {
        row: 3
        column: Theme.leftHand ? 2 : 0
        text: pad.backEnabled ? qsTr("back") : ""
        said: qsTr("Back to the station before")
        word: true
        enabled: pad.backEnabled
        onClicked: pad.back()
    }
    Cell {
        row: 3
        column: 1
        text: pad.fractions > 0 ? (pad.fractions === 8 ? qsTr("16ths") : qsTr("8ths")) : pad.decimalMark
        said: pad.fractions > 0 ? (pad.fractions === 8 ? qsTr("Sixteenths") : qsTr("Eighths")) : qsTr("Decimal mark")
        word: pad.fractions > 0
        onClicked: {
            if (pad.fractions > 0) {
                pad.fractions = pad.fractions === 8 ? 16 : 8;
            } else {
                pad.typed(pad.decimalMark);
            }
        }
    }
    Cell {
        row: 3
        column: Theme.leftHand ? 0 : 2
        text: "0"
        onClicked: pad.press("0")
    }
    Cell {
        row: 3
        column: 3
        text: qsTr("Next")
        next: true
        onClicked: pad.next()
    }
}
