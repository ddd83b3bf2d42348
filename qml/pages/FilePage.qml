// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The open visit as one file.
Page {
    id: page

    readonly property VisitFileModel file: page.notebook.visitFile

    Screen {
        anchors.fill: parent
        focus: true
        title: qsTr("This visit as a file")
        action: page.file.working ? qsTr("Stop") : page.file.written ? qsTr("Back to the visit") : qsTr("Write the file")
        onBackAsked: page.leave()
        onActed: {
            if (page.file.working) {
                page.file.stop();
            } else if (page.file.written) {
                page.leave();
            } else {
                page.file.write();
            }
        }
        footWords: [
            WordButton {
                visible: page.file.written
                text: qsTr("hand it on")
                explained: qsTr("Hand the file on")
                onClicked: page.file.handOn()
            }
        ]

        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.file.waits
            bottomPadding: Theme.gap
        }
        Sentence {
            width: parent.width
            second: true
            text: qsTr("One file holds the survey and its photos: to keep elsewhere, or to hand to someone who takes it in with Truehang. Whoever has it reads the client’s name and address.")
        }
        FileWork {
            width: parent.width
            working: page.file.working
            doing: page.file.doing
            share: page.file.share
            line: page.file.line
        }
    }
}
