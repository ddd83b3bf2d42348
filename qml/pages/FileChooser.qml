// SPDX-License-Identifier: Apache-2.0
import QtQuick
import QtQuick.Dialogs

// The system's own dialog for choosing a file; a picture, where nothing else is asked for.
Item {
    id: chooser

    property string title: qsTr("Choose a photo")
    property string filter: qsTr("Pictures (*.jpg *.jpeg *.png *.webp)")

    signal chose(url file)
    signal shut

    FileDialog {
        title: chooser.title
        nameFilters: [chooser.filter]
        onAccepted: chooser.chose(selectedFile)
        onRejected: chooser.shut()
        Component.onCompleted: open()
    }
}
