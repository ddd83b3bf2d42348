// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// How far a visit's file is, and what came of it.
Column {
    id: work

    required property VisitFileModel file

    Sentence {
        width: parent.width
        visible: work.file.working
        text: work.file.doing
        topPadding: Theme.gap
        bottomPadding: Theme.rowGap
        Accessible.role: Accessible.ProgressBar
    }
    Item {
        width: parent.width
        height: Theme.focus
        visible: work.file.working

        Rule {
            width: parent.width
            anchors.bottom: parent.bottom
        }
        Rule {
            firm: true
            width: parent.width * work.file.share
            height: parent.height
        }
    }
    Sentence {
        width: parent.width
        visible: text !== ""
        text: work.file.line
        topPadding: Theme.gap
        wrapMode: Text.WrapAtWordBoundaryOrAnywhere

        Announced {
            words: work.file.line
        }
    }
}
