// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What doesn't add up, which readings it may be, and the one that would settle it. Nothing is changed here.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    title: panel.walk.title
    threadRows: panel.walk.stations
    sideHeight: height * 0.32
    action: panel.walk.againSays
    backWord: qsTr("later")
    onBackAsked: panel.walk.later()
    onActed: panel.walk.takeAgain()
    sideContent: Elevation {
        source: panel.notebook.open
        activeStation: panel.walk.againStation
        onStationPicked: station => {
            panel.walk.later();
            panel.walk.jumpTo(station);
        }
    }

    Heading {
        width: parent.width
        text: panel.walk.differsTitle
    }
    Sentence {
        width: parent.width
        text: panel.walk.differsText
        bottomPadding: Theme.gap
    }
    Repeater {
        model: panel.walk.suspects

        ListRow {
            id: row

            required property string station
            required property string says
            required property string why
            required property string likely
            required figure
            required spoken

            width: parent.width
            text: says
            line: likely === "" ? why : why === "" ? likely : qsTr("%1, %2").arg(why).arg(likely)
            onClicked: {
                panel.walk.later();
                panel.walk.jumpTo(row.station);
            }
        }
    }
    Rule {
        width: parent.width
    }
}
