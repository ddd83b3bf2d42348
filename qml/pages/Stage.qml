// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face
import Truehang.Face as Face // its Screen, not the device’s

// A place for one page after another. What comes back after others is scrolled as it was, and gets the keyboard back
// where that was in it.
Place {
    id: stage

    property Component shown: null
    property var behind: [] // of maps: what was shown before, how far down, and the button that the keyboard was at in it

    function screenIn(item: Item): Face.Screen {
        if (!item || !item.visible) {
            return null;
        }
        const screen = item as Face.Screen;
        for (let child = 0; !screen && child < item.children.length; ++child) {
            const found = stage.screenIn(item.children[child]);
            if (found) {
                return found;
            }
        }
        return screen;
    }

    function find(item: Item, fits: var): PressItem {
        if (!item.visible || !item.enabled) {
            return null;
        }
        const button = item as PressItem;
        if (button && fits(button)) {
            return button;
        }
        for (let child = 0; child < item.children.length; ++child) {
            const found = stage.find(item.children[child], fits);
            if (found) {
                return found;
            }
        }
        return null;
    }
    // By its name, or where that says how things stand, by what is written on it.
    function takeBack(name: string, text: string) {
        const found = stage.find(stage.item, button => button.Accessible.name === name) ?? stage.find(stage.item, button => text !== "" && button.text === text);
        if (found) {
            found.forceActiveFocus(Qt.TabFocusReason);
        }
    }

    fills: true
    onLeaving: {
        const at = stage.Window.activeFocusItem as PressItem;
        const seen = at !== null && at.visualFocus;
        const screen = stage.screenIn(stage.item);
        stage.behind.push({
            component: stage.shown,
            title: screen ? screen.title : "",
            scrolled: screen ? screen.scrolled : 0,
            name: seen ? at.Accessible.name : "",
            text: seen ? at.text : ""
        });
    }
    onArrived: {
        stage.shown = stage.wanted;
        const at = stage.behind.map(one => one.component).lastIndexOf(stage.shown);
        if (at >= 0) {
            back.title = stage.behind[at].title;
            back.scrolled = stage.behind[at].scrolled;
            back.name = stage.behind[at].name;
            back.text = stage.behind[at].text;
            stage.behind = stage.behind.slice(0, at);
            back.restart();
        }
    }

    Timer {
        id: back

        property string title
        property real scrolled
        property string name
        property string text

        interval: 0
        onTriggered: {
            const screen = stage.screenIn(stage.item);
            if (screen && screen.title === back.title) {
                screen.scrollTo(back.scrolled);
            }
            if (back.name !== "" && stage.item && stage.activeFocus) {
                stage.takeBack(back.name, back.text);
            }
        }
    }
}
