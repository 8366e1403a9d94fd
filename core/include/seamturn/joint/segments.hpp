// SPDX-License-Identifier: MIT
// Long seams and rings welded in segments: from the middle outward, or in opposite arcs.
#pragma once

#include <string>
#include <vector>

#include "seamturn/joint/joint.hpp"

namespace seamturn::joint {

/// How a course is cut.
struct Splitting {
  int count = 2;
  SegmentTravel travel = SegmentTravel::outward;
  double stagger_mm = 0.0;  ///< stops of layers 2, 4 ... lie so far from those of layers 1, 3 ...
  double overlap_mm = 0.0;  ///< where two segments meet, half of it on each
};

/// When an arc of a ring is welded, counted from 0 all round: 1 3 2 4, 1 4 2 5 3 6, of five
/// 1 4 2 5 3. Pre: 0 <= index < count. Source: trade practice (docs/methods/order.md).
/// Tests: joint/segments, planner/twins.
[[nodiscard]] int opposite_rank(int index, int count);

/// The joint with every course in segments. Of equal length but for the stagger, which the first
/// and last of an open course give and take: what all of them weld is the course and the overlaps.
/// Open courses: ranks from the middle outward, both sides of it alike, travelled away from it or
/// (back step) towards it; stepping back, of an even count one of the inner pair runs outward, so
/// that no crater lies on another. Closed ones: one rank each, opposite ones in turn (1 3 2 4), all
/// travelled one way. Segments of a second seam bear the number of those they lie beside, and run
/// the same way on the part.
/// Units: mm.
/// Pre: every seam has a path, is welded whole and not yet in segments; splits(joint, splitting).
/// Source: none - geometry; the orders are trade practice (docs/methods/order.md).
/// Accuracy: exact. Tests: joint/segments - laws.
[[nodiscard]] Joint split_joint(const Joint& joint, const Splitting& splitting);

/// The part of a segment's path that no other segment welds on any layer: its ends stay clear of
/// where segments meet. Pre: the seam is a segment.
[[nodiscard]] Stretch own_stretch(const Seam& seam);

/// Whether segments are long enough for their stagger and overlap: each twice as long as both.
[[nodiscard]] bool splits(const Joint& joint, const Splitting& splitting);

/// Welded, in stations of the seam's path, on a layer counted from 1.
[[nodiscard]] std::vector<Stretch> layer_stretches(const Seam& seam, int layer);
/// Metal and arc of a layer: stretches and end returns.
[[nodiscard]] double layer_length_mm(const Seam& seam, int layer);

/// The seam as the file draws it: its own id, or that of the course it is a segment of.
[[nodiscard]] const std::string& drawn_id(const Seam& seam);
/// Its course there. Pre: the seam has a path.
[[nodiscard]] const geom::Path& drawn_course(const Seam& seam);
/// One or two.
[[nodiscard]] std::size_t drawn_seams(const Joint& joint);
/// Whether two seams of a joint with two courses lie beside each other: both whole, or segments of
/// one number, and not of one course.
[[nodiscard]] bool lie_beside(const Seam& a, const Seam& b);

}  // namespace seamturn::joint
