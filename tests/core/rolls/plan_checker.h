// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/rolls.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace truehang {

/// Checks a roll plan against what was asked, from the pieces and rolls alone: it shares no code with the planner.
class PlanChecker {
public:
    PlanChecker(const std::vector<Roll>& rolls, const std::vector<PieceToCut>& pieces, const RollRules& rules)
        : rules_(rules) {
        for (const Roll& roll : rolls) {
            rolls_[roll.id] = &roll;
        }
        for (const PieceToCut& piece : pieces) {
            pieces_[piece.id] = &piece;
        }
    }

    /// What is wrong with the plan, a line each; nothing where it is sound.
    std::vector<std::string> faults(const RollPlan& plan) {
        faults_.clear();
        places_.clear();
        double used = 0.0;
        for (const PlannedRoll& roll : plan.rolls) {
            check_roll(roll);
            used += used_of(roll);
        }
        check_all_once(plan);
        check_windows(plan);
        check_runs();
        require(near(used, plan.used.mm()), "used in all");
        require(plan.least.mm() <= plan.used.mm() + tolerance, "the bound is above the plan");
        return faults_;
    }

private:
    static constexpr double tolerance = 0.003;
    struct Place {
        std::string roll, lot;
        double from = 0.0, to = 0.0;
        bool beside = false;
    };

    static bool near(double a, double b) { return std::abs(a - b) < tolerance; }
    void require(bool holds, const std::string& what) {
        if (!holds) {
            faults_.push_back(what);
        }
    }

    void check_roll(const PlannedRoll& planned) {
        require(rolls_.contains(planned.roll), planned.roll + " never came");
        const Roll& roll = *rolls_.at(planned.roll);
        require(planned.lot == roll.lot, planned.roll + " is of another lot");
        double end = 0.0;       // of the last cut across
        double half_end = 0.0;  // of what lies in the other half
        const PlannedCut* across = nullptr;
        for (const PlannedCut& cut : planned.cuts) {
            require(pieces_.contains(cut.piece), cut.piece + " wasn’t asked");
            const PieceToCut& piece = *pieces_.at(cut.piece);
            check_cut(roll, cut, piece);
            if (cut.beside) {
                require(across != nullptr && pieces_.at(across->piece)->widths <= 0.5 && piece.widths <= 0.5 &&
                            cut.from.mm() >= std::max(half_end, across->from.mm()) - tolerance &&
                            cut.to.mm() <= across->to.mm() + tolerance,
                        cut.piece + " doesn’t lie beside a half");
                half_end = cut.to.mm();
            } else {
                require(cut.from.mm() >= end - tolerance, cut.piece + " lies over the cut before it");
                end = cut.to.mm();
                across = &cut;
            }
            require(!places_.contains(cut.piece), cut.piece + " is cut twice");
            places_[cut.piece] = {planned.roll, planned.lot, cut.from.mm(), cut.to.mm(), cut.beside};
        }
        require(near(used_of(planned), planned.used.mm()), planned.roll + ": used");
    }

    void check_cut(const Roll& roll, const PlannedCut& cut, const PieceToCut& piece) {
        require(near((cut.to - cut.from).mm(), piece.length.mm()), cut.piece + ": length");
        require(cut.from.mm() >= -tolerance && cut.to.mm() <= roll.length.mm() + tolerance,
                cut.piece + " off the roll");
        for (const RollFlaw& flaw : roll.flaws) {
            require(cut.to.mm() <= flaw.from.mm() + tolerance || cut.from.mm() >= flaw.to.mm() - tolerance,
                    cut.piece + " over a flaw");
        }
        double line = roll.phase.mm();
        double line_from = -1.0;
        for (const RollJoin& join : roll.joins) {
            require(cut.to.mm() <= join.at.mm() + tolerance || cut.from.mm() >= join.at.mm() - tolerance,
                    cut.piece + " over a join");
            if (join.phase && join.at.mm() <= cut.from.mm() + tolerance && join.at.mm() > line_from) {
                line = join.phase->mm();
                line_from = join.at.mm();
            }
        }
        if (piece.matched && rules_.repeat.mm() > 0.0) {
            const double repeats = (cut.from.mm() - line - piece.phase.mm()) / rules_.repeat.mm();
            require(std::abs(repeats - std::round(repeats)) * rules_.repeat.mm() < tolerance, cut.piece + ": phase");
        }
    }

