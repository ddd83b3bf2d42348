// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// A title, or a sentence to a person.
Text {
    color: Theme.ink
    font.family: Theme.sentences
    font.pixelSize: Theme.heading
    lineHeight: 0.86
    wrapMode: Text.Wrap
    textFormat: Text.PlainText
    Accessible.role: Accessible.Heading
    Accessible.name: text
}
