// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// A photo, upright, with what was tapped over it; where something is aimed at, a loupe in the upper corner that the
// finger isn't in shows it enlarged.
Item {
    id: taped

    required property PhotoTapeModel tape
    property alias file: picture.source
    readonly property bool ready: picture.status === Image.Ready

    implicitHeight: 200

    Image {
        id: picture

        anchors.fill: parent
        fillMode: Image.PreserveAspectFit
        horizontalAlignment: Image.AlignLeft
        autoTransform: true
        asynchronous: true
        sourceSize.width: 4096 // the loupe shows the same picture
        sourceSize.height: 4096
        Accessible.ignored: true
    }
    TapsItem {
        id: taps

        visible: taped.ready
        y: (picture.height - picture.paintedHeight) / 2
        width: picture.paintedWidth
        height: picture.paintedHeight
        tape: taped.tape
        paper: Theme.paper
        ink: Theme.ink
        thread: Theme.thread
        Accessible.role: Accessible.Graphic
        Accessible.focusable: true
        Accessible.name: qsTr("The photo to tap on")
        Accessible.description: qsTr("Arrow keys move the cross, with Shift by a single pixel; Return sets the corner")
    }
    Rectangle {
        id: loupe

        readonly property real enlarged: 6

        visible: taped.ready && taped.tape.aimed
        x: taped.tape.aim.x < 0.5 ? taps.width - width : 0
        y: taps.y
        width: Math.min(140, taps.width * 0.42)
        height: width
        color: Theme.paper
        border.width: Theme.firm
        border.color: Theme.ink

        Item {
            anchors.fill: parent
            anchors.margins: Theme.firm
            clip: true

            Image {
                x: parent.width / 2 - taped.tape.aim.x * width
                y: parent.height / 2 - taped.tape.aim.y * height
                width: taps.width * loupe.enlarged
                height: taps.height * loupe.enlarged
                source: picture.source
                sourceSize: picture.sourceSize
                autoTransform: true
                asynchronous: true
                Accessible.ignored: true
            }
            Repeater {
                model: 4 // arms of a cross, open in its middle

                Rectangle {
                    required property int index
                    readonly property bool upright: index % 2 === 0
                    readonly property int side: index < 2 ? -1 : 1

                    width: upright ? Theme.firm : 20
                    height: upright ? 20 : Theme.firm
                    x: (parent.width - width) / 2 + (upright ? 0 : 14 * side)
                    y: (parent.height - height) / 2 + (upright ? 14 * side : 0)
                    color: Theme.thread
                    border.width: 0
                }
            }
        }
    }
}
