// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// Where the house stands, asked for where it isn't known: without it no sun can be worked out.
Column {
    id: asked

    required property Notebook notebook

    visible: asked.notebook.outlook.lacksPlace

    FlagLine {
        width: parent.width
        severity: "decide"
        word: qsTr("Decide")
        text: qsTr("It isn’t known where the house stands. The sun goes by that.")
    }
    Flow {
        width: parent.width
        spacing: Theme.edge

        WordButton {
            text: qsTr("ask where we are")
            onClicked: asked.notebook.position.ask()
        }
        Sentence {
            visible: text !== ""
            text: asked.notebook.position.says

            Announced {
                words: asked.visible ? asked.notebook.position.says : ""
            }
        }
    }
    FormFields {
        width: parent.width
        form: asked.notebook.outlook.place
    }
}
