// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// Where the keyboard is: an ink frame of its own, so that it isn't told by colour.
Rectangle {
    required property bool shown

    visible: shown
    color: "transparent"
    border.width: Theme.focus
    border.color: Theme.ink
}
