// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// What stands below the windows of a visit: cloths, orders, house basics, agreement, what was taken out.
Column {
    id: rest

    required property Notebook notebook
    readonly property VisitModel visit: rest.notebook.visit

    signal askedFor(string panel)

    SectionTitle {
        width: parent.width
        text: qsTr("Cloth")
    }
    Repeater {
        model: rest.visit.orders

        Column {
            id: order

            required property string name
            required property string figure
            required property string unit
            required property string line
            required property string provisional

            width: rest.width

            FigureRow {
                width: parent.width
                label: order.name
                figure: order.figure
                unit: order.unit
                canAsk: false
                ruled: false
            }
            Sentence {
                width: parent.width
                second: true
                visible: text !== ""
                text: order.line
            }
            Sentence {
                width: parent.width
                visible: text !== ""
                text: order.provisional
            }
            Item {
                width: parent.width
                height: Theme.gap

                Rule {
                    anchors.bottom: parent.bottom
                    width: parent.width
                }
            }
        }
    }
    ListRow {
        width: parent.width
        text: qsTr("Cloths of this house")
        line: rest.notebook.fabrics.fabrics.count === 0 ? qsTr("none yet") : ""
        onClicked: rest.notebook.screen = "fabrics"
    }
    SectionTitle {
        width: parent.width
        text: qsTr("The visit")
    }
    ListRow {
        width: parent.width
        text: qsTr("Sheets to print")
        onClicked: rest.notebook.screen = "sheets"
    }
    ListRow {
        width: parent.width
        text: qsTr("This visit as a file")
        onClicked: rest.notebook.screen = "file"
    }
    ListRow {
        width: parent.width
        text: qsTr("How this house is measured")
        line: qsTr("unit, tape, edges")
        onClicked: rest.askedFor("measuring")
    }
    ListRow {
        width: parent.width
        text: qsTr("House rules")
        line: rest.notebook.rules.canTake ? qsTr("%1; the workroom has others").arg(rest.notebook.rules.workedBy) : rest.notebook.rules.workedBy
        onClicked: rest.notebook.screen = "rules"
    }
    ListRow {
        width: parent.width
        text: rest.visit.signedOff ? rest.notebook.agreement.line : qsTr("Agree and sign")
        onClicked: rest.askedFor("sign")
    }
    ListRow {
        width: parent.width
        visible: rest.visit.removedWindows.count > 0
        text: qsTr("Taken out")
        line: rest.visit.removedWindows.count === 1 ? rest.visit.removedWindows.value(0, "title") : qsTr("%1 windows").arg(rest.visit.removedWindows.count)
        spoken: qsTr("Taken out: %1").arg(line)
        onClicked: rest.askedFor("removed")
    }
    Rule {
        width: parent.width
    }
    Item {
        width: 1
        height: 2 * Theme.gap
    }
    WordButton {
        text: qsTr("remove this visit")
        explained: qsTr("Remove this visit; it can be brought back")
        onClicked: rest.notebook.removeVisit(rest.visit.visitId)
    }
}
