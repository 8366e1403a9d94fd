// SPDX-License-Identifier: MIT
// What the parts' fit does to a weld: the band between the least and the most metal that tolerances
// of gap, root face, angle and size allow, and the table a welder reads at the joint: so much gap,
// these settings, so many passes, and beyond that stop and call.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/pass/pass_stack.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::fitup {

using base::Angle;

/// How far edges, set-up and size may be off the drawing. All values are departures, not below 0.
struct Tolerances {
  std::string id;
  double gap_minus_mm = 0.0;
  double gap_plus_mm = 0.0;
  double root_face_minus_mm = 0.0;
  double root_face_plus_mm = 0.0;
  Angle angle_minus;  ///< of each face's angle as the preparation states it
  Angle angle_plus;
  double size_minus_mm = 0.0;  ///< legs of fillets
  double size_plus_mm = 0.0;
  std::optional<double> gap_stop_mm;  ///< the shop's own "stop and call"; absent: the code's alone
  base::Status status = base::Status::proposed;
  std::string source;
};

/// One end of the band, or its middle.
struct FitUpCase {
  section::SectionParams params;
  section::WeldSection section;
  std::optional<pass::PassStack> stack;  ///< none: no settings close; `why` says it
  std::string why;
};

struct FitUpBand {
  FitUpCase low;      ///< least metal
  FitUpCase nominal;  ///< as drawn
  FitUpCase high;     ///< most metal
};

/// The same weld at the least, the drawn and the most metal.
/// Units: mm, Angle.
/// Pre: the request's section pointer is ignored; everything else of it as make_pass_stack asks;
///   tolerances finite, not negative.
/// Outside: refuses as weld_section when the drawn sizes themselves are refused. Departures that
///   no edge can have (gap below 0, root face below 0 or through the plate) stop at what it can.
/// Source: none - the corners of four tolerances; gap, angle and size move the area one way, both
///   ends of the root face are asked.
/// Accuracy: exact corners; a partial or gouged weld keeps its depth.
/// Tests: fitup/band - law (each tolerance alone lies inside), closed-form.
[[nodiscard]] base::Outcome<FitUpBand> fit_up_band(const section::SectionParams& drawn,
                                                   const Tolerances& tolerances,
                                                   const pass::StackRequest& request);

/// Where the table ends and why.
struct StopLimit {
  double gap_mm = 0.0;
  std::string reason;  ///< "ISO 5817:2023 no. 617 level C" ...
  base::Status status = base::Status::from_memory;
};

/// One row: gaps above `from` up to `to`, planned for the widest.
struct GapRow {
  double from_mm = 0.0;
  double to_mm = 0.0;
  double area_mm2 = 0.0;                 ///< at the widest; 0 when no section can be
  std::optional<pass::PassStack> stack;  ///< none: stop and call already here; `why` says it
  std::string why;
};

struct GapTable {
  std::vector<GapRow> rows;  ///< from the tightest; the last ends at the stop limit
  StopLimit stop;            ///< the code's or shop's limit, or the first gap that does not close
};

/// Rows a millimetre wide up to the stop limit, each with settings, passes and weave for its widest
/// gap. Gaps too tight for any settings stand as rows to stop at; the first row above them that no
/// settings close ends the table there.
/// Units: mm.
/// Pre: as fit_up_band; stop limit finite.
/// Outside: refuses fitup.gap.stop_below_zero.
/// Source: the stop limit's own.
/// Accuracy: a row's settings hold its widest gap; a tighter one takes less metal, travelled
/// faster. Tests: fitup/gap_table - law, closed-form.
[[nodiscard]] base::Outcome<GapTable> gap_table(const section::SectionParams& drawn,
                                                const StopLimit& stop,
                                                const pass::StackRequest& request);

/// The root gap of a preparation set anew; plugs have none and stay.
[[nodiscard]] section::SectionParams with_gap(section::SectionParams params, double gap_mm);

}  // namespace seamturn::fitup
