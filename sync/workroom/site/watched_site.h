// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

#include <array>
#include <atomic>
#include <chrono>
#include <functional>
#include <map>
#include <mutex>
#include <string>
#include <string_view>
#include <tuple>

namespace truehang::workroom {

/// A site, and what those who run it want to know of it: `/ready` says whether the records take writes now, `/metrics`
/// tells programs on this machine in Prometheus’ text format (version 0.0.4) what was asked and how long it took, and
/// `log` gets a line of JSON for each answer. Neither names a survey, a person, a device or a secret.
class WatchedSite final : public http::Site {
public:
    using Now = std::function<std::chrono::steady_clock::time_point()>;
    using Log = std::function<void(const std::string& line)>;

    /// `log` may be empty, and is called on the site’s threads, one line at a time.
    WatchedSite(http::Site& site, Archive& archive, Now now, Log log);

    [[nodiscard]] http::Admission admit(const http::RequestHead& head) override;
    void answer(http::Request request, Respond respond) override;
    [[nodiscard]] http::Response refusal(int status, std::string_view text) override;
    void ending() override { site_.ending(); }

private:
    /// Upper ends in seconds of what a time is counted under; the last counts all.
    static constexpr std::array<double, 8> ends{0.001, 0.005, 0.02, 0.1, 0.5, 2.0, 10.0, 60.0};
    struct Times {
        std::array<long long, ends.size()> up_to{};
        long long count = 0;
        double seconds = 0.0;
    };
    /// What of a request is told.
    struct Asked {
        std::string method;  ///< one of HTTP’s usual ones, else “other”
        std::string what;    ///< the kind of thing that its path names
        std::uint64_t bytes = 0;
        std::chrono::steady_clock::time_point at;
    };

    [[nodiscard]] Asked asked_of(const http::RequestHead& head) const;
    void note(const Asked& asked, int status);
    [[nodiscard]] http::Response ready();
    [[nodiscard]] std::string metrics();

    http::Site& site_;
    Archive& archive_;
    Now now_;
    Log log_;
    std::mutex mutex_;
    std::map<std::tuple<std::string, std::string, int>, long long> answers_;  ///< by what, method, status
    std::map<std::string, Times> times_;                                      ///< by what
    std::uint64_t bytes_ = 0;                                                 ///< of bodies that were announced
    std::mutex ready_mutex_;
    std::chrono::steady_clock::time_point looked_at_;
    bool looked_ = false;
    std::atomic<bool> is_ready_ = false;
};

}  // namespace truehang::workroom
