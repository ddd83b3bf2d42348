// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What doesn't add up, which readings it may be, and the one that would settle it. A reading is put right here only by
// taking an offer, and then it says that it is proposed.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    title: panel.walk.title
    threadRows: panel.walk.stations
    sideHeight: Math.max(Theme.drawingLowest, height * 0.38 / Theme.textFactor)
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

        Announced {
            words: panel.walk.differsTitle
        }
    }
    Sentence {
        width: parent.width
        text: panel.walk.differsText
        bottomPadding: Theme.rowGap
    }
    Repeater {
        model: panel.walk.suspects

        SuspectRow {
            id: row

            required property string suspect
            required property string station
            required says
            required figure
            required slip
            required likely
            required isLikely
            required offer
            required offerSpoken
            required spoken

            width: parent.width
            onChosen: {
                panel.walk.later();
                panel.walk.jumpTo(row.station);
            }
            onOfferTaken: panel.walk.propose(row.suspect)
        }
    }
    Rule {
        width: parent.width
    }
    Sentence {
        visible: text !== ""
        width: parent.width
        topPadding: Theme.rowGap
        second: true
        text: panel.walk.noneOfThese
    }
    Sentence {
        visible: text !== ""
        width: parent.width
        topPadding: Theme.rowGap
        text: panel.walk.againWhy
    }
}
