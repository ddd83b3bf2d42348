// SPDX-License-Identifier: Apache-2.0
#include "adjust/tape.h"

#include "units/rounding.h"

#include <algorithm>
#include <cmath>

namespace truehang {

TapeRule tape_rule(const Survey& survey, const HouseRules& rules) {
    TapeRule rule;
    rule.edge_u = Length::mm(rules.edge_u);
    rule.angle_u = Angle::degrees(rules.angle_u);
    if (survey.tape) {
        if (survey.tape->accuracy) {
            rule.accuracy = survey.tape->accuracy->known().value_or(TapeClass::II);
        }
        rule.graduation = survey.tape->graduation.value_or(rule.graduation);
        rule.case_length = survey.tape->case_length;
    }
    return rule;
}

Length permissible_error(TapeClass accuracy, Length length) {
    const double metres = ceil_whole(length.metres());
    switch (accuracy) {
        case TapeClass::I:
            return Length::mm(0.1 + 0.1 * metres);
        case TapeClass::II:
            return Length::mm(0.3 + 0.2 * metres);
        case TapeClass::III:
            break;
    }
    return Length::mm(0.6 + 0.4 * metres);
}

Length reading_u(Length reading, const TapeRule& rule) {
    const double mpe = permissible_error(rule.accuracy, reading).mm();
    const double graduation = rule.graduation.mm();
    const double edge = rule.edge_u.mm();
    return Length::mm(std::sqrt(mpe * mpe / 3.0 + graduation * graduation / 12.0 + edge * edge));
}

namespace {

bool is_estimated(const CountedReading& reading) {
    return reading.reading->how && reading.reading->how->is(How::estimated);
}

}  // namespace

Length reading_u(const CountedReading& reading, const TapeRule& rule) {
    if (is_estimated(reading) && reading.reading->u && reading.reading->u->mm() > 0.0) {
        return *reading.reading->u;
    }
    return reading_u(reading.value, rule);
}

Angle angle_u(const CountedReading& reading, const TapeRule& rule) {
    constexpr double least_u = 0.01;
    const bool own = is_estimated(reading) && reading.reading->angle_u && reading.reading->angle_u->degrees() > 0.0;
    return Angle::degrees(std::max(own ? reading.reading->angle_u->degrees() : rule.angle_u.degrees(), least_u));
}

Observation observation_of(const CountedReading& reading, const TapeRule& rule) {
    std::string word(reading.station.word);
    if (reading.angle) {
        return {std::move(word), reading.angle->degrees(), angle_u(reading, rule).degrees(), true};
    }
    return {std::move(word), reading.value.mm(), reading_u(reading, rule).mm(), false};
}

}  // namespace truehang
