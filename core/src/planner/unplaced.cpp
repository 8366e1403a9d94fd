// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "detail_stances.hpp"
#include "detail_unplaced.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/inertia.hpp"
#include "seamturn/process/weld_position.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::planner::detail {

namespace {

/// Within half a turn either way, for what lies beyond repeats.
std::vector<Angle> values_all_over(const cell::Axis& axis) {
  const double step_deg = settings_apart.deg();
  const Angle half_turn = Angle::deg(180.0);
  const Angle from = axis.endless ? -half_turn : std::max(axis.min, -half_turn);
  const Angle to = axis.endless ? half_turn : std::min(axis.max, half_turn);
  std::vector<Angle> values = {from};
  for (double deg = std::floor(from.deg() / step_deg) * step_deg + step_deg; deg < to.deg();
       deg += step_deg) {
    if (deg > from.deg()) values.push_back(Angle::deg(deg));
  }
  if (to > from) values.push_back(to);
  return values;
}

/// Settings all over the travel of the axes and the ends of it; those near rest first, an exchange
/// at 0.
std::vector<std::vector<Angle>> settings_all_over(const cell::Positioner& positioner) {
  std::vector<std::vector<Angle>> all = {{}};
  for (std::size_t k = 0; k < positioner.axes.size(); ++k) {
    const std::vector<Angle> values = cell::is_exchange(positioner, k)
                                          ? std::vector<Angle>{Angle()}
                                          : values_all_over(positioner.axes[k]);
    std::vector<std::vector<Angle>> longer;
    longer.reserve(all.size() * values.size());
    for (const std::vector<Angle>& before : all) {
      for (const Angle value : values) {
        longer.push_back(before);
        longer.back().push_back(value);
      }
    }
    all = std::move(longer);
  }
  const auto from_rest = [](const std::vector<Angle>& setting) {
    double sum_rad = 0.0;
    for (const Angle value : setting) sum_rad += std::abs(value.rad());
    return sum_rad;
  };
  std::stable_sort(all.begin(), all.end(), [&](const auto& a, const auto& b) {
    return from_rest(a) < from_rest(b);
  });
  return all;
}

}  // namespace

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

base::Finding heavier_than_plate(const Inputs& inputs, const StageWork& stage) {
  const cell::Positioner& positioner = inputs.cell->positioner;
  const double most_kg = turn::load_most_kg(positioner);
  double part_kg = 0.0;
  for (const joint::Member* member : stage.present)
    part_kg += joint::body_of(*member).weight.mass_kg;
  const auto kg = [](double mass_kg) { return base::fixed_text(mass_kg, 0) + " kg"; };
  const std::string lighter = part_kg < most_kg ? "take a fixture of no more than " +
                                                      kg(std::floor(most_kg - part_kg)) + ", or"
                                                : "the part alone weighs " + kg(part_kg) + ":";
  return {base::Severity::error,
          "turn.load.too_heavy",
          stage.name() + ": part and fixture weigh " + kg(stage.load_D.mass_kg) + ", positioner " +
              positioner.id + " carries " + kg(most_kg) + "; " + lighter +
              " take a larger positioner",
          place_of(inputs.weldment, "setup/" + stage.setup->id),
          {}};
}

std::string barred_text(const std::vector<BarredStance>& barred,
                        const std::function<bool(const BarredStance&)>& would_hold) {
  const auto first = std::find_if(barred.begin(), barred.end(), would_hold);
  return first == barred.end() ? "" : "; one that would is barred, " + first->why;
}

void UnplacedSeams::tell(const std::string& seam,
                         const std::string& why,
                         const base::Place& joint,
                         std::vector<base::Finding>& findings) {
  auto alike = std::find_if(told_.begin(), told_.end(), [&](const Told& before) {
    return before.joint == joint && before.why == why;
  });
  if (alike == told_.end()) {
    alike = told_.insert(alike, {joint, why, {}, findings.size()});
    findings.push_back({base::Severity::error, "turn.seam.no_stance", {}, joint, {}});
  }
  alike->seams.push_back(seam);
  findings[alike->finding].text = "seam " + base::listed(alike->seams) + why;
}

std::string positions_text(const SeamWork& seam) {
  std::vector<std::string> names;
  for (const StackChoice& choice : seam.stacks) {
    const std::string name(process::position_name(choice.position));
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return base::listed(names, ", ");
}

std::string near_text(const Near& near, const std::string& stance) {
  if (near.beyond <= Angle() && near.lies.iso == near.wanted) return "";
  const auto deg = [](Angle angle) { return base::fixed_text(angle.deg(), 1) + " deg"; };
  return "; the nearest is " + stance + ", slope " + deg(near.lies.attitude.slope) + " and bank " +
         deg(near.lies.attitude.bank) + ", " + std::string(process::position_name(near.lies.iso)) +
         " (" + near.lies.aws + "), " +
         (near.beyond > Angle() ? deg(near.beyond) + " beyond the working tolerance of "
                                : std::string("no longer ")) +
         std::string(process::position_name(near.wanted));
}

std::optional<NearElsewhere> nearest_elsewhere(
    const SeamFit& fit,
    const cell::Positioner& positioner,
    const std::function<bool(const turn::Stance&)>& may_stand) {
  const Angle as_near = Angle::deg(0.5);
  std::optional<NearElsewhere> best;
  for (std::vector<Angle>& axes : settings_all_over(positioner)) {
    const std::optional<Near> near = fit.nearest(turn::rotation_WD(positioner, axes));
    if (!near || (best && near->beyond + as_near > best->near.beyond)) continue;
    const turn::Stance stance{std::move(axes), false};
    if (may_stand(stance)) best = NearElsewhere{*near, stance};
  }
  return best;
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
