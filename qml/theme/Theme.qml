// SPDX-License-Identifier: Apache-2.0
pragma Singleton
import QtQuick

// Every colour, size and font that is seen. There is no duration: nothing moves by itself. `dark`, `textFactor` and
// `leftHand` are bound by Main to what the person chose; everything else follows from them.
QtObject {
    id: theme

    property bool dark: false
    property real textFactor: 1.0 // 1.0 to 2.0
    property bool leftHand: false

    // Contrast on paper: ink 14.7 / 15.7, soft 7.8 / 8.5, thread 7.3 / 7.5; on wash a little less. `rule` and `wash` never
    // say anything alone.
    readonly property color paper: dark ? "#12181c" : "#f7f7f2"
    readonly property color ink: dark ? "#eef1ec" : "#17242d"
    readonly property color soft: dark ? "#a9b5bb" : "#424f58"
    readonly property color thread: dark ? "#ef8a99" : "#9b2038"
    readonly property color rule: dark ? "#2f3b42" : "#c6d0d6"
    readonly property color wash: dark ? "#1b2328" : "#eceee8"

    // The shipped faces, which the program makes known at its start.
    readonly property string figures: "Lato"
    readonly property string sentences: "Gentium Plus"

    // Letters, in device-independent px, all growing with the text.
    readonly property int dim: Math.round(16 * textFactor)
    readonly property int body: Math.round(18 * textFactor)
    readonly property int figure: Math.round(20 * textFactor)
    readonly property int heading: Math.round(23 * Math.min(textFactor, 1.65))
    readonly property int title: Math.round(21 * Math.min(textFactor, 1.35))
    readonly property int bigTitle: Math.round(30 * Math.min(textFactor, 1.65))
    readonly property int reading: Math.round(52 * Math.min(textFactor, 1.25))
    readonly property int readingSmallest: 28
    readonly property int key: Math.round(28 * Math.min(textFactor, 1.25))
    readonly property int keyWord: Math.round(18 * Math.min(textFactor, 1.2))
    readonly property int dimension: Math.round(16 * Math.min(textFactor, 1.3))

    readonly property real leading: 1.18 // of figures and sentences in Lato

    // Room.
    readonly property int margin: 44 // where the thread is sewn
    readonly property int edge: 16
    readonly property int gap: 12
    readonly property int rowGap: 6
    readonly property int target: 48
    readonly property int action: 56
    readonly property int keyHeight: 58
    readonly property int keyLowest: 50
    readonly property int keypadWidest: 420
    readonly property int drawingLowest: 150
    readonly property int drawingStrip: 120 // the least that is drawn: where what stands below it needs the room
    readonly property int columnWidest: 620
    readonly property int wideFrom: 560 // from here on two columns, where wider than high
    readonly property int shortUnder: 480 // a phone on its side
    readonly property int footBesideFrom: 480
    readonly property int twoPanesFrom: 840 // from here on a list stands beside what was opened from it

    // Lines.
    readonly property real hairline: 1
    readonly property real underline: 1.5
    readonly property real firm: 2
    readonly property real focus: 3
    readonly property int frameGap: 8 // from words to the focus frame beside them
    readonly property int mark: 18 // a flag's shape
}
