// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Sentences under a title; nothing where there are none.
Column {
    id: list

    required property string title
    required property ShownRows lines

    visible: list.lines.count > 0

    SectionTitle {
        width: parent.width
        text: list.title
    }
    Repeater {
        model: list.lines

        Sentence {
            required text

            width: list.width
            bottomPadding: Theme.rowGap
            second: true
        }
    }
}
