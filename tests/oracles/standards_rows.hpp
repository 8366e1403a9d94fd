// SPDX-License-Identifier: MIT
// What joints/library/standards.xml must say, as read in the documents.
#pragma once

#include "oracle.hpp"

namespace seamturn::tests {

/// [EN 10025-2] 2019 table 5: greatest CEV by thickness. Two web pages print 0.49 for S355 above 63
/// mm and 0.40 for S275 up to 100 mm: wrong, left out.
struct CevRow {
  const char* steel;
  double thickness_mm;
  Expected cev_max;
};
inline constexpr const char* cev_source = "EN 10025-2:2019 table 5";
inline constexpr CevRow cev_rows[] = {
    {"S235JR", 30.0, {0.35, 1e-12, Origin::published, cev_source}},
    {"S235JR", 40.0, {0.35, 1e-12, Origin::published, cev_source}},
    {"S235JR", 150.0, {0.38, 1e-12, Origin::published, cev_source}},
    {"S235JR", 250.0, {0.40, 1e-12, Origin::published, cev_source}},
    {"S275JR", 30.0, {0.40, 1e-12, Origin::published, cev_source}},
    {"S275JR", 40.0, {0.40, 1e-12, Origin::published, cev_source}},
    {"S275JR", 60.0, {0.42, 1e-12, Origin::published, cev_source}},
    {"S275JR", 250.0, {0.44, 1e-12, Origin::published, cev_source}},
    {"S355J2", 25.0, {0.45, 1e-12, Origin::published, cev_source}},
    {"S355J2", 35.0, {0.47, 1e-12, Origin::published, cev_source}},
    {"S355J2", 150.0, {0.47, 1e-12, Origin::published, cev_source}},
    {"S355J2", 200.0, {0.49, 1e-12, Origin::published, cev_source}},
};

}  // namespace seamturn::tests
