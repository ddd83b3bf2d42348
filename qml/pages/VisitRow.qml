// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// A visit of the list; above the topmost of a day, the day.
FocusScope {
    id: row

    required property int index
    required property string visitId
    required property string title
    required property string line
    required property string state
    required property int mark
    required property bool asks
    required property string spoken
    required property string heading
    required property string waits
    required property bool unsent
    required property bool damaged
    property bool removed: false // it stands in the bin
    property bool open: false // it stands beside the list

    property bool isStop: true // of the Tab key; from there arrows lead on

    signal chosen
    signal reached

    implicitHeight: day.height + visit.height
    ListView.onPooled: row.visible = false
    ListView.onReused: row.visible = true
    onActiveFocusChanged: {
        if (activeFocus) {
            row.reached();
        }
    }

    Item {
        id: day

        x: Theme.margin
        width: parent.width - x
        height: row.heading !== "" ? words.height : 0
        visible: row.heading !== ""

        Sentence {
            id: words

            width: parent.width
            second: true
            text: row.heading
            topPadding: Theme.gap
            bottomPadding: Theme.rowGap
            Accessible.role: Accessible.Heading
        }
    }
    ListRow {
        id: visit

        x: Theme.margin
        y: day.height
        width: parent.width - x
        focus: true
        focusPolicy: row.isStop || visit.activeFocus ? Qt.StrongFocus : Qt.ClickFocus
        marked: true
        mark: row.mark
        text: row.title
        line: row.line
        stateWords: row.state
        quietWords: row.waits !== "" ? row.waits : row.removed && row.unsent ? qsTr("not confirmed by the workroom") : ""
        strong: row.asks || row.open
        spoken: row.spoken
        onClicked: row.chosen()
    }
}
