// SPDX-License-Identifier: MIT
#include "seamturn/section/weld_section.hpp"

#include <algorithm>
#include <cmath>

#include "detail_check.hpp"
#include "detail_profile.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::section {

namespace {

using base::Refusal;
using detail::bevelled_wall;
using detail::GapEdges;
using detail::groove_profile;
using detail::square_wall;
using detail::upper_part;
using detail::Wall;

/// Profile of the metal a groove takes. A new preparation is a new overload here.
struct GrooveMaker {
  double thickness_mm;
  double depth_mm;

  [[nodiscard]] Wall seen(const Wall& cut_edge) const { return upper_part(cut_edge, depth_mm); }

  std::vector<Slice> operator()(const joint::Fillet&) const { return {}; }
  std::vector<Slice> operator()(const joint::SquareButt& square) const {
    const Wall wall = seen(square_wall(thickness_mm));
    return groove_profile(wall, wall, GapEdges{-0.5 * square.gap_mm, 0.5 * square.gap_mm});
  }
  std::vector<Slice> operator()(const joint::SingleV& v) const {
    const Wall wall = seen(bevelled_wall(thickness_mm, v.root_face_mm, v.included / 2.0));
    return groove_profile(wall, wall, GapEdges{-0.5 * v.gap_mm, 0.5 * v.gap_mm});
  }
  std::vector<Slice> operator()(const joint::SingleBevel& bevel) const {
    const Wall square = seen(square_wall(thickness_mm));
    const Wall bevelled = seen(bevelled_wall(thickness_mm, bevel.root_face_mm, bevel.bevel));
    return groove_profile(square, bevelled, GapEdges{0.0, bevel.gap_mm});
  }
};

void warn_foot_beyond_face(WeldSection& section, Angle between_plates) {
  const double shorter_mm = std::min(section.leg_1_mm, section.leg_2_mm);
  const double longer_mm = std::max(section.leg_1_mm, section.leg_2_mm);
  if (shorter_mm >= longer_mm * std::cos(between_plates.rad())) return;
  section.findings.push_back(base::Finding{
      base::Severity::warning,
      "section.throat.beyond_face",
      "legs of " + base::digits_text(section.leg_1_mm) + " and " +
          base::digits_text(section.leg_2_mm) + " mm at " +
          base::fixed_text(between_plates.deg(), 1) +
          " deg: the throat, square to the face, meets it beyond the shorter leg's toe; the value "
          "is on the safe side, make the legs more equal",
      {},
      {}});
}

base::Outcome<WeldSection> fillet_section(const joint::Fillet& fillet, Angle between_plates) {
  WeldSection section;
  section.is_fillet = true;
  section.leg_1_mm = fillet.leg_1_mm;
  section.leg_2_mm = fillet.leg_2_mm;
  section.profile = detail::fillet_profile(fillet, between_plates);
  section.height_mm = section.profile.back().y_mm;
  section.area_mm2 = detail::profile_area_mm2(section.profile);
  // The face runs from toe to toe; the throat is the triangle's height over it.
  const double half = 0.5 * between_plates.rad();
  section.opening_mm = std::hypot((fillet.leg_1_mm + fillet.leg_2_mm) * std::sin(half),
                                  (fillet.leg_1_mm - fillet.leg_2_mm) * std::cos(half));
  section.throat_mm = 2.0 * section.area_mm2 / section.opening_mm;
  warn_foot_beyond_face(section, between_plates);
  return section;
}

void add_cap(WeldSection& section, const joint::Cap& cap) {
  if (cap.height_mm <= 0.0) return;
  section.cap_height_mm = cap.height_mm;
  section.cap_width_mm = section.opening_mm + 2.0 * cap.toe_lap_mm;
  section.cap_area_mm2 = 2.0 / 3.0 * section.cap_width_mm * cap.height_mm;
}

base::Outcome<WeldSection> groove_section(const SectionParams& params) {
  const double depth_mm = detail::welded_depth_mm(params);
  WeldSection section;
  section.profile = std::visit(GrooveMaker{params.thickness_mm, depth_mm}, params.preparation);
  section.height_mm = depth_mm;
  section.throat_mm = depth_mm;
  section.seam_line_y_mm = depth_mm;
  const Slice& face = section.profile.back();
  section.opening_mm = face.right_mm - face.left_mm;
  if (const auto refusal = detail::check_opening(section.opening_mm)) return *refusal;
  add_cap(section, params.cap);
  section.area_mm2 = detail::profile_area_mm2(section.profile) + section.cap_area_mm2;
  return section;
}

}  // namespace

base::Outcome<WeldSection> weld_section(const SectionParams& params) {
  if (const auto refusal = detail::check_params(params)) return *refusal;
  const auto* fillet = std::get_if<joint::Fillet>(&params.preparation);
  base::Outcome<WeldSection> made =
      fillet ? fillet_section(*fillet, params.between_plates) : groove_section(params);
  if (!made) return made;
  WeldSection section = std::move(made).value();
  if (!(section.area_mm2 > 0.0)) {
    return Refusal{"section.area.zero",
                   "the section holds no weld metal: no gap, no bevel and no cap; state a gap, "
                   "another preparation or a cap"};
  }
  section.outline = detail::outline_of(section);
  return section;
}

}  // namespace seamturn::section
