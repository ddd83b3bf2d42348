// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A window’s place in the visit, and another window like it.
Column {
    id: part

    required property Notebook notebook
    required property string windowId
    readonly property VisitModel visit: part.notebook.visit

    property string room // that it stands in
    property string place // in words

    signal copied

    function find() {
        const windows = part.visit.windows;
        const row = windows.indexOf(part.windowId);
        part.room = row < 0 ? "" : windows.value(row, "roomId");
        part.place = row < 0 ? "" : windows.value(row, "place");
    }

    onWindowIdChanged: find()
    Component.onCompleted: find()

    Connections {
        target: part.visit

        function onChanged() {
            part.find();
        }
    }

    SectionTitle {
        width: parent.width
        text: qsTr("Where it stands")
    }
    Sentence {
        width: parent.width
        text: part.place
        topPadding: Theme.rowGap
    }
    Flow {
        width: parent.width
        spacing: Theme.edge

        WordButton {
            text: qsTr("earlier")
            explained: qsTr("Put this window before the one above it")
            onClicked: part.visit.moveWindow(part.windowId, -1)
        }
        WordButton {
            text: qsTr("later")
            explained: qsTr("Put this window after the one below it")
            onClicked: part.visit.moveWindow(part.windowId, 1)
        }
        WordButton {
            text: qsTr("another like it")
            explained: qsTr("Add a window like this one, with nothing measured yet")
            onClicked: {
                const made = part.visit.copyWindow(part.windowId);
                if (made !== "") {
                    part.notebook.openWindow(made);
                    part.copied();
                }
            }
        }
    }
    Repeater {
        model: part.visit.rooms.count > 1 ? part.visit.rooms : null

        Place {
            id: other

            required property string roomId
            required property string name

            width: part.width
            active: other.roomId !== part.room
            visible: active
            sourceComponent: ListRow {
                text: qsTr("Move it to %1").arg(other.name)
                onClicked: part.visit.moveWindowTo(part.windowId, other.roomId)
            }
        }
    }
}
