// SPDX-License-Identifier: Apache-2.0
#include "sheet/stamp.h"

#include "sheet/words.h"
#include "units/saying.h"

namespace truehang {

std::string which_revision(const SheetStamp& stamp) {
    return stamp.code.empty() ? say("revision {}, not in the workroom yet as it stands here", stamp.revision)
                              : say("revision {}, came in {}", stamp.revision, moment_text(stamp.received));
}

}  // namespace truehang
