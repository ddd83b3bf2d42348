// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Templates as T
import Truehang.Face

// Words to choose one from. The chosen one has a stitch before it, is bold, and is said to be chosen.
FocusScope {
    id: list

    required property string label
    property var choices: [] // of maps with `word` and `says`
    property string chosen // its word

    signal chose(string word)

    implicitWidth: 200
    implicitHeight: column.implicitHeight
    Accessible.role: Accessible.Grouping
    Accessible.name: label

    Column {
        id: column

        width: parent.width

        Sentence {
            width: parent.width
            second: true
            text: list.label
            visible: text !== ""
            topPadding: Theme.rowGap
        }
        Flow {
            width: parent.width

            Repeater {
                model: list.choices

                T.AbstractButton {
                    id: option

                    required property var modelData
                    readonly property string says: modelData.says
                    readonly property bool picked: modelData.word === list.chosen
                    readonly property bool stitched: picked || pressed // under the finger it is as good as chosen

                    implicitWidth: Math.min(Math.max(Theme.target, Math.ceil(natural.advanceWidth) + word.x + 1) + Theme.gap, list.width)
                    implicitHeight: Math.max(Theme.target, word.implicitHeight + Theme.gap)
                    focusPolicy: Qt.StrongFocus
                    text: says
                    Accessible.role: Accessible.RadioButton
                    Accessible.name: picked ? qsTr("%1, chosen").arg(says) : says
                    Accessible.checkable: true
                    Accessible.checked: picked
                    onClicked: list.chose(modelData.word)

                    // A wrapped text's own width follows from the one it is given.
                    TextMetrics {
                        id: natural

                        font: word.font
                        text: word.text
                    }
                    Item {
                        anchors.fill: parent

                        Rectangle {
                            visible: option.stitched
                            x: 2
                            anchors.verticalCenter: parent.verticalCenter
                            width: 4
                            height: Math.round(18 * Theme.textFactor)
                            radius: 2
                            color: Theme.ink
                        }
                        Rectangle {
                            visible: !option.stitched
                            x: 2
                            y: parent.height / 2 - 6 * Theme.textFactor - 2
                            width: 4
                            height: 4
                            radius: 2
                            color: Theme.soft
                        }
                        Rectangle {
                            visible: !option.stitched
                            x: 2
                            y: parent.height / 2 + 6 * Theme.textFactor - 2
                            width: 4
                            height: 4
                            radius: 2
                            color: Theme.soft
                        }
                        Text {
                            id: word

                            x: 16
                            width: parent.width - x
                            anchors.verticalCenter: parent.verticalCenter
                            text: option.text
                            color: Theme.ink
                            font.family: Theme.figures
                            font.pixelSize: Theme.body
                            font.bold: option.picked
                            wrapMode: Text.Wrap
                            Accessible.ignored: true
                        }
                    }
                    background: Rectangle {
                        color: option.pressed ? Theme.wash : "transparent"

                        FocusFrame {
                            anchors.fill: parent
                            anchors.margins: -Theme.focus
                            anchors.leftMargin: -Theme.frameGap
                            anchors.rightMargin: -Theme.frameGap
                            shown: option.visualFocus
                        }
                    }
                }
            }
        }
    }
}
