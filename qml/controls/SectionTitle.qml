// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang.Face

// The name of a part of a page.
Heading {
    topPadding: Theme.edge + Theme.rowGap
    bottomPadding: Theme.rowGap
}
