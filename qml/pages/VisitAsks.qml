// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// What waits for a person's word: what was taken twice, and what the workroom asks.
Column {
    id: asks

    required property Notebook notebook

    FlagLine {
        width: parent.width
        visible: asks.notebook.twice.count > 0
        severity: "decide"
        word: qsTr("Decide")
        text: asks.notebook.twice.line
    }
    ListRow {
        width: parent.width
        visible: asks.notebook.twice.count > 0
        text: qsTr("Taken twice")
        figure: asks.notebook.twice.count
        spoken: qsTr("Taken twice: %1").arg(asks.notebook.twice.line)
        onClicked: asks.notebook.screen = "twice"
    }
    FlagLine {
        width: parent.width
        visible: asks.notebook.questions.count > 0
        severity: "remeasure"
        word: qsTr("Asked")
        text: asks.notebook.questions.line
    }
    ListRow {
        width: parent.width
        visible: asks.notebook.questions.rows.count > 0
        text: qsTr("Asked by the workroom")
        figure: asks.notebook.questions.count > 0 ? asks.notebook.questions.count : ""
        spoken: asks.notebook.questions.count > 0 ? qsTr("Asked by the workroom: %1").arg(asks.notebook.questions.line) : text
        onClicked: asks.notebook.screen = "questions"
    }
}
