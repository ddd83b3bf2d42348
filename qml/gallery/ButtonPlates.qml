// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// What is touched and does something.
Column {
    id: plates

    readonly property string longAction: "Measure from the floor to the ceiling on the left again, and send the visit to the workroom"

    width: parent ? parent.width : 0

    Plate {
        control: "WordButton"

        Specimen {
            what: "plain"

            WordButton {
                text: "take a level line"
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            WordButton {
                text: "take a level line"
            }
        }
        Specimen {
            what: "focused"
            act: "focus"

            WordButton {
                text: "take a level line"
            }
        }
        Specimen {
            what: "disabled"

            WordButton {
                enabled: false
                text: "take a level line"
            }
        }
        Specimen {
            what: "of second rank"

            WordButton {
                dim: true
                text: "undo"
            }
        }
        Specimen {
            what: "at the other end, long"

            WordButton {
                width: parent.width
                alignRight: true
                text: "hang the same as at the north window, with its heading and its lining"
            }
        }
    }
    Plate {
        control: "NextAction"

        Specimen {
            what: "plain"

            NextAction {
                width: parent.width
                text: "Measure floor to ceiling again"
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            NextAction {
                width: parent.width
                text: "Measure floor to ceiling again"
            }
        }
        Specimen {
            what: "focused"
            act: "focus"

            NextAction {
                width: parent.width
                text: "Measure floor to ceiling again"
            }
        }
        Specimen {
            what: "disabled"

            NextAction {
                width: parent.width
                enabled: false
                text: "Send"
            }
        }
        Specimen {
            what: "long"

            NextAction {
                width: parent.width
                text: plates.longAction
            }
        }
    }
    Plate {
        control: "Asked"

        Specimen {
            what: "with a word, long"

            Asked {
                width: parent.width
                text: "From floor to head differs by 14 mm along the window. It may be the floor or the head."
                word: "take a level line"
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            Asked {
                width: parent.width
                text: "It may be the floor."
                word: "take a level line"
            }
        }
        Specimen {
            what: "focused"
            act: "focus"

            Asked {
                width: parent.width
                text: "It may be the floor."
                word: "take a level line"
            }
        }
        Specimen {
            what: "nothing to do"

            Asked {
                width: parent.width
                text: "The floor falls by 14 mm."
            }
        }
    }
    Plate {
        control: "Key"

        Specimen {
            what: "a figure"

            Key {
                text: "7"
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            Key {
                text: "7"
            }
        }
        Specimen {
            what: "focused"
            act: "focus"

            Key {
                text: "7"
            }
        }
        Specimen {
            what: "its row is open"

            Key {
                held: true
                text: "½"
            }
        }
        Specimen {
            what: "a word, long"

            Key {
                word: true
                width: 78
                text: "löschen"
            }
        }
        Specimen {
            what: "next"

            Key {
                next: true
                width: 78
                text: "Next"
            }
        }
        Specimen {
            what: "next, pressed"
            act: "press"

            Key {
                next: true
                width: 78
                text: "Next"
            }
        }
        Specimen {
            what: "next, focused"
            act: "focus"

            Key {
                next: true
                width: 78
                text: "Next"
            }
        }
    }
    Plate {
        control: "Keypad"

        Specimen {
            what: "figures"
            whole: true

            Keypad {
                width: parent.width
            }
        }
        Specimen {
            what: "pressed"
            act: "press"
            whole: true

            Keypad {
                width: parent.width
            }
        }
        Specimen {
            what: "focused"
            act: "focus"
            whole: true

            Keypad {
                width: parent.width
            }
        }
        Specimen {
            what: "eighths"
            whole: true

            Keypad {
                width: parent.width
                unit: "in"
                fractions: 8
            }
        }
        Specimen {
            what: "sixteenths"
            whole: true

            Keypad {
                width: parent.width
                unit: "in"
                fractions: 16
            }
        }
        Specimen {
            what: "an angle, no way back"
            whole: true

            Keypad {
                width: parent.width
                unit: "°"
                decimalMark: ","
                backEnabled: false
            }
        }
    }
}
