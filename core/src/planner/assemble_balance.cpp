// SPDX-License-Identifier: MIT
// What balance comes to on the clock: how far twins drift apart, and the moment of all shrinkage
// forces about the part's centre.
#include <algorithm>
#include <array>
#include <cmath>

#include "detail_assemble.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/shrinkage/rules.hpp"

namespace seamturn::planner::detail {

namespace {

using geom::Vec3;

/// A pass of a seam when it is finished.
struct Laid {
  double end_s = 0.0;
  std::size_t seam = 0;
  double area_mm2 = 0.0;
  double heat_kj_mm = 0.0;
};

const plan::PlannedSeam& planned_of(const plan::Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (seam.id == id) return seam;
    }
  }
  SEAMTURN_REQUIRE(false, id);
  return plan.joints.front().seams.front();
}

/// Passes with a time, added in no order.
void add_laid(const plan::PlannedSeam& seam, std::size_t index, std::vector<Laid>& laid) {
  for (const plan::PlannedPass& pass : seam.passes) {
    if (!pass.end_s) continue;
    laid.push_back({*pass.end_s, index, pass.pass.area_mm2, pass.pass.heat_input_kj_mm});
  }
}

void sort(std::vector<Laid>& laid) {
  std::stable_sort(
      laid.begin(), laid.end(), [](const Laid& a, const Laid& b) { return a.end_s < b.end_s; });
}

plan::PlannedTwins planned_twins(const std::vector<SeamRef>& seams,
                                 const Twins& twins,
                                 const plan::Plan& plan) {
  plan::PlannedTwins planned;
  planned.first = seams[twins.first].work->seam->id;
  planned.second = seams[twins.second].work->seam->id;
  planned.kind = twins.kind;
  planned.keeps_step = twins.off.empty() && twins.against.empty();
  planned.why_not = twins.off.empty() ? twins.against : twins.off;
  std::vector<Laid> laid;
  add_laid(planned_of(plan, planned.first), 0, laid);
  add_laid(planned_of(plan, planned.second), 1, laid);
  sort(laid);
  double ahead_mm2 = 0.0;  // of the first
  double ahead_kj_mm = 0.0;
  for (const Laid& pass : laid) {
    const double sign = pass.seam == 0 ? 1.0 : -1.0;
    (pass.seam == 0 ? planned.metal_1_mm2 : planned.metal_2_mm2) += pass.area_mm2;
    ahead_mm2 += sign * pass.area_mm2;
    ahead_kj_mm += sign * pass.heat_kj_mm;
    planned.ahead_kj_mm = std::max(planned.ahead_kj_mm, std::abs(ahead_kj_mm));
    if (std::abs(ahead_mm2) <= planned.ahead_mm2) continue;
    planned.ahead_mm2 = std::abs(ahead_mm2);
    planned.ahead = ahead_mm2 > 0.0 ? planned.first : planned.second;
    planned.ahead_from_s = pass.end_s;
  }
  return planned;
}

/// Lever of a seam's force about a point, for forces along each axis of the part: how far off it
/// lies, across that axis, by the part of its force that acts along it. Mean over what is welded.
std::array<Vec3, 3> levers_mm(const joint::Seam& seam, const Vec3& centre) {
  constexpr int parts = 24;
  std::array<Vec3, 3> levers = {Vec3::Zero(), Vec3::Zero(), Vec3::Zero()};
  double all_mm = 0.0;
  for (const joint::Stretch& stretch : joint::stretches_of(seam)) {
    const double part_mm = (stretch.to_mm - stretch.from_mm) / parts;
    all_mm += stretch.to_mm - stretch.from_mm;
    for (int i = 0; i < parts; ++i) {
      const geom::Station at =
          geom::path_station(*seam.path, stretch.from_mm + (i + 0.5) * part_mm);
      for (int axis = 0; axis < 3; ++axis) {
        Vec3 off = at.point - centre;
        off[axis] = 0.0;
        levers[static_cast<std::size_t>(axis)] +=
            part_mm * at.tangent[axis] * at.tangent[axis] * off;
      }
    }
  }
  for (Vec3& lever : levers) lever /= all_mm;
  return levers;
}

}  // namespace

void assemble_twins(const std::vector<SeamRef>& seams,
                    const std::vector<Twins>& twins,
                    plan::Plan& plan) {
  for (const Twins& pair : twins) plan.twins.push_back(planned_twins(seams, pair, plan));
}

std::optional<plan::ShrinkageMoment> find_shrink_moment(const std::vector<SeamRef>& seams,
                                                        const plan::Plan& plan) {
  using base::j_per_kj;
  using base::m_per_mm;
  std::vector<Laid> laid;
  std::vector<std::array<Vec3, 3>> levers(seams.size());
  for (std::size_t i = 0; i < seams.size(); ++i) {
    const joint::Seam& seam = *seams[i].work->seam;
    if (!seam.path) continue;
    levers[i] = levers_mm(seam, plan.part.centre);
    add_laid(planned_of(plan, seam.id), i, laid);
  }
  if (laid.empty()) return std::nullopt;
  sort(laid);
  plan::ShrinkageMoment moment;
  std::array<Vec3, 3> sum_nm = {Vec3::Zero(), Vec3::Zero(), Vec3::Zero()};
  for (const Laid& pass : laid) {
    const double force_n = shrinkage::force_by_heat_n(pass.heat_kj_mm * j_per_kj);
    for (std::size_t axis = 0; axis < sum_nm.size(); ++axis) {
      sum_nm[axis] += force_n * m_per_mm * levers[pass.seam][axis];
      if (sum_nm[axis].norm() <= moment.largest_nm) continue;
      moment.largest_nm = sum_nm[axis].norm();
      moment.axis = "xyz"[axis];
      moment.seam = seams[pass.seam].work->seam->id;
      moment.at_s = pass.end_s;
    }
  }
  moment.final_nm = sum_nm[static_cast<std::size_t>(moment.axis - 'x')].norm();
  return moment;
}

}  // namespace seamturn::planner::detail
