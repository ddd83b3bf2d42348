// SPDX-License-Identifier: Apache-2.0
import QtQuick
import Truehang
import Truehang.Face

// One page of the program, and the panel that it has opened over itself, if any.
FocusScope {
    id: page

    required property Notebook notebook
    property string panel // empty: none
    property string cameFrom // the screen before, where going back leads there

    // Closes what is open over the page. False where nothing is.
    function back(): bool {
        if (page.panel === "") {
            return false;
        }
        page.panel = "";
        return true;
    }

    function leave() {
        InputMethod.commit();
        if (!page.back()) {
            page.notebook.goBack();
        }
    }
}
