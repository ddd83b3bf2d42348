// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"

#include <chrono>
#include <cstddef>
#include <functional>
#include <map>
#include <mutex>
#include <string>

namespace truehang::workroom {

/// Slows down those who guess passwords, and locks nobody out: whoever guesses waits, and longer each time. It is
/// counted by where a try comes from, and by whose name it is; what strangers do with a name slows down neither this
/// machine nor a browser that its person has signed in from before. Kept in memory only. Safe from several threads.
class SignInTries {
public:
    using Clock = std::function<sync::Time()>;

    static constexpr int free_from_one_place = 5;         ///< wrong tries before the first wait
    static constexpr int free_of_one_name = 20;           ///< the same, from wherever
    static constexpr std::chrono::seconds longest{300};   ///< wait of one place; it doubles from a second up to this
    static constexpr std::chrono::seconds name_wait{30};  ///< between tries of a name that many have tried
    static constexpr std::chrono::hours forgotten{1};     ///< after the last wrong one
    static constexpr std::size_t most_places = 10'000;    ///< held in memory; the oldest goes

    struct Try {
        std::string place;   ///< an address, or a known browser
        std::string name;    ///< folded
        bool known = false;  ///< this machine, or a browser the person has signed in from
    };

    explicit SignInTries(Clock clock) : clock_(std::move(clock)) {}

    /// How long this one has to wait; zero: it may try now, and counts as wrong until `succeeded`. A try that has to
    /// wait isn't counted, and nothing of it is looked at.
    [[nodiscard]] std::chrono::seconds begin(const Try& one);
    void succeeded(const Try& one);

private:
    struct Count {
        int wrong = 0;
        sync::Time last;
    };
    using Counts = std::map<std::string, Count>;

    [[nodiscard]] static std::chrono::seconds wait_of_place(const Counts& counts, const std::string& place,
                                                            sync::Time now);
    [[nodiscard]] static std::chrono::seconds wait_of_name(const Counts& counts, const std::string& name,
                                                           sync::Time now);
    static void count(Counts& counts, const std::string& key, sync::Time now);

    Clock clock_;
    std::mutex mutex_;
    Counts places_, names_;
};

}  // namespace truehang::workroom
