// SPDX-License-Identifier: MIT
#include "pass_drawing/subject.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace seamturn::pass_drawing {

using plan_reader::number;
using plan_reader::text;

namespace {

Polygon outline_of(pugi::xml_node section) {
  Polygon outline;
  for (const pugi::xml_node corner : section.children("corner")) {
    outline.push_back({number(corner, "x_mm"), number(corner, "y_mm")});
  }
  return outline;
}

PassData read_pass(pugi::xml_node node) {
  PassData pass;
  pass.number = static_cast<int>(number(node, "number"));
  pass.layer = static_cast<int>(number(node, "layer"));
  pass.bead = static_cast<int>(number(node, "bead"));
  pass.role = text(node, "role");
  pass.area_mm2 = number(node, "area_mm2");
  pass.centre = {number(node, "centre_x_mm"), number(node, "centre_y_mm")};
  pass.aim = {number(node, "aim_x_mm"), number(node, "aim_y_mm")};
  pass.work_angle_deg = number(node, "work_angle_deg");
  if (!(pass.area_mm2 > 0.0)) {
    throw std::runtime_error("pass " + std::to_string(pass.number) +
                             " has no area: nothing can be drawn of it");
  }
  return pass;
}

std::vector<PassData> read_passes(const Subject& subject) {
  std::vector<PassData> passes;
  for (const pugi::xml_node node : subject.seam.children("pass")) {
    passes.push_back(read_pass(node));
  }
  if (passes.empty()) {
    throw std::runtime_error("seam " + std::string(text(subject.seam, "id")) + " has no pass");
  }
  return passes;
}

/// Between the plates: as the seam's place tells, else as the outline of a fillet tells, else as
/// the type of joint has it.
double between_plates_deg(const Subject& subject) {
  if (const pugi::xml_node faces = subject.seam.child("faces")) {
    return number(faces, "between_walls_deg");
  }
  if (subject.is_fillet) return 2.0 * fill_map(subject).half_angle_rad() * degrees_per_radian;
  return subject.type == "tee" || subject.type == "corner" ? 90.0 : 180.0;
}

void read_sizes(Subject& subject) {
  subject.thickness_1_mm = number(subject.procedure, "thickness_1_mm");
  subject.thickness_2_mm = number(subject.procedure, "thickness_2_mm");
  subject.gap_mm = size(subject, "gap_mm");
  subject.surface_mm = number(section_of(subject, subject.side), "seam_line_y_mm");
  subject.between_deg = between_plates_deg(subject);
  constexpr double flush_deg = 170.0;
  subject.is_corner = !subject.is_fillet && !subject.is_plug && subject.between_deg < flush_deg;
}

}  // namespace

double size(const Subject& subject, const char* attribute) {
  return subject.preparation.attribute(attribute) ? number(subject.preparation, attribute) : 0.0;
}

pugi::xml_node section_of(const Subject& subject, int side) {
  for (const pugi::xml_node section : subject.joint.children("section")) {
    if (static_cast<int>(number(section, "side")) == side) return section;
  }
  return {};
}

FillMap fill_map(const Subject& subject) {
  const pugi::xml_node section = section_of(subject, subject.side);
  if (subject.is_fillet) return FillMap::fillet(outline_of(section));
  return FillMap::groove(outline_of(section), number(section, "height_mm"));
}

Polygon other_side(const Subject& subject) {
  if (!subject.has_two_sides) return {};
  const pugi::xml_node other = section_of(subject, 3 - subject.side);
  Polygon outline = outline_of(other);
  // Both roots lie their depth below their own surface, and the surfaces are one thickness apart.
  const double roots_mm =
      subject.surface_mm - size(subject, "thickness_mm") + number(other, "seam_line_y_mm");
  for (Point& corner : outline) corner.y = roots_mm - corner.y;
  std::reverse(outline.begin(), outline.end());
  return outline;
}

Subject find_subject(const plan_reader::PlanTree& plan, const std::string& id) {
  Subject subject;
  subject.plan = &plan;
  subject.procedure = plan.entry("procedures", "procedure", id.c_str());
  const pugi::xml_node first = subject.procedure.child("seam");
  if (!first) throw std::runtime_error("procedure " + id + " has no seam");
  subject.seam = plan.seam(text(first, "id"));
  subject.joint = subject.seam.parent();
  subject.preparation = subject.joint.child("preparation");
  subject.position = text(subject.procedure, "position");
  subject.kind = text(subject.preparation, "kind");
  subject.type = text(subject.joint, "type");
  subject.is_fillet = subject.kind == "fillet";
  subject.is_plug = subject.kind == "plug" || subject.kind == "slot";
  // Equal fillets of a joint share one section, whichever side their seam is.
  subject.side = static_cast<int>(number(subject.procedure, "side"));
  subject.has_two_sides = section_of(subject, 2) && !subject.is_fillet;
  if (!section_of(subject, subject.side)) {
    throw std::runtime_error("joint " + std::string(text(subject.joint, "id")) +
                             " has no section of side " + std::to_string(subject.side));
  }
  read_sizes(subject);
  subject.passes = read_passes(subject);
  return subject;
}

}  // namespace seamturn::pass_drawing
