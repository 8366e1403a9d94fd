// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <cmath>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::io::detail {

namespace {

using geom::Vec3;

constexpr double shortest_seam_mm = 1.0;
const base::Angle sharpest_turn = base::Angle::deg(150.0);
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

void too_short(AttributeReader& reader, const char* at, double length, const char* what) {
  reader.error(
      at,
      "read.seam.too_short",
      "the seam is " + base::digits_text(length) + " mm long; expected at least 1 mm; " + what);
}

void start_along(AttributeReader& reader) {
  reader.error("start",
               "read.seam.start_along",
               "the start direction points along the axis; expected one across it, from the centre "
               "to the start point; correct it");
}

void read_line(AttributeReader& reader, SeamDraft& seam) {
  geom::LinePath line;
  line.from = reader.point("from");
  line.to = reader.point("to");
  const double length = (line.to - line.from).norm();
  std::optional<Vec3> tangent;
  if (length < shortest_seam_mm) {
    too_short(reader, "to", length, "correct from= or to=");
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
    start_along(reader);
    return read_face(reader, std::nullopt, seam);
  }
  circle.start = *across_axis;
  seam.seam.path = circle;
  seam.seam.length_mm = geom::path_length_mm(circle);
  read_face(reader, circle.axis.cross(circle.start), seam);
}

void read_arc(AttributeReader& reader, SeamDraft& seam) {
  geom::ArcPath arc;
  arc.centre = reader.point("centre");
  arc.axis = reader.direction("axis");
  arc.radius_mm = reader.quantity("radius", ranges::size);
  const Vec3 start = reader.direction("start");
  arc.sweep = reader.angle("sweep", ranges::arc_sweep);
  const bool is_sound = !arc.centre.hasNaN() && !arc.axis.hasNaN() && !start.hasNaN() &&
                        !std::isnan(arc.radius_mm) && !std::isnan(arc.sweep.rad());
  if (!is_sound) return read_face(reader, std::nullopt, seam);
  const std::optional<Vec3> across_axis = across(start, arc.axis);
  if (!across_axis) {
    start_along(reader);
    return read_face(reader, std::nullopt, seam);
  }
  arc.start = *across_axis;
  const double length = geom::path_length_mm(arc);
  if (length < shortest_seam_mm) {
    too_short(reader, "sweep", length, "correct radius= or sweep=");
  } else {
    seam.seam.path = arc;
    seam.seam.length_mm = length;
  }
  read_face(reader, arc.axis.cross(arc.start), seam);
}

/// What is wrong with a point after those before; nothing when it may follow.
std::optional<std::string> cannot_follow(const std::vector<Vec3>& points, const Vec3& next) {
  const Vec3 leg = next - points.back();
  if (leg.norm() < shortest_seam_mm) {
    return "lies " + base::digits_text(leg.norm()) +
           " mm from the one before; expected at least 1 mm between them";
  }
  if (points.size() < 2) return std::nullopt;
  const Vec3 before = points.back() - points[points.size() - 2];
  const base::Angle turn = geom::angle_between(before, leg);
  if (turn <= sharpest_turn) return std::nullopt;
  return "turns the seam back by " + base::fixed_text(turn.deg(), 1) +
         " deg; expected at most 150 deg at a corner";
}

bool lie_in_a_plane(const std::vector<Vec3>& points) {
  constexpr double flat_mm = 0.1;
  Vec3 normal = Vec3::Zero();
  for (std::size_t i = 0; i < points.size(); ++i) {
    normal += points[i].cross(points[(i + 1) % points.size()]);
  }
  if (normal.norm() < 1e-9) return false;
  normal.normalize();
  return std::all_of(points.begin(), points.end(), [&](const Vec3& point) {
    return std::abs((point - points.front()).dot(normal)) <= flat_mm;
  });
}

/// The points that stand in the file, each fit to follow those before it; what is not is told.
geom::PolylinePath read_points(FileContext& context, const Element& element, bool& sound) {
  geom::PolylinePath path;
  for (const Element& at : element.children("at")) {
    AttributeReader reader(context, at);
    const Vec3 point = reader.point("point");
    const auto wrong =
        path.points.empty() || point.hasNaN() ? std::nullopt : cannot_follow(path.points, point);
    if (wrong) {
      reader.error(
          "point", "read.polyline.point", "the point " + *wrong + "; correct or delete it");
    }
    reader.finish();
    check_children(context, at, {});
    sound = sound && !wrong && !point.hasNaN();
    if (!wrong && !point.hasNaN()) path.points.push_back(point);
  }
  return path;
}

void check_closed(AttributeReader& reader, const geom::PolylinePath& path, bool& sound) {
  std::optional<std::string> wrong;
  if (path.points.size() < 3) {
    wrong = "it has " + base::counted(path.points.size(), "point") + "; expected three at least";
  } else if (!lie_in_a_plane(path.points)) {
    wrong = "its points lie in no one plane; expected a flat outline within 0.1 mm";
  } else {
    std::vector<Vec3> points = path.points;
    points.push_back(path.points[0]);  // the last leg, and the corner from it into the first
    wrong = cannot_follow(path.points, points[0]);
    if (!wrong) wrong = cannot_follow(points, path.points[1]);
    if (wrong) wrong = "the first point, coming round, " + *wrong;
  }
  if (!wrong) return;
  sound = false;
  reader.error("closed",
               "read.polyline.closed",
               "the polyline closes upon itself and " + *wrong + "; correct the points");
}

void read_polyline(FileContext& context,
                   const Element& element,
                   AttributeReader& reader,
                   SeamDraft& seam) {
  bool sound = true;
  geom::PolylinePath path = read_points(context, element, sound);
  path.closed = reader.find_yes("closed");
  if (sound && path.closed) check_closed(reader, path, sound);
  if (sound && path.points.size() < 2) {
    sound = false;
    reader.error(
        "read.polyline.points",
        std::to_string(path.points.size()) +
            " point(s) found; expected two at least, each as <at point=\"...\"/>; add them");
  }
  if (!sound) return read_face(reader, std::nullopt, seam);
  seam.seam.length_mm = geom::path_length_mm(path);
  const Vec3 tangent = geom::path_station(path, 0.0).tangent;
  seam.seam.path = std::move(path);
  read_face(reader, tangent, seam);
}

/// Holes of a plug or slot joint: welded round along their middle lines, one after the other.
void read_holes(AttributeReader& reader, const joint::Joint& joint, SeamDraft& seam) {
  const int count = reader.count("count", 1, 10000);
  const auto* plug = std::get_if<joint::Plug>(&joint.preparation);
  if (plug == nullptr) {
    reader.error("read.joint.seams",
                 "holes in a joint that is no plug or slot weld; expected line, arc, circle, "
                 "polyline or run; "
                 "correct the seam or the preparation");
    return;
  }
  seam.seam.length_mm = count * joint::welded_round_mm(*plug);
}

constexpr std::array<std::string_view, 6> seam_elements = {
    "line", "arc", "circle", "polyline", "run", "holes"};

bool is_seam(std::string_view name) {
  return std::find(seam_elements.begin(), seam_elements.end(), name) != seam_elements.end();
}

void read_path(FileContext& context,
               const Element& element,
               AttributeReader& reader,
               const joint::Joint& joint,
               SeamDraft& seam) {
  const std::string_view name = element.name();
  if (name == "holes") read_holes(reader, joint, seam);
  if (name == "line") read_line(reader, seam);
  if (name == "arc") read_arc(reader, seam);
  if (name == "circle") read_circle(reader, seam);
  if (name == "polyline") read_polyline(context, element, reader, seam);
  if (name == "run") seam.seam.length_mm = reader.quantity("length", ranges::seam_length);
}

}  // namespace

