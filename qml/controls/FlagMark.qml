// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// A flag's shape in ink: bar stop, broken circle measure again, square decide, triangle caution, circle note.
Item {
    id: mark

    required property string severity

    implicitWidth: Theme.mark
    implicitHeight: Theme.mark

    Rectangle {
        visible: mark.severity === "stop"
        anchors.centerIn: parent
        width: parent.width
        height: 7
        color: Theme.ink
    }
    Rectangle {
        visible: mark.severity === "decide"
        anchors.fill: parent
        anchors.margins: 1
        color: "transparent"
        border.width: Theme.firm
        border.color: Theme.ink
    }
    Rectangle {
        visible: mark.severity === "note"
        anchors.fill: parent
        anchors.margins: 1
        radius: width / 2
        color: "transparent"
        border.width: Theme.firm
        border.color: Theme.ink
    }
    // Not a Shape: the software renderer draws one beyond its clip.
    Canvas {
        id: canvas

        property color ink: Theme.ink

        visible: mark.severity === "caution" || mark.severity === "remeasure"
        anchors.fill: parent
        onInkChanged: requestPaint()
        onPaint: {
            const pen = getContext("2d");
            pen.reset();
            pen.strokeStyle = ink;
            pen.lineWidth = Theme.firm;
            pen.beginPath();
            if (mark.severity === "caution") {
                pen.moveTo(width / 2, 2);
                pen.lineTo(width - 1.5, height - 2);
                pen.lineTo(1.5, height - 2);
                pen.closePath();
            } else {
                pen.arc(width / 2, height / 2, width / 2 - 1.5, -0.9, 4.0);
            }
            pen.stroke();
        }
    }

    onSeverityChanged: canvas.requestPaint()
}
