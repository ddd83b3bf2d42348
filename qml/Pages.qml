// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The page where the person is. Escape and the system's back key first close what a page has opened over itself, then
// go one page up.
FocusScope {
    id: pages

    required property Notebook notebook
    property string here: pages.notebook.screen
    property string before // the screen before this one
    readonly property Page page: loader.item as Page

    property var pagesRead: ({})

    // A page is read when it is first gone to: the first frame waits for no other.
    // (No types: qmllint 6.4 falls over them here.)
    function pageOf(screen) {
        if (!pages.pagesRead[screen]) {
            const name = screen.charAt(0).toUpperCase() + screen.slice(1);
            const read = Qt.createComponent(Qt.resolvedUrl("pages/" + name + "Page.qml"));
            if (read.status === Component.Error) {
                console.warn(read.errorString());
            }
            pages.pagesRead[screen] = read;
        }
        return pages.pagesRead[screen];
    }

    function back(): bool {
        InputMethod.commit();
        if (pages.page && pages.page.back()) {
            return true;
        }
        return pages.notebook.goBack();
    }

    onHereChanged: {
        pages.before = trail.last;
        trail.last = pages.here;
    }

    QtObject {
        id: trail

        property string last
    }

    // Presses the button that has the focus, as Space does.
    function press(): bool {
        const button = pages.Window.activeFocusItem as PressItem;
        if (button) {
            button.clicked();
        }
        return button !== null;
    }

    Keys.onPressed: event => {
        if (event.key === Qt.Key_Escape || event.key === Qt.Key_Back) {
            event.accepted = pages.back();
        } else if ((event.key === Qt.Key_Return || event.key === Qt.Key_Enter) && !event.isAutoRepeat) {
            event.accepted = pages.press();
        }
    }

    Shortcut {
        sequences: ["Ctrl+Z"]
        onActivated: pages.notebook.visit.undo()
    }
    Shortcut {
        sequences: ["Ctrl+Shift+Z", "Ctrl+Y"]
        onActivated: pages.notebook.visit.redo()
    }

    // What was kept or undone is seen where it stands, and said to a screen reader.
    Item {
        visible: news.words !== ""
        Accessible.role: Accessible.AlertMessage
        Accessible.name: news.words

        Announced {
            id: news
        }
    }
    Connections {
        target: pages.notebook.visit

        function onTold(words: string) {
            news.say(words);
        }
    }

    Place {
        id: faults

        active: pages.notebook.fault !== ""
        x: Theme.margin
        width: parent.width - Theme.margin - Theme.edge
        sourceComponent: Component {
            Column {
                FlagLine {
                    width: parent.width
                    severity: "stop"
                    word: qsTr("Stop")
                    text: pages.notebook.fault
                    live: true
                }
                WordButton {
                    text: qsTr("try again")
                    onClicked: pages.notebook.tryAgain()
                }
                Rule {
                    width: parent.width
                    firm: true
                }
            }
        }
    }

    Stage {
        id: loader

        anchors.fill: parent
        anchors.topMargin: faults.implicitHeight
        focus: true
        active: pages.notebook.ready
        given: ({
                notebook: pages.notebook,
                cameFrom: Qt.binding(() => pages.before)
            })
        sourceComponent: pages.pageOf(pages.notebook.screen)
    }
}
