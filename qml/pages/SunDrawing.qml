// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The window with the sun’s ways over it, or the calendar of its sun, in the look's colours.
SunItem {
    id: drawing

    LayoutMirroring.enabled: false
    LayoutMirroring.childrenInherit: true
    paper: Theme.paper
    ink: Theme.ink
    soft: Theme.soft
    thread: Theme.thread
    wash: Theme.wash
    family: Theme.figures
    labelSize: Theme.dimension
    implicitHeight: drawing.calendar ? drawing.needed : Theme.drawingLowest
    Accessible.role: Accessible.Graphic
    Accessible.name: drawing.calendar ? qsTr("Calendar of the sun") : qsTr("Where the sun stands in this window")
    Accessible.description: description
}
