// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What the workroom asks: one at a time, answered by the tape or in words.
Page {
    id: page

    readonly property QuestionsModel questions: page.notebook.questions

    Screen {
        id: screen

        anchors.fill: parent
        focus: true
        title: qsTr("Asked by the workroom")
        action: page.questions.count === 0 ? qsTr("Done") : ""
        onBackAsked: page.leave()
        onActed: page.leave()

        Sentence {
            width: parent.width
            text: page.questions.count === 0 ? qsTr("Nothing is open: everything was answered.") : page.questions.line
        }
        FlagLine {
            width: parent.width
            visible: page.questions.fault !== ""
            severity: "stop"
            word: qsTr("Stop")
            text: page.questions.fault
            live: true
        }
        Repeater {
            model: page.questions.rows

            QuestionPart {
                width: parent.width
                onChosenHere: page.questions.choose(question)
                onEdited: words => page.questions.typing(question, words)
                onMeasureAsked: page.questions.measureAgain(question)
                onAnswered: withReading => page.questions.answer(question, withReading)
            }
        }
    }
}
