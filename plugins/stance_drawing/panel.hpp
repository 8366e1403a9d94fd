// SPDX-License-Identifier: MIT
// A view of the cell on a part of the page.
#pragma once

#include <string>
#include <vector>

#include "stance_drawing/view.hpp"
#include "svg/plane.hpp"

namespace seamturn::stance_drawing {

struct Panel {
  View view;
  svg::Box paper;        ///< px
  svg::Box field;        ///< of it, where things may stand that are not named at the edges
  svg::Point centre_mm;  ///< of the view, in the middle of the paper
  double px_per_mm = 1.0;

  [[nodiscard]] svg::Point page(const Vec3& p_W) const;
  [[nodiscard]] svg::Polygon page(const Line& line) const;
  /// The stretch of a straight line that is in the field; empty when none is.
  [[nodiscard]] Line in_field(const Vec3& at, const Vec3& along) const;
};

/// The smallest upright box of a view about places. Pre: at least one.
[[nodiscard]] svg::Box seen_box(const View& view, const Line& places);
/// How large a box of a view may be drawn on a paper, with an edge left free.
[[nodiscard]] double fitting_scale(const svg::Box& seen, const svg::Box& paper);

}  // namespace seamturn::stance_drawing
