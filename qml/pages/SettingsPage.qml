// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// How this phone is used.
Page {
    id: page

    readonly property Settings settings: page.notebook.settings
    readonly property var looks: [
        {
            word: "light",
            says: qsTr("light")
        },
        {
            word: "dark",
            says: qsTr("dark")
        },
        {
            word: "system",
            says: qsTr("as the system")
        }
    ]

    Screen {
        anchors.fill: parent
        focus: true
        title: qsTr("Settings")
        bigTitle: true
        action: qsTr("Back to the visits")
        canGoBack: false
        onActed: page.leave()
        onBackAsked: page.leave()

        WordButton {
            text: qsTr("your lists")
            explained: qsTr("Your own cloths, hardware and house rules")
            onClicked: page.notebook.screen = "lists"
        }
        ChoiceList {
            width: parent.width
            label: qsTr("The hand that holds the phone")
            chosen: page.settings.hand
            choices: [
                {
                    word: "right",
                    says: qsTr("right")
                },
                {
                    word: "left",
                    says: qsTr("left")
                }
            ]
            onChose: word => page.settings.hand = word
        }
        ChoiceList {
            width: parent.width
            label: qsTr("Look")
            chosen: page.settings.look
            choices: page.notebook.light.offered ? page.looks.concat([
                {
                    word: "room",
                    says: qsTr("by the light around")
                }
            ]) : page.looks
            onChose: word => page.settings.look = word
        }
        ChoiceList {
            width: parent.width
            label: qsTr("Letters")
            chosen: String(page.settings.textScale)
            choices: [
                {
                    word: "1",
                    says: qsTr("usual")
                },
                {
                    word: "1.25",
                    says: qsTr("larger")
                },
                {
                    word: "1.5",
                    says: qsTr("large")
                },
                {
                    word: "2",
                    says: qsTr("largest")
                }
            ]
            onChose: word => page.settings.textScale = Number(word)
        }
        ChoiceList {
            width: parent.width
            visible: page.notebook.aloud.offered
            label: qsTr("Stations and readings")
            chosen: page.settings.aloud ? "aloud" : "silent"
            choices: [
                {
                    word: "silent",
                    says: qsTr("shown only")
                },
                {
                    word: "aloud",
                    says: qsTr("said aloud too")
                }
            ]
            onChose: word => page.settings.aloud = word === "aloud"
        }
        ChoiceList {
            width: parent.width
            label: qsTr("Language")
            chosen: page.settings.language
            choices: page.settings.languages
            onChose: word => page.settings.language = word
        }
        ChoiceList {
            width: parent.width
            label: qsTr("Inches to the nearest")
            chosen: String(page.settings.inchDenominator)
            choices: [
                {
                    word: "8",
                    says: qsTr("eighth")
                },
                {
                    word: "16",
                    says: qsTr("sixteenth")
                }
            ]
            onChose: word => page.settings.inchDenominator = Number(word)
        }
        ChoiceList {
            width: parent.width
            label: qsTr("Where a photo was taken, and by whom")
            chosen: page.settings.keepsPhotoOrigin ? "kept" : "left out"
            choices: [
                {
                    word: "left out",
                    says: qsTr("left out")
                },
                {
                    word: "kept",
                    says: qsTr("kept")
                }
            ]
            onChose: word => page.settings.keepsPhotoOrigin = word === "kept"
        }
        Sentence {
            width: parent.width
            second: true
            visible: page.settings.keepsPhotoOrigin
            text: qsTr("Photos that come in from now on tell the workroom where and by whom they were taken.")
        }
    }
}
