// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// Figures one under the other, under the name of their layer where there are several.
Column {
    id: list

    required property ShownRows rows

    signal asked(string path)

    Repeater {
        model: list.rows

        Column {
            id: place

            required property int index
            required property string path
            required property string label
            required property string figure
            required property string unit
            required property string plusMinus
            required property string layerTitle
            required property bool asks
            readonly property bool firstOfLayer: layerTitle !== "" && (index === 0 || list.rows.value(index - 1, "layerTitle") !== layerTitle)

            width: list.width

            SectionTitle {
                visible: place.firstOfLayer
                width: parent.width
                text: place.layerTitle
            }
            FigureRow {
                width: parent.width
                label: place.label
                figure: place.figure
                unit: place.plusMinus === "" ? place.unit : qsTr("%1 %2").arg(place.plusMinus).arg(place.unit)
                canAsk: place.asks
                onAsked: list.asked(place.path)
            }
        }
    }
}
