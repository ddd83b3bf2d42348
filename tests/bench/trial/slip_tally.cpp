// SPDX-License-Identifier: Apache-2.0
#include "slip_tally.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace truehang::trial {

namespace {

/// What is counted of the slips of one kind in one shape.
struct Row {
    Share detectable, flagged, station, right, first, alone, wrong_value, wrong_station;
    Share given_away_first;
    std::array<Share, 4> settled;
    Share ambiguous, with_it;
    double flagged_by_theory = 0.0;
    double theory_variance = 0.0;

    void add(const SlipCase& told) {
        detectable.add(told.detectable);
        if (!told.detectable) {
            return;
        }
        flagged.add(told.verdict.flagged);
        flagged_by_theory += told.flag_probability;
        theory_variance += told.flag_probability * (1.0 - told.flag_probability);
        if (!told.verdict.flagged) {
            return;
        }
        station.add(told.verdict.station);
        right.add(told.verdict.right);
        first.add(told.verdict.first);
        alone.add(told.verdict.alone && !told.verdict.wrong_value);
        wrong_value.add(told.verdict.wrong_value);
        wrong_station.add(told.verdict.wrong_station);
        if (told.given_away) {
            given_away_first.add(told.verdict.first);
        }
        ambiguous.add(told.is_ambiguous());
        if (told.is_ambiguous()) {
            with_it.add(told.settled_wrongly);
            for (std::size_t n = 0; n < settled.size(); ++n) {
                settled[n].add(told.settled_after > 0 && static_cast<std::size_t>(told.settled_after) <= n + 1);
            }
        }
    }

