// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The client agrees to what is to be made.
Screen {
    id: panel

    required property VisitModel visit
    property bool refused: false

    title: qsTr("Agree and sign")
    action: panel.visit.signedOff ? "" : qsTr("I agree")
    onActed: {
        InputMethod.commit();
        panel.refused = !panel.visit.signOff(name.field.text);
        if (!panel.refused) {
            panel.backAsked();
        }
    }

    Sentence {
        width: parent.width
        visible: panel.visit.signedOff
        text: panel.visit.signedLine
    }
    Sentence {
        width: parent.width
        visible: !panel.visit.signedOff
        text: qsTr("Hand the phone over. Whoever agrees writes their name; the cloth is cut to what stands in this visit.")
    }
    FieldRow {
        id: name

        visible: !panel.visit.signedOff
        width: parent.width
        label: qsTr("Name")
        text: panel.visit.clientName
        fault: panel.refused ? qsTr("A name is needed here.") : ""
    }
    WordButton {
        visible: panel.visit.signedOff
        text: qsTr("take the agreement back")
        onClicked: panel.visit.takeBackSignOff()
    }
}
