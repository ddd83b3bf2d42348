// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The choices one under the other, each with what it takes.
Column {
    id: blocks

    required property ChoicesModel compared
    readonly property bool stacked: Theme.textFactor > 1.25

    Repeater {
        model: blocks.compared.choices

        Column {
            id: block

            required property int index
            required property string title
            required property string says
            required property int number
            required property bool canTake
            required property var flags

            width: blocks.width
            bottomPadding: Theme.gap

            SectionTitle {
                width: parent.width
                text: block.title
            }
            Sentence {
                width: parent.width
                text: block.says
                strong: true
                bottomPadding: Theme.rowGap
            }
            Repeater {
                model: blocks.compared.lines

                Item {
                    id: line

                    required property string label
                    required property list<string> cells

                    width: block.width
                    height: blocks.stacked ? name.height + cell.height + Theme.gap : Math.max(name.height, cell.height) + Theme.gap
                    Accessible.role: Accessible.StaticText
                    Accessible.name: qsTr("%1, %2: %3").arg(block.title).arg(line.label).arg(cell.text.replace(/\n/g, ", "))

                    Rule {
                        width: parent.width
                    }
                    Sentence {
                        id: name

                        anchors.left: parent.left
                        y: Theme.rowGap
                        width: blocks.stacked ? parent.width : parent.width * 0.42
                        second: true
                        text: line.label
                        Accessible.ignored: true
                    }
                    Sentence {
                        id: cell

                        y: blocks.stacked ? name.y + name.height : name.y
                        anchors.right: parent.right
                        width: blocks.stacked ? parent.width : parent.width * 0.58 - Theme.gap
                        horizontalAlignment: Text.AlignRight
                        text: line.cells[block.index] ?? ""
                        Accessible.ignored: true
                    }
                }
            }
            Rule {
                width: parent.width
            }
            ChoiceWords {
                width: parent.width
                compared: blocks.compared
                row: block.index
                title: block.title
                says: block.says
                number: block.number
                canTake: block.canTake
                flags: block.flags
            }
        }
    }
}
