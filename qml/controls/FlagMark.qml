// SPDX-License-Identifier: Apache-2.0
import QtQuick
import QtQuick.Shapes
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
    Shape {
        visible: mark.severity === "caution"
        anchors.fill: parent
        ShapePath {
            strokeColor: Theme.ink
            strokeWidth: Theme.firm
            fillColor: "transparent"
            joinStyle: ShapePath.MiterJoin
            startX: mark.width / 2
            startY: 2
            PathLine { x: mark.width - 1.5; y: mark.height - 2 }
            PathLine { x: 1.5; y: mark.height - 2 }
            PathLine { x: mark.width / 2; y: 2 }
        }
    }
    Shape {
        visible: mark.severity === "remeasure"
        anchors.fill: parent
        ShapePath {
            strokeColor: Theme.ink
            strokeWidth: Theme.firm
            fillColor: "transparent"
            PathAngleArc {
                centerX: mark.width / 2
                centerY: mark.height / 2
                radiusX: mark.width / 2 - 1.5
                radiusY: mark.height / 2 - 1.5
                startAngle: -50
                sweepAngle: 280
            }
        }
    }
}
