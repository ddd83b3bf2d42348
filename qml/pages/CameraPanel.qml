// SPDX-License-Identifier: Apache-2.0
import QtQuick
import QtMultimedia
import Truehang.Face

// The camera. Loaded only when it is asked for.
FocusScope {
    id: panel

    property bool taking: false
    property string fault

    signal took(url file)
    signal shut

    focus: true

    CaptureSession {
        videoOutput: output
        camera: Camera {
            active: true
            onErrorOccurred: (error, words) => panel.fault = words
        }
        imageCapture: ImageCapture {
            id: capture

            onImageSaved: (id, path) => {
                panel.taking = false;
                panel.took("file://" + path);
            }
            onErrorOccurred: (id, error, words) => {
                panel.taking = false;
                panel.fault = words;
            }
        }
    }
    VideoOutput {
        id: output

        anchors.fill: parent
        anchors.bottomMargin: foot.height + Theme.edge
        fillMode: VideoOutput.PreserveAspectFit
    }
    Sentence {
        visible: text !== ""
        anchors.centerIn: output
        width: parent.width - Theme.margin - Theme.edge
        text: panel.fault
    }
    Column {
        id: foot

        x: Theme.margin
        width: Math.min(parent.width - Theme.margin - Theme.edge, Theme.columnWidest)
        anchors.bottom: parent.bottom
        spacing: Theme.rowGap

        NextAction {
            width: parent.width
            enabled: !panel.taking && panel.fault === ""
            text: qsTr("Take it")
            onClicked: {
                panel.taking = true;
                capture.captureToFile("");
            }
        }
        WordButton {
            text: qsTr("back")
            explained: qsTr("Back")
            onClicked: panel.shut()
        }
    }
}
