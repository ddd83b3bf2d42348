// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The cloths of the house, and the one being written down.
Page {
    id: page

    readonly property FabricsModel fabrics: page.notebook.fabrics

    panel: page.fabrics.current !== "" ? "fabric" : adding ? "add" : ""
    property bool adding: false

    function back(): bool {
        if (page.fabrics.current !== "") {
            page.fabrics.done();
            return true;
        }
        if (page.adding) {
            page.adding = false;
            return true;
        }
        if (page.cameFrom === "hanging") {
            page.notebook.screen = "hanging";
            return true;
        }
        return false;
    }

    Screen {
        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: qsTr("Cloths")
        action: qsTr("Add a cloth")
        growsUp: true
        onActed: page.adding = true
        onBackAsked: page.leave()
        footWords: [
            WordButton {
                visible: page.notebook.lists.hasAny
                text: qsTr("your list")
                explained: qsTr("Take a cloth from your list")
                onClicked: page.notebook.screen = "lists"
            }
        ]

        Sentence {
            width: parent.width
            visible: page.fabrics.fabrics.count === 0
            text: qsTr("No cloth yet. Width and repeat decide how much to buy.")
            bottomPadding: Theme.gap
        }
        Repeater {
            model: page.fabrics.fabrics

            ListRow {
                required property string fabricId
                required property string name
                required property string role
                required property string used
                required line
                required spoken

                width: parent.width
                text: name !== "" ? name : qsTr("Cloth without a name")
                figure: role
                stateWords: used
                onClicked: page.fabrics.edit(fabricId)
            }
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "fabric"
        focus: active
        sourceComponent: Screen {
            title: qsTr("Cloth")
            action: qsTr("Back to the cloths")
            onActed: page.leave()
            onBackAsked: page.leave()

            FormFields {
                width: parent.width
                form: page.fabrics.form
            }
            Item {
                width: 1
                height: 2 * Theme.gap
            }
            Sentence {
                width: parent.width
                visible: text !== ""
                text: page.fabrics.fault

                Announced {
                    words: page.fabrics.fault
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
            WordButton {
                text: qsTr("keep in your list")
                explained: qsTr("Keep this cloth in your list, for other visits")
                onClicked: page.notebook.lists.keepCloth(page.fabrics.current)
            }
            Item {
                width: 1
                height: 2 * Theme.gap
            }
            WordButton {
                text: qsTr("take this cloth out")
                onClicked: page.fabrics.remove(page.fabrics.current)
            }
            Item {
                width: 1
                height: Theme.gap
            }
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "add"
        focus: active
        sourceComponent: Screen {
            title: qsTr("What is the cloth for?")
            growsUp: true
            onBackAsked: page.leave()

            Repeater {
                model: [
                    {
                        word: "face",
                        says: qsTr("Face, what is seen")
                    },
                    {
                        word: "lining",
                        says: qsTr("Lining")
                    },
                    {
                        word: "interlining",
                        says: qsTr("Interlining")
                    },
                    {
                        word: "sheer",
                        says: qsTr("Sheer")
                    }
                ]

                ListRow {
                    required property var modelData

                    width: parent.width
                    text: modelData.says
                    onClicked: {
                        page.adding = false;
                        page.fabrics.add(modelData.word);
                    }
                }
            }
        }
    }
}
