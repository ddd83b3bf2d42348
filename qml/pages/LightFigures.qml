// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What was worked of a window's light, in words and figures.
Column {
    id: figures

    required property OutlookModel outlook

    Repeater {
        model: figures.outlook.minds

        FlagLine {
            required severity
            required word
            required text

            width: figures.width
        }
    }
    Repeater {
        model: figures.outlook.advice

        Column {
            id: advice

            required property string text
            required property string reason

            width: figures.width
            topPadding: Theme.gap

            Sentence {
                width: parent.width
                text: advice.text
            }
            Sentence {
                width: parent.width
                second: true
                text: advice.reason
            }
        }
    }
    Column {
        visible: figures.outlook.hasSun
        width: parent.width

        SectionTitle {
            width: parent.width
            text: qsTr("Hours of possible sun")
        }
        SunRow {
            width: parent.width
            label: ""
            glass: qsTr("glass")
            cloth: qsTr("cloth")
            heads: true
        }
        Repeater {
            model: figures.outlook.sun

            SunRow {
                required label
                required glass
                required cloth
                required spoken

                width: figures.width
            }
        }
        Item {
            width: 1
            height: Theme.gap
        }
        SunDrawing {
            id: spots

            width: parent.width
            height: implicitHeight
            outlook: figures.outlook
            calendar: true
        }
        Sentence {
            width: parent.width
            topPadding: Theme.rowGap
            second: true
            text: spots.description
            Accessible.ignored: true // the drawing says it
        }
        Sentence {
            width: parent.width
            topPadding: Theme.rowGap
            second: true
            text: figures.outlook.sunNote
        }
    }
    Column {
        visible: figures.outlook.daylight.count > 0
        width: parent.width

        SectionTitle {
            width: parent.width
            text: qsTr("Average daylight factor")
        }
        Repeater {
            model: figures.outlook.daylight

            FigureRow {
                required label
                required figure
                required unit

                width: figures.width
                canAsk: false
            }
        }
    }
    LightLines {
        width: parent.width
        title: qsTr("Would tell more")
        lines: figures.outlook.wanted
    }
    LightLines {
        width: parent.width
        title: qsTr("Taken as")
        lines: figures.outlook.assumed
    }
}
