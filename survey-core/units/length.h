// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <compare>

namespace truehang {

/// A length or a height, held in millimetres as a double: adjusted readings and pi put most derived lengths between
/// whole micrometres, and 0.1 um of a 100 m range still leaves six spare digits. Negative where a direction counts.
class Length {
public:
    constexpr Length() = default;
    [[nodiscard]] static constexpr Length mm(double millimetres) { return Length(millimetres); }
    [[nodiscard]] static constexpr Length inches(double inches) { return Length(inches * mm_per_inch); }
    [[nodiscard]] static constexpr Length metres(double metres) { return Length(metres * 1000.0); }

    [[nodiscard]] constexpr double mm() const { return mm_; }
    [[nodiscard]] constexpr double metres() const { return mm_ / 1000.0; }
    [[nodiscard]] constexpr double inches() const { return mm_ / mm_per_inch; }

    friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
    friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
    friend constexpr Length operator-(Length a) { return Length(-a.mm_); }
    friend constexpr Length operator*(double k, Length a) { return Length(k * a.mm_); }
    friend constexpr Length operator*(Length a, double k) { return Length(k * a.mm_); }
    friend constexpr Length operator/(Length a, double k) { return Length(a.mm_ / k); }
    friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }
    constexpr Length& operator+=(Length b) {
        mm_ += b.mm_;
        return *this;
    }
    constexpr Length& operator-=(Length b) {
        mm_ -= b.mm_;
        return *this;
    }
    friend constexpr auto operator<=>(Length, Length) = default;

    /// The international inch is 25.4 mm exactly.
    static constexpr double mm_per_inch = 25.4;

private:
    explicit constexpr Length(double millimetres) : mm_(millimetres) {}
    double mm_ = 0.0;
};

/// A plane angle in degrees.
class Angle {
public:
    constexpr Angle() = default;
    [[nodiscard]] static constexpr Angle degrees(double degrees) { return Angle(degrees); }
    [[nodiscard]] constexpr double degrees() const { return degrees_; }
    friend constexpr auto operator<=>(Angle, Angle) = default;

private:
    explicit constexpr Angle(double degrees) : degrees_(degrees) {}
    double degrees_ = 0.0;
};

/// A mass in kilograms.
class Mass {
public:
    constexpr Mass() = default;
    [[nodiscard]] static constexpr Mass kg(double kilograms) { return Mass(kilograms); }
    [[nodiscard]] constexpr double kg() const { return kg_; }
    friend constexpr Mass operator+(Mass a, Mass b) { return Mass(a.kg_ + b.kg_); }
    friend constexpr Mass operator*(double k, Mass a) { return Mass(k * a.kg_); }
    friend constexpr auto operator<=>(Mass, Mass) = default;

private:
    explicit constexpr Mass(double kilograms) : kg_(kilograms) {}
    double kg_ = 0.0;
};

namespace literals {
constexpr Length operator""_mm(long double v) { return Length::mm(static_cast<double>(v)); }
constexpr Length operator""_mm(unsigned long long v) { return Length::mm(static_cast<double>(v)); }
}  // namespace literals

}  // namespace truehang
