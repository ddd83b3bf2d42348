// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The other pages of the open window.
Flow {
    id: words

    required property Notebook notebook
    required property string here

    spacing: Theme.edge

    WordButton {
        visible: words.here !== "walk"
        text: qsTr("measure")
        explained: qsTr("Measure this window")
        onClicked: words.notebook.screen = "walk"
    }
    WordButton {
        visible: words.here !== "obstructions"
        text: qsTr("in the way")
        explained: qsTr("What is in the way")
        onClicked: words.notebook.screen = "obstructions"
    }
    WordButton {
        visible: words.here !== "hanging"
        text: qsTr("hanging")
        explained: qsTr("What hangs here")
        onClicked: words.notebook.screen = "hanging"
    }
    WordButton {
        visible: words.here !== "figures"
        text: qsTr("figures")
        explained: qsTr("Figures of this window")
        onClicked: words.notebook.screen = "figures"
    }
    WordButton {
        visible: words.here !== "photos"
        text: qsTr("photos")
        explained: qsTr("Photos of this window")
        onClicked: words.notebook.screen = "photos"
    }
}
