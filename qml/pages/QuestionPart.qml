// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One question of the workroom. The chosen one shows how to answer it; a tap chooses another.
Column {
    id: part

    required property string question
    required property string place
    required property string words
    required property string who
    required property string answers
    required property bool chosen
    required property bool canMeasure
    required property string reading
    required property string typed
    required property string spoken

    signal chosenHere
    signal edited(string words)
    signal measureAsked
    signal answered(bool withReading)

    SectionTitle {
        width: parent.width
        text: part.place
    }
    ListRow {
        width: parent.width
        visible: !part.chosen && part.answers === ""
        text: part.words
        line: part.who
        spoken: qsTr("Answer: %1").arg(part.spoken)
        onClicked: part.chosenHere()
    }
    Sentence {
        width: parent.width
        visible: part.chosen || part.answers !== ""
        topPadding: Theme.rowGap
        text: part.words
    }
    Sentence {
        width: parent.width
        visible: part.chosen || part.answers !== ""
        second: true
        text: part.who
    }
    Sentence {
        width: parent.width
        visible: text !== ""
        topPadding: Theme.rowGap
        text: part.answers
    }
    Flow {
        width: parent.width
        visible: part.chosen
        spacing: Theme.edge

        WordButton {
            visible: part.canMeasure
            text: qsTr("measure it again")
            explained: qsTr("Measure it again: %1").arg(part.place)
            onClicked: part.measureAsked()
        }
        WordButton {
            visible: part.reading !== ""
            text: qsTr("answer with %1").arg(part.reading)
            onClicked: part.answered(true)
        }
    }
    FieldRow {
        id: field

        width: parent.width
        visible: part.chosen
        label: qsTr("Answer in words")
        text: part.typed
        onEdited: words => part.edited(words)
    }
    WordButton {
        visible: part.chosen
        text: qsTr("answer with these words")
        onClicked: {
            InputMethod.commit();
            part.answered(false);
        }
    }
}
