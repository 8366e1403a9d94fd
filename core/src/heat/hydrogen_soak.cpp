// SPDX-License-Identifier: MIT
#include "seamturn/heat/hydrogen_soak.hpp"

#include <algorithm>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr double mm_per_hour = 25.0;  // common practice: 1 h per 25 mm

}  // namespace

HydrogenSoak hydrogen_soak(double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  HydrogenSoak soak;
  soak.hours = std::max(soak.least_hours, thickness_mm / mm_per_hour);
  soak.text =
      "hydrogen soak straight from the interpass temperature: " + base::digits_text(soak.least_c) +
      " to " + base::digits_text(soak.most_c) + " degC (usual " + base::digits_text(soak.usual_c) +
      "), " + base::digits_text(soak.hours, 2) +
      " h, then slowly cold under covers; not above what the steel maker permits (quenched "
      "and tempered and wear steels: often 200 degC). Advice, no release";
  return soak;
}

const base::FigureCard& hydrogen_soak_card() {
  static const FigureKey keys[] = {
      {"thickness", Dimension::length, "thickest part at the weld", "> 0"},
  };
  static const Citation sources[] = {
      {"EN 1011-2", "2001: 200 to 300 degC, at least 2 h", Status::from_memory},
      {"SOAK", "250 degC, 1 h per 25 mm", Status::common_practice},
  };
  static const base::FigureCard card{
      "hydrogen-soak",
      "advice on driving hydrogen out of a weld before it cools",
      "200 to 300 degC, the longer of 2 h and 1 h per 25 mm",
      "h",
      "ferritic steels; below the steel maker's highest temperature, which may forbid it. From "
      "memory: advice for the welding coordinator, no release",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
