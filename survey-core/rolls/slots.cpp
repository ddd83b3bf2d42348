// SPDX-License-Identifier: Apache-2.0
#include "rolls/slots.h"

#include <algorithm>
#include <numeric>

namespace truehang::laying {

namespace {

bool is_half(const PieceToCut& piece) { return piece.widths <= 0.5; }
bool is_loose(const PieceToCut& piece) { return piece.run.empty() && !piece.matched; }

/// How far apart matched pieces may begin at least: the repeat, or what its phases have in common with it.
Um step_of(const std::vector<PieceToCut>& pieces, const RollRules& rules) {
    Um common = down(rules.repeat);
    std::optional<Um> first;
    for (const PieceToCut& piece : pieces) {
        if (piece.matched) {
            first = first.value_or(down(piece.phase));
            common = std::gcd(common, down(piece.phase) - *first);
        }
    }
    return first ? common : 0;
}

/// One window's pieces, put into slots one after the other.
class WindowSlots {
public:
    WindowSlots(const std::vector<PieceToCut>& pieces, bool has_pattern) : pieces_(pieces), has_pattern_(has_pattern) {}

    void put(int i) {
        const PieceToCut& piece = at(i);
        const Slot slot{up(piece.length), has_pattern_ && piece.matched ? down(piece.phase) : Slot::anywhere};
        if (is_half(piece) && lies_beside(i, slot)) {
            return;
        }
        auto run = std::ranges::find_if(
            runs_, [&](const MadeRun& made) { return !piece.run.empty() && made.name == piece.run; });
        if (run == runs_.end()) {
            run = runs_.insert(runs_.end(), MadeRun{piece.run, is_loose(piece), {}});
        }
        run->slots.push_back({slot, {{i, 0, false}}, is_half(piece) ? slot.length : 0});
    }

    void finish(WindowRuns& runs, std::vector<std::vector<InSlot>>& slots) {
        for (MadeRun& made : runs_) {
            Run run{{}, static_cast<int>(slots.size())};
            for (MadeSlot& slot : made.slots) {
                run.slots.push_back(slot.slot);
                runs.length += slot.slot.length;
                slots.push_back(std::move(slot.pieces));
            }
            (made.is_loose && has_pattern_ ? runs.loose : runs.runs).push_back(std::move(run));
        }
    }

private:
    struct MadeSlot {
        Slot slot;
        std::vector<InSlot> pieces;
        Um free_beside = 0;
    };
    struct MadeRun {
        std::string name;
        bool is_loose;
        std::vector<MadeSlot> slots;
    };

    [[nodiscard]] const PieceToCut& at(int i) const { return pieces_[static_cast<std::size_t>(i)]; }

    bool lies_beside(int i, const Slot& slot) {
        for (MadeRun& run : runs_) {
            for (MadeSlot& made : run.slots) {
                const bool alike = made.slot == slot && made.free_beside == slot.length && run.name == at(i).run;
                if (alike || (is_loose(at(i)) && slot.length <= made.free_beside)) {
                    made.pieces.push_back({i, made.slot.length - made.free_beside, true});
                    made.free_beside -= slot.length;
                    return true;
                }
            }
        }
        return false;
    }

    const std::vector<PieceToCut>& pieces_;
    bool has_pattern_;
    std::vector<MadeRun> runs_;
};

}  // namespace

Slotted slotted(const std::vector<PieceToCut>& pieces, const RollRules& rules) {
    Slotted all;
    all.step = rules.repeat.mm() > 0.0 ? step_of(pieces, rules) : 0;
    std::map<std::string, std::size_t> numbers;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const std::string& id = pieces[i].window;
        const auto [known, is_new] = numbers.try_emplace(id, all.windows.size());
        if (is_new || id.empty()) {
            known->second = all.windows.size();
            all.windows.push_back({id, pieces[i].room, {}, {}});
        }
        all.windows[known->second].pieces.push_back(static_cast<int>(i));
    }
    std::map<std::string, int> rooms;
    for (SlottedWindow& window : all.windows) {
        if (!window.room.empty()) {
            window.runs.room = rooms.try_emplace(window.room, static_cast<int>(rooms.size())).first->second;
        }
        WindowSlots slots(pieces, all.step > 0);
        std::vector<int> order = window.pieces;
        std::stable_partition(order.begin(), order.end(), [&](int i) {
            const PieceToCut& piece = pieces[static_cast<std::size_t>(i)];
            return !(is_half(piece) && is_loose(piece));
        });
        for (const int i : order) {
            slots.put(i);
        }
        slots.finish(window.runs, all.slots);
    }
    return all;
}

}  // namespace truehang::laying
