// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "detail_angles.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::turn::detail {

namespace {

constexpr double same_rad = 1e-12;

Minimum golden(const std::function<double(double)>& value, double low, double high, double fine) {
  constexpr double share = 1.0 / std::numbers::phi;
  double a = high - share * (high - low), b = low + share * (high - low);
  double at_a = value(a), at_b = value(b);
  while (high - low > fine) {
    if (at_a <= at_b) {
      high = b;
      b = a;
      at_b = at_a;
      a = high - share * (high - low);
      at_a = value(a);
    } else {
      low = a;
      a = b;
      at_a = at_b;
      b = low + share * (high - low);
      at_b = value(b);
    }
  }
  return at_a <= at_b ? Minimum{a, at_a} : Minimum{b, at_b};
}

}  // namespace

base::Angle tidy_angle(double y, double x) {
  const double angle = std::atan2(y, x);
  if (angle < -std::numbers::pi + same_rad) return base::Angle::rad(std::numbers::pi);
  return std::abs(angle) < same_rad ? base::Angle() : base::Angle::rad(angle);
}

base::Angle wrapped(double rad) {
  const double angle = std::remainder(rad, 2.0 * std::numbers::pi);
  if (angle < -std::numbers::pi + same_rad) return base::Angle::rad(std::numbers::pi);
  return std::abs(angle) < same_rad ? base::Angle() : base::Angle::rad(angle);
}

Minimum least_of(
    const std::function<double(double)>& value, double from, double to, int steps, double fine) {
  SEAMTURN_REQUIRE(steps > 0, steps);
  std::vector<Minimum> tried;
  const auto place = [&](int k) { return from + (to - from) * k / steps; };
  for (int k = 0; k <= steps; ++k) tried.push_back({place(k), value(place(k))});
  std::vector<int> best(tried.size());
  for (std::size_t k = 0; k < best.size(); ++k) best[k] = static_cast<int>(k);
  std::stable_sort(best.begin(), best.end(), [&](int a, int b) {
    return tried[static_cast<std::size_t>(a)].value < tried[static_cast<std::size_t>(b)].value;
  });
  Minimum least = tried[static_cast<std::size_t>(best.front())];
  for (std::size_t k = 0; k < std::min<std::size_t>(3, best.size()); ++k) {
    const Minimum found =
        golden(value, place(std::max(0, best[k] - 1)), place(std::min(steps, best[k] + 1)), fine);
    if (found.value < least.value) least = found;
  }
  return least;
}

}  // namespace seamturn::turn::detail
