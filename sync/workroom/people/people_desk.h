// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/people/door.h"
#include "workroom/people/sign_in_tries.h"

// The people of the workroom as an owner sees to them, and as each sees to their own. Who asks was looked at before.

namespace truehang::workroom {

/// `/people` and what is below it.
[[nodiscard]] http::Response answer_people(Archive& archive, const Caller& caller, const http::Request& request);

/// `/me` and what is below it, and `/sign-out`. A password that is typed to be changed is counted as a try.
[[nodiscard]] http::Response answer_own(Archive& archive, SignInTries& tries, const Caller& caller,
                                        const http::Request& request);

}  // namespace truehang::workroom
