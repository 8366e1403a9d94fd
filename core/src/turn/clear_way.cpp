// SPDX-License-Identifier: MIT
#include "seamturn/turn/clear_way.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/turn_load.hpp"
#include "seamturn/turn/way.hpp"

namespace seamturn::turn {

namespace {

using Axes = std::vector<Angle>;
using geom::Vec3;

constexpr double grid_deg = 5.0;

/// The farthest the centre of gravity can be from each axis.
std::vector<double> widest_arms_mm(const cell::Positioner& positioner, const Vec3& centre_D) {
  const std::size_t last = positioner.axes.size() - 1;
  std::vector<double> arms(last + 1, 0.0);
  cell::AxisLine line = cell::axis_line(positioner, last);
  const Vec3 from_line = cell::faceplate_at_zero(positioner).point(centre_D) - line.at;
  arms[last] = line.along.cross(from_line).norm();
  double reach_mm = from_line.norm();
  for (std::size_t i = last; i-- > 0;) {
    const cell::AxisLine before = cell::axis_line(positioner, i);
    arms[i] = before.along.cross(line.at - before.at).norm() + reach_mm;
    reach_mm += (line.at - before.at).norm();
    line = before;
  }
  return arms;
}

/// Whether some setting of the axes might ask more of one than its plate allows.
bool may_overload(const cell::Positioner& positioner, const joint::Weight& load_D) {
  const cell::LoadMargin margin = positioner.margin.value_or(cell::LoadMargin{});
  const double newtons = (1.0 + margin.mass_ratio) * load_D.mass_kg * base::gravity_m_s2;
  const std::vector<double> arms_mm = widest_arms_mm(positioner, load_D.centre);
  for (std::size_t i = 0; i < arms_mm.size(); ++i) {
    const double arm_m = (arms_mm[i] + margin.centre_mm) * base::m_per_mm;
    if (newtons * arm_m > positioner.axes[i].torque_max_nm) return true;
  }
  return false;
}

bool is_error(const base::Finding& finding) {
  return finding.severity == base::Severity::error;
}

/// Where an axis may halt: even steps within its limits, and its angles at both ends.
std::vector<Angle> halts_of(const cell::Axis& axis, Angle from, Angle to) {
  std::vector<Angle> halts = {from, to};
  const double least_deg = axis.endless ? -180.0 : axis.min.deg();
  const double most_deg = axis.endless ? 180.0 - grid_deg : axis.max.deg();
  for (double k = std::ceil(least_deg / grid_deg); k * grid_deg <= most_deg; k += 1.0) {
    halts.push_back(Angle::deg(k * grid_deg));
  }
  return halts;
}

}  // namespace

ClearWays::ClearWays(const cell::Positioner& positioner, SwingBody body, joint::Body load_D)
    : positioner_(positioner), body_(std::move(body)), load_D_(std::move(load_D)) {
  const double clearance_mm = positioner_.floor_clearance_mm.value_or(0.0);
  may_strike_ = !is_empty(body_) && never_below_mm(positioner_, body_) < clearance_mm;
  if (may_strike_) rims_mm_ = rim_radii_mm(positioner_, body_);
  may_overload_ = may_overload(positioner_, load_D_.weight);
}

std::vector<base::Finding> ClearWays::check_standing(const Axes& axes,
                                                     const std::string& stance_name) const {
  if (!may_strike_) return {};
  return turn::check_standing(positioner_, lowest_at(positioner_, body_, axes), stance_name);
}

/// A point goes no farther than its axes turn it round their rims: how much higher than asked the
/// middle of a stretch is, tells how much of it is clear. False: look closely.
bool ClearWays::is_surely_high(const Axes& from, const Axes& to) const {
  double sweep_mm = 0.0;
  for (std::size_t i = 0; i < rims_mm_.size(); ++i) {
    sweep_mm += rims_mm_[i] * std::abs(axis_travel(positioner_.axes[i], from[i], to[i]).rad());
  }
  const Way way(positioner_, from, to);
  const double clearance_mm = positioner_.floor_clearance_mm.value_or(0.0);
  constexpr double shortest = 1.0 / 64.0;
  const std::function<bool(double, double)> is_high = [&](double begin, double end) {
    const double middle = 0.5 * (begin + end);
    const double above_mm = lowest_at(positioner_, body_, way.at(middle)).height_mm - clearance_mm;
    if (above_mm >= 0.5 * (end - begin) * sweep_mm) return true;
    if (above_mm < 0.0 || end - begin <= shortest) return false;
    return is_high(begin, middle) && is_high(middle, end);
  };
  return is_high(0.0, 1.0);
}

bool ClearWays::is_clear(const Axes& from, const Axes& to) const {
  if (may_strike_ && !is_surely_high(from, to)) {
    const Lowest lowest = lowest_on_way(positioner_, body_, from, to);
    if (!check_swing(positioner_, lowest, "").empty()) return false;
  }
  if (!may_overload_) return true;
  const TurnPeaks peaks = turn_peaks(positioner_, load_D_, from, to);
  const auto findings = check_turn_load(positioner_, load_D_, from, to, peaks, "");
  return std::none_of(findings.begin(), findings.end(), is_error);
}

std::vector<LeggedWay> ClearWays::others(const Axes& from, const Axes& to) const {
  std::vector<LeggedWay> ways;
  for (std::size_t i = 0; i < positioner_.axes.size(); ++i) {
    if (cell::is_exchange(positioner_, i)) continue;
    for (const Angle halt : halts_of(positioner_.axes[i], from[i], to[i])) {
      Axes first = from;
      Axes second = to;
      first[i] = second[i] = halt;
      LeggedWay way;
      const Axes* at = &from;
      const auto go = [&](const Axes& next, bool halts) {
        const double leg_s = turn_time_s(positioner_, *at, next);
        if (leg_s <= 0.0) return;
        way.time_s += leg_s;
        if (halts) way.halts.push_back(next);
        at = &next;
      };
      go(first, true);
      go(second, true);
      go(to, false);
      if (way.halts.empty()) continue;
      if (at != &to) way.halts.pop_back();  // the last leg was none: the halt is the end
      if (!way.halts.empty()) ways.push_back(std::move(way));
    }
  }
  std::stable_sort(ways.begin(), ways.end(), [](const LeggedWay& a, const LeggedWay& b) {
    return a.time_s < b.time_s;
  });
  return ways;
}

LeggedWay ClearWays::find(const Axes& from, const Axes& to) const {
  SEAMTURN_REQUIRE(from.size() == positioner_.axes.size() && to.size() == from.size(), from.size());
  LeggedWay straight;
  straight.time_s = turn_time_s(positioner_, from, to);
  if ((!may_strike_ && !may_overload_) || is_clear(from, to)) return straight;
  for (LeggedWay& way : others(from, to)) {
    const Axes* at = &from;
    bool clear = true;
    for (const Axes& halt : way.halts) {
      clear = clear && is_clear(*at, halt);
      at = &halt;
    }
    if (clear && is_clear(*at, to)) return std::move(way);
  }
  straight.clear = false;
  return straight;
}

}  // namespace seamturn::turn
