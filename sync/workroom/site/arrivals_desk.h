// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

#include <chrono>
#include <condition_variable>
#include <list>
#include <mutex>
#include <string>
#include <thread>

namespace truehang::workroom {

/// Tells pages that lie open what came in since they were made, as server-sent events (WHATWG HTML, “Server-sent
/// events”). A request is held until something comes in, or for a while; then it is answered and ends, and the browser
/// asks again by itself, from the last event it heard of. So who may look is asked anew each time, and a proxy has
/// nothing to let through bit by bit. One thread looks into the records for all that wait, and not at all while nobody
/// does.
class ArrivalsDesk {
public:
    struct Times {
        std::chrono::milliseconds held{25'000};  ///< less than what proxies wait for
        std::chrono::milliseconds look{1'000};   ///< between two looks into the records
    };
    static constexpr std::size_t most_held = 64;  ///< who comes on top of them is told to ask again later

    explicit ArrivalsDesk(Archive& archive, Times times);
    explicit ArrivalsDesk(Archive& archive) : ArrivalsDesk(archive, Times{}) {}
    /// Ends.
    ~ArrivalsDesk();
    ArrivalsDesk(const ArrivalsDesk&) = delete;
    ArrivalsDesk& operator=(const ArrivalsDesk&) = delete;

    /// `GET /arrivals?since=CURSOR[&survey=ID]`; the header Last-Event-ID tells what was heard of already. 400 without
    /// `since`.
    void answer(const http::Request& request, http::Site::Respond respond);
    /// Answers all that wait, and whoever asks from now on, at once; doesn't wait for it.
    void let_go();
    /// The same, waited for: from then on the archive isn't touched.
    void end();

private:
    using Clock = std::chrono::steady_clock;
    struct Waiting {
        std::string since, survey;
        std::string heard;  ///< the cursor up to which there is nothing new to tell
        Clock::time_point until;
        http::Site::Respond respond;
    };

    void run();
    /// Answers those for whom something came or whose time is over, and takes them off `waiting`.
    void look_for(std::list<Waiting>& waiting, bool all);

    Archive& archive_;
    Times times_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::list<Waiting> come_;  ///< not yet seen by the thread
    std::size_t held_ = 0;     ///< those and the ones that the thread has
    bool ending_ = false;
    std::thread thread_;
};

}  // namespace truehang::workroom
