// SPDX-License-Identifier: MIT
#include <cmath>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::io::detail {

namespace {

using geom::Vec3;

constexpr double shortest_seam_mm = 1.0;
const base::Angle nearly_along = base::Angle::deg(1.0);

/// The part of a direction across another; nothing when they are within one degree of parallel.
std::optional<Vec3> across(const Vec3& direction, const Vec3& axis) {
  const Vec3 part = direction - direction.dot(axis) * axis;
  if (part.norm() < std::sin(nearly_along.rad())) return std::nullopt;
  return geom::unit(part);
}

void read_face(AttributeReader& reader, const std::optional<Vec3>& tangent, SeamDraft& seam) {
  const std::optional<Vec3> face = reader.find_direction("face");
  if (!face || face->hasNaN() || !tangent) return;
  seam.face = across(*face, *tangent);
  if (seam.face) return;
  reader.error("face",
               "read.seam.face_along",
               "the weld face points along the seam; expected a direction across it, the one the "
               "finished weld is looked at from; correct it");
}

void read_line(AttributeReader& reader, SeamDraft& seam) {
  geom::LinePath line;
  line.from = reader.point("from");
  line.to = reader.point("to");
  const double length = (line.to - line.from).norm();
  std::optional<Vec3> tangent;
  if (length < shortest_seam_mm) {
    reader.error("to",
                 "read.seam.too_short",
                 "the seam is " + base::digits_text(length) +
                     " mm long; expected at least 1 mm; correct from= or to=");
  } else if (!std::isnan(length)) {
    tangent = geom::unit(line.to - line.from);
    seam.seam.path = line;
    seam.seam.length_mm = length;
  }
  read_face(reader, tangent, seam);
}

/// Without a stated start the circle starts at +x of its centre, or +y when its axis runs near x.
Vec3 default_start(const Vec3& axis) {
  constexpr double near_x = 0.9;
  const Vec3 wanted = std::abs(axis.x()) > near_x ? Vec3::UnitY() : Vec3::UnitX();
  return across(wanted, axis).value_or(Vec3::UnitZ());
}

void read_circle(AttributeReader& reader, SeamDraft& seam) {
  geom::CirclePath circle;
  circle.centre = reader.point("centre");
  circle.axis = reader.direction("axis");
  circle.radius_mm = reader.quantity("radius", ranges::size);
  const std::optional<Vec3> start = reader.find_direction("start");
  const bool is_sound =
      !circle.centre.hasNaN() && !circle.axis.hasNaN() && !std::isnan(circle.radius_mm);
  if (!is_sound || (start && start->hasNaN())) return read_face(reader, std::nullopt, seam);
  const std::optional<Vec3> across_axis =
      start ? across(*start, circle.axis) : default_start(circle.axis);
  if (!across_axis) {
    reader.error("start",
                 "read.seam.start_along",
                 "the start direction points along the circle's axis; expected one across it, from "
                 "the centre to the start point; correct it");
    return read_face(reader, std::nullopt, seam);
  }
  circle.start = *across_axis;
  seam.seam.path = circle;
  seam.seam.length_mm = geom::path_length_mm(circle);
  read_face(reader, circle.axis.cross(circle.start), seam);
}

/// Holes of a plug or slot joint: welded round along their middle lines, one after the other.
void read_holes(AttributeReader& reader, const joint::Joint& joint, SeamDraft& seam) {
  const int count = reader.count("count", 1, 10000);
  const auto* plug = std::get_if<joint::Plug>(&joint.preparation);
  if (plug == nullptr) {
    reader.error("read.joint.seams",
                 "holes in a joint that is no plug or slot weld; expected line, circle or run; "
                 "correct the seam or the preparation");
    return;
  }
  seam.seam.length_mm = count * joint::welded_round_mm(*plug);
}

bool is_seam(std::string_view name) {
  return name == "line" || name == "circle" || name == "run" || name == "holes";
}

}  // namespace

void read_seams(FileContext& context,
                const pugi::xml_node& joint_element,
                JointDraft& draft,
                joint::Places& places) {
  std::vector<pugi::xml_node> elements;
  for (const pugi::xml_node& child : joint_element.children()) {
    if (is_seam(child.name())) elements.push_back(child);
  }
  if (elements.empty()) {
    context.report.error(context.file.spot(joint_element),
                         "read.element.missing",
                         "the joint has no seam; expected line, circle or run; add one");
  }
  if (elements.size() > 2) {
    context.report.error(context.file.spot(elements[2]),
                         "read.joint.seams",
                         std::to_string(elements.size()) +
                             " seams in one joint; expected one, or two for its two sides; write a "
                             "joint for each further weld");
  }
  const std::string& id = draft.joint.id;
  for (std::size_t i = 0; i < elements.size(); ++i) {
    AttributeReader reader(context, elements[i]);
    SeamDraft seam;
    seam.spot = reader.spot();
    seam.seam.joint = id;
    seam.seam.id = elements.size() == 1
                       ? id
                       : id + '.' + static_cast<char>('a' + std::min<std::size_t>(i, 25));
    const std::string_view name = elements[i].name();
    if (name == "line") read_line(reader, seam);
    if (name == "circle") read_circle(reader, seam);
    if (name == "run") seam.seam.length_mm = reader.quantity("length", ranges::seam_length);
    if (name == "holes") read_holes(reader, draft.joint, seam);
    reader.finish("seam/" + seam.seam.id, places);
    check_children(context, elements[i], {});
    draft.seams.push_back(std::move(seam));
  }
}

}  // namespace seamturn::io::detail
