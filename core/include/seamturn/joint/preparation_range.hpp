// SPDX-License-Identifier: MIT
// Which sizes a standard recommends for a preparation: thickness, angle, gap, root face, radius.
// Plain numbers; the rows stand in the library file. Outside is a warning, never a refusal: a
// tested procedure may lie outside.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::joint {

using base::Angle;

/// From how many sides the weld is made.
enum class RangeSides { one, two, backing };
/// "one", "two", "backing".
[[nodiscard]] std::string_view sides_name(RangeSides sides);
[[nodiscard]] std::optional<RangeSides> find_sides(std::string_view name);

/// Limits of one size, in mm or degrees; an absent limit does not bind.
struct RangeLimit {
  std::optional<double> least;
  std::optional<double> largest;
  bool above_least = false;               ///< the least itself lies outside (">16")
  std::optional<double> thickness_ratio;  ///< largest also: this share of the thickness
  base::Status status = base::Status::from_memory;
};

/// One row of the library.
struct PreparationRange {
  std::string id;
  std::string preparation;  ///< "single-v", ... as joint::preparation_name
  RangeSides sides = RangeSides::one;
  std::string joint;     ///< "tee", "corner", ... when the row is for one type only; empty: any
  RangeLimit thickness;  ///< mm
  RangeLimit angle;      ///< deg: V included, bevel U J of one face, fillet between the plates
  RangeLimit gap;        ///< mm; holds after tacking
  RangeLimit root_face;  ///< mm
  RangeLimit radius;     ///< mm
  std::string source;    ///< key and locator as one text
};

/// What a joint has. Absent: the preparation has no such size.
struct PreparationSizes {
  double thickness_mm = 0.0;
  std::optional<double> gap_mm;
  std::optional<double> root_face_mm;
  std::optional<Angle> angle;
  std::optional<double> radius_mm;
};

/// Warnings for each size outside one row; empty: all inside. Limits themselves are inside (but for
/// above_least); 1e-9 is rounding.
/// Units: mm, Angle.  Pre: finite sizes, thickness > 0.
/// Outside: warns joint.range.thickness, joint.range.gap, joint.range.root_face, joint.range.angle,
///   joint.range.radius, naming the value, the limit, the row, its source and status.
/// Source: each row's own. Tests: joint/preparation_range - published, law.
[[nodiscard]] std::vector<base::Finding> check_against_range(const PreparationSizes& sizes,
                                                             const PreparationRange& range);

/// The rows of a preparation welded from so many sides (and, when a joint type is given, those for
/// it or for any type), judged together: nothing when one row (of any standard) holds all sizes;
/// else the warnings of the row that is nearest (fewest sizes outside, then one that suits the
/// thickness, then the first). Without any row a note joint.range.unknown. Pre: as
/// check_against_range. Source: each row's own. Tests: joint/preparation_range - law.
[[nodiscard]] std::vector<base::Finding> check_against_ranges(
    std::string_view preparation,
    RangeSides sides,
    const PreparationSizes& sizes,
    std::span<const PreparationRange> ranges,
    std::string_view joint = {});

/// A row that cannot be: what is wrong with it, empty when nothing is (limits finite and not below
/// 0, least not above largest, at least one limit). Source: none - reader's check. Tests:
/// joint/preparation_range - law.
[[nodiscard]] std::string wrong_with_range(const PreparationRange& range);

}  // namespace seamturn::joint