void read_seams(FileContext& context,
                const Element& joint_element,
                JointDraft& draft,
                joint::Places& places) {
  std::vector<Element> elements;
  elements.reserve(2);
  for (const Element& child : joint_element.children()) {
    if (is_seam(child.name())) elements.push_back(child);
  }
  if (elements.empty()) {
    context.report.error(context.spot(joint_element),
                         "read.element.missing",
                         "the joint has no seam; expected line, arc, circle, polyline or run; "
                         "add one");
  }
  if (elements.size() > 2) {
    context.report.error(context.spot(elements[2]),
                         "read.joint.seams",
                         std::to_string(elements.size()) +
                             " seams in one joint; expected one, or two for its two sides; write a "
                             "joint for each further weld");
  }
  draft.seams.reserve(elements.size());
  const std::string& id = draft.joint.id;
  const auto of_joint = find_welded(context, joint_element, draft.key, places);
  for (std::size_t i = 0; i < elements.size(); ++i) {
    AttributeReader reader(context, elements[i]);
    SeamDraft seam;
    seam.spot = reader.spot();
    seam.seam.joint = id;
    seam.seam.id = elements.size() == 1
                       ? id
                       : id + '.' + static_cast<char>('a' + std::min<std::size_t>(i, 25));
    read_path(context, elements[i], reader, draft.joint, seam);
    const std::string key = "seam/" + seam.seam.id;
    reader.finish(key, places);
    constexpr std::array<std::string_view, 2> known = {"welded", "at"};
    const std::string_view name = elements[i].name();
    const std::size_t children = name == "polyline" ? 2 : name == "holes" ? 0 : 1;
    check_children(context, elements[i], std::span(known).first(children));
    const auto own = find_welded(context, elements[i], key, places);
    if (const auto& welded = own ? own : of_joint) {
      seam.seam.asked = welded->asked;
      seam.asked_spot = welded->spot;
    } else {
      seam.asked_spot = seam.spot;
    }
    draft.seams.push_back(std::move(seam));
  }
}

}  // namespace seamturn::io::detail