    /// Cloth used of a roll: to its last cut, less what is useful before a flaw or join on the way; all of it where
    /// what follows isn't useful.
    double used_of(const PlannedRoll& planned) const {
        const Roll& roll = *rolls_.at(planned.roll);
        struct Taken {
            double from, to;
            bool is_cut;
        };
        std::vector<Taken> taken;
        double end = 0.0;
        for (const PlannedCut& cut : planned.cuts) {
            taken.push_back({cut.from.mm(), cut.to.mm(), true});
            end = std::max(end, cut.to.mm());
        }
        for (const RollFlaw& flaw : roll.flaws) {
            taken.push_back({flaw.from.mm(), flaw.to.mm(), false});
        }
        for (const RollJoin& join : roll.joins) {
            taken.push_back({join.at.mm(), join.at.mm(), false});
        }
        taken.push_back({roll.length.mm(), roll.length.mm(), false});
        // A piece may begin at a flaw or a join: what lies before both ends at the flaw.
        std::sort(taken.begin(), taken.end(), [](const Taken& a, const Taken& b) {
            return a.from < b.from || (a.from == b.from && !a.is_cut && b.is_cut);
        });
        double at = 0.0;
        double used = end;
        bool tail = false;
        for (const Taken& each : taken) {
            if (!each.is_cut && each.from - at >= rules_.useful.mm() - tolerance) {
                tail = tail || at >= end - tolerance;
                used -= at >= end - tolerance ? 0.0 : each.from - at;
            }
            at = std::max(at, each.to);
        }
        return tail ? used : used + roll.length.mm() - end;
    }

    void check_all_once(const RollPlan& plan) {
        const std::set<std::string> left(plan.not_placed.begin(), plan.not_placed.end());
        for (const auto& [id, piece] : pieces_) {
            require(places_.contains(id) != left.contains(id), id + " is neither cut nor left out, or both");
        }
    }

    void check_windows(const RollPlan& plan) {
        std::map<std::string, std::set<std::string>> lots;
        std::map<std::string, std::set<std::string>> room_lots;
        for (const auto& [id, piece] : pieces_) {
            const std::string lot = places_.contains(id) ? "lot " + places_.at(id).lot : "none";
            if (!piece->window.empty()) {
                lots[piece->window].insert(lot);
            }
            if (!piece->room.empty() && lot != "none") {
                room_lots[piece->room].insert(lot);
            }
        }
        for (const auto& [window, from] : lots) {
            require(from.size() == 1, window + " comes from several lots, or in part");
        }
        std::set<std::string> split;
        for (const auto& [room, from] : room_lots) {
            if (from.size() > 1) {
                split.insert(room);
            }
        }
        require(split == std::set<std::string>(plan.split_rooms.begin(), plan.split_rooms.end()), "split rooms");
    }

    void check_runs() {
        std::map<std::pair<std::string, std::string>, std::vector<std::string>> runs;
        for (const auto& [id, piece] : pieces_) {
            if (!piece->run.empty() && places_.contains(id)) {
                runs[{piece->window, piece->run}].push_back(id);
            }
        }
        for (const auto& [name, ids] : runs) {
            const Place& first = places_.at(ids.front());
            double from = first.from;
            double to = first.to;
            for (const std::string& id : ids) {
                require(places_.at(id).roll == first.roll, name.second + " lies on two rolls");
                from = std::min(from, places_.at(id).from);
                to = std::max(to, places_.at(id).to);
            }
            for (const auto& [id, place] : places_) {
                const PieceToCut& piece = *pieces_.at(id);
                const bool within =
                    place.roll == first.roll && place.from < to - tolerance && place.to > from + tolerance;
                const bool own = piece.window == name.first && piece.run == name.second;
                const bool loose = piece.run.empty() && !piece.matched && (rules_.repeat.mm() > 0.0 || place.beside);
                require(!within || own || loose, id + " lies between the pieces of " + name.second);
            }
        }
    }

    const RollRules& rules_;
    std::map<std::string, const Roll*> rolls_;
    std::map<std::string, const PieceToCut*> pieces_;
    std::map<std::string, Place> places_;
    std::vector<std::string> faults_;
};

}  // namespace truehang
