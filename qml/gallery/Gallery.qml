// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Every control in every state, on the open window of `notebook`. Words at the head change the look. What a finger or a
// key brings about (pressed, focused) is brought about by whoever looks.
Rectangle {
    id: gallery

    required property Notebook notebook
    required property FieldForm form // fields of every kind, one with a fault, one with a caution
    required property url picture // in place of a photo
    property bool fromRight: false

    color: Theme.paper
    LayoutMirroring.enabled: fromRight
    LayoutMirroring.childrenInherit: true

    Flow {
        id: looks

        x: Theme.margin
        width: parent.width - Theme.margin - Theme.edge
        spacing: Theme.edge

        WordButton {
            text: Theme.dark ? "light" : "dark"
            onClicked: Theme.dark = !Theme.dark
        }
        WordButton {
            text: Theme.textFactor > 1 ? "letters 1.0" : "letters 2.0"
            onClicked: Theme.textFactor = Theme.textFactor > 1 ? 1 : 2
        }
        WordButton {
            text: gallery.fromRight ? "from the left" : "from the right"
            onClicked: gallery.fromRight = !gallery.fromRight
        }
        WordButton {
            text: Theme.leftHand ? "right hand" : "left hand"
            onClicked: Theme.leftHand = !Theme.leftHand
        }
    }
    Flickable {
        anchors.top: looks.bottom
        anchors.bottom: parent.bottom
        width: parent.width
        contentWidth: width
        contentHeight: plates.height
        clip: true
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: plates

            objectName: "plates"
            width: parent.width

            WordPlates {}
            ButtonPlates {}
            RowPlates {}
            FieldPlates {
                form: gallery.form
            }
            DrawingPlates {
                notebook: gallery.notebook
                picture: gallery.picture
            }
            PagePlates {
                notebook: gallery.notebook
            }
        }
    }
}
