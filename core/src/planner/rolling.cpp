// SPDX-License-Identifier: MIT
// How far, which way and how fast the positioner turns under a ring, and where the arc stands.
#include <cmath>

#include "detail_stances.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/joint/segments.hpp"
#include "seamturn/reach/torch_pose.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double same_axis_rad = 2e-4;  ///< two stances closer than this (0.01 deg) are one

}  // namespace

bool same_stance(const turn::Stance& a, const turn::Stance& b) {
  if (a.rolling != b.rolling) return false;
  for (std::size_t i = 0; i < a.axes.size(); ++i) {
    const double apart_rad = (a.axes[i] - b.axes[i]).rad();
    const double off_rad = a.rolling ? apart_rad : 2.0 * std::sin(0.5 * apart_rad);
    if (std::abs(off_rad) > same_axis_rad) return false;
  }
  return true;
}

double rolling_sense(const cell::Positioner& positioner, const geom::Vec3& ring_axis_D) {
  return ring_axis_D.dot(cell::faceplate_normal_D(positioner.kind)) > 0.0 ? -1.0 : 1.0;
}

base::Angle rolled_angle(const joint::Seam& seam) {
  const auto* circle = seam.path ? std::get_if<geom::CirclePath>(&*seam.path) : nullptr;
  const std::vector<joint::Stretch> stretches = joint::stretches_of(seam);
  SEAMTURN_REQUIRE(circle != nullptr && stretches.size() == 1, seam.id);
  const double round_mm = stretches.front().to_mm - stretches.front().from_mm;
  if (round_mm == geom::path_length_mm(*seam.path)) return Angle::deg(360.0);
  return Angle::rad(round_mm / circle->radius_mm);
}

base::Angle rolled_turn(const cell::Positioner& positioner,
                        const joint::Setup& setup,
                        const joint::Seam& seam) {
  const Angle turn = rolled_angle(seam);
  const geom::Vec3 axis_J = std::get<geom::CirclePath>(*seam.path).axis;
  const geom::Vec3 axis_D = setup.X_DJ.direction(axis_J);
  return rolling_sense(positioner, axis_D) * turn;
}

base::Angle lead_of(const Inputs& inputs, const SeamRef& ref, const pass::Pass& pass) {
  const auto& circle = std::get<geom::CirclePath>(*ref.work->seam->path);
  return position::rolling_lead(inputs.library.rolling_leads,
                                {ref.joint->wire->process, pass.role, 2.0 * circle.radius_mm});
}

base::Angle lead_before(const Inputs& inputs,
                        const SeamRef& ref,
                        const pass::PassStack& stack,
                        const pass::Pass& pass) {
  return lead_of(inputs, ref, pass) - lead_of(inputs, ref, stack.passes.front());
}

base::Angle lead_wind(const Inputs& inputs,
                      const joint::Setup& setup,
                      const SeamRef& ref,
                      const pass::PassStack& stack,
                      const pass::Pass& pass) {
  // Ahead is where the travel goes; the positioner turns against it.
  const geom::Vec3 axis_J = std::get<geom::CirclePath>(*ref.work->seam->path).axis;
  const double sense = rolling_sense(inputs.cell->positioner, setup.X_DJ.direction(axis_J));
  return -(sense * lead_before(inputs, ref, stack, pass));
}

double section_share(const SeamRef& ref, const section::Point& point) {
  const joint::Seam& seam = *ref.work->seam;
  const auto round = seam.path ? geom::round_of(*seam.path) : std::nullopt;
  if (!round) return 1.0;
  const section::WeldSection& section = ref.work->section;
  const joint::SectionFrame frame = joint::section_frame(*ref.joint->joint, seam, 0.0);
  const geom::Vec3 there = frame.origin + (point.x_mm - section.seam_line_x_mm) * frame.x +
                           (point.y_mm - section.seam_line_y_mm) * frame.y;
  return (there - round->centre).cross(round->axis).norm() / round->radius_mm;
}

std::optional<double> tip_speed_mm_s(const SeamRef& ref, const pass::Pass& pass) {
  const joint::Seam& seam = *ref.work->seam;
  const auto round = seam.path ? geom::round_of(*seam.path) : std::nullopt;
  if (!round || pass.arc_time_s <= 0.0) return std::nullopt;
  const geom::Vec3 tip =
      reach::torch_pose(*ref.joint->joint, seam, ref.work->section, pass, 0.0, false).point -
      round->centre;
  const double share = tip.cross(round->axis).norm() / round->radius_mm;
  return share * joint::layer_length_mm(seam, pass.layer) / pass.arc_time_s;
}

void set_layer_times(const JointWork& work, SeamWork& seam) {
  const joint::Seam& described = *seam.seam;
  const bool is_round = described.path && geom::round_of(*described.path);
  if (!is_round && !described.segment) return;
  const SeamRef ref{&work, &seam};
  const double whole = section_share(ref, section::centroid(seam.section));
  for (StackChoice& choice : seam.stacks) {
    // Centres of beads are where a bead is drawn; together they must bring the section's metal.
    double area_mm2 = 0.0;
    double laid_mm2 = 0.0;
    for (const pass::Pass& pass : choice.stack.passes) {
      area_mm2 += pass.area_mm2;
      laid_mm2 += pass.area_mm2 * section_share(ref, pass.centre);
    }
    choice.stack.arc_time_s = 0.0;
    for (pass::Pass& pass : choice.stack.passes) {
      const double share = section_share(ref, pass.centre) * whole * area_mm2 / laid_mm2;
      pass.arc_time_s = share * joint::layer_length_mm(described, pass.layer) / pass.travel_mm_s;
      choice.stack.arc_time_s += pass.arc_time_s;
    }
  }
}

}  // namespace seamturn::planner::detail
