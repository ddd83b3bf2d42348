// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A room of the visit with its windows.
Column {
    id: part

    required property VisitModel visit
    required property string roomId
    required property string name
    required property string line

    signal windowChosen(string windowId)
    signal windowAsked
    signal roomChosen

    SectionTitle {
        width: parent.width
        text: part.name
    }
    Repeater {
        model: part.visit.windows

        Place {
            id: place

            required property string windowId
            required property string roomId
            required property string name
            required property string shape
            required property string state
            required property int mark
            required property bool asks
            required property string spoken

            width: part.width
            active: roomId === part.roomId
            visible: active
            sourceComponent: ListRow {
                marked: true
                mark: place.mark
                text: place.name
                line: place.shape
                stateWords: place.state
                strong: place.asks
                spoken: place.spoken
                onClicked: part.windowChosen(place.windowId)
            }
        }
    }
    Rule {
        width: parent.width
    }
    Flow {
        width: parent.width
        spacing: Theme.edge

        WordButton {
            text: qsTr("add a window")
            explained: qsTr("Add a window to %1").arg(part.name)
            onClicked: part.windowAsked()
        }
        WordButton {
            text: qsTr("this room")
            explained: qsTr("Name of %1, and who lives there").arg(part.name)
            onClicked: part.roomChosen()
        }
    }
}
