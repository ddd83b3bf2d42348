// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What is drawn.
Column {
    id: plates

    required property Notebook notebook
    required property url picture

    width: parent ? parent.width : 0

    component Drawn: Elevation {
        width: parent ? parent.width : 0
        height: 170
        source: plates.notebook.open
    }
    component Moved: Placing {
        width: parent ? parent.width : 0
        height: 170
        source: plates.notebook.open
        placing: plates.notebook.obstructions.placing
        dimensions: false
    }

    Plate {
        control: "Elevation"

        Specimen {
            what: "with its sizes"

            Drawn {}
        }
        Specimen {
            what: "a station being measured"

            Drawn {
                activeStation: "opening.width.middle"
                typed: "12"
                dimensions: false
            }
        }
        Specimen {
            what: "curtains drawn back"

            Drawn {
                hanging: ElevationItem.Back
                dimensions: false
            }
        }
        Specimen {
            what: "curtains shut"

            Drawn {
                hanging: ElevationItem.Shut
                dimensions: false
            }
        }
        Specimen {
            what: "from the side"

            Drawn {
                turned: true
            }
        }
    }
    Plate {
        control: "Placing"

        Specimen {
            what: "nothing to be moved"

            Moved {}
        }
        Specimen {
            what: "from the side"

            Moved {
                turned: true
                dimensions: true
            }
        }
        Specimen {
            what: "one to be moved"

            Moved {
                movable: plates.notebook.obstructions.current
            }
        }
    }
    Plate {
        control: "MarkedPicture"

        Specimen {
            what: "with a mark and its words"

            MarkedPicture {
                width: parent.width
                height: 160
                source: plates.notebook.open
                photo: "8abbbab9c79af13dceeb8fcc530d848250fb1aa520d4ec72e996e8445491c883"
                file: plates.picture
                spoken: "A photo"
            }
        }
        Specimen {
            what: "no marks"

            MarkedPicture {
                width: parent.width
                height: 160
                source: plates.notebook.open
                photo: ""
                file: plates.picture
                spoken: "A photo"
            }
        }
    }
    Plate {
        control: "Stitches"

        Specimen {
            what: "to do, under way, kept, half there, there, asked"
            whole: true

            Row {
                Repeater {
                    model: [ThreadMark.ToDo, ThreadMark.UnderWay, ThreadMark.Kept, ThreadMark.HalfThere, ThreadMark.There, ThreadMark.Asked]

                    Stitches {
                        required property int modelData

                        mark: modelData
                    }
                }
            }
        }
        Specimen {
            what: "the stations of a window, the needle at one"
            whole: true

            Stitches {
                height: 420
                rows: plates.notebook.walk.stations
            }
        }
    }
}
