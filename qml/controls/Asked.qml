// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// A quiet line, and the word that does what it says.
Column {
    id: asked

    property string text
    property string word // empty: nothing to do
    property string explained: word

    signal chosen

    topPadding: Theme.rowGap

    Sentence {
        visible: text !== ""
        width: parent.width
        text: asked.text
    }
    WordButton {
        visible: asked.word !== ""
        width: Math.min(implicitWidth, asked.width)
        text: asked.word
        explained: asked.explained
        onClicked: asked.chosen()
    }
}
