// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A new window: what it is called and what shape it has.
Screen {
    id: panel

    required property VisitModel visit
    required property string roomId

    signal made(string windowId)

    title: qsTr("New window")

    FieldRow {
        id: name

        width: parent.width
        label: qsTr("Name")
        example: qsTr("south window")
    }
    SectionTitle {
        width: parent.width
        text: qsTr("What shape is it?")
    }
    Repeater {
        model: panel.visit.shapes

        ListRow {
            required property string word
            required property string says
            required property bool offered
            required property string tells

            width: parent.width
            enabled: offered
            text: says
            line: tells
            onClicked: {
                InputMethod.commit();
                const made = panel.visit.addWindow(panel.roomId, name.field.text, word);
                if (made !== "") {
                    panel.made(made);
                }
            }
        }
    }
    Rule {
        width: parent.width
    }
}
