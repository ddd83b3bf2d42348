// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// Words to be read: in ink, wrapped, never cut off.
Text {
    property bool second: false // of second rank, never a figure
    property bool strong: false

    color: second ? Theme.soft : Theme.ink
    font.family: Theme.figures
    font.pixelSize: second ? Theme.dim : Theme.body
    font.bold: strong
    lineHeight: Theme.leading
    wrapMode: Text.Wrap
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: text
}
