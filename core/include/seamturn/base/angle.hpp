// SPDX-License-Identifier: MIT
// An angle that cannot be mistaken for a bare number: made and read only through a named unit.
#pragma once

#include <compare>
#include <numbers>

namespace seamturn::base {

/// A plane angle. Internally radians.
class Angle {
 public:
  constexpr Angle() = default;
  [[nodiscard]] static constexpr Angle deg(double degrees) {
    return Angle(degrees * std::numbers::pi / 180.0);
  }
  [[nodiscard]] static constexpr Angle rad(double radians) { return Angle(radians); }
  [[nodiscard]] constexpr double deg() const { return rad_ * 180.0 / std::numbers::pi; }
  [[nodiscard]] constexpr double rad() const { return rad_; }

  friend constexpr auto operator<=>(Angle, Angle) = default;
  friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.rad_ + b.rad_); }
  friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.rad_ - b.rad_); }
  friend constexpr Angle operator-(Angle a) { return Angle(-a.rad_); }
  friend constexpr Angle operator*(double k, Angle a) { return Angle(k * a.rad_); }
  friend constexpr Angle operator/(Angle a, double k) { return Angle(a.rad_ / k); }

 private:
  explicit constexpr Angle(double radians) : rad_(radians) {}
  double rad_ = 0.0;
};

}  // namespace seamturn::base
