// SPDX-License-Identifier: MIT
#include "seamturn/turn/turn_load.hpp"

#include <algorithm>
#include <cmath>

#include "detail_angles.hpp"
#include "detail_remedies.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/stance.hpp"
#include "seamturn/turn/way.hpp"

namespace seamturn::turn {

namespace {

using base::m_per_mm;
using base::rounding_ratio;

/// Sizes along a way of one load; what is asked of one axis at one place.
class OnWay {
 public:
  OnWay(const cell::Positioner& positioner,
        const joint::Body& load_D,
        const std::vector<Angle>& from,
        const std::vector<Angle>& to)
      : positioner_(positioner), load_D_(load_D), way_(positioner, from, to) {}

  [[nodiscard]] bool moves(std::size_t axis) const { return way_.moves(axis); }

  [[nodiscard]] double still_nm(std::size_t axis, double ratio) const {
    return safe_torques_nm(positioner_, load_D_.weight, way_.at(ratio))[axis];
  }

  [[nodiscard]] double inertia_kg_m2(std::size_t axis, double ratio) const {
    const double mass_ratio = positioner_.margin ? positioner_.margin->mass_ratio : 0.0;
    return (1.0 + mass_ratio) * axis_inertias_kg_m2(positioner_, load_D_, way_.at(ratio))[axis];
  }

  /// What helps an axis that does not hold the load at rest.
  [[nodiscard]] std::string help(std::size_t axis, double ratio) const {
    return detail::help_axis_text(positioner_, axis, load_D_.weight, way_.at(ratio));
  }

  /// Largest of |static| + J change of speed.
  [[nodiscard]] Peak peak(std::size_t axis, double change_rad_s2) const {
    const auto asked_nm = [&](double ratio) {
      const double inertia_nm =
          change_rad_s2 > 0.0 ? change_rad_s2 * inertia_kg_m2(axis, ratio) : 0.0;
      return std::abs(still_nm(axis, ratio)) + inertia_nm;
    };
    const detail::Minimum least = detail::least_of([&](double ratio) { return -asked_nm(ratio); },
                                                   0.0,
                                                   1.0,
                                                   way_.steps(detail::look_step),
                                                   1e-6);
    const double sign = std::copysign(1.0, still_nm(axis, least.at));
    return {sign * -least.value, least.at};
  }

 private:
  const cell::Positioner& positioner_;
  const joint::Body& load_D_;
  Way way_;
};

/// "981 N m, its plate allows 980 N m".
std::string beyond_plate(double nm, double limit_nm) {
  const base::TwoTexts texts = base::told_apart(std::abs(nm), limit_nm, 0);
  return texts.first + " N m, its plate allows " + texts.second + " N m";
}

base::Finding finding(base::Severity severity, const char* code, std::string text) {
  return {severity, code, std::move(text), {}, {}};
}

std::string on_way(const Peak& peak) {
  return base::fixed_text(100.0 * peak.at_ratio, 0) + " % of the way";
}

/// Change of speed at which the axis just holds; 0 when its static load alone is too much.
double bearable_rad_s2(double limit_nm, double asked_nm, double still_nm, double change_rad_s2) {
  const double moving_nm = asked_nm - still_nm;
  return std::max(0.0, limit_nm - still_nm) / moving_nm * change_rad_s2;
}

/// To one decimal: a permitted value is never rounded up.
double rounded_down(double value) {
  return std::floor(value * 10.0) / 10.0;
}

}  // namespace

TurnPeaks turn_peaks(const cell::Positioner& positioner,
                     const joint::Body& load_D,
                     const std::vector<Angle>& from,
                     const std::vector<Angle>& to) {
  const OnWay way(positioner, load_D, from, to);
  TurnPeaks peaks;
  for (std::size_t i = 0; i < positioner.axes.size(); ++i) {
    const cell::Axis& axis = positioner.axes[i];
    const bool moves = way.moves(i);
    peaks.still.push_back(way.peak(i, 0.0));
    peaks.speeding.push_back(moves ? way.peak(i, axis.acceleration_rad_s2) : peaks.still.back());
    std::optional<Peak> stop;
    if (axis.stop_rad_s2) stop = moves ? way.peak(i, *axis.stop_rad_s2) : peaks.still.back();
    peaks.stopping.push_back(stop);
  }
  return peaks;
}

std::vector<double> axis_inertias_kg_m2(const cell::Positioner& positioner,
                                        const joint::Body& load_D,
                                        const std::vector<Angle>& axes) {
  const joint::Body load_W = joint::moved(pose_WD(positioner, axes), load_D);
  std::vector<double> inertias;
  for (const cell::AxisLine& line : axis_lines_W(positioner, axes)) {
    inertias.push_back(joint::inertia_about_kg_m2(load_W, line.at, line.along));
  }
  return inertias;
}

double speeding_torque_nm(double mass_kg,
                          double eccentricity_mm,
                          double inertia_kg_m2,
                          double acceleration_rad_s2) {
  const double arm_m = m_per_mm * eccentricity_mm;
  return mass_kg * base::gravity_m_s2 * arm_m +
         (inertia_kg_m2 + mass_kg * arm_m * arm_m) * acceleration_rad_s2;
}

std::vector<base::Finding> check_turn_load(const cell::Positioner& positioner,
                                           const joint::Body& load_D,
                                           const std::vector<Angle>& from,
                                           const std::vector<Angle>& to,
                                           const TurnPeaks& peaks,
                                           const std::string& turn_name) {
  const OnWay way(positioner, load_D, from, to);
  std::vector<base::Finding> findings;
  for (std::size_t i = 0; i < positioner.axes.size(); ++i) {
    const cell::Axis& axis = positioner.axes[i];
    const double limit_nm = axis.torque_peak_nm.value_or(axis.torque_max_nm);
    if (std::abs(peaks.still[i].torque_nm) > axis.torque_max_nm * (1.0 + rounding_ratio)) {
      findings.push_back(finding(
          base::Severity::error,
          "turn.load.turn",
          turn_name + ": on the way, at " + on_way(peaks.still[i]) + ", the load turns axis " +
              axis.name + " with " + beyond_plate(peaks.still[i].torque_nm, axis.torque_max_nm) +
              "; do not turn it so: " + way.help(i, peaks.still[i].at_ratio)));
      continue;  // what comes on top says nothing new
    }
    const auto tell = [&](const char* code,
                          const std::string& when,
                          const Peak& peak,
                          double change_rad_s2,
                          const std::string& act) {
      if (std::abs(peak.torque_nm) <= limit_nm * (1.0 + rounding_ratio)) return;
      const double bearable = bearable_rad_s2(limit_nm,
                                              std::abs(peak.torque_nm),
                                              std::abs(way.still_nm(i, peak.at_ratio)),
                                              change_rad_s2);
      findings.push_back(
          finding(base::Severity::warning,
                  code,
                  turn_name + ": " + when + " at " + on_way(peak) + " axis " + axis.name +
                      " needs " + beyond_plate(peak.torque_nm, limit_nm) + "; " + act + ' ' +
                      base::fixed_text(rounded_down(Angle::rad(bearable).deg()), 1) + " deg/s2"));
    };
    tell("turn.load.speeding_up",
         "speeding up",
         peaks.speeding[i],
         axis.acceleration_rad_s2,
         "turn it more gently, there no more than");
    if (axis.stop_rad_s2) {
      tell(
          "turn.load.stop",
          "an emergency stop",
          *peaks.stopping[i],
          *axis.stop_rad_s2,
          "its brake may slip: turn it slower, or have a stop set that slows down by no more than");
    }
  }
  return findings;
}

}  // namespace seamturn::turn
