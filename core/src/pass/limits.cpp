// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "pass/detail_limits.hpp"

namespace seamturn::pass {
namespace {

// A size equal to its limit is within it, whatever the rounding of the geometry.
constexpr double rounding_ratio = 1e-9;
// Beads beyond this are not a weld any more; keeps a nonsense limit from overflowing an int.
constexpr double most_beads = 1e6;

template <class T>
[[nodiscard]] bool holds(const std::vector<T>& list, T wanted) {
  return list.empty() || std::find(list.begin(), list.end(), wanted) != list.end();
}

void tighten(Bound& bound, const std::optional<double>& value, const std::string& id) {
  if (value && *value < bound.value) {
    bound = {*value, id};
  }
}

[[nodiscard]] int ceil_count(double ratio) {
  return static_cast<int>(std::min(most_beads, std::ceil(ratio - rounding_ratio)));
}

}  // namespace

Caps find_caps(std::span<const process::BeadLimit> limits, const CapsKey& key) {
  Caps caps;
  for (const process::BeadLimit& row : limits) {
    if (row.family != key.family || !holds(row.roles, key.role) ||
        !holds(row.positions, key.position)) {
      continue;
    }
    tighten(caps.leg_mm, row.leg_max_mm, row.id);
    tighten(caps.area_mm2, row.area_max_mm2, row.id);
    tighten(caps.thickness_mm, row.thickness_max_mm, row.id);
    tighten(caps.split_mm, row.split_width_mm, row.id);
  }
  return caps;
}

void Excess::compare(double value, const Bound& bound) {
  const double ratio = value / bound.value;
  if (ratio > 1.0 + rounding_ratio && ratio > ratio_) {
    ratio_ = ratio;
    id_ = bound.id;
  }
}

int split_beads(double width_mm, const Bound& split_mm) {
  const double ratio = width_mm / split_mm.value;
  return ratio <= 1.0 + rounding_ratio ? 1 : std::max(2, ceil_count(1.5 * ratio));
}

int area_beads(double area_mm2, const Bound& bound_mm2) {
  return std::max(1, ceil_count(area_mm2 / bound_mm2.value));
}

}  // namespace seamturn::pass
