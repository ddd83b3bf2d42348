// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The surveyor's own cloths, hardware and house rules: taken into the visit that is open, or looked after.
Page {
    id: page

    readonly property ListsModel lists: page.notebook.lists
    readonly property bool taking: page.cameFrom === "fabrics" || page.cameFrom === "hanging" || page.cameFrom === "rules"
    property string chosen // the item whose panel is open
    property string chosenName
    property bool chosenRemoved: false

    panel: page.chosen !== "" ? "item" : ""

    function back(): bool {
        if (page.chosen === "") {
            return false;
        }
        page.chosen = "";
        return true;
    }
    function choose(item: string, name: string, isRemoved: bool) {
        if (page.taking && !isRemoved) {
            page.lists.take(item);
            page.leave();
        } else {
            page.chosenName = name;
            page.chosenRemoved = isRemoved;
            page.chosen = item;
        }
    }

    Screen {
        id: screen

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: qsTr("Your lists")
        action: qsTr("Back")
        canGoBack: false
        onActed: page.leave()
        onBackAsked: page.leave()

        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.lists.fault

            Announced {
                words: page.lists.fault
            }
        }
        Sentence {
            width: parent.width
            visible: !page.lists.hasAny
            text: qsTr("Nothing is kept here yet. A cloth, hardware or house rules of a visit are kept by “keep in your list” on their page, and can then be chosen at any window.")
        }
        Sentence {
            width: parent.width
            visible: page.lists.hasAny && page.taking
            text: qsTr("Touch what this visit takes. It is copied: the list stays as it is.")
        }
        FieldRow {
            visible: page.lists.hasAny
            width: parent.width
            label: qsTr("Find")
            text: page.lists.search
            onEdited: words => page.lists.search = words
        }
        Repeater {
            model: page.lists.items

            Column {
                id: place

                required property int index
                required property string item
                required property string section
                required property string name
                required property string line
                required property bool isRemoved
                required property string spoken
                readonly property bool firstOfSection: index === 0 || page.lists.items.value(index - 1, "section") !== section

                width: screen.contentWidth

                SectionTitle {
                    visible: place.firstOfSection
                    width: parent.width
                    text: place.section
                }
                ListRow {
                    width: parent.width
                    text: place.name
                    line: place.line
                    spoken: place.spoken
                    onClicked: page.choose(place.item, place.name, place.isRemoved)
                }
            }
        }
        Item {
            visible: page.lists.hasRemoved
            width: 1
            height: Theme.gap
        }
        WordButton {
            visible: page.lists.hasRemoved
            text: qsTr("delete for good")
            explained: qsTr("Delete for good what was taken out of your lists")
            onClicked: page.lists.emptyRemoved()
        }
        Sentence {
            width: parent.width
            visible: page.lists.hasAny && page.lists.items.count === 0
            text: qsTr("Nothing in your lists is called that.")
            topPadding: Theme.gap
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel !== ""
        focus: active
        sourceComponent: Screen {
            title: page.chosenName
            action: page.chosenRemoved ? qsTr("Bring it back") : qsTr("Back to your lists")
            onBackAsked: page.leave()
            onActed: {
                if (page.chosenRemoved) {
                    page.lists.bringBack(page.chosen);
                }
                page.leave();
            }

            Sentence {
                width: parent.width
                text: page.chosenRemoved ? qsTr("This was taken out of the list. Visits that have it keep it.") : qsTr("To change it, take it into a visit, change it there and keep it again.")
                bottomPadding: Theme.gap
            }
            WordButton {
                visible: !page.chosenRemoved
                text: qsTr("take it out of the list")
                onClicked: {
                    page.lists.remove(page.chosen);
                    page.leave();
                }
            }
        }
    }
}
