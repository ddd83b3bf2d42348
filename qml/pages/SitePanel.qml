// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// Who the visit is for and where, with the position on request.
Screen {
    id: panel

    required property Notebook notebook
    readonly property PositionModel position: panel.notebook.position

    title: qsTr("Client and site")
    action: qsTr("Back to the visit")

    FormFields {
        width: parent.width
        form: panel.notebook.visit.site
    }
    SectionTitle {
        width: parent.width
        text: qsTr("Where it is")
    }
    Sentence {
        width: parent.width
        visible: text !== ""
        text: panel.position.state === PositionModel.Asking || panel.position.state === PositionModel.NoPosition ? panel.position.says : panel.notebook.visit.positionLine
    }
    Sentence {
        width: parent.width
        visible: panel.position.state === PositionModel.NoPosition
        second: true
        text: qsTr("The address is enough. The sun on the windows is worked from the position, where there is one.")
    }
    Flow {
        width: parent.width
        spacing: Theme.edge

        WordButton {
            visible: panel.position.state !== PositionModel.Asking
            text: panel.notebook.visit.positionLine === "" ? qsTr("take the position here") : qsTr("take it again")
            explained: qsTr("Take the position here")
            onClicked: panel.position.ask()
        }
        WordButton {
            visible: panel.position.state === PositionModel.Asking
            text: qsTr("stop asking")
            onClicked: panel.position.cancel()
        }
        WordButton {
            visible: panel.notebook.visit.positionLine !== ""
            text: qsTr("forget it")
            explained: qsTr("Forget the position")
            onClicked: panel.position.forget()
        }
    }
}
