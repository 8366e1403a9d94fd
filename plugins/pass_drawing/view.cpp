// SPDX-License-Identifier: MIT
#include "pass_drawing/view.hpp"

#include <cmath>

namespace seamturn::pass_drawing {

using plan_reader::number;
using plan_reader::text;

namespace {

constexpr double half_root = 0.7071067811865476;
constexpr double flat_least = 0.5;         // less of "up" in the section: the seam is steep
constexpr double near_cosine = 0.8660254;  // 30 degrees

/// Outward normals of the two plates on the weld's side.
struct Normals {
  Point first;
  Point second;
};

Normals plate_normals(const Subject& subject) {
  if (subject.is_fillet) {
    const double half = fill_map(subject).half_angle_rad();
    return {{-std::cos(half), std::sin(half)}, {std::cos(half), std::sin(half)}};
  }
  if (subject.is_corner) return {{1.0, 0.0}, {0.0, 1.0}};
  return {{0.0, 1.0}, {0.0, 1.0}};
}

Point face_direction(const Subject& subject) {
  return subject.is_corner ? Point{half_root, half_root} : Point{0.0, 1.0};
}

/// A seam without a place: the plainest case of its position, first member lower.
UpDirection nominal_up(const Subject& subject) {
  const Point face = face_direction(subject);
  const bool corner = subject.is_corner || subject.is_fillet;
  const Point level = plate_normals(subject).first;
  UpDirection up;
  up.is_steep = subject.position == "PF" || subject.position == "PG";
  if (up.is_steep) {
    up.up = corner ? level : face;
  } else if (subject.position == "PB") {
    up.up = level;
  } else if (subject.position == "PC") {
    up.up = corner && !subject.is_fillet ? Point{half_root, -half_root} : Point{1.0, 0.0};
  } else if (subject.position == "PD") {
    up.up = -1.0 * level;
  } else if (subject.position == "PE") {
    up.up = -1.0 * face;
  } else {
    up.up = face;
  }
  return up;
}

}  // namespace

UpDirection find_up(const Subject& subject, pugi::xml_node seam) {
  const pugi::xml_node pass = seam.child("pass");
  UpDirection up = nominal_up(subject);
  if (!pass.attribute("up_x")) return up;
  up.is_planned = true;
  const Point flat{number(pass, "up_x"), number(pass, "up_y")};
  up.is_steep = length(flat) < flat_least;
  if (!up.is_steep) up.up = (1.0 / length(flat)) * flat;
  return up;
}

std::vector<std::string> seams_otherwise(const Subject& subject, const UpDirection& drawn) {
  constexpr double alike_cosine = 0.9659258;  // 15 degrees
  std::vector<std::string> others;
  for (const pugi::xml_node named : subject.procedure.children("seam")) {
    const UpDirection up = find_up(subject, subject.plan->seam(text(named, "id")));
    const bool alike =
        up.is_steep == drawn.is_steep && (up.is_steep || dot(up.up, drawn.up) >= alike_cosine);
    if (!alike) others.push_back(text(named, "id"));
  }
  return others;
}

Point upright(const Subject& subject, const UpDirection& up) {
  const Normals normals = plate_normals(subject);
  Point best = up.up;
  double nearest = near_cosine;
  for (const Point candidate :
       {normals.first, normals.second, face_direction(subject), Point{1.0, 0.0}}) {
    for (const Point way : {candidate, -1.0 * candidate}) {
      if (dot(way, up.up) > nearest + 1e-9) {
        nearest = dot(way, up.up);
        best = way;
      }
    }
  }
  return best;
}

void View::put(Point turned_point, Point page_point) {
  origin_ = {page_point.x - px_per_mm_ * turned_point.x,
             page_point.y + px_per_mm_ * turned_point.y};
}

Point View::turned(Point p) const {
  return {p.x * up_.y - p.y * up_.x, dot(p, up_)};
}

Point View::page(Point p) const {
  const Point across = turned(p);
  return {origin_.x + px_per_mm_ * across.x, origin_.y - px_per_mm_ * across.y};
}

Polygon View::page(const Polygon& polygon) const {
  Polygon mapped;
  for (const Point point : polygon) mapped.push_back(page(point));
  return mapped;
}

Point View::direction(Point d) const {
  const Point across = turned(d);
  return {across.x, -across.y};
}

}  // namespace seamturn::pass_drawing
