// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Before leaving the house: what is missing or doesn't add up. A tap leads to where it is mended.
Page {
    id: page

    readonly property LeavingModel leaving: page.notebook.leaving

    Screen {
        anchors.fill: parent
        focus: true
        title: qsTr("Before leaving")
        action: page.leaving.items.count === 0 ? qsTr("Back to the visit") : qsTr("Go to the first")
        onBackAsked: page.leave()
        onActed: {
            if (page.leaving.items.count === 0) {
                page.leave();
            } else {
                page.leaving.open(page.leaving.items.value(0, "item"));
            }
        }

        Sentence {
            width: parent.width
            text: page.leaving.line
        }
        Repeater {
            model: page.leaving.items

            LeavingRow {
                width: parent.width
                onChosen: page.leaving.open(item)
            }
        }
        Rule {
            width: parent.width
        }
    }
}
