// SPDX-License-Identifier: Apache-2.0
#include "outbox/outbox.h"

#include "simulated_workroom.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <memory>
#include <random>
#include <set>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

/// Everything that can go wrong, in the order a generated number picks it.
enum class Fate {
    arrives,
    not_reached,
    lost_before,
    lost_after,
    cut_within,
    swept,
    busy,
    failed,
    nonsense,
    forgotten,
    called_off,
    restarted,
    no_bytes,
    count
};

/// A world of one phone and one workroom, driven by a seed, until `quiet_from` full of faults and faultless afterwards.
class World {
public:
    World(std::uint64_t seed, int surveys, int photos, std::set<int> poisoned)
        : random_(seed), poisoned_(std::move(poisoned)) {
        for (int i = 0; i < surveys; ++i) {
            shelf.items.push_back(survey_item("s" + std::to_string(i)));
        }
        for (int i = 0; i < photos; ++i) {
            shelf.items.push_back(i % 2 == 0 ? large_photo(i) : photo_item("p" + std::to_string(i)));
        }
        for (const int index : poisoned_) {
            if (static_cast<std::size_t>(index) < shelf.items.size()) {
                poisoned_keys.insert(shelf.items[static_cast<std::size_t>(index)].key);
            }
        }
        all = shelf.items;
        restart();
    }

    void run(Time quiet_from, Time until) {
        for (int i = 0; i < 200'000 && now < until; ++i) {
            auto step = outbox->next();
            if (step.request) {
                ++requests;
                now += std::chrono::milliseconds(100);
                meet(*step.request, now < quiet_from);
            } else if (step.wake_at) {
                RC_ASSERT(*step.wake_at > now || outbox->link().state != Link::State::quiet);
                now = std::max(now + std::chrono::milliseconds(1), *step.wake_at);
            } else if (outbox->link().state == Link::State::pair_again) {
                outbox->paired();
            } else {
                return;
            }
        }
    }

    Shelf shelf;
    Workroom workroom;
    std::vector<Item> all;
    std::set<std::string> poisoned_keys;
    Time now = start;
    int requests = 0;
    std::unique_ptr<Outbox> outbox;

private:
    void restart() {
        outbox = std::make_unique<Outbox>(
            shelf, [this] { return now; }, [this] { return random_(); }, Delays{}, Pieces{2000, 700});
        outbox->paired();
    }

    /// One that goes in six pieces or seven.
    Item large_photo(int number) {
        const std::string content(4000 + 100 * static_cast<std::size_t>(number), static_cast<char>('a' + number));
        auto item = item_with(content);
        workroom.contents[item.sha256] = content;
        return item;
    }

    void meet(const Request& request, bool faults) {
        const auto fate =
            faults ? static_cast<Fate>(random_() % static_cast<std::uint64_t>(Fate::count)) : Fate::arrives;
        switch (fate) {
            case Fate::not_reached:
                return outbox->failed(request.ticket, WireFailure::not_reached);
            case Fate::lost_before:
                return outbox->failed(request.ticket, WireFailure::broken_off);
            case Fate::lost_after:
                answer_to(request);
                return outbox->failed(request.ticket, WireFailure::broken_off);
            case Fate::cut_within:
                if (request.body_of && !poisoned_keys.contains(request.body_of->key)) {
                    static_cast<void>(workroom.receive(request, static_cast<long long>(random_() % 900)));
                }
                return outbox->failed(request.ticket, WireFailure::broken_off);
            case Fate::swept:
                workroom.uploads.clear();
                return outbox->answered(request.ticket, answer_to(request));
            case Fate::busy:
                return outbox->answered(request.ticket, problem_answer(ProblemKind::busy));
            case Fate::failed:
                return outbox->answered(request.ticket, problem_answer(ProblemKind::internal));
            case Fate::nonsense:
                return outbox->answered(request.ticket, {200, {}, "<html>Sign in to the harbour network</html>"});
            case Fate::forgotten:
                return outbox->answered(request.ticket, problem_answer(ProblemKind::unauthorised));
            case Fate::called_off:
                return outbox->called_off(request.ticket);
            case Fate::restarted:
                answer_to(request);
                return restart();
            case Fate::no_bytes:
                return outbox->failed(request.ticket, WireFailure::no_bytes);
            default:
                return outbox->answered(request.ticket, answer_to(request));
        }
    }

