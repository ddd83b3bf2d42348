// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// What is written and chosen.
Column {
    id: plates

    required property FieldForm form
    readonly property var headings: [
        {
            word: "tab",
            says: "tab"
        },
        {
            word: "eyelet",
            says: "eyelet"
        },
        {
            word: "goblet",
            says: "goblet"
        }
    ]

    width: parent ? parent.width : 0

    component Pole: FieldRow {
        width: parent ? parent.width : 0
        label: "Pole’s length"
        text: "1720"
        unit: "mm"
        figures: true
    }

    Plate {
        control: "FieldRow"

        Specimen {
            what: "a length"

            Pole {}
        }
        Specimen {
            what: "focused"
            act: "focus"

            Pole {}
        }
        Specimen {
            what: "empty, with what holds then"

            Pole {
                text: ""
                unit: ""
                example: "the heading’s own"
            }
        }
        Specimen {
            what: "with a fault"

            Pole {
                label: "From the left edge"
                text: "12o"
                fault: "12o can’t be read as a length. Understood are 120, 12.5 cm, 4 3/8 in."
            }
        }
        Specimen {
            what: "words, long"

            Pole {
                label: "How to get in, and what to mind on the way"
                figures: false
                unit: ""
                text: "Ring twice at the yard door, the dog is kind"
            }
        }
    }
    Plate {
        control: "ChoiceList"

        Specimen {
            what: "one chosen"

            ChoiceList {
                width: parent.width
                label: "Heading"
                chosen: "tab"
                choices: plates.headings
            }
        }
        Specimen {
            what: "none chosen"

            ChoiceList {
                width: parent.width
                label: "Heading"
                choices: plates.headings
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            ChoiceList {
                width: parent.width
                label: "Heading"
                chosen: "goblet"
                choices: plates.headings
            }
        }
        Specimen {
            what: "focused"
            act: "focus"

            ChoiceList {
                width: parent.width
                label: "Heading"
                chosen: "goblet"
                choices: plates.headings
            }
        }
        Specimen {
            what: "long"

            ChoiceList {
                width: parent.width
                label: "The curtain hangs from"
                chosen: "under"
                choices: [
                    {
                        word: "under",
                        says: "the underside of the pole, by rings that the heading hides"
                    },
                    {
                        word: "top",
                        says: "its top"
                    }
                ]
            }
        }
    }
    Plate {
        control: "FormFields"

        Specimen {
            what: "every kind of field"

            FormFields {
                width: parent.width
                form: plates.form
            }
        }
        Specimen {
            what: "focused"
            act: "focus"

            FormFields {
                width: parent.width
                form: plates.form
            }
        }
    }
}
