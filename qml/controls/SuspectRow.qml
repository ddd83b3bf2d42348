// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A reading that may be at fault: touched, it leads to its station. Below it what may have gone wrong, and the offer to
// let it read what it was perhaps meant to.
Item {
    id: row

    property string says
    property string figure
    property string slip
    property string likely
    property bool isLikely: false
    property string offer // empty: nothing is proposed
    property string offerSpoken: offer
    property string spoken: says

    signal chosen
    signal offerTaken

    implicitWidth: 200
    implicitHeight: line.y + line.height

    Rule {
        width: parent.width
        firm: reading.pressed
    }
    PressItem {
        id: reading

        y: Theme.hairline
        width: parent.width
        implicitHeight: Math.max(Theme.target, words.implicitHeight + Theme.rowGap)
        focusPolicy: Qt.StrongFocus
        Accessible.role: Accessible.Button
        Accessible.name: row.spoken
        Accessible.onPressAction: if (enabled) clicked()
        onClicked: row.chosen()

        Item {
            anchors.fill: parent

            Column {
                id: words

                width: parent.width
                anchors.bottom: parent.bottom

                Sentence {
                    width: parent.width
                    text: row.says
                    strong: row.isLikely
                    Accessible.ignored: true
                }
                Item {
                    readonly property bool stacked: natural.advanceWidth + howNatural.advanceWidth + Theme.gap > width

                    width: parent.width
                    height: stacked && how.visible ? value.height + how.height : value.height

                    // A wrapped text's own width follows from the one it is given.
                    TextMetrics {
                        id: natural

                        font: value.font
                        text: value.text
                    }
                    TextMetrics {
                        id: howNatural

                        font: how.font
                        text: how.text
                    }
                    Sentence {
                        id: value

                        anchors.left: parent.left
                        width: parent.stacked ? parent.width : Math.ceil(natural.advanceWidth) + 1
                        text: row.figure
                        strong: row.isLikely
                        Accessible.ignored: true
                    }
                    Sentence {
                        id: how

                        visible: text !== ""
                        width: parent.stacked ? parent.width : Math.ceil(howNatural.advanceWidth) + 1
                        anchors.right: parent.right
                        anchors.bottom: parent.bottom
                        horizontalAlignment: parent.stacked ? Text.AlignLeft : Text.AlignRight
                        second: true
                        text: row.likely
                        Accessible.ignored: true
                    }
                }
            }
        }
        Rectangle {
            anchors.fill: parent
            z: -1
            color: reading.pressed ? Theme.wash : "transparent"

            FocusFrame {
                anchors.fill: parent
                anchors.leftMargin: -Theme.frameGap
                anchors.rightMargin: -Theme.frameGap
                shown: reading.visualFocus
            }
        }
    }
    Item {
        id: line

        readonly property bool stacked: why.visible && take.visible && Math.min(why.implicitWidth, width * 0.4) + take.implicitWidth + Theme.gap > width

        y: reading.y + reading.height
        width: parent.width
        height: Math.max(why.visible ? why.height + Theme.rowGap : 0, take.visible ? take.y + take.height : 0)

        Sentence {
            id: why

            visible: text !== ""
            anchors.left: parent.left
            width: take.visible && !parent.stacked ? parent.width - take.width - Theme.gap : parent.width
            y: take.visible && !parent.stacked ? Math.max(0, (take.height - height) / 2) : 0
            second: true
            text: row.slip
            Accessible.ignored: true
        }
        WordButton {
            id: take

            visible: row.offer !== ""
            width: Math.min(implicitWidth, parent.width)
            anchors.right: parent.right
            y: parent.stacked ? why.height : 0
            alignRight: true
            text: row.offer
            explained: row.offerSpoken
            onClicked: row.offerTaken()
        }
    }
}
