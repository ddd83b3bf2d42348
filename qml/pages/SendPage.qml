// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Sending to the workroom: pair with it once, then see item by item what has arrived.
Page {
    id: page

    readonly property SendModel send: page.notebook.send
    readonly property bool camera: String(page.send.cameraSource) !== ""

    // What a pairing text told fills both lines.
    function fill() {
        address.field.text = page.send.address;
        code.field.text = page.send.code;
    }

    Connections {
        target: page.send

        function onTookPairingText() {
            page.fill();
        }
    }

    Screen {
        id: screen

        anchors.fill: parent
        visible: page.panel !== "camera"
        enabled: visible
        focus: visible
        title: qsTr("To the workroom")
        action: page.send.paired ? qsTr("Send now") : page.send.pairing || page.send.looking ? "" : qsTr("Pair with the workroom")
        onBackAsked: page.leave()
        onActed: {
            InputMethod.commit();
            if (page.send.paired) {
                page.send.sendNow();
            } else {
                page.send.pair(address.field.text, code.field.text);
            }
        }

        Heading {
            width: parent.width
            text: page.send.paired ? page.send.line : page.send.pairing ? qsTr("Asking the workroom") : page.send.looking ? qsTr("Looking for the code") : qsTr("Which workroom is it?")
            bottomPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            visible: page.send.paired
            second: true
            text: page.send.workroom
        }
        Column {
            visible: !page.send.paired
            width: parent.width
            spacing: Theme.gap

            FlagLine {
                visible: text !== ""
                width: parent.width
                severity: "stop"
                word: qsTr("Not paired")
                text: page.send.pairFault
                live: true
            }
            Sentence {
                width: parent.width
                visible: page.send.pairFault === ""
                text: qsTr("The workroom shows its address and a code that works once. Its picture code holds both, and so does its pairing text, pasted as the address.")
            }
            Flow {
                width: parent.width
                spacing: Theme.edge
                enabled: !page.send.looking && !page.send.pairing

                WordButton {
                    visible: page.camera
                    text: qsTr("photograph the code")
                    explained: qsTr("Photograph the workroom’s code")
                    onClicked: page.panel = "camera"
                }
                WordButton {
                    text: page.camera ? qsTr("from a picture") : qsTr("read the code from a picture")
                    explained: qsTr("Read the code from a picture")
                    onClicked: page.panel = "file"
                }
            }
            FieldRow {
                id: address

                width: parent.width
                label: qsTr("Address")
                example: "192.0.2.7:8080"
                text: page.send.address
                hints: Qt.ImhUrlCharactersOnly | Qt.ImhNoAutoUppercase | Qt.ImhNoPredictiveText
                onCommitted: words => {
                    if (page.send.takePairingText(words)) {
                        page.fill();
                    }
                }
            }
            FieldRow {
                id: code

                width: parent.width
                label: qsTr("Code")
                text: page.send.code
                hints: Qt.ImhNoAutoUppercase | Qt.ImhNoPredictiveText
            }
            Sentence {
                width: parent.width
                visible: text !== ""
                second: true
                text: page.send.pinLine
            }
        }
        Column {
            visible: page.send.paired
            width: parent.width

            Repeater {
                model: page.send.items

                ListRow {
                    required property string title
                    required property string state
                    required mark
                    required spoken

                    width: screen.contentWidth
                    marked: true
                    text: title
                    stateWords: state
                }
            }
            Rule {
                width: parent.width
            }
        }
        SectionTitle {
            visible: page.send.offersFile || page.send.fileLine !== ""
            width: parent.width
            text: qsTr("As a file")
        }
        Sentence {
            width: parent.width
            visible: page.send.offersFile && page.send.fileLine === ""
            text: qsTr("Until the workroom has it, this visit stands on this phone alone. Keep it as a file as well.")
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: page.send.fileLine

            Announced {
                words: page.send.fileLine
            }
        }
        Flow {
            width: parent.width
            spacing: Theme.edge

            WordButton {
                visible: page.send.offersFile
                text: qsTr("keep it as a file")
                onClicked: page.send.saveAsFile("")
            }
            WordButton {
                visible: page.send.paired
                text: qsTr("another workroom")
                explained: qsTr("Forget this workroom and pair with another")
                onClicked: page.send.forgetWorkroom()
            }
        }
    }

    PictureSource {
        anchors.fill: parent
        from: page.panel
        camera: page.send.cameraSource
        onTook: file => {
            page.panel = "";
            page.send.takePairingPicture(file);
        }
        onShut: page.panel = ""
    }
}
