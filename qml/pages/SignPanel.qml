// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The client agrees to what is to be made: the figures, a name, a signature; and once it is signed, what was agreed.
Screen {
    id: panel

    required property AgreementModel agreement

    title: qsTr("Agree and sign")
    action: panel.agreement.signedOff ? "" : qsTr("I agree")
    actionEnabled: panel.agreement.canSign
    Component.onCompleted: panel.agreement.shown = true
    Component.onDestruction: panel.agreement.shown = false
    onActed: {
        InputMethod.commit();
        if (panel.agreement.sign(name.field.text, box.strokes, box.aspect)) {
            panel.backAsked();
        }
    }

    Heading {
        width: parent.width
        visible: panel.agreement.signedOff
        text: panel.agreement.line
        bottomPadding: Theme.rowGap
    }
    FlagLine {
        width: parent.width
        visible: panel.agreement.broken !== ""
        severity: "stop"
        word: qsTr("Stop")
        text: panel.agreement.broken
        live: true
    }
    Repeater {
        model: panel.agreement.gaps

        FlagLine {
            id: gap

            required property string title
            required text

            width: panel.contentWidth
            severity: "decide"
            word: gap.title
        }
    }
    Sentence {
        width: parent.width
        visible: panel.agreement.unsettled.count > 0
        strong: true
        text: qsTr("Not settled yet, and no part of what is signed:")
    }
    Repeater {
        model: panel.agreement.unsettled

        FlagLine {
            required text

            width: panel.contentWidth
            severity: "stop"
            word: qsTr("Stop")
        }
    }
    SectionTitle {
        width: parent.width
        visible: panel.agreement.layers.count > 0
        text: panel.agreement.signedOff ? qsTr("What was agreed") : qsTr("What is agreed")
    }
    Repeater {
        model: panel.agreement.layers

        Column {
            id: layer

            required property string title
            required property string says
            required property string sizes
            required property string cloth
            required property string spoken

            width: panel.contentWidth
            topPadding: Theme.rowGap
            bottomPadding: Theme.rowGap
            Accessible.role: Accessible.StaticText
            Accessible.name: layer.spoken

            Sentence {
                width: parent.width
                strong: true
                text: layer.title
                Accessible.ignored: true
            }
            Sentence {
                width: parent.width
                text: qsTr("%1, %2").arg(layer.says).arg(layer.sizes)
                Accessible.ignored: true
            }
            Sentence {
                width: parent.width
                text: layer.cloth
                Accessible.ignored: true
            }
        }
    }
    Sentence {
        width: parent.width
        visible: panel.agreement.signedOff && panel.agreement.layers.count === 0
        text: qsTr("It was signed without a copy of the figures: what has changed since can’t be told.")
        bottomPadding: Theme.gap
    }
    Sentence {
        width: parent.width
        visible: text !== ""
        text: panel.agreement.sum
        topPadding: Theme.rowGap
    }
    Rule {
        width: parent.width
    }
    Sentence {
        width: parent.width
        visible: !panel.agreement.signedOff
        text: qsTr("Hand the phone over. Whoever agrees writes their name; the cloth is cut to what stands here.")
        topPadding: Theme.gap
    }
    FieldRow {
        id: name

        visible: !panel.agreement.signedOff
        width: parent.width
        label: qsTr("Name")
        text: panel.agreement.name
        fault: panel.agreement.fault
        onEdited: words => panel.agreement.typing(words)
    }
    Sentence {
        width: parent.width
        visible: !panel.agreement.signedOff
        second: true
        text: qsTr("Signature, with a finger; the name alone will do")
        topPadding: Theme.gap
        bottomPadding: Theme.rowGap
    }
    SignatureItem {
        id: box

        visible: !panel.agreement.signedOff || !blank
        width: parent.width
        height: fixed ? width / Math.max(1, panel.agreement.aspect) : 3 * Theme.target
        fixed: panel.agreement.signedOff
        strokes: panel.agreement.signature
        ink: Theme.ink
        onDrawn: panel.agreement.drawing(box.strokes)
        Accessible.role: Accessible.Graphic
        Accessible.name: fixed ? qsTr("The signature") : blank ? qsTr("A box to sign in") : qsTr("A box to sign in, signed")

        Rectangle {
            visible: !box.fixed
            anchors.fill: parent
            color: "transparent"
            border.width: Theme.hairline
            border.color: Theme.soft
        }
        Rule {
            anchors.bottom: parent.bottom
            width: parent.width
            firm: true
        }
    }
    WordButton {
        visible: !panel.agreement.signedOff && !box.blank
        text: qsTr("wipe it off")
        explained: qsTr("Wipe the signature off")
        onClicked: box.clear()
    }
    WordButton {
        visible: panel.agreement.signedOff
        text: qsTr("take the agreement back")
        onClicked: panel.agreement.takeBack()
    }
}
