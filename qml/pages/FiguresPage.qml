// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The figures of a window over its drawing; each can be asked why.
Page {
    id: page

    readonly property FiguresModel figures: page.notebook.figures
    property bool turned: false
    property bool shut: false

    panel: page.figures.asked === "" ? "" : "why"

    function back(): bool {
        if (page.figures.asked === "") {
            return false;
        }
        page.figures.ask("");
        return true;
    }

    Screen {
        id: screen

        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: page.figures.windowTitle
        word: page.turned ? qsTr("from the front") : qsTr("turn round")
        wordExplained: page.turned ? qsTr("Look from the front") : qsTr("Look from the side")
        sideHeight: height * 0.36
        action: page.figures.nextStation !== "" ? page.figures.nextSays : page.notebook.visit.afterWindowSays
        onWordChosen: page.turned = !page.turned
        onBackAsked: page.leave()
        onActed: {
            if (page.figures.nextStation !== "") {
                page.notebook.walk.jumpTo(page.figures.nextStation);
                page.notebook.screen = "walk";
            } else {
                page.notebook.openNextWindow();
            }
        }
        footWords: [
            WordButton {
                visible: page.notebook.hanging.current >= 0
                text: qsTr("compare")
                explained: qsTr("Compare other choices")
                onClicked: page.notebook.screen = "choices"
            },
            WordButton {
                text: qsTr("hanging")
                explained: qsTr("What hangs here")
                onClicked: page.notebook.screen = "hanging"
            },
            WordButton {
                text: qsTr("measure")
                explained: qsTr("Measure this window")
                onClicked: page.notebook.screen = "walk"
            }
        ]
        sideContent: Elevation {
            source: page.notebook.open
            turned: page.turned
            hanging: page.shut ? ElevationItem.Shut : ElevationItem.Back
            dimensions: false
        }

        Heading {
            width: parent.width
            text: page.figures.summary
        }
        Flow {
            width: parent.width
            spacing: Theme.edge

            WordButton {
                visible: !page.turned && page.figures.figures.count > 0
                text: page.shut ? qsTr("draw them back") : qsTr("draw them shut")
                onClicked: page.shut = !page.shut
            }
            WordButton {
                visible: page.notebook.hanging.current >= 0
                text: qsTr("show the client")
                onClicked: page.notebook.screen = "client"
            }
        }
        Rule {
            width: parent.width
        }
        FigureList {
            width: parent.width
            rows: page.figures.figures
            onAsked: path => page.figures.ask(path)
        }
        Repeater {
            model: page.figures.flags

            FlagLine {
                required severity
                required word
                required text

                live: screen.opened

                width: screen.contentWidth
            }
        }
        WordButton {
            visible: page.notebook.twice.countHere > 0
            text: qsTr("taken twice: settle")
            explained: qsTr("Settle what was taken twice")
            onClicked: page.notebook.screen = "twice"
        }
        SectionTitle {
            visible: page.figures.sizes.count > 0
            width: parent.width
            text: qsTr("Heights and widths")
        }
        FigureList {
            width: parent.width
            rows: page.figures.sizes
            onAsked: path => page.figures.ask(path)
        }
        Sentence {
            width: parent.width
            second: true
            visible: text !== ""
            text: page.figures.plusMinusSays
            topPadding: Theme.gap
        }
        WindowWords {
            width: parent.width
            notebook: page.notebook
            hasOthers: true
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel !== ""
        focus: active
        sourceComponent: Screen {
            title: page.figures.askedLabel
            action: qsTr("Back to the figures")
            onBackAsked: page.leave()
            onActed: page.leave()

            Heading {
                width: parent.width
                text: qsTr("How it came about")
                bottomPadding: Theme.rowGap
            }
            Repeater {
                model: page.figures.why

                ListStep {
                    required what
                    required figure
                    required from
                    required spoken

                    width: parent.width
                }
            }
        }
    }
}
