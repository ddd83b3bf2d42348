// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// How far a file is that is being written or read, and what came of it.
Column {
    id: work

    required property bool working
    required property string doing
    required property real share // 0 to 1
    required property string line

    Sentence {
        width: parent.width
        visible: work.working
        text: work.doing
        topPadding: Theme.gap
        bottomPadding: Theme.rowGap
        Accessible.role: Accessible.ProgressBar
    }
    Item {
        width: parent.width
        height: Theme.focus
        visible: work.working

        Rule {
            width: parent.width
            anchors.bottom: parent.bottom
        }
        Rule {
            firm: true
            width: parent.width * work.share
            height: parent.height
        }
    }
    Sentence {
        width: parent.width
        visible: text !== ""
        text: work.line
        topPadding: Theme.gap
        bottomPadding: Theme.gap
        wrapMode: Text.WrapAtWordBoundaryOrAnywhere

        Announced {
            words: work.line
        }
    }
}
