// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The straightened photo of the wall, put under the drawing or taken away.
Column {
    id: word

    required property WallPhoto wall

    visible: word.wall.there

    WordButton {
        text: word.wall.shown ? qsTr("without the photo") : qsTr("on the photo")
        explained: word.wall.shown ? qsTr("Take the photo away from under the drawing") : qsTr("Lay the straightened photo under the drawing")
        onClicked: word.wall.shown = !word.wall.shown
    }
    Sentence {
        visible: text !== ""
        width: parent.width
        text: word.wall.trouble

        Announced {
            words: word.wall.trouble
        }
    }
}
