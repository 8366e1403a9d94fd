// SPDX-License-Identifier: MIT
#include <algorithm>

#include "pass/detail_limits.hpp"

namespace seamturn::pass {
namespace {

template <class T>
[[nodiscard]] bool holds(const std::vector<T>& list, T wanted) {
  return list.empty() || std::find(list.begin(), list.end(), wanted) != list.end();
}

void tighten(Bound& bound, const std::optional<double>& value, const std::string& id) {
  if (value && *value < bound.value) {
    bound = {*value, id};
  }
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

}  // namespace seamturn::pass
