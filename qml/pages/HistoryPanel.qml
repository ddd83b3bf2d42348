// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Every reading of a station, newest first: none is ever lost, and one of them counts.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    title: panel.walk.title
    threadRows: panel.walk.stations
    sideHeight: Math.max(Theme.drawingLowest, height * 0.3 / Theme.textFactor)
    action: panel.walk.hereAgainSays
    sideContent: Elevation {
        source: panel.notebook.open
        activeStation: panel.walk.station
        dimensions: panel.wide
    }

    Heading {
        width: parent.width
        text: panel.walk.says
        bottomPadding: Theme.gap
    }
    Repeater {
        model: panel.walk.history

        Item {
            id: row

            required property string figure
            required property string when
            required property string how
            required property string standing
            required property bool counts
            required property string spoken

            width: parent.width
            implicitHeight: words.y + words.height + Theme.gap
            Accessible.role: Accessible.StaticText
            Accessible.name: row.spoken

            Rule {
                width: parent.width
            }
            Column {
                id: words

                y: Theme.gap
                width: parent.width

                Item {
                    readonly property bool stacked: value.implicitWidth + state.implicitWidth + Theme.gap > width

                    width: parent.width
                    height: stacked ? value.height + state.height : value.height

                    Sentence {
                        id: value

                        anchors.left: parent.left
                        width: parent.stacked ? parent.width : implicitWidth
                        text: row.figure
                        font.pixelSize: Theme.figure
                        strong: row.counts
                        Accessible.ignored: true
                    }
                    Sentence {
                        id: state

                        width: parent.stacked ? parent.width : implicitWidth
                        anchors.right: parent.right
                        anchors.bottom: parent.bottom
                        horizontalAlignment: parent.stacked ? Text.AlignLeft : Text.AlignRight
                        strong: row.counts
                        text: row.standing
                        Accessible.ignored: true
                    }
                }
                Sentence {
                    width: parent.width
                    second: true
                    text: qsTr("%1, %2").arg(row.how).arg(row.when)
                    Accessible.ignored: true
                }
            }
        }
    }
    Rule {
        width: parent.width
    }
    WordButton {
        visible: panel.walk.hereTwice
        text: qsTr("say which one counts")
        onClicked: panel.notebook.screen = "twice"
    }
}
