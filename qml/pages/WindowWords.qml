// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The other pages of the open window.
Flow {
    id: words

    required property Notebook notebook
    property bool hasOthers: false // the foot leads to what hangs here and to the figures

    spacing: Theme.edge

    WordButton {
        visible: !words.hasOthers && words.notebook.twice.countHere > 0
        text: qsTr("taken twice")
        explained: words.notebook.twice.lineHere
        onClicked: words.notebook.screen = "twice"
    }
    WordButton {
        visible: words.notebook.questions.countHere > 0
        text: qsTr("asked")
        explained: qsTr("What the workroom asks about this window")
        onClicked: words.notebook.screen = "questions"
    }
    WordButton {
        text: qsTr("in the way")
        explained: qsTr("What is in the way")
        onClicked: words.notebook.screen = "obstructions"
    }
    WordButton {
        visible: !words.hasOthers
        text: qsTr("hanging")
        explained: qsTr("What hangs here")
        onClicked: words.notebook.screen = "hanging"
    }
    WordButton {
        visible: !words.hasOthers
        text: qsTr("figures")
        explained: qsTr("Figures of this window")
        onClicked: words.notebook.screen = "figures"
    }
    WordButton {
        text: qsTr("light")
        explained: qsTr("Light of this window")
        onClicked: words.notebook.screen = "outlook"
    }
    WordButton {
        text: qsTr("photos")
        explained: qsTr("Photos of this window")
        onClicked: words.notebook.screen = "photos"
    }
}
