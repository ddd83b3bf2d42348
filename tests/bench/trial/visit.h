// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "truth.h"

#include <string>
#include <utility>

namespace truehang::trial {

/// A reading as a person writes it down: the text, and what it says.
struct WrittenReading {
    std::string text;
    double mm = 0.0;
};

/// A length to the nearest mark of the tape, as typed in this unit: whole mm, cm with one decimal, inches and eighths.
[[nodiscard]] WrittenReading write_down(double mm, LengthUnit unit);

/// How the tape errs, and how rough the edges are, beside what the survey states.
struct Conditions {
    bool one_scale = true;  ///< one scale error for all readings of the visit; else each reading errs by itself
    double rough = 1.0;     ///< edges are this many times as rough as stated
};

/// One tape on one visit. The scale error is drawn once, uniformly within what the class permits of a 5 m tape at its
/// whole length (EU 2014/32 Annex X: a + 5 b over 5 m), so no reading errs by more than is permitted.
class Visit {
public:
    Visit(Shape shape, const Conditions& conditions, Random& random);

    /// Reads one station with the tape, the edges and the eye of this visit. `slip_mm` is added before it is read off.
    [[nodiscard]] Reading take(const std::string& station, double truth, Random& random, double slip_mm = 0.0) const;
    /// All stations of the walk.
    [[nodiscard]] Window measure(const Truth& truth, Random& random) const;
    /// The same readings without any error at all but the last bits.
    [[nodiscard]] Window without_error(const Truth& truth) const;

    [[nodiscard]] const Survey& survey() const { return survey_; }
    [[nodiscard]] LengthUnit unit() const { return unit_; }
    [[nodiscard]] double case_mm() const { return case_mm_; }

private:
    Survey survey_;
    LengthUnit unit_ = LengthUnit::mm;
    Conditions conditions_;
    double a_ = 0.3, b_ = 0.2;
    double scale_ = 0.0;
    double edge_ = 2.0;
    double case_mm_ = 70.0;
};

}  // namespace truehang::trial
