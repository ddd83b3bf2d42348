// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "editor.h"
#include "faults.h"
#include "phone_model.h"
#include "truth.h"
#include "workroom_model.h"

#include <cstdint>
#include <deque>
#include <functional>
#include <iosfwd>
#include <memory>
#include <queue>
#include <random>
#include <string>
#include <vector>

// Two phones with one visit, the wire, two receivers on one database, and somebody who follows the changes, in
// simulated time: everything by one seed.

namespace truehang::sync::simulation {

struct Ended {
    std::vector<std::string> wrong;  ///< what must not be; empty: all is well
    Tally tally;
    int edits = 0;
    int put_together = 0;
    int requests = 0;
    std::uint64_t trace = 0;  ///< a digest of all that happened, in its order
};

class World {
public:
    static constexpr int phones = 2;
    static constexpr int edits = 30;
    static constexpr int faults = 5;

    World(std::uint64_t seed, Bug bug, std::ostream* told);

    /// Once: the whole of it.
    [[nodiscard]] Ended run();

private:
    using Duration = std::chrono::milliseconds;
    struct Event {
        Time at;
        long long number;
        std::function<void()> happens;
        bool operator>(const Event& other) const { return std::tie(at, number) > std::tie(other.at, other.number); }
    };
    /// A request on its way.
    struct Trip {
        int phone = 0;
        int life = 0;  ///< of the phone that waits for the answer
        Way way = Way::edit;
        Request request;
        std::string body;
        bool heard = true;  ///< whether anybody waits for the answer
    };
    /// A fault to come: what is meant is waited for a while, then anything is struck that comes by.
    struct Meant {
        Time from;
        Case what;
    };
    using Sent = std::shared_ptr<Trip>;
    struct Writer {
        int receiver = 0;
        int life = 0;
        std::function<void()> writes;
    };

    void begin();
    void after(Duration wait, std::function<void()> happens);
    void run_until(Time end);
    void settle();
    [[nodiscard]] std::size_t below(std::size_t end) { return static_cast<std::size_t>(random_() % end); }
    [[nodiscard]] Duration between(long long least, long long most) {
        return Duration(least + static_cast<long long>(below(static_cast<std::size_t>(most - least + 1))));
    }
    /// The next fault, where its time has come and it can go wrong here.
    [[nodiscard]] std::optional<Fault> strike(Way way, Phase phase);
    void mean_faults();
    [[nodiscard]] const Case& a_case() { return cases()[below(cases().size())]; }
    /// What comes of a broken wire goes wrong too, now and then.
    void go_on_with(Way way, Fault fault);
    void wrong(std::string what);
    void tell(std::string_view who, std::string_view what);

    PhoneModel& phone(int number) { return *phones_[static_cast<std::size_t>(number)]; }
    [[nodiscard]] Time clock_of(int number) const { return now_ + set_wrong_[static_cast<std::size_t>(number)]; }
    void check_receipt(const Item& item);
    void edit(int number);
    void kill_phone(int number);
    void set_clock(int number);
    void pump(int number);

    void leave(int number, const Request& request);
    void travel(const Sent& trip);
    [[nodiscard]] std::optional<int> a_receiver();
    void arrive(const Sent& trip, int receiver);
    /// `alone`: while no other request may write.
    void handle(const Sent& trip, int receiver, bool alone);
    void commit(const Sent& trip, int receiver, const WorkroomModel::Outcome& outcome, bool alone);
    void note_commit(const Request& request);
    void reply(const Sent& trip, Answer answer);
    [[nodiscard]] Answer sign_in_page(const Request& request) const;
    void fail(const Sent& trip, WireFailure failure);
    void hear(const Sent& trip, const Answer& answer);

    void kill_receiver(int receiver);
    void take_lock(Writer writer);
    void release_lock();

    void follow();
    void check_entered(const std::string& when);
    void check_photos(const Survey& there);
    void check_end();

    std::uint64_t seed_;
    std::mt19937_64 random_;
    Bug bug_;
    std::ostream* told_;
    Time now_;
    long long events_ = 0;
    std::priority_queue<Event, std::vector<Event>, std::greater<>> queue_;
    std::deque<Meant> faults_;
    Ended ended_;
    Truth truth_;
    WorkroomModel workroom_;
    Duration set_wrong_[phones]{};
    std::unique_ptr<PhoneModel> phones_[phones];
    long long pumps_[phones]{};
    int names_ = 0;
    bool up_[WorkroomModel::receivers]{true, true};
    int lives_[WorkroomModel::receivers]{};
    std::optional<Writer> holder_;
    std::deque<Writer> waiting_;
    struct {
        long long cursor = 0;
        std::map<std::string, int> seen;  ///< revisions, by digest
    } follower_;
    std::map<std::string, std::string> committed_;  ///< digest by place, of every commit
};

}  // namespace truehang::sync::simulation
