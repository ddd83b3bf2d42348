// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Rows of a list.
Column {
    width: parent ? parent.width : 0

    component House: ListRow {
        width: parent ? parent.width : 0
        marked: true
        text: "Pilot house"
        line: "6 windows"
        stateWords: "to measure"
    }
    component Drop: FigureRow {
        width: parent ? parent.width : 0
        label: "Finished drop"
        figure: "1992"
        unit: "± 6 mm"
    }
    component Suspect: SuspectRow {
        width: parent ? parent.width : 0
        says: "Floor to ceiling, left"
        figure: "2183, perhaps 2138"
        slip: "two digits exchanged"
        likely: "likely"
        offer: "It should read 2138"
    }

    Plate {
        control: "ListRow"

        Repeater {
            model: [ThreadMark.ToDo, ThreadMark.UnderWay, ThreadMark.Kept, ThreadMark.HalfThere, ThreadMark.There, ThreadMark.Asked]

            Specimen {
                id: marked

                required property int modelData

                what: ["to do", "under way", "kept", "half there", "there", "asked"][modelData]

                House {
                    mark: marked.modelData
                }
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            House {}
        }
        Specimen {
            what: "focused"
            act: "focus"

            House {}
        }
        Specimen {
            what: "chosen, with a figure"

            House {
                strong: true
                figure: "1240 mm"
                quietWords: "measured on 14 March"
            }
        }
        Specimen {
            what: "no thread, long"

            House {
                marked: false
                text: "The lighthouse-keeper’s bay window on the seaward side"
                line: "Upper keeper’s room, 3 Breakwater Steps, Ferrymouth"
                figure: "1720, 1735, 1728 mm"
                stateWords: "measured, on this phone only; 2 photos aren’t in the workroom"
            }
        }
    }
    Plate {
        control: "FigureRow"

        Specimen {
            what: "can be asked"

            Drop {}
        }
        Specimen {
            what: "pressed"
            act: "press"

            Drop {}
        }
        Specimen {
            what: "focused"
            act: "focus"

            Drop {}
        }
        Specimen {
            what: "can’t be asked"

            Drop {
                canAsk: false
            }
        }
        Specimen {
            what: "no unit"

            Drop {
                label: "Widths"
                figure: "3"
                unit: ""
            }
        }
        Specimen {
            what: "long"

            Drop {
                label: "Finished drop of the outer layer on the left of the window"
                figure: "6' 6 7/16\""
                unit: "± 1/4 in"
            }
        }
    }
    Plate {
        control: "ListStep"

        Specimen {
            what: "with its source"

            ListStep {
                width: parent.width
                what: "pole to floor, left"
                figure: "2070 mm"
                from: "from the readings below, height and above"
            }
        }
        Specimen {
            what: "without"

            ListStep {
                width: parent.width
                what: "less clearance"
                figure: "15 mm"
            }
        }
        Specimen {
            what: "long"

            ListStep {
                width: parent.width
                what: "from the top of the pole to the floor on the left, by all readings"
                figure: "2070.4 mm"
                from: "from the readings below, height and above, and the floor to the ceiling"
            }
        }
    }
    Plate {
        control: "SuspectRow"

        Specimen {
            what: "likely"

            Suspect {
                isLikely: true
            }
        }
        Specimen {
            what: "less likely, nothing offered"

            Suspect {
                offer: ""
                likely: "less likely"
            }
        }
        Specimen {
            what: "pressed"
            act: "press"

            Suspect {}
        }
        Specimen {
            what: "focused"
            act: "focus"

            Suspect {}
        }
        Specimen {
            what: "long"

            Suspect {
                says: "From the floor to the ceiling on the left, beside the reveal"
                figure: "7' 1 15/16\", perhaps 7' 11 1/16\""
                likely: "as likely as the next"
                offer: "It should read 7' 11 1/16\""
            }
        }
    }
}
