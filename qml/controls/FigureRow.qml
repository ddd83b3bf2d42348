// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// A figure with its name and unit; dotted where it can be asked why.
PressItem {
    id: row

    required property string label
    required property string figure
    property string unit // or "± 6 mm"
    property bool canAsk: true
    property bool ruled: true // a hairline below it

    signal asked

    implicitWidth: 200
    implicitHeight: Math.max(Theme.target, body.height + 2 * Theme.rowGap)
    focusPolicy: canAsk ? Qt.StrongFocus : Qt.NoFocus
    // A button always is heard as one: where there is nothing to ask, what stands in it speaks.
    Accessible.role: Accessible.Button
    Accessible.ignored: !canAsk
    Accessible.name: unit === "" ? qsTr("%1: %2").arg(label).arg(figure) : qsTr("%1: %2 %3").arg(label).arg(figure).arg(unit)
    Accessible.onPressAction: if (enabled) clicked()
    Accessible.description: canAsk ? qsTr("Ask how it came about") : ""
    onClicked: {
        if (canAsk) {
            asked();
        }
    }

    Item {
        id: body

        Accessible.role: Accessible.StaticText
        Accessible.name: row.Accessible.name
        Accessible.ignored: row.canAsk
        width: parent.width
        anchors.verticalCenter: parent.verticalCenter

        readonly property bool stacked: name.implicitWidth + number.implicitWidth + unitWord.width + 2 * Theme.gap > width

        height: stacked ? name.height + number.height + 6 : Math.max(name.height, number.height + 4)

        Sentence {
            id: name

            anchors.left: parent.left
            width: body.stacked ? parent.width : Math.min(implicitWidth, parent.width)
            y: body.stacked ? 0 : (parent.height - height) / 2
            text: row.label
            Accessible.ignored: true
        }
        Text {
            id: number

            anchors.right: unitWord.left
            anchors.rightMargin: unitWord.width > 0 ? 8 : 0
            y: parent.height - height - (body.stacked ? 4 : (parent.height - height) / 2)
            width: Math.max(0, Math.min(implicitWidth, parent.width - unitWord.width - anchors.rightMargin))
            text: row.figure
            color: Theme.ink
            font.family: Theme.figures
            font.pixelSize: Theme.figure
            fontSizeMode: Text.HorizontalFit // long fractions in the largest letters
            minimumPixelSize: Theme.dim
            Accessible.ignored: true

            Row {
                visible: row.canAsk
                anchors.top: parent.bottom
                anchors.topMargin: 1
                width: parent.width
                spacing: 2
                clip: true

                Repeater {
                    model: Math.ceil(number.width / 4)

                    Rectangle {
                        width: 2
                        height: 2
                        color: Theme.ink
                    }
                }
            }
        }
        Sentence {
            id: unitWord

            anchors.right: parent.right
            anchors.baseline: number.baseline
            width: Math.max(implicitWidth, 62 * Theme.textFactor) // without a unit too, so that digits stand under digits
            horizontalAlignment: Text.AlignRight
            wrapMode: Text.NoWrap
            text: row.unit
            Accessible.ignored: true
        }
    }
    Rectangle {
        anchors.fill: parent
        z: -1
        color: row.pressed && row.canAsk ? Theme.wash : "transparent"

        FocusFrame {
            anchors.fill: parent
            anchors.leftMargin: -Theme.frameGap
            anchors.rightMargin: -Theme.frameGap
            shown: row.visualFocus
        }
        Rule {
            visible: row.ruled
            anchors.bottom: parent.bottom
            width: parent.width
            firm: row.pressed && row.canAsk
        }
    }
}
