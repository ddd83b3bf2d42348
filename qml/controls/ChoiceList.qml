// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Words to choose one from. The chosen one has a stitch before it, is bold, and is said to be chosen. The list is one
// stop of the Tab key: arrows go from word to word, Space or Return chooses.
FocusScope {
    id: list

    required property string label
    property bool titled: true // the label stands above
    property var choices: [] // of maps with `word` and `says`
    property string chosen // its word
    property string unsaid // what holds while none is chosen
    readonly property string holding: unsaid === "" || list.holds(chosen) ? "" : qsTr("if none is chosen: %1").arg(unsaid)

    property string reached // the word that the keyboard is at
    property bool byKeys: false
    readonly property string stop: list.holds(list.reached) ? list.reached : list.holds(list.chosen) ? list.chosen : list.choices.length > 0 ? list.choices[0].word : ""

    signal chose(string word)

    function holds(word: string): bool {
        return list.choices.some(choice => choice.word === word);
    }
    function step(by: int) {
        const next = options.itemAt(list.choices.findIndex(choice => choice.word === list.reached) + by);
        if (next) {
            next.forceActiveFocus(Qt.TabFocusReason);
        }
    }

    implicitWidth: 200
    implicitHeight: column.implicitHeight
    Accessible.role: Accessible.Grouping
    Accessible.name: label
    Accessible.description: holding
    onActiveFocusChanged: {
        if (!list.activeFocus) {
            list.reached = "";
        }
    }
    Keys.onPressed: event => {
        const mirrored = list.LayoutMirroring.enabled;
        if (event.key === Qt.Key_Up || event.key === (mirrored ? Qt.Key_Right : Qt.Key_Left)) {
            list.step(-1);
            event.accepted = true;
        } else if (event.key === Qt.Key_Down || event.key === (mirrored ? Qt.Key_Left : Qt.Key_Right)) {
            list.step(1);
            event.accepted = true;
        }
    }

    Column {
        id: column

        width: parent.width

        Sentence {
            width: parent.width
            second: true
            text: list.holding === "" ? list.label : qsTr("%1 (%2)").arg(list.label).arg(list.holding)
            visible: list.titled && list.label !== ""
            Accessible.ignored: true
            topPadding: Theme.rowGap
        }
        Flow {
            width: parent.width

            Repeater {
                id: options

                model: list.choices

                PressItem {
                    id: option

                    required property var modelData
                    readonly property string says: modelData.says
                    readonly property bool picked: modelData.word === list.chosen
                    readonly property bool stitched: picked || pressed // under the finger it is as good as chosen

                    implicitWidth: Math.min(Math.max(Theme.target, Math.ceil(natural.advanceWidth) + word.x + 1) + Theme.gap, list.width)
                    implicitHeight: Math.max(Theme.target, word.implicitHeight + Theme.gap)
                    focusPolicy: modelData.word === list.stop ? Qt.StrongFocus : Qt.ClickFocus
                    text: says
                    Accessible.role: Accessible.RadioButton
                    Accessible.name: says
                    Accessible.checkable: true
                    Accessible.checked: picked
                    Accessible.onPressAction: if (enabled) clicked()
                    onClicked: list.chose(modelData.word)
                    onActiveFocusChanged: {
                        if (activeFocus) {
                            list.reached = modelData.word;
                            list.byKeys = visualFocus;
                        }
                    }
                    // What is chosen can make the words anew: the keyboard stays where it was.
                    Component.onCompleted: {
                        if (list.activeFocus && modelData.word === list.reached) {
                            forceActiveFocus(list.byKeys ? Qt.TabFocusReason : Qt.OtherFocusReason);
                        }
                    }

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
                    Rectangle {
                        anchors.fill: parent
                        z: -1
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
