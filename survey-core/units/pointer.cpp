// SPDX-License-Identifier: Apache-2.0
#include "units/pointer.h"

namespace truehang {

std::vector<std::string> pointer_steps(std::string_view pointer) {
    std::vector<std::string> steps;
    for (std::size_t i = 0; i < pointer.size(); ++i) {
        if (pointer[i] == '/') {
            steps.emplace_back();
        } else if (!steps.empty()) {
            const bool escaped = pointer[i] == '~' && i + 1 < pointer.size();
            steps.back() += escaped ? (pointer[++i] == '1' ? '/' : '~') : pointer[i];
        }
    }
    return steps;
}

}  // namespace truehang
