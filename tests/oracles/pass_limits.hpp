// SPDX-License-Identifier: MIT
// Published limits of one pass and published counts of passes.
#pragma once

#include "seamturn/process/weld_position.hpp"

namespace seamturn::tests {

struct PassLimitRow {
  process::WeldPosition position;
  double single_leg_mm;
  double root_thickness_mm;
  const char* source;
};

// Gas-shielded wire column (GMAW, FCAW), read in a public copy of the table.
inline constexpr PassLimitRow pass_limit_rows[] = {
    {process::WeldPosition::pa, 12.0, 10.0, "[AWS D1.1] 2020, table 5.1, flat"},
    {process::WeldPosition::pb, 10.0, 8.0, "[AWS D1.1] 2020, table 5.1, horizontal"},
    {process::WeldPosition::pf, 12.0, 12.0, "[AWS D1.1] 2020, table 5.1, vertical"},
    {process::WeldPosition::pd, 8.0, 8.0, "[AWS D1.1] 2020, table 5.1, overhead"},
};
inline constexpr double fill_thickness_mm = 6.0;  // same table, fill passes, all positions

struct PassCountRow {
  double leg_mm;
  int least_passes;
  int most_passes;
  const char* source;
};

// "1/4 in fillet: one pass; 1/2 in horizontal: at least three, probably six".
inline constexpr PassCountRow pass_count_rows[] = {
    {6.35, 1, 1, "[MILLER] smaller, longer fillets, 1/4 in"},
    {12.7, 3, 6, "[MILLER] smaller, longer fillets, 1/2 in horizontal"},
};

// Heights of layers of a V without gap when all beads are of one size and layer n has n beads,
// relative to the first; the rule is published, the four digits follow from it.
inline constexpr double equal_bead_heights[] = {1.0, 0.7321, 0.7174, 0.7128};
inline constexpr const char* equal_bead_source =
    "[TCWI] 2001 (2), layer rule; digits computed from it";

}  // namespace seamturn::tests
