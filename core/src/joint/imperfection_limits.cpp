// SPDX-License-Identifier: MIT
#include "seamturn/joint/imperfection_limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::joint {

namespace {

using base::Citation;
using base::Status;

constexpr double least_thickness_mm = 0.5;
constexpr double sheet_up_to_mm = 3.0;

/// base + per_mm x size, at most `most`.
struct Line {
  double base_mm;
  double per_mm;
  double most_mm;
};
using Levels = std::array<Line, 3>;  // B, C, D

constexpr double no_most_mm = 1e9;
constexpr Levels excess_lines = {{{1.0, 0.10, 5.0}, {1.0, 0.15, 7.0}, {1.0, 0.25, 10.0}}};
constexpr Levels convexity_lines = {{{1.0, 0.10, 3.0}, {1.0, 0.15, 4.0}, {1.0, 0.25, 5.0}}};
constexpr Levels gap_lines = {{{0.5, 0.1, 2.0}, {0.5, 0.2, 3.0}, {1.0, 0.3, 4.0}}};
constexpr Levels gap_sheet_lines = {
    {{0.2, 0.1, no_most_mm}, {0.3, 0.1, no_most_mm}, {0.5, 0.1, no_most_mm}}};
constexpr Levels plate_lines = {{{0.0, 0.10, 3.0}, {0.0, 0.15, 4.0}, {0.0, 0.25, 5.0}}};
constexpr Levels plate_sheet_lines = {
    {{0.2, 0.10, no_most_mm}, {0.2, 0.15, no_most_mm}, {0.2, 0.25, no_most_mm}}};
constexpr Levels tube_lines = {{{0.0, 0.5, 2.0}, {0.0, 0.5, 3.0}, {0.0, 0.5, 4.0}}};

double on_line(const Levels& lines, QualityLevel level, double size_mm) {
  const Line& line = lines.at(static_cast<std::size_t>(level));
  return std::min(line.base_mm + line.per_mm * size_mm, line.most_mm);
}

std::optional<base::Refusal> too_thin(double thickness_mm) {
  SEAMTURN_REQUIRE(std::isfinite(thickness_mm), thickness_mm);
  if (thickness_mm >= least_thickness_mm) return std::nullopt;
  return base::Refusal{
      "joint.quality.thickness",
      "thickness " + base::digits_text(thickness_mm) +
          " mm: ISO 5817 gives limits from 0.5 mm on; agree one with the customer"};
}

}  // namespace

std::string_view quality_name(QualityLevel level) {
  switch (level) {
    case QualityLevel::b:
      return "B";
    case QualityLevel::c:
      return "C";
    case QualityLevel::d:
      return "D";
  }
  return "";
}

std::optional<QualityLevel> find_quality(std::string_view name) {
  for (const QualityLevel level : {QualityLevel::b, QualityLevel::c, QualityLevel::d}) {
    if (quality_name(level) == name) return level;
  }
  return std::nullopt;
}

ImperfectionLimit excess_metal_limit(QualityLevel level, double width_mm) {
  SEAMTURN_REQUIRE(base::is_positive(width_mm), width_mm);
  return {on_line(excess_lines, level, width_mm), {"ISO 5817", "no. 502", Status::from_memory}};
}

ImperfectionLimit convexity_limit(QualityLevel level, double face_width_mm) {
  SEAMTURN_REQUIRE(base::is_positive(face_width_mm), face_width_mm);
  return {on_line(convexity_lines, level, face_width_mm),
          {"ISO 5817", "no. 503", Status::from_memory}};
}

ImperfectionLimit convexity_limit_aws(double face_width_mm) {
  SEAMTURN_REQUIRE(base::is_positive(face_width_mm), face_width_mm);
  const double limit_mm = face_width_mm <= 8.0 ? 2.0 : face_width_mm < 25.0 ? 3.0 : 5.0;
  return {limit_mm, {"AWS D1.1", "convexity by face width", Status::from_memory}};
}

base::Outcome<ImperfectionLimit> fillet_gap_limit(QualityLevel level,
                                                  double thickness_mm,
                                                  double actual_throat_mm) {
  if (const auto refusal = too_thin(thickness_mm)) return *refusal;
  SEAMTURN_REQUIRE(std::isfinite(actual_throat_mm), actual_throat_mm);
  if (!(actual_throat_mm > 0.0)) {
    return base::Refusal{"joint.quality.value",
                         "the actual throat must be above 0 mm, found " +
                             base::digits_text(actual_throat_mm) + " mm"};
  }
  const Levels& lines = thickness_mm > sheet_up_to_mm ? gap_lines : gap_sheet_lines;
  return ImperfectionLimit{on_line(lines, level, actual_throat_mm),
                           {"SEAM-DATA", "ISO 5817:2023 no. 617, second-hand", Status::verified}};
}

base::Outcome<ImperfectionLimit> plate_misalignment_limit(QualityLevel level, double thickness_mm) {
  if (const auto refusal = too_thin(thickness_mm)) return *refusal;
  const Levels& lines = thickness_mm > sheet_up_to_mm ? plate_lines : plate_sheet_lines;
  return ImperfectionLimit{on_line(lines, level, thickness_mm),
                           {"SEAM-DATA", "ISO 5817:2023 no. 5071, second-hand", Status::verified}};
}

base::Outcome<ImperfectionLimit> tube_misalignment_limit(QualityLevel level, double thickness_mm) {
  if (const auto refusal = too_thin(thickness_mm)) return *refusal;
  return ImperfectionLimit{on_line(tube_lines, level, thickness_mm),
                           {"SEAM-DATA", "ISO 5817:2023 no. 5072, second-hand", Status::verified}};
}

ImperfectionLimit leg_excess_limit(double drawn_leg_mm) {
  SEAMTURN_REQUIRE(base::is_positive(drawn_leg_mm), drawn_leg_mm);
  constexpr double small_below_mm = 12.0;
  return {drawn_leg_mm < small_below_mm ? 3.0 : 4.0,
          {"GB/T 10854", "clauses 4.3 to 4.7, fillet leg", Status::verified}};
}

ImperfectionLimit cap_height_limit(bool flat_position) {
  return {flat_position ? 3.0 : 4.0,
          {"GB/T 10854", "clauses 4.3 to 4.7, excess height", Status::verified}};
}

CapLap cap_lap_over_opening() {
  return {4.0, 8.0, {"GB/T 10854", "clauses 4.3 to 4.7, width over the opening", Status::verified}};
}

}  // namespace seamturn::joint
