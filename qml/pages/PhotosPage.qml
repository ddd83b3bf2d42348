// SPDX-License-Identifier: Apache-2.0
pragma ComponentBehavior: Bound
import QtQuick
import Truehang
import Truehang.Face

// The photos of a window, of what is in its way and of its room: taken with the camera where there is one, chosen from
// a file everywhere.
Page {
    id: page

    readonly property PhotosModel photos: page.notebook.photos
    property url drawnOn
    property string given // the photo that is told what it shows
    readonly property bool camera: String(page.photos.cameraSource) !== ""

    function back(): bool {
        if (page.panel !== "") {
            page.panel = "";
            return true;
        }
        if (page.cameFrom === "walk" || page.cameFrom === "obstructions") {
            page.notebook.screen = page.cameFrom;
            return true;
        }
        return false;
    }

    function subjects(): var {
        const rows = page.photos.subjects;
        const choices = [];
        for (let row = 0; row < rows.count; ++row) {
            choices.push({
                word: rows.value(row, "word"),
                says: rows.value(row, "says")
            });
        }
        return choices;
    }

    Component.onDestruction: page.photos.comesAs = "window"

    Screen {
        anchors.fill: parent
        visible: page.panel === ""
        enabled: visible
        focus: visible
        title: qsTr("Photos, %1").arg(page.photos.windowTitle)
        action: page.camera ? qsTr("Take a photo") : qsTr("Choose a file")
        onActed: page.panel = page.camera ? "camera" : "file"
        onBackAsked: page.leave()
        footWords: [
            WordButton {
                text: qsTr("measure")
                explained: qsTr("Measure this window")
                onClicked: page.notebook.screen = "walk"
            },
            WordButton {
                visible: page.camera
                text: qsTr("choose a file")
                onClicked: page.panel = "file"
            },
            WordButton {
                visible: page.photos.canPaste
                text: qsTr("paste")
                explained: qsTr("Take in the picture in the clipboard")
                onClicked: page.photos.paste()
            }
        ]

        Sentence {
            width: parent.width
            visible: !page.camera
            text: qsTr("No camera here, choose a file.")
            bottomPadding: Theme.rowGap
        }
        FlagLine {
            visible: page.photos.fault !== ""
            width: parent.width
            severity: "stop"
            word: qsTr("Not taken in")
            text: page.photos.fault
            live: true
        }
        Sentence {
            width: parent.width
            visible: page.photos.photos.count === 0 && page.photos.coming === 0
            text: page.photos.keepsOrigin ? qsTr("No photos of this window yet. Where a photo was taken and by whom stays in it, as the settings say.") : qsTr("No photos of this window yet. Where a photo was taken and by whom is left out as it comes in.")
        }
        Sentence {
            width: parent.width
            visible: page.photos.comesAs !== "window"
            text: qsTr("What comes in now belongs to: %1").arg(page.photos.subjects.value(page.photos.subjects.indexOf(page.photos.comesAs), "says") ?? "")
            bottomPadding: Theme.rowGap
        }
        Sentence {
            width: parent.width
            visible: page.photos.coming > 0
            text: qsTr("%n photo(s) coming in", "", page.photos.coming)
        }
        Repeater {
            model: page.photos.photos

            Column {
                id: photo

                required property int index
                required property string sha256
                required property string caption
                required property url thumbnail
                required property url picture
                required property string state
                required property string marked
                required property string of
                required property string ofSays
                required property string spoken

                width: parent.width
                spacing: Theme.rowGap
                Accessible.role: Accessible.Grouping
                Accessible.name: qsTr("Photo %1").arg(photo.index + 1)

                MarkedPicture {
                    width: Math.min(parent.width, 300)
                    source: page.notebook.open
                    photo: photo.sha256
                    file: photo.thumbnail
                    spoken: photo.spoken
                }
                Sentence {
                    width: parent.width
                    second: true
                    text: photo.marked !== "" ? qsTr("%1, %2").arg(photo.state).arg(photo.marked) : photo.state
                    Accessible.ignored: true // the picture says it
                }
                FieldRow {
                    width: parent.width
                    label: qsTr("What it shows")
                    text: photo.caption
                    onEdited: words => page.photos.typingCaption(photo.sha256, words)
                    onCommitted: words => page.photos.setCaption(photo.sha256, words)
                }
                Flow {
                    width: parent.width
                    spacing: Theme.edge

                    WordButton {
                        text: qsTr("belongs to: %1").arg(photo.ofSays)
                        explained: qsTr("This photo belongs to: %1. Choose what it belongs to").arg(photo.ofSays)
                        onClicked: {
                            page.given = photo.sha256;
                            page.panel = "of";
                        }
                    }
                    WordButton {
                        text: qsTr("draw on it")
                        explained: qsTr("Draw arrows, lines and words on this photo")
                        onClicked: {
                            page.photos.marks.openPhoto(photo.sha256);
                            page.drawnOn = photo.picture;
                            page.panel = "marks";
                        }
                    }
                    WordButton {
                        visible: photo.of !== "room" && page.photos.tape.fits()
                        text: qsTr("use it as a tape")
                        explained: qsTr("Use this photo as a rough tape: a sheet of known size and the opening are tapped")
                        onClicked: {
                            page.photos.tape.openPhoto(photo.sha256, photo.picture);
                            page.drawnOn = photo.picture;
                            page.panel = "tape";
                        }
                    }
                    WordButton {
                        text: qsTr("take it off")
                        explained: qsTr("Take this photo off the window; undo brings it back")
                        onClicked: page.photos.remove(photo.sha256)
                    }
                }
                Rule {
                    width: parent.width
                }
            }
        }
    }

    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "marks"
        focus: active
        sourceComponent: MarksPanel {
            notebook: page.notebook
            file: page.drawnOn
            onBackAsked: page.leave()
            onActed: page.leave()
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "tape"
        focus: active
        sourceComponent: TapePanel {
            notebook: page.notebook
            file: page.drawnOn
            onBackAsked: page.leave()
        }
    }
    Place {
        anchors.fill: parent
        fills: true
        active: page.panel === "of"
        focus: active
        sourceComponent: Screen {
            title: qsTr("What this photo belongs to")
            onBackAsked: page.leave()

            ChoiceList {
                width: parent.width
                label: qsTr("What this photo belongs to")
                titled: false
                choices: page.subjects()
                chosen: page.photos.photos.value(page.photos.photos.indexOf(page.given), "of") ?? ""
                onChose: word => {
                    page.photos.give(page.given, word);
                    page.leave();
                }
            }
        }
    }
    PictureSource {
        anchors.fill: parent
        from: page.panel
        camera: page.photos.cameraSource
        onTook: file => {
            page.panel = "";
            page.photos.takeIn(file);
        }
        onShut: page.panel = ""
    }
}
