// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The page where the person is. Escape and the system's back key first close what a page has opened over itself, then
// go one page up.
FocusScope {
    id: pages

    required property Notebook notebook
    property string here: pages.notebook.screen
    property string before // the screen before this one
    readonly property Page page: loader.item as Page

    function back(): bool {
        InputMethod.commit();
        if (pages.page && pages.page.back()) {
            return true;
        }
        return pages.notebook.goBack();
    }

    onHereChanged: {
        pages.before = trail.last;
        trail.last = pages.here;
    }

    QtObject {
        id: trail

        property string last
    }

    Keys.onPressed: event => {
        if (event.key === Qt.Key_Escape || event.key === Qt.Key_Back) {
            event.accepted = pages.back();
        }
    }

    Shortcut {
        sequences: ["Ctrl+Z"]
        onActivated: pages.notebook.visit.undo()
    }
    Shortcut {
        sequences: ["Ctrl+Shift+Z", "Ctrl+Y"]
        onActivated: pages.notebook.visit.redo()
    }

    Column {
        id: faults

        visible: pages.notebook.fault !== ""
        x: Theme.margin
        width: parent.width - Theme.margin - Theme.edge

        FlagLine {
            width: parent.width
            severity: "stop"
            word: qsTr("Stop")
            text: pages.notebook.fault
        }
        WordButton {
            text: qsTr("try again")
            onClicked: pages.notebook.tryAgain()
        }
        Rule {
            width: parent.width
            firm: true
        }
    }

    Place {
        id: loader

        anchors.fill: parent
        anchors.topMargin: faults.visible ? faults.height : 0
        focus: true
        fills: true
        active: pages.notebook.ready
        sourceComponent: {
            switch (pages.notebook.screen) {
            case "visit":
                return visit;
            case "fabrics":
                return fabrics;
            case "walk":
                return walk;
            case "obstructions":
                return obstructions;
            case "hanging":
                return hanging;
            case "figures":
                return figures;
            case "choices":
                return choices;
            case "client":
                return client;
            case "photos":
                return photos;
            case "send":
                return send;
            case "sheets":
                return sheets;
            case "file":
                return file;
            case "rules":
                return rules;
            case "leaving":
                return leaving;
            case "lists":
                return lists;
            case "settings":
                return settings;
            default:
                return visits;
            }
        }
    }

    Component {
        id: visits

        VisitsPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: visit

        VisitPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: fabrics

        FabricsPage {
            notebook: pages.notebook
            cameFrom: pages.before
        }
    }
    Component {
        id: walk

        WalkPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: obstructions

        ObstructionsPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: hanging

        HangingPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: figures

        FiguresPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: choices

        ChoicesPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: client

        ClientPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: photos

        PhotosPage {
            notebook: pages.notebook
            cameFrom: pages.before
        }
    }
    Component {
        id: send

        SendPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: sheets

        SheetsPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: file

        FilePage {
            notebook: pages.notebook
        }
    }
    Component {
        id: rules

        RulesPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: leaving

        LeavingPage {
            notebook: pages.notebook
        }
    }
    Component {
        id: lists

        ListsPage {
            notebook: pages.notebook
            cameFrom: pages.before
        }
    }
    Component {
        id: settings

        SettingsPage {
            notebook: pages.notebook
        }
    }
}
