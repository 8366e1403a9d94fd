// SPDX-License-Identifier: MIT
// The usual cautions, triggered by what the weldment contains. Wording is ours; each defers to a
// standard and to the people responsible on site.
#pragma once

#include <string>
#include <vector>

namespace seamturn::procedure {

struct Caution {
  std::string code;  ///< e.g. "caution.hydrogen"
  std::string text;
  std::string defer_to;  ///< standards and people
  bool operator==(const Caution&) const = default;
};

/// What the weldment contains, as far as cautions ask.
struct CautionTriggers {
  bool any_arc = true;
  bool on_positioner = false;  ///< stances are planned
  bool tilting = false;        ///< the table leans
  bool rolling_over = false;   ///< a headstock turns the part away from how it was set up
  double part_mass_kg = 0.0;
  double thickness_max_mm = 0.0;
  double cet_max = 0.0;  ///< mass-%
  double preheat_max_c = 0.0;
  bool closed_cavity = false;   ///< a tube closed at both ends
  bool outside_range = false;   ///< an input lies outside the range of a method used
  bool may_tear = false;        ///< a plate without the through-thickness class asked for
  bool magnet_handled = false;  ///< a magnet has lifted plates or part
  bool re_hung = false;         ///< the part is hung anew by crane during the build
  bool on_tacks = false;        ///< members are turned on their tacks alone
  bool without_record = true;   ///< a procedure no qualification record covers
};

/// Always in the same order. Never empty.
/// Pre: every number finite (a value that is none would silently switch a caution off).
/// Source: docs/methods/cautions.md. Tests: procedure/caution - each trigger on and off.
[[nodiscard]] std::vector<Caution> find_cautions(const CautionTriggers& triggers);

}  // namespace seamturn::procedure
