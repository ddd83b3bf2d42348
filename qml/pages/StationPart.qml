// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One station: the drawing above (beside, where the page is wide), then the station, the number, how it fits, and the
// keypad. The keypad keeps its height, lower where letters are large; the drawing gives way.
FocusScope {
    id: part

    required property Notebook notebook
    readonly property WalkModel walk: part.notebook.walk
    readonly property alias keypad: pad
    readonly property bool wide: width >= Theme.wideFrom && width > height * 1.1
    readonly property real padWidth: wide ? Math.min(Theme.keypadWidest, (width - Theme.margin) * 0.5) : width
    readonly property real drawingWidth: wide ? width - Theme.margin - padWidth - 2 * Theme.edge : width - Theme.margin - Theme.edge

    signal panelAsked(string panel)

    // The keyboard goes to the reading.
    function takeFocus() {
        const button = part.Window.activeFocusItem as PressItem;
        if (!block.reading.activeFocus) {
            block.reading.forceActiveFocus(button && button.visualFocus ? Qt.TabFocusReason : Qt.OtherFocusReason);
        }
    }
    // What the keyboard is at stays in sight.
    function showFocus() {
        const item = part.Window.activeFocusItem;
        if (item && block.holds(item)) {
            const top = item.mapToItem(block, 0, 0).y;
            reading.contentY = Math.max(0, Math.min(top - Theme.rowGap, Math.max(reading.contentY, top + item.height + Theme.rowGap - reading.height)));
        }
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Measuring: %1").arg(part.walk.says)

    Connections {
        target: part.Window.window

        function onActiveFocusItemChanged() {
            part.showFocus();
        }
    }

    Stitches {
        rows: part.walk.stations
        height: part.wide ? parent.height : pad.y
        firstAt: 58
    }

    Item {
        id: head

        y: Theme.rowGap
        x: drawing.x
        width: part.drawingWidth
        height: Math.max(Theme.target, title.height)

        Heading {
            id: title

            anchors.left: parent.left
            anchors.right: photo.left
            anchors.rightMargin: Theme.gap
            anchors.verticalCenter: parent.verticalCenter
            font.pixelSize: Theme.title
            text: part.walk.title
        }
        WordButton {
            id: photo

            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            alignRight: true
            text: qsTr("photo")
            explained: qsTr("Photos of this window")
            onClicked: part.notebook.screen = "photos"
        }
    }

    Elevation {
        id: drawing

        x: part.wide && Theme.leftHand ? part.width - width - Theme.edge : Theme.margin
        anchors.top: head.bottom
        width: part.drawingWidth
        height: part.wide ? part.height - y - Theme.edge : Math.max(Theme.drawingStrip, reading.y - y)
        source: part.notebook.open
        activeStation: part.walk.station
        dimensions: part.wide
        typed: part.walk.shownIsKept ? "" : part.walk.typed
        onStationPicked: station => part.walk.jumpTo(station)
    }

    // Where there is hardly room (large letters, a short page), this scrolls and the number stays in sight.
    Flickable {
        id: reading

        readonly property real highest: part.wide ? Theme.rowGap : drawing.y + Theme.drawingStrip

        // Wider than what stands in it, so that a frame of the keyboard isn't cut off.
        x: pad.x + (part.wide ? Theme.edge : Theme.margin) - Theme.gap
        y: Math.max(highest, pad.y - block.height)
        width: pad.width - (part.wide ? 2 * Theme.edge : Theme.margin + Theme.edge) + 2 * Theme.gap
        height: pad.y - y
        contentHeight: block.height
        clip: true
        boundsBehavior: Flickable.StopAtBounds

        ReadingBlock {
            id: block

            x: Theme.gap
            width: reading.width - 2 * Theme.gap
            walk: part.walk
            onPanelAsked: panel => part.panelAsked(panel)
        }
    }

    Keypad {
        id: pad

        x: part.wide ? (Theme.leftHand ? Theme.margin : part.width - width) : 0
        width: part.padWidth
        height: 4 * Math.max(Theme.keyLowest, Math.min(part.wide || Theme.textFactor < 1.25 ? Theme.keyHeight : Theme.keyLowest, (part.height - block.height) / 4))
        anchors.bottom: parent.bottom
        decimalMark: part.walk.decimalMark
        unit: part.walk.unit
        backEnabled: part.walk.canBack
        onTyped: characters => part.walk.pressKey(characters)
        onRubbedOut: part.walk.rubOut()
        onCleared: part.walk.clearField()
        onUnitAsked: part.walk.cycleUnit()
        onBack: part.walk.back()
        onNext: part.walk.next()
    }
}
