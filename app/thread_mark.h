// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QObject>

namespace truehang {

/// The stitches of the thread in the margin. The words beside a mark always say the same.
namespace thread_mark {
Q_NAMESPACE

enum class Mark {
    ToDo,       ///< two pinholes
    UnderWay,   ///< a loose end
    Kept,       ///< one stitch: measured, on this phone
    HalfThere,  ///< the survey is in the workroom, photos are missing
    There,      ///< two stitches: the workroom confirmed everything
    Asked,      ///< an open loop: the workroom asks
};
Q_ENUM_NS(Mark)

}  // namespace thread_mark
}  // namespace truehang
