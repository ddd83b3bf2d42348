// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// A photo, upright, with the marks over it. With `marks` a finger or the arrow keys draw on it.
Item {
    id: marked

    required property OpenVisit source
    required property string photo
    property alias file: picture.source
    property MarksModel marks: null
    property string spoken

    implicitHeight: 200

    Image {
        id: picture

        anchors.fill: parent
        fillMode: Image.PreserveAspectFit
        horizontalAlignment: Image.AlignLeft
        autoTransform: true
        asynchronous: true
        sourceSize.width: 2 * marked.width
        sourceSize.height: 2 * marked.height
        Accessible.role: Accessible.Graphic
        Accessible.name: marked.spoken
        Accessible.ignored: marked.marks !== null
    }
    MarksItem {
        visible: picture.status === Image.Ready
        y: (picture.height - picture.paintedHeight) / 2
        width: picture.paintedWidth
        height: picture.paintedHeight
        source: marked.source
        photo: marked.photo
        marks: marked.marks
        paper: Theme.paper
        ink: Theme.ink
        thread: Theme.thread
        family: Theme.figures
        labelSize: Theme.dim
        Accessible.ignored: marked.marks === null
        Accessible.role: Accessible.Graphic
        Accessible.focusable: marked.marks !== null
        Accessible.name: marked.spoken
        Accessible.description: qsTr("Arrow keys move the cross or the chosen mark, Return sets an end")
    }
}
