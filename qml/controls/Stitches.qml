// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// The thread sewn down the margin. It only shows; every mark has its words beside it.
ThreadItem {
    thread: Theme.thread
    soft: Theme.soft
    ink: Theme.ink
    implicitWidth: Theme.margin
    implicitHeight: Theme.target
    Accessible.ignored: true
}
