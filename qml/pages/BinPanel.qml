// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// What was removed: brought back one by one (the rows that the page puts here, while nothing is asked), or erased for
// good after one question.
Screen {
    id: panel

    required property string heading
    required property string says // over the rows
    required property string question
    required property string explained // what erasing is called
    required property int count
    property bool asking: false

    signal eraseAsked
    signal eraseChosen

    title: panel.asking ? qsTr("Erase for good?") : panel.heading
    action: panel.asking ? qsTr("Keep them") : ""
    growsUp: true
    onActed: panel.backAsked()
    footWords: [
        WordButton {
            visible: !panel.asking && panel.count > 0
            text: qsTr("empty the bin")
            explained: panel.explained
            onClicked: panel.eraseAsked()
        }
    ]

    Sentence {
        width: parent.width
        bottomPadding: Theme.rowGap
        text: panel.asking ? panel.question : panel.says
    }
    WordButton {
        visible: panel.asking
        text: qsTr("erase for good")
        explained: panel.explained
        onClicked: panel.eraseChosen()
    }
    Item {
        visible: panel.asking
        width: 1
        height: 2 * Theme.gap
    }
}
