// SPDX-License-Identifier: MIT
// Heat limits of a joint and how they came about.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/heat/thickness_seen.hpp"

namespace seamturn::procedure {

/// What one method of preheat says of a joint. Methods are shown side by side and never mixed.
struct PreheatAnswer {
  std::string method;               ///< "cet", "table-c1", "aws-category", "aws-hydrogen", ...
  std::optional<double> preheat_c;  ///< none: it gives no temperature here
  std::string says;                 ///< the same in words
  base::Status status = base::Status::from_memory;
  bool may_govern = false;  ///< gives a temperature, inside its range, confirmed enough
  bool no_preheat = false;  ///< it says that none is needed
};

/// Cooling times a joint is to keep, and the heat input they permit.
struct HeatWindow {
  double t85_least_s = 0.0;
  double t85_most_s = 0.0;
  std::string stated_by;
  base::Status status = base::Status::from_memory;
  bool binds = false;  ///< settings are sought inside it; else it is shown only
  bool kept = false;   ///< the passes laid lie inside; never without binds
  std::optional<double> heat_input_least_kj_mm;
  std::optional<double> heat_input_most_kj_mm;
  std::string refused;  ///< why there is no such heat input
};

struct HeatLimits {
  double cet_plate = 0.0;           ///< highest of the members, mass-%
  std::optional<double> cev_plate;  ///< none: outside the formula's range
  std::optional<double> pcm_plate;  ///< same
  std::optional<double> cen_plate;  ///< same
  std::optional<double> jis_plate;  ///< same
  double cet_governing = 0.0;
  bool outside_range = false;      ///< an input lies outside a method's range, told as a finding
  bool from_grade_maxima = false;  ///< no analysis of a member given: limits of its grade were used
  std::string composition_basis;   ///< of both members, in words
  double thickness_mm = 0.0;       ///< single thickness, thickest member
  std::vector<heat::HeatPath> paths;
  double combined_thickness_mm = 0.0;
  std::string combined_text;  ///< the sum, or who stated it
  double hydrogen_ml_100g = 0.0;
  double lowest_heat_input_kj_mm = 0.0;
  std::vector<PreheatAnswer> answers;
  double preheat_computed_c = 0.0;  ///< by the CET method; may lie below ambient
  double preheat_c = 0.0;           ///< governing; ambient when no heating is needed
  double own_preheat_c = 0.0;       ///< before a neighbour's was taken over
  std::string neighbour;            ///< joint in whose heated zone this one lies; empty: its own
  bool needs_heating = false;
  std::string preheat_basis;  ///< which method or whose statement governs
  double measure_distance_mm = 0.0;
  std::string where_to_measure;
  double zone_width_mm = 0.0;  ///< heated on each side of the weld line
  double soak_s = 0.0;
  double interpass_max_c = 0.0;
  std::string interpass_basis;
  std::optional<HeatWindow> window;  ///< none: nobody states one
};

}  // namespace seamturn::procedure
