// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// One step of how a figure came about: what was done, what came out, and what it came from.
Item {
    id: step

    property string what
    property string figure
    property string from
    property string spoken

    implicitWidth: 200
    implicitHeight: source.y + (source.visible ? source.height : 0) + Theme.rowGap
    Accessible.role: Accessible.StaticText
    Accessible.name: spoken

    readonly property bool stacked: words.implicitWidth + number.implicitWidth + Theme.gap > width

    Rule {
        width: parent.width
    }
    Sentence {
        id: words

        anchors.left: parent.left
        y: Theme.rowGap
        width: step.stacked ? parent.width : implicitWidth
        text: step.what
        Accessible.ignored: true
    }
    Sentence {
        id: number

        anchors.right: parent.right
        y: step.stacked ? words.y + words.height : words.y
        text: step.figure
        font.pixelSize: Theme.figure
        Accessible.ignored: true
    }
    Sentence {
        id: source

        visible: text !== ""
        y: number.y + number.height
        width: parent.width
        second: true
        text: step.from
        Accessible.ignored: true
    }
}
