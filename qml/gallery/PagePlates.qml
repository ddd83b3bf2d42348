// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What a screen is put together from.
Column {
    id: plates

    required property Notebook notebook

    width: parent ? parent.width : 0

    component Leaf: Screen {
        width: parent ? parent.width : 0
        height: 420
        title: "South window"
        word: "redo"
        action: "Measure floor to ceiling again"
        footWords: [
            WordButton {
                text: "undo"
            }
        ]
    }
    component Words: Sentence {
        width: parent ? parent.width : 0
        text: "In one go it was 2183; in three parts, 2138."
    }

    Plate {
        control: "Screen"

        Specimen {
            what: "short"
            whole: true

            Leaf {
                Words {}
            }
        }
        Specimen {
            what: "focused"
            act: "focus"
            whole: true

            Leaf {
                Words {}
            }
        }
        Specimen {
            what: "pressed"
            act: "press"
            whole: true

            Leaf {
                Words {}
            }
        }
        Specimen {
            what: "long, goes on below; thread, drawing, nothing to be done yet"
            whole: true

            Leaf {
                title: "The lighthouse-keeper’s bay window"
                actionEnabled: false
                threadRows: plates.notebook.walk.stations
                sideContent: Elevation {
                    source: plates.notebook.open
                    dimensions: false
                }

                Repeater {
                    model: 9

                    Words {}
                }
            }
        }
        Specimen {
            what: "grows up"
            whole: true

            Leaf {
                growsUp: true
                bigTitle: true
                title: "Visits"
                canGoBack: false

                Words {}
            }
        }
    }
    Plate {
        control: "Page"

        Specimen {
            what: "holds a screen"
            whole: true

            Page {
                width: parent.width
                height: 300
                notebook: plates.notebook

                Leaf {
                    height: 300

                    Words {}
                }
            }
        }
    }
    Plate {
        control: "Place"

        Specimen {
            what: "something in it"

            Place {
                width: parent.width
                sourceComponent: Words {}
            }
        }
        Specimen {
            what: "nothing wanted"

            Place {
                width: parent.width
                active: false
                sourceComponent: Words {}
            }
        }
    }
}
