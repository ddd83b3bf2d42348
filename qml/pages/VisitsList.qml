// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The visits by day, the newest at the foot; further ones come as one scrolls up to them.
Item {
    id: part

    required property ShownRows rows
    property bool finding: false
    property string search
    property string narrowedTo // in words; empty: to nothing
    property string whenEmpty
    property string says // under the list
    property bool removed: false // it is the bin
    property string openId // the visit that stands beside the list; empty: none
    property string cameFrom // the visit that was open before, to be in sight; empty: none

    signal visitChosen(string visitId)
    signal damagedChosen(string title)
    signal searched(string words)

    onFindingChanged: {
        if (part.finding) {
            find.forceActiveFocus();
        }
    }

    ListView {
        id: list

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.bottom: under.top
        // The newest stands at the foot.
        function step(by: int) {
            const next = list.currentIndex + by;
            if (next >= 0 && next < list.count) {
                list.currentIndex = next;
                list.currentItem.forceActiveFocus(Qt.TabFocusReason);
            }
        }

        Component.onCompleted: {
            const row = part.cameFrom === "" ? -1 : part.rows.indexOf(part.cameFrom);
            if (row > 0) {
                list.positionViewAtIndex(row, ListView.Center);
                list.returnToBounds();
            }
        }
        clip: true
        verticalLayoutDirection: ListView.BottomToTop
        boundsBehavior: Flickable.StopAtBounds
        reuseItems: true
        cacheBuffer: 0
        onContentYChanged: {
            if (contentY - originY < 3 * height) {
                part.rows.fetchNext();
            }
        }
        keyNavigationEnabled: false
        Keys.onUpPressed: step(1)
        Keys.onDownPressed: step(-1)
        Accessible.role: Accessible.List
        Accessible.name: part.removed ? qsTr("Removed visits") : qsTr("Visits")
        model: part.rows
        delegate: VisitRow {
            width: list.width - Theme.edge
            open: visitId === part.openId
            removed: part.removed
            isStop: ListView.isCurrentItem || (list.currentIndex < 0 && index === 0)
            onChosen: {
                if (damaged && !part.removed) {
                    part.damagedChosen(title);
                } else {
                    part.visitChosen(visitId);
                }
            }
            onReached: {
                list.currentIndex = index;
                list.positionViewAtIndex(index, ListView.Contain);
            }
        }
    }

    // A hairline says that there is more above or below.
    Rule {
        visible: !list.atYBeginning
        x: Theme.margin
        width: list.width - x - Theme.edge
        color: Theme.soft
    }
    Rule {
        visible: !list.atYEnd
        x: Theme.margin
        y: list.height
        width: list.width - x - Theme.edge
        color: Theme.soft
    }

    Column {
        id: under

        x: Theme.margin
        width: parent.width - x - Theme.edge
        anchors.bottom: parent.bottom

        Sentence {
            width: parent.width
            visible: part.rows.count === 0
            text: part.whenEmpty
            bottomPadding: Theme.gap
        }
        Sentence {
            width: parent.width
            visible: text !== ""
            text: part.says
            topPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            visible: part.narrowedTo !== ""
            text: qsTr("Only those: %1").arg(part.narrowedTo)
            topPadding: Theme.rowGap
        }
        FieldRow {
            id: find

            visible: part.finding
            width: parent.width
            label: qsTr("Find by title, client or address")
            text: part.search
            onEdited: words => part.searched(words)
        }
    }
}
