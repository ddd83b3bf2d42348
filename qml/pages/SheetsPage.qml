// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Sheets as PDF: which, on what paper, in which unit.
Page {
    id: page

    readonly property SheetsModel sheets: page.notebook.sheets

    Screen {
        id: screen

        anchors.fill: parent
        focus: true
        title: qsTr("Sheets to print")
        action: page.sheets.working ? qsTr("Stop writing") : page.sheets.written ? qsTr("Back to the visit") : qsTr("Write the PDF")
        onBackAsked: page.leave()
        onActed: {
            if (page.sheets.working) {
                page.sheets.stop();
            } else if (page.sheets.written) {
                page.leave();
            } else {
                screen.toTop();
                page.sheets.print();
            }
        }
        footWords: [
            WordButton {
                visible: page.sheets.written
                text: qsTr("hand it on")
                explained: qsTr("Hand the PDF on")
                onClicked: page.sheets.handOn()
            }
        ]

        FileWork {
            width: parent.width
            working: page.sheets.working
            doing: page.sheets.doing
            share: page.sheets.share
            line: page.sheets.line
        }
        ChoiceList {
            visible: !page.sheets.working
            width: parent.width
            label: qsTr("Which")
            chosen: page.sheets.kind
            choices: [
                {
                    word: "all",
                    says: qsTr("all")
                },
                {
                    word: "measure",
                    says: qsTr("measure sheets")
                },
                {
                    word: "cutting",
                    says: qsTr("cutting list")
                },
                {
                    word: "making",
                    says: qsTr("making sheets")
                },
                {
                    word: "hanging",
                    says: qsTr("hanging sheets")
                },
                {
                    word: "light",
                    says: qsTr("light sheets")
                },
                {
                    word: "agreed",
                    says: qsTr("client’s copy")
                }
            ]
            onChose: word => page.sheets.kind = word
        }
        ChoiceList {
            visible: !page.sheets.working
            width: parent.width
            label: qsTr("Paper")
            chosen: page.sheets.paper
            choices: [
                {
                    word: "a4",
                    says: qsTr("A4")
                },
                {
                    word: "letter",
                    says: qsTr("US Letter")
                }
            ]
            onChose: word => page.sheets.paper = word
        }
        ChoiceList {
            visible: !page.sheets.working
            width: parent.width
            label: qsTr("Lengths in")
            chosen: page.sheets.unit
            choices: [
                {
                    word: "mm",
                    says: qsTr("mm")
                },
                {
                    word: "in",
                    says: qsTr("inches")
                }
            ]
            onChose: word => page.sheets.unit = word
        }
        ChoiceList {
            visible: !page.sheets.working
            width: parent.width
            label: qsTr("Of")
            chosen: page.sheets.window
            choices: page.sheets.windows
            onChose: word => page.sheets.window = word
        }
        Sentence {
            width: parent.width
            second: true
            visible: page.sheets.window !== "" && (page.sheets.kind === "all" || page.sheets.kind === "cutting")
            text: qsTr("The cutting list is of the whole house all the same: a roll is cut for all its windows.")
        }
    }
}
