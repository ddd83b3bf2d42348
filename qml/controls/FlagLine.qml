// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// What a flag says: its shape, its word, its sentence.
Item {
    id: line

    required property string severity // stop, remeasure, decide, caution, note
    required property string word // as "Caution"
    required property string text
    property bool live: false // said at once where it comes or changes
    readonly property string spoken: line.word + ". " + line.text

    readonly property string escaped: text.replace(/&/g, "&amp;").replace(/</g, "&lt;")

    implicitWidth: 200
    implicitHeight: sentence.implicitHeight + 2 * Theme.rowGap
    Accessible.role: line.live ? Accessible.AlertMessage : Accessible.StaticText
    Accessible.name: line.spoken

    Announced {
        live: line.live
        words: line.text === "" ? "" : line.spoken
    }

    FlagMark {
        id: mark

        severity: line.severity
        anchors.left: parent.left
        y: Theme.rowGap + Math.round((Theme.body * 1.2 - height) / 2)
    }
    Text {
        id: sentence

        anchors.left: mark.right
        anchors.leftMargin: 10
        anchors.right: parent.right
        y: Theme.rowGap
        text: "<b>" + line.word + ".</b> " + line.escaped
        textFormat: Text.StyledText
        color: Theme.ink
        font.family: Theme.figures
        font.pixelSize: Theme.body
        lineHeight: Theme.leading
        wrapMode: Text.Wrap
        Accessible.ignored: true
    }
}
