// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// A page of the notebook: title, thread in the margin, what stands on it, and at the foot the one next action with
// other words around it. What is longer than the page scrolls, and the field that has the focus stays in sight.
FocusScope {
    id: screen

    property string title
    property bool bigTitle: false
    property string word // at the title's right
    property string wordExplained: word
    property string action // empty: none
    property bool actionEnabled: true
    property string backWord: qsTr("back")
    property bool canGoBack: true
    property bool growsUp: false // short content stands above the foot, long content shows its end
    property ShownRows threadRows: null // a list with the role `mark`
    property Component sideContent: null // beside the page where there is room, above it where there isn't
    property real sideHeight: Theme.drawingLowest
    property Component listContent: null // in place of what scrolls here: what scrolls by itself, margin and all
    property bool broad: false // takes the whole width of a wide screen by itself
    property alias scrolled: flick.contentY
    readonly property bool wide: width >= Theme.wideFrom && width > height * 1.1
    readonly property real contentWidth: column.width
    // A narrow page on a wide screen lies in its middle.
    readonly property real pageWidth: side.active || broad ? width : Math.min(width, Theme.columnWidest + Theme.margin + Theme.edge)
    readonly property real pageX: Math.round((width - pageWidth) / 2)
    default property alias content: column.data
    property alias footWords: words.data

    signal wordChosen
    signal acted
    signal backAsked

    property Item shownLast: null
    property Item focusedLast: null // where the keyboard goes back to when this page is shown again
    property bool byKeys: false
    property bool opened: false // what comes from now on has come while the page was open

    function show(item: Item) {
        screen.shownLast = item;
        const place = item.mapToItem(column, 0, 0);
        const top = place.y - Theme.gap;
        const bottom = place.y + item.height + Theme.gap;
        if (bottom > flick.contentY + flick.height) {
            flick.contentY = Math.max(0, bottom - flick.height);
        }
        if (top < flick.contentY) {
            flick.contentY = Math.max(0, top);
        }
    }

    function toTop() {
        flick.contentY = 0;
    }
    // As far down as it was, as soon as so much is laid out.
    function scrollTo(y: real) {
        flick.wanted = y;
        flick.takeUp();
    }

    function isIn(item: Item, part: Item): bool {
        let above = item;
        while (above && above !== part) {
            above = above.parent;
        }
        return above === part;
    }
    // True where `item` stands on the scrolling part of this page.
    function holds(item: Item): bool {
        return screen.isIn(item, column);
    }

    function showFocus() {
        const item = screen.Window.activeFocusItem;
        if (item && screen.holds(item)) {
            screen.show(item);
        }
    }
    function followFocus() {
        const item = screen.Window.activeFocusItem;
        if (screen.enabled && item && item !== screen && screen.isIn(item, screen)) {
            const control = item as PressItem;
            screen.focusedLast = item;
            screen.byKeys = control !== null && control.visualFocus;
        }
        screen.showFocus();
    }

    focus: true
    Accessible.role: Accessible.Pane
    Accessible.name: title

    Connections {
        target: screen.Window.window

        function onActiveFocusItemChanged() {
            screen.followFocus();
        }
    }
    Component.onCompleted: screen.opened = true
    onEnabledChanged: {
        if (screen.enabled && screen.focusedLast && screen.focusedLast.visible) {
            screen.focusedLast.forceActiveFocus(screen.byKeys ? Qt.TabFocusReason : Qt.OtherFocusReason);
        }
    }

    Stitches {
        visible: screen.threadRows !== null
        rows: screen.threadRows
        x: screen.pageX
        height: parent.height
        firstAt: 58
    }

    Item {
        id: head

        anchors.top: parent.top
        anchors.topMargin: Theme.rowGap
        x: screen.pageX + Theme.margin
        width: screen.pageWidth - Theme.margin - Theme.edge
        // Beside a long word a title would be broken into pieces.
        readonly property bool stacked: topWord.visible && topWord.implicitWidth > 0.4 * width && naturalTitle.advanceWidth > width - topWord.implicitWidth - Theme.gap

        height: stacked ? titleLine.height + topWord.height : Math.max(Theme.target, titleLine.height + Theme.rowGap)

        TextMetrics {
            id: naturalTitle

            font: titleLine.font
            text: screen.title
        }
        Heading {
            id: titleLine

            anchors.left: parent.left
            anchors.right: topWord.visible && !head.stacked ? topWord.left : parent.right
            anchors.rightMargin: topWord.visible && !head.stacked ? Theme.gap : 0
            y: head.stacked ? 0 : Math.round((parent.height - height) / 2)
            text: screen.title
            font.pixelSize: screen.bigTitle ? Theme.bigTitle : Theme.title
        }
        WordButton {
            id: topWord

            visible: screen.word !== ""
            anchors.right: parent.right
            y: head.stacked ? titleLine.height : Math.floor((parent.height - height) / 2)
            alignRight: true
            text: screen.word
            explained: screen.wordExplained
            onClicked: screen.wordChosen()
        }
    }

    Place {
        id: side

        fills: true

        active: screen.sideContent !== null
        visible: active
        sourceComponent: screen.sideContent
        anchors.top: head.bottom
        anchors.topMargin: Theme.rowGap
        x: screen.wide && Theme.leftHand ? parent.width - width - Theme.edge : Theme.margin
        width: screen.wide ? (parent.width - Theme.margin) * 0.5 - Theme.edge : head.width
        height: !active ? 0 : screen.wide ? parent.height - y - Theme.edge : Math.min(screen.sideHeight, parent.height * 0.4)
    }

    Flickable {
        id: flick

        readonly property bool beside: screen.wide && side.active
        readonly property real columnWidth: beside ? parent.width - 2 * Theme.margin - side.width - 2 * Theme.edge : head.width
        readonly property real atEnd: Math.max(0, contentHeight - height)
        property real wanted: 0 // further down than is laid out yet; 0: nowhere

        function takeUp() {
            if (flick.wanted > 0) {
                flick.contentY = Math.min(flick.wanted, flick.atEnd);
                flick.wanted = flick.contentY < flick.wanted ? flick.wanted : 0;
            }
        }

        x: beside && !Theme.leftHand ? side.x + side.width : screen.pageX
        width: columnWidth + Theme.margin + Theme.edge
        anchors.top: !screen.wide && side.active ? side.bottom : head.bottom
        anchors.topMargin: Theme.rowGap
        anchors.bottom: foot.top
        anchors.bottomMargin: Theme.rowGap
        contentWidth: width
        contentHeight: column.y + column.height
        clip: true
        visible: screen.listContent === null
        flickableDirection: Flickable.VerticalFlick
        boundsBehavior: Flickable.StopAtBounds
        onHeightChanged: {
            if (screen.shownLast && screen.holds(screen.shownLast)) {
                screen.show(screen.shownLast);
            } else {
                screen.showFocus();
            }
        }
        onContentHeightChanged: {
            screen.showFocus();
            flick.takeUp();
        }
        onMovementStarted: flick.wanted = 0
        onAtEndChanged: {
            if (screen.growsUp && !moving) {
                contentY = atEnd;
            }
        }

        Column {
            id: column

            x: Theme.margin
            y: screen.growsUp ? Math.max(0, flick.height - height) : 0
            width: flick.columnWidth
            bottomPadding: screen.growsUp ? 0 : Theme.gap
        }
    }

    Place {
        fills: true
        active: screen.listContent !== null
        visible: active
        sourceComponent: screen.listContent
        x: flick.x
        y: flick.y
        width: flick.width
        height: flick.height
    }

    // A hairline says that there is more above or below.
    Rule {
        visible: flick.visible && flick.contentY > 1
        x: flick.x + Theme.margin
        y: flick.y
        width: flick.columnWidth
        color: Theme.soft
    }
    Rule {
        visible: flick.visible && flick.contentY + flick.height < flick.contentHeight - 1
        x: flick.x + Theme.margin
        y: flick.y + flick.height
        width: flick.columnWidth
        color: Theme.soft
    }

    Item {
        id: foot

        // On a short page the words stand beside the action.
        readonly property bool beside: screen.height < Theme.shortUnder && next.visible && words.visible && width >= Theme.footBesideFrom

        x: flick.x + Theme.margin
        width: flick.columnWidth
        height: Math.max(words.visible ? words.y + words.height : 0, next.visible ? next.height : 0)
        anchors.bottom: parent.bottom
        anchors.bottomMargin: words.visible && !foot.beside ? Math.round((Theme.textFactor - 1) * Theme.gap) : Theme.edge

        NextAction {
            id: next

            visible: screen.action !== ""
            x: foot.beside && !Theme.leftHand ? parent.width - width : 0
            width: foot.beside ? parent.width / 2 : parent.width
            text: screen.action
            enabled: screen.actionEnabled
            onClicked: screen.acted()
        }
        Flow {
            id: words

            visible: screen.canGoBack || children.length > 1
            x: foot.beside && Theme.leftHand ? next.width + Theme.gap : 0
            y: foot.beside ? Math.max(0, Math.round((next.height - height) / 2)) : next.visible ? next.height + Theme.gap : 0
            width: foot.beside ? parent.width - next.width - Theme.gap : parent.width
            spacing: Theme.edge
            layoutDirection: Theme.leftHand ? Qt.LeftToRight : Qt.RightToLeft

            WordButton {
                visible: screen.canGoBack
                alignRight: !Theme.leftHand
                text: screen.backWord
                explained: qsTr("Back")
                onClicked: screen.backAsked()
            }
        }
    }
}
