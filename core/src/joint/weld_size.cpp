// SPDX-License-Identifier: MIT
#include "seamturn/joint/weld_size.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "detail_size_check.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::joint {

namespace {

using base::Citation;
using base::Status;

constexpr double inch_mm = 25.4;
constexpr double edge_full_below_mm = 6.0;
constexpr double edge_step_back_mm = 2.0;
constexpr double end_loaded_full_legs = 100.0;
constexpr double end_loaded_last_legs = 300.0;
constexpr double end_loaded_most_legs = 180.0;
constexpr double acute_deg = 30.0;
constexpr double triangle_deg = 60.0;
constexpr double right_from_deg = 80.0;
constexpr double right_to_deg = 100.0;
constexpr double obtuse_deg = 135.0;

struct ThicknessBand {
  double up_to_mm;
  double leg_mm;
};
constexpr double unlimited_mm = 1e9;
constexpr std::array<ThicknessBand, 4> metric_bands = {
    {{6.0, 3.0}, {12.0, 5.0}, {20.0, 6.0}, {unlimited_mm, 8.0}}};
constexpr std::array<ThicknessBand, 4> inch_bands = {{{inch_mm / 4.0, inch_mm / 8.0},
                                                      {inch_mm / 2.0, 3.0 * inch_mm / 16.0},
                                                      {3.0 * inch_mm / 4.0, inch_mm / 4.0},
                                                      {unlimited_mm, 5.0 * inch_mm / 16.0}}};

constexpr Citation throat_classes{"AWS D1.1", "2010 2.4.2, throat by angle", Status::verified};

}  // namespace

namespace detail {

void note_bad_size(std::vector<std::string>& wrong, const std::string& name, double value_mm) {
  if (base::is_positive(value_mm) && value_mm <= largest_size_mm) return;
  SEAMTURN_REQUIRE(std::isfinite(value_mm), name, value_mm);
  wrong.push_back(name + " must be above 0 mm and up to " + base::digits_text(largest_size_mm) +
                  " mm, found " + base::digits_text(value_mm) + " mm");
}

std::string joined(const std::vector<std::string>& wrong) {
  std::string text;
  for (const std::string& one : wrong) text += (text.empty() ? "" : "; ") + one;
  return text;
}

}  // namespace detail

double least_leg_by_thickness_mm(double thickness_mm, SizeColumn column) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  const auto& bands = column == SizeColumn::metric ? metric_bands : inch_bands;
  for (const ThicknessBand& band : bands) {
    if (thickness_mm <= band.up_to_mm) return band.leg_mm;
  }
  return bands.back().leg_mm;
}

std::optional<bool> is_low_hydrogen(std::string_view process) {
  for (const std::string_view known :
       {"12", "121", "124", "125", "126", "13", "131", "132", "133", "135", "136", "138", "141"}) {
    if (process == known) return true;
  }
  return std::nullopt;
}

double largest_edge_leg_mm(double edge_thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(edge_thickness_mm), edge_thickness_mm);
  return edge_thickness_mm < edge_full_below_mm ? edge_thickness_mm
                                                : edge_thickness_mm - edge_step_back_mm;
}

double counted_leg_mm(double leg_mm, double length_mm) {
  SEAMTURN_REQUIRE(base::is_positive(leg_mm) && base::is_positive(length_mm), leg_mm, length_mm);
  return std::min(leg_mm, length_mm / detail::legs_in_length);
}

double end_loaded_share_ratio(double leg_mm, double length_mm) {
  SEAMTURN_REQUIRE(base::is_positive(leg_mm) && base::is_positive(length_mm), leg_mm, length_mm);
  const double legs = length_mm / leg_mm;
  if (legs <= end_loaded_full_legs) return 1.0;
  if (legs <= end_loaded_last_legs) return 1.2 - 0.2 * legs / end_loaded_full_legs;
  return end_loaded_most_legs / legs;
}

base::Outcome<CountedThroat> counted_throat(double leg_mm,
                                            Angle between_plates,
                                            std::optional<double> root_loss_mm) {
  std::vector<std::string> wrong;
  detail::note_bad_size(wrong, "leg", leg_mm);
  if (!wrong.empty()) return base::Refusal{"joint.size.value", detail::joined(wrong)};
  // A hair of slack: 60 deg that came through radians is still 60 deg.
  const double deg = between_plates.deg();
  constexpr double slack_deg = 1e-9;
  if (!(deg >= acute_deg - slack_deg && deg <= obtuse_deg + slack_deg)) {
    return base::Refusal{"joint.size.angle",
                         "the plates of a fillet stand " + base::digits_text(deg) +
                             " deg apart; a throat is counted from 30 to 135 deg [AWS D1.1]. "
                             "Prepare the edge and size a groove"};
  }
  if (deg >= right_from_deg - slack_deg && deg <= right_to_deg + slack_deg) {
    return CountedThroat{leg_mm / std::numbers::sqrt2, ThroatClass::right_angle, throat_classes};
  }
  const double triangle_mm = leg_mm * std::cos(0.5 * between_plates.rad());
  if (deg >= triangle_deg - slack_deg) {
    return CountedThroat{triangle_mm, ThroatClass::geometry, throat_classes};
  }
  if (!root_loss_mm || !(*root_loss_mm >= 0.0) || !(*root_loss_mm < triangle_mm)) {
    return base::Refusal{"joint.size.root_loss",
                         "between plates " + base::digits_text(deg) +
                             " deg apart the arc does not reach the root: state the root loss of "
                             "process and position, 0 mm up to below the triangle's throat of " +
                             base::digits_text(triangle_mm) + " mm [AWS D1.1]"};
  }
  return CountedThroat{triangle_mm - *root_loss_mm, ThroatClass::less_root_loss, throat_classes};
}

double over_weld_area_ratio(const OverWeld& over_weld) {
  SEAMTURN_REQUIRE(std::isfinite(over_weld.factor) && over_weld.factor >= 1.0, over_weld.factor);
  return over_weld.basis == OverWeldBasis::leg ? over_weld.factor * over_weld.factor
                                               : over_weld.factor;
}

}  // namespace seamturn::joint
