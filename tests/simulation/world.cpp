// SPDX-License-Identifier: Apache-2.0
#include "world.h"

#include "protocol/digest.h"

#include <algorithm>
#include <ostream>

namespace truehang::sync::simulation {
namespace {

using namespace std::chrono_literals;

const Time start = Time(std::chrono::milliseconds(1'773'483'600'000));
constexpr auto noisy = 2h;      ///< edits and faults
constexpr auto patience = 60s;  ///< of a phone, for an answer
constexpr auto longest = 48h;   ///< until all is sent

Way way_of(const Request& request) {
    const auto place = read_path(request.path);
    switch (place ? place->kind : Place::Kind::health) {
        case Place::Kind::receipt:
            return Way::ask_survey;
        case Place::Kind::revision:
            return request.method == Method::get ? Way::fetch_survey : Way::send_survey;
        case Place::Kind::photo:
            return request.method == Method::post   ? Way::begin_upload
                   : request.method == Method::head ? Way::ask_photo
                                                    : Way::send_photo;
        default:
            return request.method == Method::head ? Way::ask_upload : Way::send_piece;
    }
}

/// What a phone takes a sign-in page for that believes any 200.
Answer believed(const Request& request) {
    const auto& item = *request.body_of;
    return {200,
            {},
            item.kind == ItemKind::survey
                ? write_record(SurveyReceipt{item.survey, item.revision, item.sha256, "2026-03-14T12:00:00Z"})
                : write_record(PhotoReceipt{item.sha256, item.bytes, "2026-03-14T12:00:00Z"})};
}

}  // namespace

World::World(std::uint64_t seed, Bug bug, std::ostream* told)
    : seed_(seed), random_(seed), bug_(bug), told_(told), now_(start), workroom_(bug) {
    for (int i = 0; i < phones; ++i) {
        phones_[i] = std::make_unique<PhoneModel>(
            i == 0 ? "anna" : "ben", bug,
            PhoneModel::World{[this, i] { return clock_of(i); }, [this] { return random_(); },
                              [this](const Item& item) { check_receipt(item); }});
    }
}

Ended World::run() {
    begin();
    run_until(start + noisy);
    while (ended_.edits < edits && !queue_.empty()) {  // that waited for a phone to start again
        run_until(queue_.top().at);
    }
    settle();
    check_entered("when all was sent ");
    for (const int last : {0, 1, 0}) {  // whoever sends last has met what all the others sent
        phone(last).keep(with_last_word(phone(last).visit(), "word " + std::to_string(++names_)), {});
        phone(last).finish_edit();
        pump(last);
        settle();
    }
    run_until(now_ + 10min);
    check_end();
    return std::move(ended_);
}

/// Anna makes the visit, may send it, and hands it to Ben as a file.
void World::begin() {
    phone(0).keep(begun_visit(), {});
    phone(0).finish_edit();
    if (below(2) == 0) {
        settle();
    }
    Survey handed = phone(0).visit();
    handed.parents = phone(0).parents();
    const auto bytes = write_survey(handed, false);
    phone(0).add_parent(bytes);
    phone(1).keep(read_survey(bytes).value(), {});
    phone(1).finish_edit();
    phone(1).add_parent(bytes);
    mean_faults();
    for (int left = edits; left > 0;) {  // in bursts, as people work
        const auto burst = std::min<int>(left, 1 + static_cast<int>(below(6)));
        const auto when = between(0, Duration(noisy).count() - 60'000);
        const bool both = below(2) == 0;
        const auto one = below(phones);
        for (int i = 0; i < burst; ++i) {
            const auto by = static_cast<int>(both ? below(phones) : one);
            after(when + between(0, 30'000), [this, by] { edit(by); });
        }
        left -= burst;
    }
    after(between(0, 60'000), [this] { follow(); });
}

void World::after(Duration wait, std::function<void()> happens) {
    queue_.push({now_ + std::max(wait, Duration(0)), ++events_, std::move(happens)});
}

void World::run_until(Time end) {
    while (!queue_.empty() && queue_.top().at <= end) {
        now_ = queue_.top().at;
        const auto happens = queue_.top().happens;
        queue_.pop();
        happens();
    }
    now_ = std::max(now_, end);
}

/// Until both phones have sent all that they have.
void World::settle() {
    pump(0);
    pump(1);
    const Time end = now_ + longest;
    const auto unsettled = [this] {
        return std::ranges::any_of(phones_, [](const auto& one) { return !one->alive() || !one->all_sent(); });
    };
    while (unsettled() && now_ < end && !queue_.empty()) {
        run_until(queue_.top().at);
    }
}

std::optional<Fault> World::strike(Way way, Phase phase) {
    const auto can = possible(way, phase);
    if (faults_.empty() || faults_.front().from > now_ || can.empty()) {
        return std::nullopt;
    }
    const Meant meant = faults_.front();
    const bool as_meant = meant.what.way == way && meant.what.phase == phase;
    if (!as_meant && (now_ < meant.from + 10min || way == Way::follow)) {
        return std::nullopt;
    }
    faults_.pop_front();
    const Fault fault = as_meant ? meant.what.fault : can[below(can.size())];
    ended_.tally.add(way, phase, fault);
    tell(way_words[static_cast<std::size_t>(way)], std::string(phase_words[static_cast<std::size_t>(phase)]) + ": " +
                                                       std::string(fault_words[static_cast<std::size_t>(fault)]));
    go_on_with(way, fault);
    return fault;
}

/// Every other seed means one case alone, each in its turn; the others what chance brings.
void World::mean_faults() {
    std::vector<Time> times(faults);
    for (auto& time : times) {
        time = now_ + between(0, Duration(noisy - 20min).count());
    }
    std::ranges::sort(times);
    const bool one_case = seed_ % 2 == 0;
    const Case turn = cases()[seed_ / 2 % cases().size()];
    for (const auto& time : times) {
        faults_.push_back({time, one_case ? turn : a_case()});
    }
    for (const Way sent : {Way::send_survey, Way::send_photo, Way::send_piece}) {
        if (one_case && turn.way == asked_after(sent)) {  // to be asked, something has to break off
            faults_[0].what = faults_[2].what = {sent, Phase::answering, Fault::cut};
        }
    }
}

void World::go_on_with(Way way, Fault fault) {
    const bool broken = fault == Fault::cut || fault == Fault::delayed || fault == Fault::receiver_dies;
    if (!broken || faults_.empty() || seed_ % 2 == 0 || below(2) == 0) {
        return;
    }
    do {
        faults_.front() = {now_, a_case()};
    } while (faults_.front().what.way != asked_after(way));
}

void World::wrong(std::string what) {
    tell("WRONG", what);
    ended_.wrong.push_back(std::move(what));
}

void World::tell(std::string_view who, std::string_view what) {
    for (const std::string_view text : {who, what}) {  // FNV-1a, http://www.isthe.com/chongo/tech/comp/fnv/
        for (const char byte : text) {
            ended_.trace = (ended_.trace ^ static_cast<unsigned char>(byte)) * 1'099'511'628'211ULL;
        }
    }
    ended_.trace = (ended_.trace ^ static_cast<std::uint64_t>((now_ - start).count())) * 1'099'511'628'211ULL;
    if (told_ != nullptr) {
        *told_ << (now_ - start).count() << " ms  " << who << ": " << what << '\n';
    }
}

void World::check_receipt(const Item& item) {
    const auto& records = workroom_.records();
    if (item.kind == ItemKind::photo) {
        const auto photo = records.photos.find(item.sha256);
        if (photo == records.photos.end() || hex(sha256(photo->second)) != item.sha256) {
            wrong("a receipt without its record: " + item.key);
        }
        return;
    }
    const auto survey = records.surveys.find(item.survey);
    const auto& of = survey != records.surveys.end() ? survey->second : std::map<long long, KeptRevision>{};
    const auto kept = of.find(item.revision);
    if (kept == of.end() || hex(sha256(kept->second.bytes)) != item.sha256) {
        wrong("a receipt without its record: " + item.key);
    }
}

void World::edit(int number) {
    if (!phone(number).alive()) {
        return after(between(1'000, 60'000), [this, number] { edit(number); });
    }
    const auto before = strike(Way::edit, Phase::leaving);
    if (before == Fault::phone_dies) {  // not kept, and nobody was told that it is: it is entered again
        kill_phone(number);
        return after(1s, [this, number] { edit(number); });
    }
    if (before == Fault::clock_jumps) {
        set_clock(number);
    }
    std::string fault;
    // As long as all others, and later ones greater, as ids made from the time are.
    const auto name = std::to_string(100'000 + ++names_) + phone(number).name().front();
    const auto edited = edit_by_chance(
        phone(number).visit(), name, [this](auto end) { return below(end); }, fault);
    if (!fault.empty()) {
        wrong(fault);
    }
    if (!edited) {
        return after(1s, [this, number] { edit(number); });
    }
    tell(phone(number).name(), edited->what);
    phone(number).keep(edited->visit, edited->photos);
    edited->happened(truth_);
    ++ended_.edits;
    const auto afterwards = strike(Way::edit, Phase::acted);
    if (afterwards == Fault::phone_dies) {
        return kill_phone(number);
    }
    if (afterwards == Fault::clock_jumps) {
        set_clock(number);
    }
    phone(number).finish_edit();
    pump(number);
}

void World::kill_phone(int number) {
    phone(number).die();
    after(between(1'000, 600'000), [this, number] {
        phone(number).start();
        pump(number);
    });
}

void World::set_clock(int number) {
    const auto year = Duration(std::chrono::hours(24 * 365)).count();
    set_wrong_[number] = between(0, 2 * year) - Duration(year);
}

void World::pump(int number) {
    if (!phone(number).alive()) {
        return;
    }
    const auto step = phone(number).outbox().next();
    if (step.request) {
        return leave(number, *step.request);
    }
    if (step.wake_at) {
        const auto pump_number = ++pumps_[number];
        const auto wait = std::clamp<Duration>(*step.wake_at - clock_of(number), 1ms, 1h);
        after(wait, [this, number, pump_number] {
            if (pumps_[number] == pump_number) {
                pump(number);
            }
        });
    }
}

void World::leave(int number, const Request& request) {
    auto trip = std::make_shared<Trip>();
    trip->phone = number;
    trip->life = phone(number).life();
    trip->way = way_of(request);
    trip->request = request;
    ++ended_.requests;
    const auto fault = strike(trip->way, Phase::leaving);
    if (fault == Fault::phone_dies) {
        if (below(2) == 0) {
            static_cast<void>(phone(number).take_body(request));
        }
        return kill_phone(number);
    }
    if (fault == Fault::cut) {
        return after(1s, [this, trip] { fail(trip, WireFailure::not_reached); });
    }
    if (fault == Fault::clock_jumps) {
        set_clock(number);
    }
    const auto body = phone(number).take_body(request);
    if (!body) {
        return after(1ms, [this, trip] { fail(trip, WireFailure::no_bytes); });
    }
    trip->body = *body;
    travel(trip);
}

void World::travel(const Sent& trip) {
    after(patience, [this, trip] { fail(trip, WireFailure::broken_off); });
    const auto receiver = a_receiver();
    if (!receiver) {
        return after(1s, [this, trip] { fail(trip, WireFailure::not_reached); });
    }
    auto latency = between(20, 300);
    const auto unheard = [this, &trip, receiver](Duration wait, bool cut) {
        auto other = std::make_shared<Trip>(*trip);
        other->heard = false;
        other->body = cut ? trip->body.substr(0, below(trip->body.size() + 1)) : trip->body;
        after(wait, [this, other, receiver] { arrive(other, *receiver); });
    };
    const auto fault = strike(trip->way, Phase::arriving);
    if (fault == Fault::cut) {
        if (below(2) == 0) {
            unheard(latency, true);
        }
        return after(between(400, 30'000), [this, trip] { fail(trip, WireFailure::broken_off); });
    }
    if (fault == Fault::delayed) {
        return unheard(between(60'000, 900'000), false);
    }
    if (fault == Fault::repeated) {
        unheard(between(0, 120'000), false);
    } else if (fault == Fault::receiver_dies) {
        kill_receiver(*receiver);
    } else if (fault == Fault::sign_in_page) {
        return after(latency, [this, trip] { hear(trip, sign_in_page(trip->request)); });
    } else if (fault == Fault::busy || fault == Fault::disk_full) {
        const bool for_good = bug_ == Bug::busy_is_for_good;
        const auto kind = for_good               ? ProblemKind::erased
                          : fault == Fault::busy ? ProblemKind::busy
                                                 : ProblemKind::disk_full;
        return after(latency, [this, trip, kind] { reply(trip, problem_answer({kind, "Later.", {}})); });
    }
    after(latency, [this, trip, receiver] { arrive(trip, *receiver); });
}

std::optional<int> World::a_receiver() {
    const int one = static_cast<int>(below(WorkroomModel::receivers));
    return up_[one] ? std::optional(one) : up_[1 - one] ? std::optional(1 - one) : std::nullopt;
}

void World::arrive(const Sent& trip, int receiver) {
    if (!up_[receiver]) {
        return;  // nobody answers
    }
    const bool writes = trip->way == Way::send_survey || trip->way == Way::send_photo || trip->way == Way::send_piece;
    if (!writes || bug_ == Bug::cursor_past_in_flight || bug_ == Bug::looked_before_the_lock) {
        return handle(trip, receiver, false);
    }
    take_lock({receiver, lives_[receiver], [this, trip, receiver] { handle(trip, receiver, true); }});
}

void World::handle(const Sent& trip, int receiver, bool alone) {
    const auto outcome = workroom_.look(receiver, trip->request, trip->body);
    if (outcome.write && bug_ == Bug::looked_before_the_lock) {
        return take_lock(
            {receiver, lives_[receiver], [this, trip, receiver, outcome] { commit(trip, receiver, outcome, true); }});
    }
    if (outcome.write) {
        return commit(trip, receiver, outcome, alone);
    }
    if (alone) {
        release_lock();
    }
    reply(trip, outcome.answer);
}

void World::commit(const Sent& trip, int receiver, const WorkroomModel::Outcome& outcome, bool alone) {
    const auto fault = strike(trip->way, Phase::within);
    if (fault == Fault::receiver_dies) {
        return kill_receiver(receiver);
    }
    if (fault == Fault::disk_full) {
        if (alone) {
            release_lock();
        }
        return reply(trip, problem_answer({ProblemKind::disk_full, "Later.", {}}));
    }
    const bool early = bug_ == Bug::receipt_before_commit;
    if (early) {
        reply(trip, outcome.answer);
    }
    const auto takes = below(5) == 0 ? between(1'000, 8'000) : between(1, 40);
    after(takes, [this, trip, receiver, outcome, alone, early, life = lives_[receiver]] {
        if (lives_[receiver] != life) {
            return;  // rolled back
        }
        outcome.write();
        note_commit(trip->request);
        if (alone) {
            release_lock();
        }
        if (strike(trip->way, Phase::kept)) {
            return kill_receiver(receiver);
        }
        if (!early) {
            reply(trip, outcome.answer);
        }
    });
}

void World::note_commit(const Request& request) {
    const auto place = read_path(request.path);
    if (!place || place->kind != Place::Kind::revision) {
        return;
    }
    const auto& kept = workroom_.records().surveys.at(place->survey).at(place->revision);
    const auto [known, is_new] = committed_.try_emplace(request.path, kept.receipt.sha256);
    if (!is_new && known->second != kept.receipt.sha256) {
        wrong("replaced: " + request.path);
    }
    tell("workroom", "has " + request.path);
}

void World::reply(const Sent& trip, Answer answer) {
    if (!trip->heard) {
        return;
    }
    auto latency = between(20, 300);
    const auto fault = strike(trip->way, Phase::answering);
    if (fault == Fault::cut) {
        return after(latency, [this, trip] { fail(trip, WireFailure::broken_off); });
    }
    if (fault == Fault::phone_dies && trip->life == phone(trip->phone).life() && phone(trip->phone).alive()) {
        return kill_phone(trip->phone);
    }
    if (fault == Fault::delayed) {
        latency += between(60'000, 600'000);
    } else if (fault == Fault::sign_in_page) {
        answer = sign_in_page(trip->request);
    }
    after(latency, [this, trip, answer] { hear(trip, answer); });
}

Answer World::sign_in_page(const Request& request) const {
    const bool taken_in = bug_ == Bug::sign_in_page_believed && request.body_of && !request.range;
    return taken_in ? believed(request) : Answer{200, {}, "<html>Sign in to the harbour network</html>"};
}

void World::fail(const Sent& trip, WireFailure failure) {
    if (trip->life == phone(trip->phone).life() && phone(trip->phone).alive()) {
        phone(trip->phone).outbox().failed(trip->request.ticket, failure);
        pump(trip->phone);
    }
}

void World::hear(const Sent& trip, const Answer& answer) {
    if (trip->life != phone(trip->phone).life() || !phone(trip->phone).alive()) {
        return;
    }
    const int together = phone(trip->phone).put_together();
    phone(trip->phone).outbox().answered(trip->request.ticket, answer);
    if (phone(trip->phone).put_together() > together) {
        for (const auto& entry : phone(trip->phone).visit().changed_twice) {
            tell(phone(trip->phone).name(), "has two of " + entry.at);
        }
    }
    tell(phone(trip->phone).name(),
         std::string(way_words[static_cast<std::size_t>(trip->way)]) + " answered " + std::to_string(answer.status));
    if (strike(trip->way, Phase::acted)) {
        return kill_phone(trip->phone);
    }
    pump(trip->phone);
}

void World::kill_receiver(int receiver) {
    up_[receiver] = false;
    ++lives_[receiver];
    if (holder_ && holder_->receiver == receiver) {
        release_lock();
    }
    after(between(1'000, 60'000), [this, receiver] { up_[receiver] = true; });
}

void World::take_lock(Writer writer) {
    if (holder_) {
        waiting_.push_back(std::move(writer));
        return;
    }
    holder_ = writer;
    writer.writes();
}

void World::release_lock() {
    holder_.reset();
    while (!waiting_.empty() && !holder_) {
        Writer next = std::move(waiting_.front());
        waiting_.pop_front();
        if (lives_[next.receiver] == next.life) {
            take_lock(std::move(next));
        }
    }
}

/// Once a minute or so: what came in after the cursor, kept with the next one.
void World::follow() {
    after(between(20'000, 60'000), [this] { follow(); });
    if (strike(Way::follow, Phase::leaving) || !a_receiver() || strike(Way::follow, Phase::arriving)) {
        return;
    }
    const auto [changes, next] = workroom_.changes_after(follower_.cursor);
    if (changes.empty() || strike(Way::follow, Phase::answering)) {
        return;
    }
    const auto keep = [this, &changes = changes] {
        for (const auto& change : changes) {
            ++follower_.seen[change.sha256];
        }
    };
    const bool apart = bug_ == Bug::cursor_before_the_record;
    if (!apart) {
        keep();
    }
    follower_.cursor = next;
    if (strike(Way::follow, Phase::acted)) {
        return;
    }
    if (apart) {
        keep();
    }
}

void World::check_entered(const std::string& when) {
    const auto there = read_survey(workroom_.newest(phone(0).visit().id).bytes).value();
    for (const auto& fault : truth_.faults_of(there)) {
        wrong(when + fault);
    }
}

void World::check_photos(const Survey& there) {
    const auto& records = workroom_.records();
    for (const auto& room : there.rooms) {
        for (const auto& window : room.windows) {
            for (const auto& photo : window.photos) {
                const auto kept = records.photos.find(photo.sha256);
                if (kept == records.photos.end() || hex(sha256(kept->second)) != photo.sha256) {
                    wrong("a photo isn’t whole: " + photo.sha256);
                }
            }
        }
    }
}

void World::check_end() {
    for (const auto& one : phones_) {
        for (const auto& refusal : one->refusals()) {
            wrong("refused: " + refusal);
        }
        if (!one->all_sent()) {
            wrong(one->name() + " never sent all");
        }
        ended_.put_together += one->put_together();
    }
    const auto& id = phone(0).visit().id;
    const auto& revisions = workroom_.records().surveys.at(id);
    for (const auto& [path, digest] : committed_) {
        const auto kept = revisions.find(read_path(path)->revision);
        if (kept == revisions.end() || kept->second.receipt.sha256 != digest) {
            wrong("a record was lost: " + path);
        }
        const auto seen = follower_.seen.find(digest);
        if (seen == follower_.seen.end() || seen->second != 1) {
            wrong((seen == follower_.seen.end() ? "never told: " : "told twice: ") + path);
        }
    }
    check_entered("in the end ");
    const auto there = read_survey(workroom_.newest(id).bytes).value();
    check_photos(there);
    Survey last = phone(0).visit();
    last.revision = there.revision;
    last.parents = there.parents;
    if (write_survey(last, false) != workroom_.newest(id).bytes) {
        wrong("anna has another visit in the end than the workroom");
    }
}

}  // namespace truehang::sync::simulation
