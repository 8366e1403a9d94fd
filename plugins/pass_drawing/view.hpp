// SPDX-License-Identifier: MIT
// Which way up a section is drawn: as it is welded, the nearest upright view of its plates.
#pragma once

#include <string>

#include "pass_drawing/subject.hpp"

namespace seamturn::pass_drawing {

/// Straight up in the section frame, as far as it lies in the section.
struct UpDirection {
  Point up{0.0, 1.0};       ///< unit vector; the section's y for a seam that climbs or falls
  bool is_steep = false;    ///< the seam runs up or down: gravity runs along it
  bool is_planned = false;  ///< as a stance turns the part; else as the position's code says
};
/// Of one seam's first pass.
[[nodiscard]] UpDirection find_up(const Subject& subject, pugi::xml_node seam);
/// Ids of seams of the procedure that lie otherwise than the one drawn by more than 15 degrees.
[[nodiscard]] std::vector<std::string> seams_otherwise(const Subject& subject,
                                                       const UpDirection& drawn);
/// The direction of the section drawn upwards: up, brought to the plates when they are near.
[[nodiscard]] Point upright(const Subject& subject, const UpDirection& up);

/// From the section frame to the page.
class View {
 public:
  View(Point up, double px_per_mm) : up_(up), px_per_mm_(px_per_mm) {}
  /// Puts a point of the section, in view coordinates (`turned`), at a point of the page.
  void put(Point turned_point, Point page_point);
  /// Right and up on the page, in mm.
  [[nodiscard]] Point turned(Point section_point) const;
  [[nodiscard]] Point page(Point section_point) const;
  [[nodiscard]] Polygon page(const Polygon& polygon) const;
  /// Unit vector on the page, y down.
  [[nodiscard]] Point direction(Point section_direction) const;
  [[nodiscard]] double px_per_mm() const { return px_per_mm_; }

 private:
  Point up_;
  double px_per_mm_;
  Point origin_;
};

}  // namespace seamturn::pass_drawing
