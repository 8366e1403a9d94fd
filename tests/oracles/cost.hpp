// SPDX-License-Identifier: MIT
// Worked cost examples. Inputs as printed, in pounds and cubic feet.
#pragma once

#include "oracle.hpp"

namespace seamturn::tests {

struct UnitCostRow {
  const char* name;
  double labour_per_hour;
  double deposit_lb_h;
  double operating_factor_ratio;
  double wire_price_per_lb;
  double efficiency_ratio;
  double gas_flow_ft3_h;
  double gas_price_per_ft3;
  Expected labour_per_lb;
  Expected wire_per_lb;
  Expected gas_per_lb;
  Expected total_per_lb;
};

inline constexpr const char* weld_cost_sheet = "WELD-COST-SHEET, worked example";

// The gas of example 2 is no printed value: covered electrodes use none.
inline const UnitCostRow unit_cost_rows[] = {
    {"1: flux-cored E71T-1 1.6 mm",
     45.0,
     10.2,
     0.45,
     1.78,
     0.87,
     40.0,
     0.02,
     {9.80, 0.005, Origin::published, weld_cost_sheet},
     {2.05, 0.005, Origin::published, weld_cost_sheet},
     {0.08, 0.005, Origin::published, weld_cost_sheet},
     {11.93, 0.005, Origin::published, weld_cost_sheet}},
    {"2: covered E7018 4.8 mm",
     45.0,
     5.4,
     0.30,
     0.85,
     0.64,
     0.0,
     0.0,
     {27.78, 0.005, Origin::published, weld_cost_sheet},
     {1.33, 0.005, Origin::published, weld_cost_sheet},
     {0.0, 0.0, Origin::closed_form, "no gas"},
     {29.11, 0.005, Origin::published, weld_cost_sheet}},
};

}  // namespace seamturn::tests
