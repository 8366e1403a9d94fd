// SPDX-License-Identifier: MIT
#include <algorithm>
#include <map>
#include <utility>

#include "detail_stances.hpp"
#include "detail_unplaced.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

std::string rolling_text(const cell::Positioner& positioner, const SeamWork& ring) {
  const cell::Axis& axis = positioner.axes.back();
  const Angle round = rolled_angle(*ring.seam);
  double fastest_rad_s = 0.0;
  for (const StackChoice& choice : ring.stacks) {
    for (const pass::Pass& pass : choice.stack.passes) {
      fastest_rad_s = std::max(fastest_rad_s, round.rad() / pass.arc_time_s);
    }
  }
  const auto deg = [](double rad) { return base::digits_text(Angle::rad(rad).deg()) + " deg"; };
  return "; rolled, it takes " + deg(round.rad()) + " of axis " + axis.name +
         (axis.endless ? std::string() : ", which has " + deg((axis.max - axis.min).rad())) +
         ", at up to " + deg(fastest_rad_s) + "/s, where " +
         deg(positioner.rolling_speed_max_rad_s) +
         "/s are the most; in arcs (segments=) it is held still";
}

std::string barred_text(const SeamFit& fit, const std::vector<BarredStance>& barred) {
  for (const BarredStance& stance : barred) {
    const bool would =
        fit.held(stance.R_WD, false).stack >= 0 || fit.held(stance.R_WD, true).stack >= 0;
    if (would) return "; one that would is barred, " + stance.why;
  }
  return "";
}

std::vector<base::Finding> one_of_a_kind(std::vector<base::Finding> findings) {
  std::map<std::string, std::size_t> count;
  for (const base::Finding& finding : findings) ++count[finding.code];
  std::vector<base::Finding> first;
  for (base::Finding& finding : findings) {
    const std::size_t others = std::exchange(count[finding.code], 0);
    if (others == 0) continue;
    if (others > 1) {
      finding.text += "; so with " + std::to_string(others - 1) +
                      (others == 2 ? " more stance" : " more stances");
    }
    first.push_back(std::move(finding));
  }
  return first;
}

}  // namespace seamturn::planner::detail
