// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// Hours on the glass and on the cloth beside each other, or the heads of their columns.
Item {
    id: row

    required property string label
    required property string glass
    required property string cloth
    property string spoken
    property bool heads: false
    readonly property real columnWidth: Math.min(width * 0.27, 92 * Theme.textFactor)

    implicitWidth: 200
    implicitHeight: Math.max(name.height, hours.height) + Theme.rowGap
    Accessible.role: Accessible.StaticText
    Accessible.name: row.spoken
    Accessible.ignored: row.heads

    Sentence {
        id: name

        anchors.left: parent.left
        anchors.verticalCenter: parent.verticalCenter
        width: parent.width - 2 * row.columnWidth - Theme.gap
        text: row.label
        Accessible.ignored: true
    }
    Text {
        anchors.right: hours.left
        anchors.baseline: hours.baseline
        width: row.columnWidth
        horizontalAlignment: Text.AlignRight
        text: row.glass
        color: row.heads ? Theme.soft : Theme.ink
        font.family: Theme.figures
        font.pixelSize: row.heads ? Theme.body : Theme.figure
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Theme.dim
        Accessible.ignored: true
    }
    Text {
        id: hours

        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        width: row.columnWidth
        horizontalAlignment: Text.AlignRight
        text: row.cloth === "" ? " " : row.cloth
        color: row.heads ? Theme.soft : Theme.ink
        font.family: Theme.figures
        font.pixelSize: row.heads ? Theme.body : Theme.figure
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Theme.dim
        Accessible.ignored: true
    }
    Rule {
        visible: !row.heads
        anchors.bottom: parent.bottom
        width: parent.width
    }
}
