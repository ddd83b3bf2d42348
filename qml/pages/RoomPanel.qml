// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A room's name, and whether small children are there: it decides about cords.
Screen {
    id: panel

    required property VisitModel visit
    required property string roomId
    property string given // what was chosen here

    title: qsTr("Room")
    action: qsTr("Back to the visit")

    FieldRow {
        width: parent.width
        label: qsTr("Name")
        text: panel.visit.rooms.count > 0 ? panel.visit.rooms.value(panel.visit.rooms.indexOf(panel.roomId), "name") ?? "" : ""
        onCommitted: words => panel.visit.renameRoom(panel.roomId, words)
    }
    FieldRow {
        width: parent.width
        label: qsTr("Used as")
        example: qsTr("bedroom, office, hotel")
        text: panel.visit.rooms.count > 0 ? panel.visit.rooms.value(panel.visit.rooms.indexOf(panel.roomId), "use") ?? "" : ""
        onCommitted: words => panel.visit.setRoomUse(panel.roomId, words)
    }
    Item {
        width: 1
        height: Theme.gap
    }
    ChoiceList {
        width: parent.width
        label: qsTr("Small children live or visit here")
        chosen: panel.given
        choices: [
            {
                word: "yes",
                says: qsTr("yes")
            },
            {
                word: "no",
                says: qsTr("no")
            },
            {
                word: "unknown",
                says: qsTr("not known")
            }
        ]
        onChose: word => {
            panel.given = word;
            panel.visit.setYoungChildren(panel.roomId, word);
        }
    }
    Repeater {
        model: panel.visit.rooms

        Sentence {
            required property var model

            visible: model.roomId === panel.roomId
            width: panel.contentWidth
            text: qsTr("Written down: %1").arg(model.children)
        }
    }
    Sentence {
        width: parent.width
        second: true
        text: qsTr("Not known counts as yes: cords are then kept out of reach.")
    }
    Repeater {
        model: panel.visit.rooms.count > 1 ? panel.visit.rooms : null

        Sentence {
            required property string roomId
            required property string place

            visible: roomId === panel.roomId
            width: panel.contentWidth
            text: place
            topPadding: Theme.gap
        }
    }
    Flow {
        width: parent.width
        spacing: Theme.edge
        visible: panel.visit.rooms.count > 1

        WordButton {
            text: qsTr("earlier")
            explained: qsTr("Put this room before the one above it")
            onClicked: panel.visit.moveRoom(panel.roomId, -1)
        }
        WordButton {
            text: qsTr("later")
            explained: qsTr("Put this room after the one below it")
            onClicked: panel.visit.moveRoom(panel.roomId, 1)
        }
    }
    Item {
        width: 1
        height: 3 * Theme.gap
    }
    WordButton {
        text: qsTr("take this room out")
        explained: qsTr("Take this room and its windows out; undo brings them back")
        onClicked: {
            panel.visit.removeRoom(panel.roomId);
            panel.acted();
        }
    }
}
