// SPDX-License-Identifier: Apache-2.0
import QtQuick

// Where something is put while it is wanted. (Loader can't make bound components in Qt 6.4.)
FocusScope {
    id: place

    property bool active: true
    property bool fills: false // as large as this place; else as high as it is itself
    property Component sourceComponent: null
    property var given: ({}) // properties that what is put here starts with
    property Item item: null
    readonly property Component wanted: active ? sourceComponent : null

    signal leaving // what stands here goes
    signal arrived // something else stands here, or nothing

    function renew() {
        if (place.item) {
            place.leaving();
            place.item.visible = false;
            place.item.destroy();
        }
        place.item = place.wanted ? place.wanted.createObject(place, place.given) as Item : null;
        if (place.item) {
            place.item.width = Qt.binding(() => place.width);
            if (place.fills) {
                place.item.height = Qt.binding(() => place.height);
            }
            place.item.focus = true;
        }
        place.arrived();
    }

    implicitHeight: item && !fills ? item.implicitHeight : 0
    onWantedChanged: renew()
    Component.onCompleted: {
        if (place.wanted && !place.item) {
            place.renew();
        }
    }
}
