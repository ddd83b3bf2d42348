// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// A window drawn to scale with what is in the way, to be moved there.
PlacingItem {
    id: item

    paper: Theme.paper
    ink: Theme.ink
    soft: Theme.soft
    thread: Theme.thread
    wash: Theme.wash
    family: Theme.figures
    labelSize: Theme.dimension
    implicitHeight: Theme.drawingLowest
    Accessible.role: Accessible.Graphic
    Accessible.focusable: item.movable !== ""
    Accessible.name: qsTr("Drawing of the window")
    Accessible.description: item.description
}
