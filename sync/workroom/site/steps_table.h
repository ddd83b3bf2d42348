// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "protocol/marks.h"
#include "protocol/records.h"
#include "sheet/differences.h"
#include "sheet/made.h"
#include "survey/survey.h"
#include "workroom/archive/archive.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// One layer, and what stands marked of it.
struct StepsLayer {
    MadeLayer made;        ///< by the newest revision; of one that is gone only its ids and its title
    bool is_there = true;  ///< in the newest revision
    std::string hangs;     ///< "A pair, tab headed, lined …"; empty where it is gone
    std::string digest;    ///< of `made`; empty where it is gone
    std::array<std::optional<sync::LayerMark>, sync::all_steps.size()> steps;

    /// Whether it is marked, and the newest revision has other figures than it was marked by.
    [[nodiscard]] bool has_changed(sync::Step step) const;
    [[nodiscard]] bool has_changed() const;
    /// The furthest step that is done; nothing where none is.
    [[nodiscard]] const sync::LayerMark* furthest() const;
};

/// A survey's newest revision with what was done by it and by those before.
struct StepsTable {
    Survey survey;
    Figures figures;
    std::vector<sync::SurveyReceipt> receipts;  ///< rising; the last is the newest
    MadeHouse made;
    std::vector<StepsLayer> layers;         ///< in the survey's order, then those that are gone
    bool lost_agreement = false;            ///< an earlier revision was signed, and the newest carries no agreement
    std::map<long long, MadeHouse> before;  ///< by revision: those that marks were made by, but the newest

    [[nodiscard]] long long newest() const { return receipts.back().revision; }
    /// What differs of a layer from an earlier revision that is in `before`.
    [[nodiscard]] LayerDifference since(long long revision, const StepsLayer& layer) const;
};

/// Nothing where the survey isn't here; `damaged` where its newest revision can't be read.
[[nodiscard]] Result<std::optional<StepsTable>> lay_out_steps(Archive& archive, const std::string& survey);

/// What one revision's layers are made by; nothing where it isn't here or can't be read any more.
[[nodiscard]] Result<std::optional<MadeHouse>> made_by_revision(Archive& archive, const std::string& survey,
                                                                long long revision);

}  // namespace truehang::workroom