    [[nodiscard]] std::vector<std::string> cells(const std::string& name) const {
        return {name,
                fmt::format("{}", detectable.of),
                fmt::format("{}", detectable.count),
                percent(flagged),
                percent(station),
                percent(right),
                percent(first),
                fmt::format("{} ({})", percent(given_away_first), given_away_first.of),
                percent(alone),
                percent(wrong_value),
                percent(wrong_station),
                percent(ambiguous),
                percent(settled[0]),
                percent(settled[1]),
                percent(settled[3]),
                percent(with_it)};
    }
};

const std::vector<std::string> headings{"slip",
                                        "planted",
                                        "detectable",
                                        "flagged",
                                        "station",
                                        "value",
                                        "first",
                                        "first where given away (of)",
                                        "rightly alone",
                                        "alone, wrong value",
                                        "alone, wrong station",
                                        "ambiguous",
                                        "settled by 1",
                                        "by 2",
                                        "by 4",
                                        "added up with it"};

/// Of those, what is told of each shape.
std::vector<std::string> in_short(const std::vector<std::string>& cells) {
    std::vector<std::string> few;
    for (const std::size_t column : {0U, 1U, 2U, 3U, 4U, 5U, 6U, 8U, 11U, 14U}) {
        few.push_back(cells[column]);
    }
    return few;
}

std::string name_of(Slip slip) { return std::string(std::ranges::find(slip_kinds, slip, &SlipKind::slip)->name); }

/// The slip, and that it is one of an angle's digits where lengths have it too.
std::string name_of(const SlipCase& told) {
    const bool angles_own =
        told.slip == Slip::supplement || told.slip == Slip::outside_angle || told.slip == Slip::half_angle;
    return name_of(told.slip) + (told.of_angle && !angles_own ? ", of an angle" : "");
}

/// Who is named alone and isn't the one: what was planted, and what was said.
void tell_wrong_names(const std::vector<SlipCase>& cases, Report& report) {
    std::map<std::pair<std::string, std::string>, std::array<int, 3>> counts;
    for (const SlipCase& told : cases) {
        if (told.detectable && told.verdict.wrong_value) {
            auto& [all, elsewhere, sure] = counts[{name_of(told), told.verdict.suspects.front().slip}];
            ++all;
            elsewhere += told.verdict.wrong_station ? 1 : 0;
            sure += told.verdict.suspects.front().weight >= 0.9 ? 1 : 0;
        }
    }
    Table table{"Named alone, and not the one",
                "",
                {"planted, and said", "windows", "of them another station", "of all with 0.9 or more"},
                {}};
    for (const auto& [names, count] : counts) {
        table.rows.push_back({names.first + ", said to be " + names.second, fmt::format("{}", count[0]),
                              fmt::format("{}", count[1]), fmt::format("{}", count[2])});
    }
    report.tables.push_back(std::move(table));
}

void judge_detection(const Row& all, Report& report) {
    const double off = static_cast<double>(all.flagged.count) - all.flagged_by_theory;
    report.criteria.push_back(
        {"slips above the detectable size are flagged as often as theory says",
         fmt::format("{} of {}, {:.1f} expected", all.flagged.count, all.flagged.of, all.flagged_by_theory),
         off >= -3.0902 * std::sqrt(all.theory_variance) - 0.5});
}

void judge_least(const std::string& what, const Share& share, double least, Report& report) {
    report.criteria.push_back(
        {what, fmt::format("{} of {}", percent(share), share.of), share.of > 0 && share.value() >= share.least(least)});
}

/// The same for the lengths of each group of shapes by themselves, and for angles.
void judge_groups(const std::vector<SlipCase>& cases, Report& report) {
    std::map<std::string, std::pair<Row, Row>> groups;  // all, and those that leave a value
    for (const SlipCase& told : cases) {
        auto& [all, recoverable] = groups[told.of_angle ? "angles" : std::string(kind_of(told.built).group)];
        all.add(told);
        if (told.recoverable) {
            recoverable.add(told);
        }
    }
    for (const auto& [group, rows] : groups) {
        const auto& [all, recoverable] = rows;
        const auto judge = [&](const std::string& what, const Share& share, double least) {
            if (share.of > 0) {  // a quick run has none of some
                judge_least(group + ": " + what, share, least, report);
            }
        };
        judge("right station and value among the suspects in 90 %", recoverable.right, 0.9);
        judge("first in 90 % where given away", all.given_away_first, 0.9);
        judge("95 % of the ambiguous settled", all.settled[3], 0.95);
    }
}

void judge_slips(const std::vector<SlipCase>& cases, const Row& all, const Row& recoverable, Report& report) {
    judge_detection(all, report);
    judge_least("the right station and value among the suspects in 90 % or more", recoverable.right, 0.9, report);
    judge_groups(cases, report);
    Share in_vain;
    for (const SlipCase& told : cases) {
        if (told.is_ambiguous()) {
            in_vain.add(!told.asked_in_vain.empty());
        }
    }
    report.criteria.push_back({"nothing is asked for that isn't there",
                               fmt::format("{} of {}", in_vain.count, in_vain.of), in_vain.count == 0});
    judge_least("first in 90 % or more where the digits give it away", all.given_away_first, 0.9, report);
    judge_least("95 % or more of the ambiguous settled by what is asked for, up to four readings", all.settled[3], 0.95,
                report);
}

}  // namespace

std::string SlipCase::what_is_bad() const {
    if (!detectable) {
        return {};
    }
    if (!verdict.flagged) {
        return flag_probability > 0.999 ? "not flagged" : std::string();
    }
    if (verdict.wrong_station) {
        return "the wrong station named alone, " + name_of(slip);
    }
    if (!verdict.station) {
        return "station not among the suspects";
    }
    if (given_away && !verdict.first) {
        return "given away by its digits, yet not first";
    }
    if (recoverable && !verdict.right) {
        return "value not among the suspects, " + name_of(slip);
    }
    if (settled_wrongly) {
        return "adds up with the slip still there";
    }
    if (!asked_in_vain.empty()) {
        return "asked for what isn't there";
    }
    if (is_ambiguous() && stuck) {
        return "nothing asked for";
    }
    return is_ambiguous() && settled_after == 0 ? "not settled by four readings" : std::string();
}

void Examples::put_into(Report& report) const {
    for (const auto& [what, told] : told_) {
        report.examples.insert(report.examples.end(), told.begin(), told.end());
    }
}

