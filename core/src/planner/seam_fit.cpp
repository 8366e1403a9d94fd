// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_joints.hpp"
#include "detail_seam_fit.hpp"
#include "seamturn/pass/caps.hpp"

namespace seamturn::planner::detail {

namespace {

using geom::Vec3;
using position::SkyCap;
using position::SkyPatch;
using process::WeldPosition;

bool is_for(const position::WorkingTolerance& row, WeldPosition position, process::PassRole role) {
  return row.position == position &&
         (row.roles.empty() ||
          std::find(row.roles.begin(), row.roles.end(), role) != row.roles.end());
}

bool is_upright(WeldPosition position) {
  return position == WeldPosition::pf || position == WeldPosition::pg;
}

}  // namespace

SeamFit::SeamFit(const Inputs& inputs, const SeamRef& ref, const SeamInD& seam)
    : inputs_(inputs),
      ref_(ref),
      seam_(seam),
      family_(joint::position_family(*ref.joint->joint)),
      pb_bank_(level_bank(seam)) {
  for (const StackChoice& choice : ref.work->stacks) needs_.push_back(need_of(choice));
  const std::vector<Vec3> wanted = wanted_skies(inputs.cell->positioner, seam, *ref.work);
  for (const StackNeed& need : needs_) {
    make_patches(need, 1.0, wanted);
    const Angle bank = position::nominal_attitude(need.position, pb_bank_).bank;
    if (bank > Angle() || is_upright(need.position)) make_patches(need, -1.0, wanted);
  }
}

SeamFit::StackNeed SeamFit::need_of(const StackChoice& choice) const {
  StackNeed need{choice.position, {}};
  for (const pass::Pass& pass : choice.stack.passes) {
    const double cap_mm2 =
        largest_bead_mm2(inputs_, *ref_.joint, *ref_.work, choice.position, pass.role);
    const double ratio = pass.area_mm2 / cap_mm2;
    const auto known = std::find_if(need.roles.begin(), need.roles.end(), [&](const RoleNeed& one) {
      return one.role == pass.role;
    });
    if (known == need.roles.end()) {
      need.roles.push_back({pass.role, ratio});
    } else {
      known->bead_ratio = std::max(known->bead_ratio, ratio);
    }
  }
  return need;
}

Fit SeamFit::held(const geom::Mat3& R_WD, bool reversed) const {
  std::vector<position::Classified> all;
  for (const StationInD& at : seam_.stations) {
    const Vec3 travel_W = (reversed ? -1.0 : 1.0) * (R_WD * at.travel);
    const auto found = position::classify(family_, travel_W, R_WD * at.face, Vec3::UnitZ());
    if (!found) return {};
    all.push_back(*found);
  }
  return best_fit(all, Judge::slope_and_bank);
}

Angle SeamFit::beyond(const StackNeed& need, const position::Attitude& lie) const {
  const position::Slack slack = widest(need);
  const position::Attitude nominal = position::nominal_attitude(need.position, pb_bank_);
  const auto off_rad = [](Angle is, Angle wanted) {
    return std::abs(std::abs(is.rad()) - std::abs(wanted.rad()));
  };
  const double slope_rad =
      off_rad(lie.slope, nominal.slope) - std::max(slack.downhill, slack.uphill).rad();
  const double bank_rad =
      is_upright(need.position) ? 0.0 : off_rad(lie.bank, nominal.bank) - slack.bank.rad();
  return Angle::rad(std::hypot(std::max(0.0, slope_rad), std::max(0.0, bank_rad)));
}

std::optional<Near> SeamFit::nearest(const geom::Mat3& R_WD) const {
  std::optional<Near> best;
  for (const StackNeed& need : needs_) {
    std::optional<Near> worst;
    for (const StationInD& at : seam_.stations) {
      const auto lies =
          position::classify(family_, R_WD * at.travel, R_WD * at.face, Vec3::UnitZ());
      if (!lies) return std::nullopt;
      const Angle by = beyond(need, lies->attitude);
      if (!worst || by > worst->beyond) worst = Near{need.position, *lies, by};
    }
    if (worst && (!best || worst->beyond < best->beyond)) best = worst;
  }
  return best;
}

Fit SeamFit::rolled(const geom::Vec3& travel_W, const geom::Vec3& face_W) const {
  const auto found = position::classify(family_, travel_W, face_W, Vec3::UnitZ());
  return found ? best_fit({*found}, Judge::bank) : Fit{};
}

Fit SeamFit::best_fit(const std::vector<position::Classified>& all, Judge judge) const {
  for (std::size_t i = 0; i < needs_.size(); ++i) {
    Fit fit{static_cast<int>(i), 0.0};
    for (const position::Classified& at : all) {
      const auto here =
          at.iso == needs_[i].position ? strain(needs_[i], at.attitude, judge) : std::nullopt;
      if (!here) {
        fit.stack = -1;
        break;
      }
      fit.strain_ratio = std::max(fit.strain_ratio, *here);
    }
    if (fit.stack >= 0) return fit;
  }
  return {};
}

std::optional<double> SeamFit::strain(const StackNeed& need,
                                      position::Attitude lie,
                                      Judge judge) const {
  constexpr double rounding = 1.0 + 1e-6;  // a bead as large as permitted is permitted
  if (judge == Judge::bank) lie.slope = Angle();
  double worst = 0.0;
  for (const RoleNeed& role : need.roles) {
    std::optional<double> least;
    for (const position::WorkingTolerance& row : inputs_.library.tolerances) {
      if (!is_for(row, need.position, role.role) || !position::is_within(row, lie, pb_bank_) ||
          role.bead_ratio > position::bead_share_ratio(row, lie, pb_bank_) * rounding) {
        continue;
      }
      const double here = position::strain_ratio(row, lie, pb_bank_);
      least = std::min(here, least.value_or(here));
    }
    if (!least) return std::nullopt;
    worst = std::max(worst, *least);
  }
  return worst;
}

/// The most that rows allow every role of a stack; a line may be travelled either way.
position::Slack SeamFit::widest(const StackNeed& need) const {
  const Angle all = Angle::deg(89.0);
  position::Slack slack{all, all, all};
  for (const RoleNeed& role : need.roles) {
    position::Slack own;
    for (const position::WorkingTolerance& row : inputs_.library.tolerances) {
      if (!is_for(row, need.position, role.role)) continue;
      own.downhill = std::max(own.downhill, row.downhill);
      own.uphill = std::max(own.uphill, row.uphill);
      own.bank = std::max(own.bank, row.bank);
    }
    slack.downhill = std::min(slack.downhill, own.downhill);
    slack.uphill = std::min(slack.uphill, own.uphill);
    slack.bank = std::min(slack.bank, own.bank);
  }
  if (!geom::is_closed(*seam_.seam->path)) {
    slack.downhill = slack.uphill = std::max(slack.downhill, slack.uphill);
  }
  return slack;
}

position::SkyPatch SeamFit::patch_at(const StationInD& at,
                                     const StackNeed& need,
                                     double side) const {
  const Vec3 t = geom::unit(at.travel);
  const position::Slack slack = widest(need);
  if (is_upright(need.position)) {
    const Angle off = std::max(slack.downhill, slack.uphill);
    return SkyPatch{side * t, {SkyCap{side * t, std::cos(off.rad())}}};
  }
  const Vec3 n = geom::unit(at.face - at.face.dot(t) * t);
  const Angle bank = position::nominal_attitude(need.position, pb_bank_).bank;
  return position::attitude_patch(t, n, {Angle(), side * bank}, slack);
}

void SeamFit::make_patches(const StackNeed& need, double side, const std::vector<Vec3>& wanted) {
  std::vector<SkyPatch> all;
  for (const StationInD& at : seam_.stations) all.push_back(patch_at(at, need, side));
  first_station_.push_back(all.front());
  if (all.size() == 1) {
    patches_.push_back(all.front());
    return;
  }
  for (const Vec3& centre : wanted) {
    if (auto round = position::inner_cap(centre, all)) patches_.push_back(std::move(*round));
  }
}

bool SeamFit::may_suit(const geom::Vec3& sky_D) const {
  constexpr double slack = 1e-4;  // far more than rounding and the ranges' own slack
  return std::any_of(first_station_.begin(), first_station_.end(), [&](const SkyPatch& patch) {
    return std::all_of(patch.caps.begin(), patch.caps.end(), [&](const SkyCap& cap) {
      return cap.axis.dot(sky_D) >= cap.least - slack;
    });
  });
}

}  // namespace seamturn::planner::detail
