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

/// Length of the face from toe to toe and the height of the triangle over it.
struct FilletFace {
  double length_mm = 0.0;
  double throat_mm = 0.0;
};
FilletFace face_of(const detail::Legs& legs, Angle between_plates) {
  const double half = 0.5 * between_plates.rad();
  FilletFace face;
  face.length_mm = std::hypot((legs.leg_1_mm + legs.leg_2_mm) * std::sin(half),
                              (legs.leg_1_mm - legs.leg_2_mm) * std::cos(half));
  face.throat_mm = legs.leg_1_mm * legs.leg_2_mm * std::sin(between_plates.rad()) / face.length_mm;
  return face;
}

base::Outcome<WeldSection> fillet_section(const joint::Fillet& fillet, Angle between_plates) {
  // A gap lifts the second member: both legs grow by what it takes to keep the throat beyond it.
  const double grown_mm = fillet.gap_mm / std::sin(between_plates.rad());
  const detail::Legs legs{fillet.leg_1_mm + grown_mm, fillet.leg_2_mm + grown_mm};
  WeldSection section;
  section.is_fillet = true;
  section.leg_1_mm = legs.leg_1_mm;
  section.leg_2_mm = legs.leg_2_mm;
  section.bulge_mm = fillet.bulge_mm;
  section.profile = detail::fillet_profile(legs, between_plates);
  section.height_mm = section.profile.back().y_mm;
  section.opening_mm = face_of(legs, between_plates).length_mm;
  const double segment_mm2 =
      detail::circle_segment_mm2(section.opening_mm, std::abs(fillet.bulge_mm));
  section.bulge_area_mm2 = fillet.bulge_mm < 0.0 ? -segment_mm2 : segment_mm2;
  section.behind_area_mm2 = fillet.gap_mm * fillet.reach_mm;
  section.area_mm2 =
      detail::profile_area_mm2(section.profile) + section.bulge_area_mm2 + section.behind_area_mm2;
  // The throat a designer counts: of the legs beyond the gap, less a hollow, without a bulge.
  const FilletFace counted = face_of({fillet.leg_1_mm, fillet.leg_2_mm}, between_plates);
  section.throat_mm = counted.throat_mm + std::min(0.0, fillet.bulge_mm);
  warn_foot_beyond_face(section, between_plates);
  section.outline =
      detail::fillet_outline(section, between_plates, {fillet.gap_mm, fillet.reach_mm});
  return section;
}

void add_cap(WeldSection& section, const joint::Cap& cap) {
  if (cap.shape != joint::CoverShape::cap) {
    section.cap_shape = CapShape::triangle;
    section.cap_height_mm = cap.leg_mm;
    section.cap_width_mm = cap.shape == joint::CoverShape::corner_fillet
                               ? cap.leg_mm
                               : std::max(section.opening_mm, cap.leg_mm);
    section.cap_area_mm2 = 0.5 * section.cap_width_mm * section.cap_height_mm;
    return;
  }
  if (cap.height_mm <= 0.0) return;
  section.cap_height_mm = cap.height_mm;
  section.cap_width_mm = section.opening_mm + 2.0 * cap.toe_lap_mm;
  section.cap_area_mm2 = 2.0 / 3.0 * section.cap_width_mm * cap.height_mm;
}

base::Outcome<WeldSection> groove_section(const joint::Groove& groove,
                                          const SectionParams& params) {
  WeldSection section;
  section.profile = detail::side_profile(groove, params);
  section.height_mm = section.profile.back().y_mm;
  section.throat_mm = section.height_mm;
  section.seam_line_y_mm = section.height_mm;
  const Slice& face = section.profile.back();
  section.opening_mm = face.right_mm - face.left_mm;
  if (const auto refusal = detail::check_opening(section.opening_mm)) return *refusal;
  add_cap(section, params.cap);
  section.area_mm2 = detail::profile_area_mm2(section.profile) + section.cap_area_mm2;
  section.outline = detail::outline_of(section);
  return section;
}

/// The strip from a hole's middle line to its wall, as deep as it is filled; laid round along the
/// line half-way between. Strip times that line is the hole's volume, exactly, for plug and slot.
WeldSection plug_section(const joint::Plug& plug) {
  const double half_mm = 0.5 * plug.width_mm;
  WeldSection section;
  section.profile = {{0.0, -0.5 * half_mm, 0.5 * half_mm},
                     {plug.fill_mm, -0.5 * half_mm, 0.5 * half_mm}};
  section.height_mm = section.throat_mm = section.seam_line_y_mm = plug.fill_mm;
  section.opening_mm = half_mm;
  section.area_mm2 = half_mm * plug.fill_mm;
  section.welded_round_mm = joint::welded_round_mm(plug);
  section.outline = detail::outline_of(section);
  return section;
}

std::string no_metal_text(const WeldSection& section) {
  const std::string start = "the section holds no weld metal: ";
  if (section.cap_height_mm <= 0.0) {
    return start + "no gap, no bevel and no cap; state a gap, another preparation or a cap";
  }
  return start + "the cap of " + base::digits_text(section.cap_height_mm) +
         " mm has no width, for the edges stand closed under it; state how far it reaches onto the "
         "plates (toe-lap), a gap or another preparation";
}

struct Maker {
  const SectionParams& params;

  base::Outcome<WeldSection> operator()(const joint::Fillet& fillet) const {
    return fillet_section(fillet, params.between_plates);
  }
  base::Outcome<WeldSection> operator()(const joint::Groove& groove) const {
    return groove_section(groove, params);
  }
  base::Outcome<WeldSection> operator()(const joint::Plug& plug) const {
    return plug_section(plug);
  }
};

}  // namespace

int side_count(const SectionParams& params) {
  return joint::is_double(params.preparation) || params.gouge.depth_mm > 0.0 ? 2 : 1;
}

base::Outcome<WeldSection> weld_section(const SectionParams& params) {
  if (const auto refusal = detail::check_params(params)) return *refusal;
  base::Outcome<WeldSection> made = std::visit(Maker{params}, params.preparation);
  if (made && !(made->area_mm2 > 0.0)) return Refusal{"section.area.zero", no_metal_text(*made)};
  return made;
}

}  // namespace seamturn::section
