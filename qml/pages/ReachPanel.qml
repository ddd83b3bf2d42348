// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Why a station isn't taken.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    function give(reason: string) {
        panel.backAsked();
        panel.walk.cantReach(reason);
    }

    title: qsTr("%1: why not?").arg(panel.walk.says)
    growsUp: true
    threadRows: panel.walk.stations
    action: own.field.text !== "" ? qsTr("Keep this reason") : ""
    onActed: {
        InputMethod.commit();
        panel.give(own.field.text);
    }

    FieldRow {
        id: own

        width: parent.width
        label: qsTr("In your own words")
    }
    Item {
        width: 1
        height: Theme.gap
    }
    Repeater {
        model: panel.walk.reasons

        ListRow {
            required property string word
            required property string says

            width: parent.width
            text: says
            onClicked: panel.give(word)
        }
    }
}
