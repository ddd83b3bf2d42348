// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// Where a picture comes from: the camera, or a file. Each is loaded only when it is asked for.
FocusScope {
    id: source

    required property string from // "camera", "file"; else nothing
    required property url camera

    signal took(url file)
    signal shut

    focus: source.from === "camera"

    Loader {
        id: cameraLoader

        anchors.fill: parent
        active: source.from === "camera"
        focus: active
        source: active ? source.camera : ""
    }
    Connections {
        target: cameraLoader.item as CameraPanel

        function onShut() {
            source.shut();
        }
        function onTook(file: url) {
            source.took(file);
        }
    }
    Loader {
        id: fileLoader

        active: source.from === "file"
        source: active ? "FileChooser.qml" : ""
    }
    Connections {
        target: fileLoader.item as FileChooser

        function onChose(file: url) {
            source.took(file);
        }
        function onShut() {
            source.shut();
        }
    }
}
