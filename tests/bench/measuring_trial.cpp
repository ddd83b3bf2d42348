// SPDX-License-Identifier: Apache-2.0
// The measuring judged from outside: windows of crooked houses made by plane geometry, read with tapes that err, some
// of them with a slip, and what the figures say of them held against what was true. Seeds are fixed: two runs say the
// same. measuring_trial [--quick | --share S] [--markdown FILE] [--examples N] [--only clean|power|slips|two|time]; 1
// where something that must hold doesn't. With --share 0.1 a tenth of all windows is tried.
#include "trial/trials.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <future>
#include <iostream>
#include <string>
#include <utility>
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
            asked.extent = quick;
        } else if (words[i] == "--markdown" && has_value) {
            asked.markdown = words[++i];
        } else if (words[i] == "--examples" && has_value) {
            asked.extent.examples = std::atoi(words[++i].c_str());
        } else if (words[i] == "--share" && has_value) {
            asked.extent = asked.extent.share(std::atof(words[++i].c_str()));
        } else if (words[i] == "--only" && has_value) {
            asked.only = words[++i];
        } else {
            asked.understood = false;
        }
    }
    return asked;
}

using Trial = void (*)(const Extent&, Report&);

/// The trials that are wanted, side by side, but for the one that takes the time.
Report tried(const Asked& request) {
    const std::vector<std::pair<std::string, Trial>> trials{
        {"clean", try_clean_windows}, {"power", try_power}, {"slips", try_slips}, {"two", try_two_slips}};
    const auto wanted = [&](const std::string& trial) { return request.only.empty() || request.only == trial; };
    std::vector<std::future<Report>> running;
    for (const auto& [name, trial] : trials) {
        if (wanted(name)) {
            running.push_back(std::async(std::launch::async, [&request, trial = trial] {
                Report part;
                trial(request.extent, part);
                return part;
            }));
        }
    }
    Report report;
    for (auto& part : running) {
        report.add(part.get());
    }
    if (wanted("time") && request.extent.timed > 0) {
        try_time(request.extent, report);
    }
    return report;
}

}  // namespace

int main(int count, char** words) {
    const Asked request = asked({words + 1, words + count});
    if (!request.understood) {
        std::cerr << "measuring_trial [--quick | --share S] [--markdown FILE] [--examples N] "
                     "[--only clean|power|slips|two|time]\n";
        return 2;
    }
    const Report report = tried(request);
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
