// SPDX-License-Identifier: MIT
// General tolerances of weldments by ISO 13920: what a drawing asks that names only a class.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::shrinkage {

enum class SizeClass { a, b, c, d };  ///< lengths and angles
enum class FormClass { e, f, g, h };  ///< straightness, flatness, parallelism
[[nodiscard]] std::string_view size_class_name(SizeClass size_class);  ///< "A" ...
[[nodiscard]] std::string_view form_class_name(FormClass form_class);  ///< "E" ...
[[nodiscard]] std::optional<SizeClass> find_size_class(std::string_view name);
[[nodiscard]] std::optional<FormClass> find_form_class(std::string_view name);

struct Tolerance {
  double mm = 0.0;  ///< linear: plus and minus; form: the whole width of the zone
  std::string row;  ///< "above 120 to 400 mm"
  base::Citation citation;
};
struct AngularTolerance {
  double minutes = 0.0;   ///< plus and minus
  double mm_per_m = 0.0;  ///< as printed, a rounded tangent
  std::string row;
  base::Citation citation;
};

/// Deviation permitted of a length.
/// Units: mm -> mm. Pre: finite, > 0.
/// Outside: below 2 mm: refuses with shrinkage.tolerance.size; above 20 m the last column.
/// Source: [ISO 13920] 1996 table 1. Class A verified; of B to D the values were seen, but not
///   under which size each stands: from memory.
/// Accuracy: exact cell; the edition of 2023 was not seen.
/// Tests: shrinkage/tolerance_class - published, law.
[[nodiscard]] base::Outcome<Tolerance> linear_tolerance(SizeClass size_class, double nominal_mm);
/// Deviation permitted of an angle, by the length of its shorter leg.
/// Units: mm -> minutes of arc, mm/m. Pre: finite, > 0. Outside: n/a, the table has open ends.
/// Source: [ISO 13920] 1996 table 2, verified. Tests: shrinkage/tolerance_class - published.
[[nodiscard]] AngularTolerance angular_tolerance(SizeClass size_class, double shorter_leg_mm);
/// Straightness, flatness and parallelism, by the longer side of the surface.
/// Units: mm -> mm. Pre: finite, > 0.
/// Outside: 30 mm or less: refuses with shrinkage.tolerance.size.
/// Source: [ISO 13920] 1996 table 3: E, F and the first cell of G verified, the rest from memory.
/// Tests: shrinkage/tolerance_class - published, law.
[[nodiscard]] base::Outcome<Tolerance> form_tolerance(FormClass form_class, double longer_side_mm);

[[nodiscard]] const base::FigureCard& tolerance_card();

}  // namespace seamturn::shrinkage
