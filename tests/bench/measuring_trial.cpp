// SPDX-License-Identifier: Apache-2.0
// The measuring judged from outside: windows of crooked houses made by plane geometry, read with tapes that err, some
// of them with a slip, and what the figures say of them held against what was true. Seeds are fixed: two runs say the
// same. measuring_trial [--quick] [--markdown FILE] [--examples N] [--only clean|power|slips|time]; 1 where something
// that must hold doesn't.
#include "trial/trials.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <string>
#include <vector>

namespace {

using namespace truehang::trial;

struct Asked {
    Extent extent;
    std::string markdown;
    std::string only;
    bool understood = true;
};

Asked asked(const std::vector<std::string>& words) {
    Asked asked;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool has_value = i + 1 < words.size();
        if (words[i] == "--quick") {
            asked.extent = {240, 60, 60, 20, 0, asked.extent.examples};
        } else if (words[i] == "--markdown" && has_value) {
            asked.markdown = words[++i];
        } else if (words[i] == "--examples" && has_value) {
            asked.extent.examples = std::atoi(words[++i].c_str());
        } else if (words[i] == "--only" && has_value) {
            asked.only = words[++i];
        } else {
            asked.understood = false;
        }
    }
    return asked;
}

}  // namespace

int main(int count, char** words) {
    const Asked request = asked({words + 1, words + count});
    if (!request.understood) {
        std::cerr << "measuring_trial [--quick] [--markdown FILE] [--examples N] [--only clean|power|slips|time]\n";
        return 2;
    }
    const auto wanted = [&](const char* trial) { return request.only.empty() || request.only == trial; };
    Report report;
    if (wanted("clean")) {
        try_clean_windows(request.extent, report);
    }
    if (wanted("power")) {
        try_power(request.extent, report);
    }
    if (wanted("slips")) {
        try_slips(request.extent, report);
    }
    if (wanted("time") && request.extent.timed > 0) {
        try_time(request.extent, report);
    }
    std::cout << report.as_text();
    if (!request.markdown.empty()) {
        std::ofstream file(request.markdown);
        file << report.as_markdown();
        if (!file.flush()) {
            std::cerr << request.markdown << " can't be written\n";
            return 2;
        }
    }
    return report.all_hold() ? 0 : 1;
}
