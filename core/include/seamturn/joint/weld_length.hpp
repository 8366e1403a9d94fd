// SPDX-License-Identifier: MIT
// Lengths as the trade writes them: all round, n x l (e), chain and staggered, tabs, end returns,
// overlap. From the course of a seam and such a statement to the stretches that are welded.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/outcome.hpp"

namespace seamturn::joint {

enum class LengthForm { continuous, all_round, intermittent };
/// How the elements of the second side lie to those of the first: opposite them, or opposite the
/// gaps.
enum class LengthPattern { chain, staggered };
inline constexpr int most_segments = 24;
/// How segments are travelled: away from the middle of the course, or back towards it. Of a closed
/// course: all along its path, or all against it.
enum class SegmentTravel { outward, back_step };

/// What is asked for. The default: the whole course, nothing added.
struct WeldLength {
  LengthForm form = LengthForm::continuous;
  int count = 0;         ///< intermittent: n, elements of a side
  double each_mm = 0.0;  ///< intermittent: l, length of an element
  double gap_mm = 0.0;   ///< intermittent: (e), clear distance between elements, not their pitch
  LengthPattern pattern = LengthPattern::chain;
  double run_on_mm = 0.0;      ///< on a tab before the start of the path as written, cut off later
  double run_off_mm = 0.0;     ///< on a tab beyond its end
  double end_return_mm = 0.0;  ///< a fillet carried round the member's edge, at both ends
  double overlap_mm = 0.0;     ///< closed seams: welded on over the start; where segments meet
  double corner_clear_mm = 0.0;  ///< no layer starts or stops nearer than this to a corner
  double stop_stagger_mm = 0.0;  ///< stops of consecutive layers at least so far apart
  std::optional<int> segments;   ///< welded in so many, one after another; none: by rule
  SegmentTravel travel = SegmentTravel::outward;
  std::optional<double> crater_s;  ///< filling the crater at every arc end; none: the cell's time
  bool operator==(const WeldLength&) const = default;
};

/// A welded part of a seam, in stations of its path. Below 0 and beyond the length lie the tabs of
/// an open path; a closed one runs on round.
struct Stretch {
  double from_mm = 0.0;
  double to_mm = 0.0;
  bool operator==(const Stretch&) const = default;
};

/// The seam a length is laid on.
struct SeamCourse {
  double length_mm = 0.0;
  bool closed = false;
  bool second_side = false;  ///< of a joint with two seams: staggered elements are shifted
  bool opposed = false;      ///< the second side's path runs against the first's
};

struct WeldedLength {
  std::vector<Stretch> stretches;  ///< by rising station, not touching
  double tabs_mm = 0.0;            ///< of the stretches: on run-on and run-off tabs
  double overlap_mm = 0.0;         ///< of the stretches: over the start
  double returns_mm = 0.0;         ///< both end returns together; not in the stretches
  [[nodiscard]] int arc_starts() const { return static_cast<int>(stretches.size()); }
  bool operator==(const WeldedLength&) const = default;
};

/// The stretches that are welded. What the elements leave over is shared evenly between both ends
/// of the seam; of a staggered pair the second side lies half a pitch (l + e) / 2 on, and the pair
/// as a whole is centred. On a closed seam the gap over the start is at least (e). Units: mm -> mm.
/// Pre: length > 0; every size >= 0; intermittent: count >= 1, l > 0, e > 0.
/// Outside: refuses joint.length.too_long (elements and gaps exceed the seam: by how much),
///   joint.length.not_closed (all round, or without segments an overlap, on an open seam),
///   joint.length.closed (tabs or end returns on a closed one), joint.length.overlap (more than
///   once round), joint.length.additions (tabs, end returns or overlap on an intermittent weld; a
///   tab and an end return together), joint.length.segments (an intermittent weld in segments).
/// Source: notation n x l (e), e clear gap: [ISO 2553] from memory; centring is our rule
///   (docs/methods/lengths.md).
/// Accuracy: exact. Tests: joint/weld_length - closed-form, laws.
[[nodiscard]] base::Outcome<WeldedLength> welded_length(const WeldLength& asked,
                                                        const SeamCourse& course);

/// Metal and arc: stretches and end returns together.
[[nodiscard]] double welded_mm(const WeldedLength& welded);

/// As on a drawing: "5 x 40 (60)", "5 x 40 (60) staggered", "all round"; "" when continuous.
/// Source: [ISO 2553] from memory; the word for the staggered sign is ours.
[[nodiscard]] std::string length_notation(const WeldLength& asked);

}  // namespace seamturn::joint
