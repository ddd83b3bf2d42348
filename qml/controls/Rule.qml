// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// A hairline between rows, or a firm line under what is being written.
Rectangle {
    property bool firm: false

    implicitHeight: firm ? Theme.underline : Theme.hairline
    implicitWidth: Theme.target
    color: firm ? Theme.ink : Theme.rule
}
