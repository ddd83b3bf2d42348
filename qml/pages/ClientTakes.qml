// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang.Face

// What a choice takes, to be read at arm's length.
Column {
    id: takes

    required property var lines // of maps with `label` and `text`
    readonly property bool stacked: Theme.textFactor > 1.25

    Repeater {
        model: takes.lines

        Item {
            id: line

            required property var modelData

            width: takes.width
            height: (takes.stacked ? label.height + figure.height : Math.max(label.height, figure.height)) + Theme.gap
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1: %2").arg(label.text).arg(figure.text.replace(/\n/g, ", "))

            Rule {
                width: parent.width
            }
            Sentence {
                id: label

                anchors.left: parent.left
                y: Theme.rowGap
                width: takes.stacked ? parent.width : parent.width * 0.42
                text: line.modelData.label
                Accessible.ignored: true
            }
            Sentence {
                id: figure

                y: takes.stacked ? label.y + label.height : label.y
                anchors.right: parent.right
                width: takes.stacked ? parent.width : parent.width * 0.58 - Theme.gap
                horizontalAlignment: Text.AlignRight
                text: line.modelData.text
                Accessible.ignored: true
            }
        }
    }
}
