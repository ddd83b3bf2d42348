// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A visit taken in from a file.
FocusScope {
    id: panel

    required property Notebook notebook
    readonly property VisitFileModel file: panel.notebook.visitFile
    property bool choosing: false
    property string damaged // the title of the visit that is to come back; empty: of none

    signal backAsked
    signal done

    onChoosingChanged: {
        if (panel.choosing) {
            chooser.setSource("FileChooser.qml", {
                title: qsTr("Choose a visit’s file"),
                filter: panel.file.filter
            });
        } else {
            chooser.source = "";
            screen.forceActiveFocus();
        }
    }

    Screen {
        id: screen

        anchors.fill: parent
        focus: true
        title: qsTr("A visit from a file")
        action: panel.file.working ? qsTr("Stop") : panel.file.takenIn !== "" ? qsTr("Open the visit") : qsTr("Choose the file")
        onBackAsked: panel.backAsked()
        onActed: {
            if (panel.file.working) {
                panel.file.stop();
            } else if (panel.file.takenIn !== "") {
                const visit = panel.file.takenIn;
                panel.done();
                panel.notebook.openVisit(visit);
            } else {
                panel.choosing = true;
            }
        }

        Sentence {
            visible: panel.damaged !== "" && panel.file.line === ""
            width: parent.width
            bottomPadding: Theme.gap
            text: qsTr("%1 is damaged on this phone. Choose its file, if it was kept as one; of a visit that was sent the workroom can make one. It is put beside what is here, which is left as it is.").arg(panel.damaged)
        }
        Sentence {
            width: parent.width
            second: true
            text: qsTr("The whole file is looked through first. A visit that is here already is never written over.")
        }
        FileWork {
            width: parent.width
            working: panel.file.working
            doing: panel.file.doing
            share: panel.file.share
            line: panel.file.line
        }
    }

    Loader {
        id: chooser
    }
    Connections {
        target: chooser.item as FileChooser

        function onChose(file: url) {
            panel.choosing = false;
            panel.file.takeIn(file);
        }
        function onShut() {
            panel.choosing = false;
        }
    }
}
