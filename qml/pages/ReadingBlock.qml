// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The station's name, the number as it is typed, what is to be said about it, and the words beside it.
Column {
    id: block

    required property WalkModel walk
    readonly property alias reading: reading

    signal panelAsked(string panel)

    // True where `item` stands in this block.
    function holds(item: Item): bool {
        let above = item;
        while (above && above !== block) {
            above = above.parent;
        }
        return above === block;
    }

    bottomPadding: Theme.gap // undo keeps away from the keys

    Item {
        width: parent.width
        height: Math.max(says.height, place.height)

        Heading {
            id: says

            anchors.left: parent.left
            anchors.right: place.left
            anchors.rightMargin: Theme.gap
            text: block.walk.says
        }
        Sentence {
            id: place

            anchors.right: parent.right
            anchors.baseline: says.baseline
            wrapMode: Text.NoWrap
            text: block.walk.position
            Accessible.name: qsTr("Station %1").arg(text)
        }
    }
    // A stop of the keyboard of its own: what is typed on a physical one goes here from everywhere on the page.
    KeyStop {
        id: reading

        readonly property string text: block.walk.typed

        LayoutMirroring.enabled: false // a number is typed from the left everywhere
        LayoutMirroring.childrenInherit: true
        width: parent.width
        implicitHeight: number.height
        focus: true
        Accessible.role: Accessible.EditableText
        Accessible.name: qsTr("%1, reading in %2").arg(block.walk.says).arg(block.walk.unit)

        Announced {
            words: block.walk.station
        }

        Text {
            id: number

            width: Math.min(implicitWidth, parent.width - unit.width - Theme.gap - cursor.width)
            text: block.walk.typed
            color: Theme.ink
            font.family: Theme.figures
            font.pixelSize: Theme.reading
            fontSizeMode: Text.HorizontalFit
            minimumPixelSize: Theme.readingSmallest
            height: Math.round(Theme.reading * 1.14)
            verticalAlignment: Text.AlignVCenter
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
        Rectangle {
            id: cursor

            visible: !block.walk.shownIsKept
            x: number.width + 3
            y: 6
            width: Theme.firm
            height: number.height - 12
            color: Theme.thread
        }
        Sentence {
            id: unit

            anchors.right: parent.right
            anchors.baseline: number.baseline
            wrapMode: Text.NoWrap
            text: block.walk.unit
            font.pixelSize: Theme.figure
            Accessible.ignored: true
        }
        FocusFrame {
            anchors.fill: parent
            anchors.leftMargin: -Theme.rowGap
            anchors.rightMargin: -Theme.rowGap
            shown: reading.visualFocus
        }
    }
    Rule {
        width: parent.width
        firm: true
    }
    FlagLine {
        visible: block.walk.notKept !== ""
        width: parent.width
        severity: "stop"
        word: qsTr("Not kept")
        text: block.walk.notKept
        live: true
    }
    FlagLine {
        visible: block.walk.caution !== ""
        width: parent.width
        severity: "caution"
        word: qsTr("Caution")
        text: block.walk.caution
        live: true
    }
    Item {
        width: parent.width
        height: line.visible ? line.height : 0

        FlagMark {
            id: mark

            visible: block.walk.lineKind === "differs" || block.walk.lineKind === "fault" || block.walk.lineKind === "proposed"
            severity: "remeasure"
            y: Theme.rowGap + 3
        }
        Sentence {
            id: line

            visible: text !== ""
            x: mark.visible ? mark.width + 8 : 0
            width: parent.width - x
            topPadding: Theme.rowGap
            text: block.walk.reason !== "" && block.walk.line === "" ? qsTr("Not taken: %1").arg(block.walk.reason) : block.walk.line
            Accessible.role: Accessible.AlertMessage

            Announced {
                words: mark.visible ? line.text : ""
            }
        }
    }
    Sentence {
        visible: !line.visible && text !== ""
        width: parent.width
        second: true
        topPadding: Theme.rowGap
        text: block.walk.between
    }
    Flow {
        width: parent.width
        spacing: Theme.edge
        layoutDirection: Theme.leftHand ? Qt.LeftToRight : Qt.RightToLeft

        WordButton {
            text: qsTr("can’t reach")
            explained: qsTr("Can’t reach this station")
            onClicked: block.panelAsked("reach")
        }
        WordButton {
            text: qsTr("all stations")
            explained: qsTr("All stations of this window")
            onClicked: block.panelAsked("window")
        }
        WordButton {
            visible: block.walk.hasEarlier
            text: qsTr("earlier")
            explained: qsTr("Earlier readings of this station")
            onClicked: block.panelAsked("history")
        }
        WordButton {
            visible: block.walk.hasPutOff
            text: qsTr("what differs")
            explained: qsTr("The readings that don’t add up")
            onClicked: block.walk.lookAgain()
        }
        WordButton {
            visible: block.walk.canUndo
            text: qsTr("undo")
            onClicked: block.walk.undo()
        }
        WordButton {
            visible: block.walk.canRedo
            text: qsTr("redo")
            onClicked: block.walk.redo()
        }
    }
}
