// SPDX-License-Identifier: Apache-2.0
import QtQuick
import QtQuick.Dialogs

// The system's own dialog for choosing a picture.
Item {
    id: chooser

    signal chose(url file)
    signal shut

    FileDialog {
        title: qsTr("Choose a photo")
        nameFilters: [qsTr("Pictures (*.jpg *.jpeg *.png *.webp)")]
        onAccepted: chooser.chose(selectedFile)
        onRejected: chooser.shut()
        Component.onCompleted: open()
    }
}
