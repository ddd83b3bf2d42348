// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The fields of a form, one under the other: lines to write on and words to choose from.
Column {
    id: fields

    required property FieldForm form
    property string chosenLast // the field that was chosen from
    property bool opened: false // cautions that come from now on are said at once

    signal warned(Item caution) // what was chosen brings a caution, that stands there now

    spacing: Theme.gap
    Component.onCompleted: fields.opened = true

    Repeater {
        model: fields.form

        Item {
            id: place

            required property string field
            required property string label
            required property string kind
            required property string text
            required property string unit
            required property string fault
            required property string word
            required property var choices
            required property string hint
            required property list<string> cautions

            width: fields.width
            height: (kind === "choice" ? choice.height : line.height) + warning.height

            Place {
                id: line

                active: place.kind !== "choice"
                width: parent.width
                sourceComponent: FieldRow {
                    label: place.label
                    text: place.text
                    unit: place.unit
                    fault: place.fault
                    example: place.hint
                    figures: place.kind === "length" || place.kind === "number"
                    onEdited: words => fields.form.typing(place.field, words)
                    onCommitted: words => fields.form.leave(place.field, words)
                }
            }
            Place {
                id: choice

                active: place.kind === "choice"
                width: parent.width
                sourceComponent: ChoiceList {
                    label: place.label
                    choices: place.choices
                    chosen: place.word
                    unsaid: place.hint
                    onChose: chosenWord => {
                        fields.chosenLast = place.field;
                        fields.form.choose(place.field, chosenWord);
                    }
                }
            }
            // What could hurt someone, where it is chosen.
            Column {
                id: warning

                onHeightChanged: {
                    if (height > 0 && fields.chosenLast === place.field) {
                        onceLaidOut.restart();
                    }
                }
                y: place.kind === "choice" ? choice.height : line.height
                width: parent.width

                Timer {
                    id: onceLaidOut

                    interval: 0
                    onTriggered: fields.warned(warning)
                }
                Repeater {
                    model: place.cautions

                    FlagLine {
                        required property string modelData

                        width: warning.width
                        severity: "caution"
                        live: fields.opened
                        word: qsTr("Caution")
                        text: modelData
                    }
                }
            }
        }
    }
}
