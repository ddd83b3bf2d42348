// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// A control in all its states, one specimen under the other.
Column {
    id: plate

    required property string control // the name of its file in qml/controls

    width: parent ? parent.width : 0

    SectionTitle {
        x: Theme.margin
        width: parent.width - x - Theme.edge
        text: plate.control
    }
}
