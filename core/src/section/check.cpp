// SPDX-License-Identifier: MIT
#include <cmath>
#include <string>

#include "detail_check.hpp"
#include "detail_problems.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::section::detail {

namespace {

using base::Refusal;
using joint::CoverShape;

constexpr Angle smallest_dihedral = Angle::deg(joint::fillet_corner_deg.least);
constexpr Angle largest_dihedral = Angle::deg(joint::fillet_corner_deg.largest);
constexpr Angle angle_slack = Angle::deg(1e-6);  // directions read off members

void check_fillet_gap(const joint::Fillet& fillet, Problems& problems) {
  problems.check_gap(fillet.gap_mm);
  if (fillet.reach_mm < 0.0 || (fillet.reach_mm > 0.0 && fillet.gap_mm <= 0.0)) {
    problems.add("section.gap.behind",
                 "metal reaches " + mm_text(fillet.reach_mm) + " into a gap of " +
                     mm_text(fillet.gap_mm) + "; a reach of at least 0 mm needs a gap to run into");
  }
  problems.check_not_huge("reach into the gap", fillet.reach_mm);
}

/// The face between the toes, for its bulge: half of it is the most a circle's arc can rise.
void check_bulge(const joint::Fillet& fillet, Angle between, Problems& problems) {
  if (fillet.bulge_mm == 0.0 || problems.any()) return;
  const double half = 0.5 * between.rad();
  const double face_mm = std::hypot((fillet.leg_1_mm + fillet.leg_2_mm) * std::sin(half),
                                    (fillet.leg_1_mm - fillet.leg_2_mm) * std::cos(half));
  const double throat_mm = fillet.leg_1_mm * fillet.leg_2_mm * std::sin(between.rad()) / face_mm;
  const double most_mm = fillet.bulge_mm > 0.0 ? 0.5 * face_mm : std::min(0.5 * face_mm, throat_mm);
  if (std::abs(fillet.bulge_mm) < most_mm) return;
  problems.add("section.bulge.out_of_range",
               "the face is " + mm_text(std::abs(fillet.bulge_mm)) +
                   (fillet.bulge_mm > 0.0 ? " convex" : " concave") + "; less than " +
                   mm_text(most_mm) + " is possible at these legs");
}

struct Checker {
  const SectionParams& params;
  Problems& problems;

  void operator()(const joint::Fillet& fillet) const {
    problems.check_size("leg on the first member", fillet.leg_1_mm);
    problems.check_size("leg on the second member", fillet.leg_2_mm);
    const Angle between = params.between_plates;
    if (between < smallest_dihedral - angle_slack || between > largest_dihedral + angle_slack) {
      problems.add("section.angle.out_of_range",
                   "the plates stand at " + deg_text(between) +
                       "; fillets are worked with from 60 to 135 deg; outside, prepare the edge "
                       "and state a groove");
    }
    check_fillet_gap(fillet, problems);
    check_bulge(fillet, between, problems);
    const joint::Cap& cap = params.cap;
    if (cap.height_mm != 0.0 || cap.toe_lap_mm != 0.0 || cap.shape != CoverShape::cap) {
      problems.add("section.cap.on_fillet",
                   "a cap is stated on a fillet, whose face is given by its legs; leave it out and "
                   "state the legs or the throat");
    }
  }
  void operator()(const joint::Groove& groove) const { check_groove(groove, params, problems); }
  void operator()(const joint::Plug& plug) const {
    problems.check_size("width of the hole", plug.width_mm);
    problems.check_size("fill depth", plug.fill_mm);
    problems.check_not_huge("length of the slot", plug.length_mm);
    if (plug.length_mm < plug.width_mm) {
      problems.add("section.plug.shape",
                   "the slot is " + mm_text(plug.length_mm) + " long and " +
                       mm_text(plug.width_mm) +
                       " wide; its length over the round ends is at least its width");
    }
    if (params.cap.height_mm != 0.0 || params.cap.shape != CoverShape::cap) {
      problems.add("section.cap.on_fillet",
                   "a cap is stated on a plug or slot; leave it out and state the fill depth");
    }
  }
};

void check_cap(const SectionParams& params, Problems& problems) {
  const joint::Cap& cap = params.cap;
  if (cap.height_mm < 0.0 || cap.toe_lap_mm < 0.0) {
    problems.add("section.cap.negative",
                 "the cap is " + mm_text(cap.height_mm) + " high with " + mm_text(cap.toe_lap_mm) +
                     " toe lap; neither may be below 0 mm");
  }
  problems.check_not_huge("cap height", cap.height_mm);
  problems.check_not_huge("toe lap", cap.toe_lap_mm);
  if (cap.shape == CoverShape::cap) return;
  problems.check_size("leg of the cover", cap.leg_mm);
  const bool one_edge = joint::is_one_edge_cut(params.preparation);
  const bool square_tee = std::abs(params.between_plates.deg() - 90.0) <= 1.0;
  if (one_edge && square_tee) return;
  problems.add("section.cover.misplaced",
               "a cover stands on a groove with one square edge between plates at 90 deg (a bevel "
               "or J in a tee); here take a cap, or work out the area by hand");
}

struct SizeSum {
  double operator()(const joint::Fillet& f) const {
    return f.leg_1_mm + f.leg_2_mm + f.bulge_mm + f.gap_mm + f.reach_mm;
  }
  double operator()(const joint::GrooveSide& s) const {
    return s.depth_mm + s.angle.rad() + s.first_face.value_or(Angle()).rad() + s.radius_mm +
           s.lower_depth_mm + s.lower_angle.rad();
  }
  double operator()(const joint::Groove& g) const {
    return g.gap_mm + g.root_face_mm + (*this)(g.side_1) + (*this)(g.side_2);
  }
  double operator()(const joint::Plug& p) const { return p.width_mm + p.length_mm + p.fill_mm; }
};

}  // namespace

std::optional<Refusal> check_params(const SectionParams& params) {
  const joint::Cap& cap = params.cap;
  SEAMTURN_REQUIRE(std::isfinite(std::visit(SizeSum{}, params.preparation)));
  SEAMTURN_REQUIRE(std::isfinite(params.thickness_mm), params.thickness_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.depth_mm), params.depth_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.between_plates.rad()), params.between_plates.rad());
  SEAMTURN_REQUIRE(std::isfinite(cap.height_mm + cap.toe_lap_mm + cap.leg_mm), cap.height_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.gouge.depth_mm + params.gouge.radius_mm));
  SEAMTURN_REQUIRE(params.side == 1 || params.side == 2, params.side);
  Problems problems;
  std::visit(Checker{params, problems}, params.preparation);
  check_cap(params, problems);
  return problems.as_one();
}

std::optional<Refusal> check_opening(double opening_mm) {
  if (opening_mm <= largest_size_mm) return std::nullopt;
  return Refusal{"section.size.too_large",
                 "the groove would be " + base::fixed_text(opening_mm, 0) + " mm wide; up to " +
                     mm_text(largest_size_mm) + " is worked with; check the angle"};
}

}  // namespace seamturn::section::detail
