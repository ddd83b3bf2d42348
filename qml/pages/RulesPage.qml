// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The house rules that the visit is worked by, group by group; each can be changed for this visit.
Page {
    id: page

    readonly property RulesModel rules: page.notebook.rules

    panel: page.rules.edited === "" ? "" : "rule"

    function back(): bool {
        if (page.rules.edited === "") {
            return false;
        }
        page.rules.done();
        return true;
    }

    Screen {
        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: qsTr("House rules")
        action: page.rules.canTake ? qsTr("Take the workroom’s rules") : qsTr("Back to the visit")
        onBackAsked: page.leave()
        onActed: {
            if (page.rules.canTake) {
                page.rules.takeWorkrooms();
            } else {
                page.leave();
            }
        }
        footWords: [
            WordButton {
                visible: page.notebook.visit.canUndo
                text: qsTr("undo")
                onClicked: page.notebook.visit.undo()
            },
            WordButton {
                visible: page.notebook.visit.canRedo
                text: qsTr("redo")
                onClicked: page.notebook.visit.redo()
            }
        ]

        Heading {
            width: parent.width
            text: page.rules.workedBy
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.rules.workroomSays
            topPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            second: true
            text: qsTr("How sharply edges are read is this house’s own and stays.")
            topPadding: Theme.rowGap
        }
        Flow {
            width: parent.width
            spacing: Theme.edge

            WordButton {
                text: qsTr("keep in your list")
                explained: qsTr("Keep these house rules in your list")
                onClicked: page.notebook.lists.keepRules()
            }
            WordButton {
                visible: page.notebook.lists.hasAny
                text: qsTr("your list")
                explained: qsTr("Take house rules from your list")
                onClicked: page.notebook.screen = "lists"
            }
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.notebook.lists.said

            Announced {
                words: page.notebook.lists.said
            }
        }
        Repeater {
            model: page.rules.rules

            Column {
                id: place

                required property int index
                required property string rule
                required property string group
                required property string says
                required property string figure
                required property string line
                required property string spoken
                readonly property bool firstOfGroup: index === 0 || page.rules.rules.value(index - 1, "group") !== group

                width: parent.width

                SectionTitle {
                    visible: place.firstOfGroup
                    width: parent.width
                    text: place.group
                }
                ListRow {
                    width: parent.width
                    text: place.says
                    figure: place.figure
                    line: place.line
                    spoken: place.spoken
                    onClicked: page.rules.edit(place.rule)
                }
            }
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel !== ""
        focus: active
        sourceComponent: Screen {
            title: qsTr("House rule")
            action: qsTr("Back to the rules")
            onBackAsked: page.leave()
            onActed: page.leave()

            FormFields {
                width: parent.width
                form: page.rules.form
            }
            Sentence {
                width: parent.width
                text: page.rules.editedRange
                topPadding: Theme.gap
            }
            Sentence {
                width: parent.width
                text: page.rules.editedOtherwise
                topPadding: Theme.rowGap
                bottomPadding: Theme.gap
            }
            WordButton {
                text: page.rules.workroomSays === "" ? qsTr("take the default") : qsTr("take the workroom’s")
                onClicked: page.rules.takeOtherwise()
            }
        }
    }
}
