// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// What is read, and the lines between.
Column {
    id: plates

    readonly property string longWords: "The floor falls by 14 mm towards the left and the head is level; both curtains were to be made to the longest drop."

    width: parent ? parent.width : 0

    Plate {
        control: "Heading"

        Specimen {
            what: "short"

            Heading {
                width: parent.width
                text: "These differ by 45 mm"
            }
        }
        Specimen {
            what: "long"

            Heading {
                width: parent.width
                text: plates.longWords
            }
        }
    }
    Plate {
        control: "SectionTitle"

        Specimen {
            what: "short"

            SectionTitle {
                width: parent.width
                text: "Finished sizes"
            }
        }
        Specimen {
            what: "long"

            SectionTitle {
                width: parent.width
                text: "What is ordered from others for the windows of this house"
            }
        }
    }
    Plate {
        control: "Sentence"

        Specimen {
            what: "plain, long"

            Sentence {
                width: parent.width
                text: plates.longWords
            }
        }
        Specimen {
            what: "of second rank, long"

            Sentence {
                width: parent.width
                second: true
                text: plates.longWords
            }
        }
        Specimen {
            what: "strong"

            Sentence {
                width: parent.width
                strong: true
                text: "2183, perhaps 2138"
            }
        }
    }
    Plate {
        control: "Rule"

        Specimen {
            what: "hairline"

            Rule {
                width: parent.width
            }
        }
        Specimen {
            what: "firm"

            Rule {
                width: parent.width
                firm: true
            }
        }
    }
    Plate {
        control: "FlagMark"

        Specimen {
            what: "stop, measure again, decide, caution, note"

            Row {
                spacing: Theme.gap

                FlagMark {
                    severity: "stop"
                }
                FlagMark {
                    severity: "remeasure"
                }
                FlagMark {
                    severity: "decide"
                }
                FlagMark {
                    severity: "caution"
                }
                FlagMark {
                    severity: "note"
                }
            }
        }
    }
    Plate {
        control: "FlagLine"

        Specimen {
            what: "stop"

            FlagLine {
                width: parent.width
                severity: "stop"
                word: "Stop"
                text: "This can’t be worked: 12 < 20 & more."
            }
        }
        Specimen {
            what: "measure again"

            FlagLine {
                width: parent.width
                severity: "remeasure"
                word: "Measure again"
                text: "The height on the left."
            }
        }
        Specimen {
            what: "decide"

            FlagLine {
                width: parent.width
                severity: "decide"
                word: "Decide"
                text: "One more width or less fullness."
            }
        }
        Specimen {
            what: "caution, long"

            FlagLine {
                width: parent.width
                severity: "caution"
                word: "Caution"
                text: "The curtains hang in front of the radiator. Keep its clearance, and ask whoever fitted it."
            }
        }
        Specimen {
            what: "note"

            FlagLine {
                width: parent.width
                severity: "note"
                word: "Note"
                text: "Measured at one height only."
            }
        }
    }
    Plate {
        control: "FocusFrame"

        Specimen {
            what: "shown"

            FocusFrame {
                width: parent.width
                height: Theme.target
                shown: true
            }
        }
        Specimen {
            what: "not shown"

            FocusFrame {
                width: parent.width
                height: Theme.target
                shown: false
            }
        }
    }
}
