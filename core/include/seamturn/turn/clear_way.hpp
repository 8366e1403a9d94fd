// SPDX-License-Identifier: MIT
// The quickest way from one setting of the axes to another that keeps the load clear of the floor
// and within what the axes hold.
#pragma once

#include <vector>

#include "seamturn/joint/inertia.hpp"
#include "seamturn/turn/swing.hpp"

namespace seamturn::turn {

/// A way in straight legs; on each all axes go in proportion.
struct LeggedWay {
  std::vector<std::vector<Angle>> halts;  ///< settings between both ends, in order; none: straight
  double time_s = 0.0;                    ///< of all legs, each from rest to rest
  bool clear = true;                      ///< false: none was found, the straight one is told
};

/// What hangs on a positioner, and the ways it may take.
class ClearWays {
 public:
  /// Frame D. With an empty body only the load counts. The positioner is that of the turns: slowed
  /// down where the load asks for it.
  ClearWays(const cell::Positioner& positioner, SwingBody body, joint::Body load_D);

  /// Straight, if nothing speaks against it. Else the quickest of those that take one axis to
  /// another angle first (every 5 deg within its limits, and where it stands at either end), move
  /// the others there, then go on: an axis after another, or over a tilt at which the load is high.
  /// Never about the axis that exchanges stations.
  /// Search: candidates by time, each leg looked at as lowest_on_way and turn_peaks do.
  /// Cost: where the floor is out of reach and every axis holds the load anywhere, none; else one
  /// look for a straight way, at most about 450 where there is no other.
  /// Pre: settings within limits. Source: docs/methods/turn-way.md (computed).
  /// Tests: turn/clear_way - closed-form, brute force, laws.
  [[nodiscard]] LeggedWay find(const std::vector<Angle>& from, const std::vector<Angle>& to) const;

  /// Whether the load may be held so: what check_standing finds. What the axes hold: check_load.
  [[nodiscard]] std::vector<base::Finding> check_standing(const std::vector<Angle>& axes,
                                                          const std::string& stance_name) const;

 private:
  [[nodiscard]] bool is_surely_high(const std::vector<Angle>& from,
                                    const std::vector<Angle>& to) const;
  [[nodiscard]] bool is_clear(const std::vector<Angle>& from, const std::vector<Angle>& to) const;
  [[nodiscard]] std::vector<LeggedWay> others(const std::vector<Angle>& from,
                                              const std::vector<Angle>& to) const;

  cell::Positioner positioner_;
  SwingBody body_;
  joint::Body load_D_;
  std::vector<double> rims_mm_;
  bool may_strike_ = false;
  bool may_overload_ = false;
};

}  // namespace seamturn::turn
