// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A line to write on, with what it is for above it and, where it can't be read, what is understood below it.
// `committed` may come twice with the same words: what it does must bear that.
FocusScope {
    id: row

    required property string label
    property string text
    property string unit
    property string fault
    property string example
    property bool figures: false // a number is expected
    property int hints: figures ? Qt.ImhPreferNumbers : Qt.ImhNone
    readonly property alias field: input

    signal edited(string words)
    signal committed(string words)

    // What is heard after the name and what is written.
    function aside(parts: var): string {
        return parts.filter(words => words !== "").join(". ");
    }
    function commit() {
        InputMethod.commit();
        row.committed(input.text);
    }

    implicitWidth: 200
    implicitHeight: column.implicitHeight

    // Follows the model, but never writes over what is being typed.
    onTextChanged: {
        if (!input.activeFocus && input.text !== row.text) {
            input.text = row.text;
            input.cursorPosition = 0;
        }
    }
    Component.onCompleted: {
        input.text = row.text;
        input.cursorPosition = 0;
    }

    Column {
        id: column

        width: parent.width

        Sentence {
            width: parent.width
            second: true
            text: row.label
            Accessible.ignored: true
            topPadding: Theme.rowGap
        }
        Item {
            width: parent.width
            height: Math.max(Theme.target, input.implicitHeight)

            TextInput {
                id: input

                anchors.left: parent.left
                anchors.right: unitWord.visible ? unitWord.left : parent.right
                anchors.rightMargin: unitWord.visible ? Theme.gap : 0
                height: parent.height
                clip: true
                focus: true
                activeFocusOnTab: true
                verticalAlignment: Text.AlignVCenter
                color: Theme.ink
                selectionColor: Theme.ink
                selectedTextColor: Theme.paper
                font.family: Theme.figures
                font.pixelSize: row.figures ? Theme.figure : Theme.body
                selectByMouse: true
                inputMethodHints: row.hints
                Accessible.role: Accessible.EditableText
                Accessible.name: row.label
                Accessible.description: row.aside([row.unit, input.text === "" ? row.example : "", row.fault])
                onTextEdited: row.edited(text)
                onEditingFinished: row.commit()
                onActiveFocusChanged: {
                    if (!activeFocus) {
                        row.commit();
                        cursorPosition = 0; // long words show their beginning
                    } else {
                        cursorPosition = length; // a touch puts it where it touches
                    }
                }
                cursorDelegate: Rectangle {
                    width: Theme.firm
                    color: Theme.thread
                    visible: input.cursorVisible
                }

                Text {
                    visible: input.text === "" && input.preeditText === "" && row.example !== ""
                    anchors.fill: parent
                    verticalAlignment: Text.AlignVCenter
                    text: row.example
                    color: Theme.soft
                    font.family: Theme.sentences
                    font.pixelSize: Theme.body
                    elide: Text.ElideNone
                    Accessible.ignored: true
                }
            }
            Sentence {
                id: unitWord

                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                visible: row.unit !== ""
                text: row.unit
                Accessible.ignored: true
            }
        }
        Item {
            width: parent.width
            height: Theme.focus

            Rectangle {
                width: parent.width
                height: input.activeFocus ? parent.height : Theme.hairline
                color: input.activeFocus ? Theme.ink : Theme.soft
            }
        }
        Sentence {
            visible: row.fault !== ""
            width: parent.width
            text: row.fault
            topPadding: Theme.rowGap
            Accessible.role: Accessible.AlertMessage

            Announced {
                words: row.fault
            }
        }
    }
}
