// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Where the tape can't go: on without it, as at another station or by estimate, or why the station isn't taken.
Screen {
    id: panel

    required property Notebook notebook
    readonly property WalkModel walk: panel.notebook.walk

    function give(reason: string) {
        panel.backAsked();
        panel.walk.cantReach(reason);
    }

    title: panel.walk.says
    growsUp: true
    threadRows: panel.walk.stations
    action: own.field.text !== "" ? qsTr("Keep this reason") : ""
    onActed: {
        InputMethod.commit();
        panel.give(own.field.text);
    }

    SectionTitle {
        width: parent.width
        text: qsTr("On without the tape")
    }
    Repeater {
        model: panel.walk.withoutTape

        ListRow {
            required property string word
            required property string says

            width: parent.width
            text: says
            onClicked: {
                panel.backAsked();
                panel.walk.goOnWithout(word);
            }
        }
    }
    Sentence {
        visible: panel.walk.typed === "" || panel.walk.shownIsKept
        width: parent.width
        text: qsTr("To keep an estimate, type it first, then come here.")
    }
    SectionTitle {
        width: parent.width
        text: qsTr("Or leave it out: why?")
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
