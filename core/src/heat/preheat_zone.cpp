// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_zone.hpp"

#include <algorithm>
#include <cmath>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

// [ISO 13916] from memory.
constexpr double thin_up_to_mm = 50.0;
constexpr double thin_times = 4.0, thin_at_most_mm = 50.0;
constexpr double thick_distance_mm = 75.0;
constexpr double soak_s_per_mm = 120.0 / 25.0;
// [AWS D1.1] from memory: 3 in.
constexpr double zone_at_least_mm = 75.0;

}  // namespace

double measure_distance_mm(double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  if (thickness_mm > thin_up_to_mm) return thick_distance_mm;
  return std::min(thin_times * thickness_mm, thin_at_most_mm);
}

double zone_width_mm(double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  return std::max(thickness_mm, zone_at_least_mm);
}

double soak_time_s(double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  return soak_s_per_mm * thickness_mm;
}

std::string where_to_measure(double thickness_mm) {
  const bool thick = thickness_mm > thin_up_to_mm;
  // Rounded up: nobody reads a plate half a minute too early.
  const double minutes = std::ceil(soak_time_s(thickness_mm) / 60.0 - 1e-9);
  return std::string("measure ") + (thick ? "at least " : "") +
         base::digits_text(measure_distance_mm(thickness_mm)) +
         " mm from the groove edge, on the face away from the heat; on the heated face " +
         base::digits_text(minutes) + " min after the heat is taken away";
}

std::string_view single_run_fillet_condition() {
  return "single-run fillet, CET method: 60 K less preheat may do where the CET margin of plate "
         "over weld metal holds; agreed by the welding coordinator (EN 1011-2 C.3, from memory)";
}

const base::FigureCard& preheat_zone_card() {
  static const FigureKey keys[] = {
      {"thickness", Dimension::length, "thickest part at the weld", "> 0"},
  };
  static const Citation sources[] = {
      {"ISO 13916", "distance, face and wait", Status::from_memory},
      {"AWS D1.1", "width of the zone: the thickness, at least 75 mm", Status::from_memory},
  };
  static const base::FigureCard card{
      "preheat-zone",
      "how far from the weld preheat is put in and measured, and how long to wait",
      "zone max(t, 75 mm) each side; measured at min(4 t, 50 mm) up to 50 mm thick, at 75 mm "
      "above; "
      "wait 2 min per 25 mm on the heated face",
      "mm",
      "any thickness. All of it from memory; the procedure and the standard at hand govern. Where "
      "a "
      "customer asks for 4 t or 100 mm, heat that",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
