// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"

#include <string>

// What comes next of a visit, in the order of the job: measured, agreed with the client, sent.

namespace truehang {

enum class NextStep {
    add_window,   ///< there is none yet
    measure,      ///< a window has stations left
    agree,        ///< all are measured, something can be made, and nobody has signed
    agree_again,  ///< what was signed no longer covers the visit
    send,         ///< the workroom hasn't all of it
    done,
};

struct Next {
    NextStep step = NextStep::add_window;
    std::string window{};  ///< of `measure`: the first that isn't measured; else empty
};

/// `figures` are the survey's own; `sent`: the workroom has confirmed all of it, photos too.
[[nodiscard]] Next next_of(const Survey& survey, const Figures& figures, bool sent);

}  // namespace truehang
