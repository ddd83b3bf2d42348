// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Some of the choices as columns, from `first` on: what each takes stands on one line with the others'.
Column {
    id: table

    required property ChoicesModel compared
    required property int first
    required property int columns
    readonly property real labelWidth: Math.min(170 * Theme.textFactor, width * 0.3)
    readonly property real columnWidth: (width - labelWidth) / columns - Theme.gap

    function holds(index: int): bool {
        return index >= table.first && index < table.first + table.columns;
    }

    Row {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.rowGap

        Item {
            width: table.labelWidth - Theme.gap
            height: 1
        }
        Repeater {
            model: table.compared.choices

            Column {
                id: head

                required property int index
                required property string title
                required property string says

                visible: table.holds(index)
                width: table.columnWidth

                Sentence {
                    width: parent.width
                    text: head.title
                    strong: true
                }
                Sentence {
                    width: parent.width
                    text: head.says
                }
            }
        }
    }
    Repeater {
        model: table.compared.lines

        Column {
            id: line

            required property string label
            required property list<string> cells

            width: table.width

            Rule {
                width: parent.width
            }
            Row {
                width: parent.width
                spacing: Theme.gap
                topPadding: Theme.rowGap
                bottomPadding: Theme.rowGap

                Sentence {
                    width: table.labelWidth - Theme.gap
                    second: true
                    text: line.label
                    Accessible.ignored: true // each cell says it
                }
                Repeater {
                    model: table.compared.choices

                    Sentence {
                        required property int index
                        required property string title

                        visible: table.holds(index)
                        width: table.columnWidth
                        text: line.cells[index] ?? ""
                        Accessible.name: qsTr("%1, %2: %3").arg(title).arg(line.label).arg(text.replace(/\n/g, ", "))
                    }
                }
            }
        }
    }
    Rule {
        width: parent.width
    }
    Row {
        width: parent.width
        spacing: Theme.gap

        Item {
            width: table.labelWidth - Theme.gap
            height: 1
        }
        Repeater {
            model: table.compared.choices

            Column {
                id: below

                required property int index
                required property string title
                required property string says
                required property int number
                required property bool canTake
                required property var flags

                visible: table.holds(index)
                width: table.columnWidth
                topPadding: 1  // a row leaves out what has no height

                ChoiceWords {
                    width: parent.width
                    compared: table.compared
                    row: below.index
                    title: below.title
                    says: below.says
                    number: below.number
                    canTake: below.canTake
                    flags: below.flags
                }
            }
        }
    }
}
