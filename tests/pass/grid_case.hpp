// SPDX-License-Identifier: MIT
// Small cases for the choice of settings, with what a row can lay written out anew.
#pragma once

#include "pass/pass_fixture.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

inline constexpr double wire_mm2 = std::numbers::pi * 0.36 * 0.95;  // deposited, of the 1.2 mm wire

/// One case: an area limit for all beads, a margin, rows of the shop.
struct Case {
  Bench bench;
  double most_mm2 = 0.0;
  double most_layer_mm = 1e9;  ///< above the root
  double margin = 0.0;
};

inline double laid_mm3_s(const process::LinkedSettings& row) {
  return wire_mm2 * row.feed_mm_s;
}

inline bool lays(const Case& one, const process::LinkedSettings& row, double area_mm2) {
  const double travel = laid_mm3_s(row) / area_mm2;
  return travel >= row.travel_min_mm_s * (1.0 + one.margin) * (1.0 - 2e-9) &&
         travel <= row.travel_max_mm_s * (1.0 - one.margin) * (1.0 + 2e-9);
}

inline double departure(const process::LinkedSettings& row, double area_mm2) {
  return std::abs(laid_mm3_s(row) / area_mm2 / row.travel_preferred_mm_s - 1.0);
}

inline pass::StackRequest request_for(const Case& one, pass::StackAim aim) {
  pass::StackRequest request;
  request.section = &one.bench.section;
  request.family = one.bench.family;
  request.position = one.bench.position;
  request.length_mm = 500.0;
  request.wire = &one.bench.wire;
  request.settings = one.bench.settings;
  request.limits = one.bench.limits;
  request.aim = aim;
  request.margin_ratio = one.margin;
  return request;
}

inline Case random_case(base::Random& random, process::WeldFamily family) {
  Case one;
  one.bench.family = family;
  one.bench.settings = shop_travel();
  for (process::LinkedSettings& row : one.bench.settings) row.feed_mm_s *= random.between(0.7, 1.4);
  one.most_mm2 = random.between(14.0, 60.0);
  process::BeadLimit limit;
  limit.id = "area";
  limit.family = family;
  limit.area_max_mm2 = one.most_mm2;
  one.bench.limits = {limit};
  return one;
}

}  // namespace seamturn::tests