    Answer answer_to(const Request& request) {
        const bool poisoned = request.body_of && poisoned_keys.contains(request.body_of->key);
        return poisoned ? problem_answer(ProblemKind::internal) : workroom.receive(request);
    }

    std::mt19937_64 random_;
    std::set<int> poisoned_;
};

bool workroom_has(const World& world, const Item& item) {
    return item.kind == ItemKind::photo ? world.workroom.photos.contains(item.sha256)
                                        : world.workroom.surveys.contains(revision_path(item.survey, item.revision));
}

void prove(const char* law, const std::function<void()>& body) { ASSERT_TRUE(rc::check(law, body)) << law; }

}  // namespace

TEST(OutboxLaws, everythingArrivesOnceTheFaultsEndAndNothingCountsAsThereBefore) {
    prove("arrives and is confirmed truly", [] {
        const auto seed = *rc::gen::arbitrary<std::uint64_t>();
        const int surveys = *rc::gen::inRange(0, 6);
        const int photos = *rc::gen::inRange(0, 12);
        World world(seed, surveys, photos, {});
        world.run(start + std::chrono::hours(6), start + std::chrono::hours(24 * 7));
        for (const auto& item : world.all) {
            RC_ASSERT(world.shelf.confirmed.contains(item.key));
            RC_ASSERT(workroom_has(world, item));
            RC_ASSERT(world.shelf.confirmed.at(item.key).sha256 == item.sha256);
        }
        RC_ASSERT(world.shelf.refused.empty());
    });
}

TEST(OutboxLaws, whatIsConfirmedIsThereHoweverShortTheRun) {
    prove("confirmed means there", [] {
        World world(*rc::gen::arbitrary<std::uint64_t>(), 4, 6, {});
        const auto end = start + std::chrono::minutes(*rc::gen::inRange(1, 600));
        world.run(end, end);
        for (const auto& item : world.all) {
            const bool confirmed = world.shelf.confirmed.contains(item.key);
            const bool pending = std::any_of(world.shelf.items.begin(), world.shelf.items.end(),
                                             [&](const Item& kept) { return kept.key == item.key; });
            RC_ASSERT(confirmed != pending);
            RC_ASSERT(!confirmed || workroom_has(world, item));
        }
    });
}

TEST(OutboxLaws, badItemsNeverHoldUpTheRest) {
    prove("poison holds nothing up", [] {
        const auto poisoned = *rc::gen::container<std::set<int>>(rc::gen::inRange(0, 10));
        World world(*rc::gen::arbitrary<std::uint64_t>(), 5, 5, poisoned);
        world.run(start, start + std::chrono::minutes(5));
        for (const auto& item : world.all) {
            RC_ASSERT(world.shelf.confirmed.contains(item.key) != world.poisoned_keys.contains(item.key));
        }
    });
}

TEST(OutboxLaws, aDeadNetworkIsAskedSeldom) {
    prove("delays grow to the cap and keep within it", [] {
        std::mt19937_64 random(*rc::gen::arbitrary<std::uint64_t>());
        Shelf shelf;
        shelf.items = {survey_item("a"), photo_item("p")};
        Time now = start;
        Outbox outbox(
            shelf, [&now] { return now; }, [&random] { return random(); });
        outbox.paired();
        int tries = 0;
        std::chrono::milliseconds longest{0};
        while (now < start + std::chrono::hours(10)) {
            const auto step = outbox.next();
            if (step.request) {
                ++tries;
                outbox.failed(step.request->ticket, WireFailure::not_reached);
            } else {
                longest = std::max(longest, std::chrono::milliseconds(*step.wake_at - now));
                now = *step.wake_at;
            }
        }
        // Ten hours in steps of 150 to 300 s, and some twenty short ones at the start.
        RC_ASSERT(tries >= 120 && tries <= 260);
        RC_ASSERT(longest <= Delays{}.link_cap);
    });
}
