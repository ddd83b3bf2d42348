// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// One state of a control under the state's name. Where a finger or a key brings the state about, `act` says so: `press`
// and `focus` are done to the first thing in it that can be touched.
Column {
    id: specimen

    required property string what
    property string act // press, focus; empty: it looks so by itself
    property bool whole: false // takes the margin too
    readonly property Item place: shown // what pictures are taken of, from the room above it on
    default property alias content: shown.data

    width: parent ? parent.width : 0

    Sentence {
        x: Theme.margin
        width: parent.width - x - Theme.edge
        second: true
        font.family: Theme.sentences
        text: specimen.what
    }
    Column {
        id: shown

        x: specimen.whole ? 0 : Theme.margin
        width: parent.width - (specimen.whole ? 0 : x + Theme.edge)
        topPadding: Theme.gap
        bottomPadding: Theme.gap
    }
}
