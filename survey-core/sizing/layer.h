// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/measured.h"
#include "sizing/headings.h"
#include "survey/findings.h"
#include "survey/house_rules.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// What one layer of a window asks for, with the defaults filled in and every word understood.
struct LayerAsked {
    Heading heading = Heading::tab;
    HardwareKind hardware_kind = HardwareKind::pole;
    Hang hang = Hang::level;
    Layout layout = Layout::pair;
    HemAt hem_at = HemAt::floor;
    Fit fit = Fit::inside;            ///< of a blind
    Run run = Run::straight;          ///< of the hardware
    TopEdge top = TopEdge::straight;  ///< of curtains
    DropsAt drops = DropsAt::one;     ///< of curtains
    double fullness = 1.0;
    const Hardware* hardware = nullptr;  ///< null where none was chosen
    const Treatment* treatment = nullptr;

    [[nodiscard]] bool is_blind() const { return heading == Heading::roman; }
    [[nodiscard]] bool is_inside_blind() const { return is_blind() && fit == Fit::inside; }
    [[nodiscard]] int curtains() const { return layout == Layout::pair && !is_blind() ? 2 : 1; }
    [[nodiscard]] bool is_shaped() const { return top == TopEdge::shaped; }
    [[nodiscard]] bool is_bent() const { return run == Run::bent && !is_blind() && !is_shaped(); }
    [[nodiscard]] bool is_on_track() const { return hardware_kind == HardwareKind::track; }
    /// The pole's diameter; of a track none, since its readings run to the glider's eye.
    [[nodiscard]] Length diameter() const;
};

/// One layer with all it rests on.
struct LayerContext {
    const Room& room;
    const Window& window;
    const MeasuredWindow& measured;  ///< adjusted for this layer's hang
    const HouseRules& rules;
    LayerAsked asked;
};

/// Words of the layer that this version doesn't know.
[[nodiscard]] std::vector<std::string> unknown_words(const Layer& layer);

/// The layer's choices; nothing where no heading was chosen or a word isn't understood.
[[nodiscard]] std::optional<LayerAsked> asked_of(const Layer& layer);

/// What a layer's working has to say beside its figures.
struct Findings {
    std::vector<Flag> flags;
    std::vector<Trace> trace;

    void flag(std::string code, Severity severity, std::string text, std::vector<std::string> stations = {},
              std::string obstruction = {});
    /// Whether one of the flags stops the cutting.
    [[nodiscard]] bool stops() const;
};

/// The steps of one figure, written in order.
class TraceOf {
public:
    TraceOf(Findings& findings, std::string figure);
    ~TraceOf();
    TraceOf(const TraceOf&) = delete;
    TraceOf& operator=(const TraceOf&) = delete;

    TraceOf& mm(std::string what, Length value, std::vector<std::string> from = {});
    TraceOf& count(std::string what, double value, std::vector<std::string> from = {});
    TraceOf& ratio(std::string what, double value, std::vector<std::string> from = {});

private:
    Findings& findings_;
    Trace trace_;
};

}  // namespace truehang
