// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "truth.h"

#include <string>
#include <utility>

namespace truehang::trial {

/// A reading as a person writes it down: the text, and what it says (mm, degrees of an angle).
struct WrittenReading {
    std::string text;
    double value = 0.0;
};

/// A length to the nearest mark of the tape, as typed in this unit: whole mm, cm with one decimal, inches and eighths.
[[nodiscard]] WrittenReading write_down(double mm, LengthUnit unit);
/// An angle as a bevel shows it, to the nearest of its steps (degrees).
[[nodiscard]] WrittenReading write_angle_down(double degrees, double step);

/// What a reading says, mm or degrees; it must have a value.
[[nodiscard]] double value_of(const Reading& reading);
void set_value(Reading& reading, double value);
[[nodiscard]] bool has_value(const Reading& reading);
/// Two values of a station that a person would take for one: half the coarsest mark (an eighth of an inch) and what a
/// centimetre with one decimal loses in inches; of an angle half the coarsest step.
[[nodiscard]] double same_value(std::string_view station);

/// How the tape errs, and how rough the edges are, beside what the survey states.
struct Conditions {
    bool one_scale = true;  ///< one scale error for all readings of the visit; else each reading errs by itself
    double rough = 1.0;     ///< edges are this many times as rough as stated, for the tape and for the bevel
};

/// One tape on one visit. The scale error is drawn once, uniformly within what the class permits of a 5 m tape at its
/// whole length (EU 2014/32 Annex X: a + 5 b over 5 m), so no reading errs by more than is permitted. A bevel laid
/// against two facets errs by the house rule's half degree, and shows tenths (seven in ten) or halves of a degree:
/// common practice, no source.
class Visit {
public:
    Visit(const Truth& truth, const Conditions& conditions, Random& random);

    /// Reads one station with the tape, the edges and the eye of this visit. `slip` (mm, degrees) is added before it is
    /// read off.
    [[nodiscard]] Reading take(const std::string& station, double truth, Random& random, double slip = 0.0) const;
    /// All stations of the walk.
    [[nodiscard]] Window measure(const Truth& truth, Random& random) const;
    /// The same readings without any error at all but the last bits.
    [[nodiscard]] Window without_error(const Truth& truth) const;

    [[nodiscard]] const Survey& survey() const { return survey_; }
    [[nodiscard]] LengthUnit unit() const { return unit_; }
    [[nodiscard]] double case_mm() const { return case_mm_; }
    [[nodiscard]] double bevel_step() const { return bevel_step_; }

private:
    [[nodiscard]] Window empty_window(const Truth& truth) const;

    Survey survey_;
    LengthUnit unit_ = LengthUnit::mm;
    Conditions conditions_;
    double a_ = 0.3, b_ = 0.2;
    double scale_ = 0.0;
    double edge_ = 2.0;
    double case_mm_ = 70.0;
    double bevel_step_ = 0.1;
};

}  // namespace truehang::trial