void tell_slips(const std::vector<SlipCase>& cases, Report& report) {
    std::map<std::pair<Slip, std::string>, Row> by_kind;
    std::map<std::tuple<Slip, std::string, Built>, Row> by_shape;
    Row all;
    Row recoverable;
    for (const SlipCase& told : cases) {
        by_kind[{told.slip, name_of(told)}].add(told);
        by_shape[{told.slip, name_of(told), told.built}].add(told);
        all.add(told);
        if (told.recoverable) {
            recoverable.add(told);
        }
    }
    Table kinds{
        "What is said of each kind of slip",
        "“Detectable”: above the least size that a network finds in four of five cases; the columns after it are of "
        "those. “Value”: the right station with the value that stood there before, or, of a copied value and an error "
        "that no rule makes, the right station said to be unexplained or copied. “Given away”: put right, everything "
        "adds up, and no other single slip of this trial's list explains what is written with a tenth of the "
        "likelihood or more. “Ambiguous”: not first with half of the weight; those are answered with what `next` asks "
        "for, until all adds up without the slip or the right one is first with half of the weight. “Added up with "
        "it”: a reading taken anew made all add up, and the slip is still there.",
        headings,
        {}};
    for (const auto& [kind, row] : by_kind) {
        kinds.rows.push_back(row.cells(kind.second));
    }
    kinds.rows.push_back(recoverable.cells("all that leave a value"));
    kinds.rows.push_back(all.cells("all"));
    report.tables.push_back(std::move(kinds));
    Table shapes{"The same by shape", "", in_short(headings), {}};
    for (const auto& [key, row] : by_shape) {
        shapes.rows.push_back(
            in_short(row.cells(fmt::format("{}, {}", std::get<1>(key), kind_of(std::get<2>(key)).name))));
    }
    report.tables.push_back(std::move(shapes));
    tell_wrong_names(cases, report);
    judge_slips(cases, all, recoverable, report);
}

void tell_weights(const std::vector<SlipCase>& cases, Report& report) {
    std::array<Share, 10> right;
    std::array<double, 10> stated{};
    Share middle;
    double none_stated = 0.0;
    Share none;
    for (const SlipCase& told : cases) {
        if (!told.verdict.flagged || !told.detectable) {
            continue;
        }
        double sum = 0.0;
        for (std::size_t i = 0; i < told.verdict.suspects.size(); ++i) {
            const double weight = told.verdict.suspects[i].weight;
            const auto bin = static_cast<std::size_t>(std::clamp(weight * 10.0, 0.0, 9.0));
            right[bin].add(told.rightness[i]);
            stated[bin] += weight;
            sum += weight;
            if (weight >= 0.4 && weight <= 0.6) {
                middle.add(told.rightness[i]);
            }
        }
        none.add(!told.verdict.right);
        none_stated += std::max(0.0, 1.0 - sum);
    }
    Table table{"How far the weights can be believed",
                "Suspects by the weight that they were given, and how many of them were right.",
                {"weight", "suspects", "mean weight", "right"},
                {}};
    for (std::size_t bin = 0; bin < right.size(); ++bin) {
        const auto of = static_cast<double>(std::max<long long>(right[bin].of, 1));
        table.rows.push_back(
            {fmt::format("{:.1f} to {:.1f}", 0.1 * static_cast<double>(bin), 0.1 * static_cast<double>(bin) + 0.1),
             fmt::format("{}", right[bin].of), percent(stated[bin] / of), percent(right[bin])});
    }
    table.rows.push_back({"none of these", fmt::format("{}", none.of),
                          percent(none_stated / static_cast<double>(std::max<long long>(none.of, 1))), percent(none)});
    report.tables.push_back(std::move(table));
    report.criteria.push_back(
        {"of suspects given 0.4 to 0.6, 40 to 60 % are right", fmt::format("{} of {}", percent(middle), middle.of),
         middle.of > 0 && middle.value() >= middle.least(0.4) && middle.value() <= middle.most(0.6)});
}

}  // namespace truehang::trial
