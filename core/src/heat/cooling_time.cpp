// SPDX-License-Identifier: MIT
#include "seamturn/heat/cooling_time.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

// t8/5 counts from 800 to 500 degC: a plate that starts at 500 never cools to it.
constexpr double upper_c = 800.0, lower_c = cooling_start_limit_c;
constexpr double warned_above_c = cooling_start_usual_max_c;

struct ShapeFactors {
  std::string_view name;
  double factor_2d;
  double factor_2d_long;  ///< upper end where the table gives a range
  double factor_3d;
};

// [EN 1011-2] 2001 table D.1, FROM MEMORY; in the order of CoolingCase. Of the tee's range the
// lower end stands first: shorter cooling, harder zone, the careful side for cracking.
constexpr ShapeFactors shapes[] = {
    {"run-on-plate", 1.0, 1.0, 1.0},
    {"butt", 0.9, 0.9, 0.9},
    {"fillet-tee", 0.45, 0.67, 0.67},
    {"fillet-corner", 0.9, 0.9, 0.67},
};

const ShapeFactors& shape_of(CoolingCase weld) {
  const std::size_t index = static_cast<std::size_t>(weld);
  SEAMTURN_REQUIRE(index < std::size(shapes), index);
  return shapes[index];
}

double slope_3d(double start_c) {
  return 6700.0 - 5.0 * start_c;
}
double slope_2d(double start_c) {
  return (4300.0 - 4.3 * start_c) * 1e5;
}

double time_3d_s(const CoolingParams& p, double factor) {
  const double low = 1.0 / (lower_c - p.start_c);
  const double high = 1.0 / (upper_c - p.start_c);
  return slope_3d(p.start_c) * p.heat_input_kj_mm * (low - high) * factor;
}

double time_2d_s(const CoolingParams& p, double factor) {
  const double low = 1.0 / (lower_c - p.start_c);
  const double high = 1.0 / (upper_c - p.start_c);
  const double per_thickness = p.heat_input_kj_mm / p.thickness_mm;
  return slope_2d(p.start_c) * per_thickness * per_thickness * (low * low - high * high) * factor;
}

double transition_mm(const CoolingParams& p, const ShapeFactors& shape) {
  const double sum = 1.0 / (lower_c - p.start_c) + 1.0 / (upper_c - p.start_c);
  return std::sqrt(slope_2d(p.start_c) / slope_3d(p.start_c) * p.heat_input_kj_mm * sum *
                   shape.factor_2d / shape.factor_3d);
}

}  // namespace

std::string_view heat_flow_name(HeatFlow flow) {
  return flow == HeatFlow::three_dimensional ? "3-D" : "2-D";
}

std::string_view cooling_case_name(CoolingCase c) {
  return shape_of(c).name;
}

CoolingCase cooling_case_of(joint::JointType type) {
  switch (type) {
    case joint::JointType::butt:
      return CoolingCase::butt;
    case joint::JointType::corner:
      return CoolingCase::fillet_corner;
    case joint::JointType::tee:
    case joint::JointType::lap:
      break;
  }
  return CoolingCase::fillet_tee;
}

base::Outcome<CoolingTime> cooling_time(const CoolingParams& p) {
  SEAMTURN_REQUIRE(base::is_positive(p.heat_input_kj_mm), p.heat_input_kj_mm);
  SEAMTURN_REQUIRE(base::is_positive(p.thickness_mm), p.thickness_mm);
  SEAMTURN_REQUIRE(std::isfinite(p.start_c), p.start_c);
  if (p.start_c >= lower_c) {
    return base::Refusal{"heat.t85.start_too_hot",
                         "start temperature " + base::shortest_text(p.start_c) +
                             " degC is not below 500 degC: such a plate has no cooling time from "
                             "800 to 500 degC; let it cool first"};
  }
  const ShapeFactors& shape = shape_of(p.weld);
  CoolingTime time;
  time.factor_2d = shape.factor_2d;
  time.factor_3d = shape.factor_3d;
  time.t85_3d_s = time_3d_s(p, shape.factor_3d);
  time.t85_2d_s = time_2d_s(p, shape.factor_2d);
  time.t85_2d_long_s = time_2d_s(p, shape.factor_2d_long);
  time.transition_thickness_mm = transition_mm(p, shape);
  time.flow = p.thickness_mm > time.transition_thickness_mm ? HeatFlow::three_dimensional
                                                            : HeatFlow::two_dimensional;
  time.t85_s = std::max(time.t85_3d_s, time.t85_2d_s);
  if (p.start_c > warned_above_c) {
    time.findings.push_back({base::Severity::warning,
                             "heat.t85.out_of_range",
                             "start temperature " + base::shortest_text(p.start_c) +
                                 " degC lies above 350 degC, where the cooling-time formula was "
                                 "never fitted; measure the cooling on a trial plate",
                             {},
                             {}});
  }
  return time;
}

const base::FigureCard& cooling_time_card() {
  static const FigureKey keys[] = {
      detail::case_key,
      {"heat-input", Dimension::heat_input, "heat input with the European k", "> 0"},
      {"thickness", Dimension::length, "plate thickness", "> 0"},
      {"start",
       Dimension::temperature,
       "plate temperature when the run starts",
       "below 500 degC; warned about above 350 degC"},
  };
  static const Citation sources[] = {
      {"SSAB-17", "ed. 2, p. 17: both formulas", Status::verified},
      {"EN 1011-2", "2001, table D.1: shape factors", Status::from_memory},
      {"TEACH-DE", "one exercise, 3-D", Status::verified},
  };
  static const base::FigureCard card{
      "cooling-time",
      "t8/5: time from 800 to 500 degC beside a run",
      "3-D: (6700 - 5 T0) Q [1/(500-T0) - 1/(800-T0)] F3; "
      "2-D: (4300 - 4.3 T0) 1e5 (Q/d)^2 [1/(500-T0)^2 - 1/(800-T0)^2] F2; the longer of the two",
      "s",
      "unalloyed and low-alloy steel, in the middle of a long run: at a start or stop and on tacks "
      "it is about half; start above 350 degC is warned about, 500 degC and above refused. Two "
      "figures are meaningful; another fitted law differs by about 45 %",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
