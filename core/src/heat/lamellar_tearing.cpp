// SPDX-License-Identifier: MIT
#include "seamturn/heat/lamellar_tearing.hpp"

#include <cmath>
#include <span>
#include <string>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Severity;
using base::Status;

// [EN 1993-1-10] table 3.2 and [EN 1993-1-1] table 3.2, FROM MEMORY.
struct Step {
  double up_to_mm;
  double points;
};
constexpr Step depth_steps[] = {
    {7.0, 0.0}, {10.0, 3.0}, {20.0, 6.0}, {30.0, 9.0}, {40.0, 12.0}, {1e300, 15.0}};
constexpr Step through_steps[] = {
    {10.0, 2.0}, {20.0, 4.0}, {30.0, 6.0}, {40.0, 8.0}, {50.0, 10.0}, {60.0, 12.0}, {1e300, 15.0}};

struct Shape {
  std::string_view name;
  double points;
};
constexpr Shape tearing_shapes[] = {
    {"not-in-tension", -25.0},
    {"bevel-through", -10.0},
    {"single-run-fillet", -5.0},
    {"multi-run-fillet", 0.0},
    {"sequenced-penetration", 3.0},
    {"penetration", 5.0},
    {"corner", 8.0},
};
constexpr double restraint_points[] = {0.0, 3.0, 5.0};
constexpr double preheat_counts_from_c = 100.0, preheat_points = -8.0;
constexpr std::string_view class_names[] = {"none", "Z15", "Z25", "Z35"};

double points_of(double mm, std::span<const Step> steps) {
  for (const Step& step : steps) {
    if (mm <= step.up_to_mm) return step.points;
  }
  return steps.back().points;
}

const Shape& shape_of(TearingShape shape) {
  const auto index = static_cast<std::size_t>(shape);
  SEAMTURN_REQUIRE(index < std::size(tearing_shapes), index);
  return tearing_shapes[index];
}

ZClass class_of(double total) {
  if (total <= 10.0) return ZClass::none;
  if (total <= 20.0) return ZClass::z15;
  return total <= 30.0 ? ZClass::z25 : ZClass::z35;
}

}  // namespace

std::string_view tearing_shape_name(TearingShape shape) {
  return shape_of(shape).name;
}

std::string_view z_class_name(ZClass z) {
  const auto index = static_cast<std::size_t>(z);
  SEAMTURN_REQUIRE(index < std::size(class_names), index);
  return class_names[index];
}

std::optional<ZClass> find_z_class(std::string_view name) {
  for (std::size_t i = 0; i < std::size(class_names); ++i) {
    if (class_names[i] == name) return static_cast<ZClass>(i);
  }
  return std::nullopt;
}

std::string_view tearing_verdict_name(TearingVerdict verdict) {
  constexpr std::string_view names[] = {"none required", "met", "not met"};
  const auto index = static_cast<std::size_t>(verdict);
  SEAMTURN_REQUIRE(index < std::size(names), index);
  return names[index];
}

TearingVerdict compare(ZClass required, ZClass plate) {
  if (required == ZClass::none) return TearingVerdict::none_required;
  return plate >= required ? TearingVerdict::met : TearingVerdict::not_met;
}

Tearing lamellar_tearing(const TearingParams& params) {
  SEAMTURN_REQUIRE(base::is_positive(params.effective_depth_mm), params.effective_depth_mm);
  SEAMTURN_REQUIRE(base::is_positive(params.through_thickness_mm), params.through_thickness_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.preheat_c), params.preheat_c);
  const auto restraint = static_cast<std::size_t>(params.restraint);
  SEAMTURN_REQUIRE(restraint < std::size(restraint_points), restraint);
  Tearing out;
  out.za = points_of(params.effective_depth_mm, depth_steps);
  out.zb = shape_of(params.shape).points;
  out.zc = points_of(params.through_thickness_mm, through_steps) *
           (params.compressed_statically ? 0.5 : 1.0);
  out.zd = restraint_points[restraint];
  out.ze = params.preheat_c >= preheat_counts_from_c ? preheat_points : 0.0;
  out.total = out.za + out.zb + out.zc + out.zd + out.ze;
  out.required = class_of(out.total);
  if (out.required != ZClass::none) {
    out.findings.push_back(detail::finding(
        Severity::warning,
        "heat.lamellar.needs_class",
        "the plate is pulled through its thickness: Z_Ed " + base::digits_text(out.total) +
            " asks for class " + std::string(z_class_name(out.required)) +
            " (EN 10164); order it, or change the joint, the weld or the preheat"));
  } else {
    out.findings.push_back(detail::finding(
        Severity::note,
        "heat.lamellar.not_released",
        "Z_Ed " + base::digits_text(out.total) +
            " asks for no class, by points from memory: that releases nothing, the designer "
            "decides by the standard at hand"));
  }
  return out;
}

const base::FigureCard& lamellar_tearing_card() {
  static const FigureKey keys[] = {
      {"depth",
       Dimension::length,
       "effective depth of the weld: leg of a fillet, depth of a penetration weld",
       "> 0"},
      {"shape",
       Dimension::none,
       "weld on the through plate",
       "not-in-tension, bevel-through, single-run-fillet, multi-run-fillet, "
       "sequenced-penetration, penetration or corner",
       true,
       true},
      {"through-thickness", Dimension::length, "thickness of the plate pulled through it", "> 0"},
      {"restraint", Dimension::none, "of the shrinkage", "low, medium or high", true, true},
      {"preheat",
       Dimension::temperature,
       "what the joint is really heated to",
       "counts from 100 degC",
       false},
      {"compressed",
       Dimension::none,
       "only static compression through the plate",
       "yes or no, no when left out",
       false,
       true},
      {"plate-class",
       Dimension::none,
       "class of the plate, to be compared",
       "none, Z15, Z25 or Z35",
       false,
       true},
  };
  static const Citation sources[] = {
      {"EN 1993-1-10", "2005, table 3.2: points", Status::from_memory},
      {"EN 1993-1-1", "2005, table 3.2: classes", Status::from_memory},
  };
  static const base::FigureCard card{
      "lamellar-tearing",
      "points against lamellar tearing and the through-thickness class they ask for",
      "Z_Ed = Za depth + Zb shape + Zc thickness + Zd restraint + Ze preheat; up to 10 none, 20 "
      "Z15, "
      "30 Z25, above Z35",
      "points",
      "rolled plates pulled through their thickness. All points from memory: a caution, never a "
      "release; the designer decides by the standard at hand",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
