// SPDX-License-Identifier: MIT
// The plots of docs/methods, drawn from the functions of the core.
#pragma once

#include <string>
#include <vector>

#include "docs/plot.hpp"

namespace seamturn::tests {

struct NamedPlot {
  std::string file;  ///< below docs/methods/plots
  Plot plot;
};

/// Preheat, tables, zone, thickness.
[[nodiscard]] std::vector<NamedPlot> preheat_plots();
/// Carbon equivalent, heat input, cooling, band, hardness, hold, soak, tearing.
[[nodiscard]] std::vector<NamedPlot> heat_plots();
/// Shrinkage across a butt.
[[nodiscard]] std::vector<NamedPlot> shrinkage_plots();
/// Warm strips, tail and lump, whole parts.
[[nodiscard]] std::vector<NamedPlot> cooling_plots();
/// Stress on tacks.
[[nodiscard]] std::vector<NamedPlot> tack_plots();

}  // namespace seamturn::tests
