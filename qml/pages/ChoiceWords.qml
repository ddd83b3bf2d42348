// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What is new with a choice, and what can be done with it.
Column {
    id: words

    required property ChoicesModel compared
    required property int row // among the choices
    required property string title
    required property string says
    required property int number // of the surveyor's own; else -1
    required property bool canTake
    required property var flags

    Repeater {
        model: words.flags

        FlagLine {
            required property var modelData

            width: words.width
            severity: modelData.severity
            word: modelData.word
            text: modelData.text
        }
    }
    WordButton {
        visible: words.number < 0 && words.canTake
        text: words.row === 0 ? qsTr("leave it so") : qsTr("cut it so")
        explained: words.row === 0 ? qsTr("Decide the edge: leave it as it hangs now") : qsTr("Decide the edge, cut it so: %1").arg(words.says)
        onClicked: words.compared.settle(words.row)
    }
    Flow {
        visible: words.number >= 0
        width: parent.width
        spacing: Theme.edge

        WordButton {
            visible: words.canTake
            text: qsTr("hang it so")
            explained: qsTr("%1, hang it so: %2").arg(words.title).arg(words.says)
            onClicked: words.compared.take(words.number)
        }
        WordButton {
            text: qsTr("change")
            explained: qsTr("Change %1").arg(words.title)
            onClicked: words.compared.edit(words.number)
        }
        WordButton {
            text: qsTr("leave out")
            explained: qsTr("Leave %1 out").arg(words.title)
            onClicked: words.compared.leaveOut(words.number)
        }
    }
}
