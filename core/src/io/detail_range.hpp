// SPDX-License-Identifier: MIT
// What a value in a file may be. These bounds refuse typing errors and nonsense; whether a value
// suits its weld is asked later, where the formula is.
#pragma once

#include <string_view>

#include "seamturn/base/units.hpp"
#include "seamturn/joint/preparation.hpp"

namespace seamturn::io::detail {

/// Bounds in the unit shown to people; both included unless `above`.
struct Range {
  base::Dimension dimension = base::Dimension::none;
  std::string_view unit;
  double least = 0.0;
  double most = 0.0;
  bool above = false;  ///< `least` itself is excluded
  bool below = false;  ///< `most` itself is excluded
};

namespace ranges {

using D = base::Dimension;
constexpr bool above = true;

// Places and sizes of members.
inline constexpr Range coordinate{D::length, "mm", -1e6, 1e6};
inline constexpr Range size{D::length, "mm", 0.0, 1e5, above};
inline constexpr Range size_or_none{D::length, "mm", 0.0, 1e5};
inline constexpr Range seam_length{D::length, "mm", 0.0, 1e6, above};
inline constexpr Range arc_sweep{D::angle, "deg", 0.0, 360.0, above, above};
inline constexpr Range weld_length{D::length, "mm", 0.0, 1e6};
inline constexpr Range turn{D::angle, "deg", -360.0, 360.0};
inline constexpr Range mass{D::mass, "kg", 0.0, 1e6, above};
inline constexpr Range mass_or_none{D::mass, "kg", 0.0, 1e6};

// Welds.
inline constexpr Range weld_size{D::length, "mm", 0.0, 200.0, above};
inline constexpr Range gap{D::length, "mm", 0.0, 50.0};
inline constexpr Range root_face{D::length, "mm", 0.0, 1000.0};
inline constexpr Range depth{D::length, "mm", 0.0, 1000.0, above};
inline constexpr Range dihedral{
    D::angle, "deg", joint::fillet_corner_deg.least, joint::fillet_corner_deg.largest};
inline constexpr Range included_angle{D::angle, "deg", 0.0, 180.0, above, above};
inline constexpr Range bevel_angle{D::angle, "deg", 0.0, 90.0, above, above};
inline constexpr Range first_face{D::angle, "deg", 0.0, 90.0, false, above};
inline constexpr Range root_radius{D::length, "mm", 0.0, 100.0, above};
inline constexpr Range bulge{D::length, "mm", -50.0, 50.0};
inline constexpr Range half_turn{D::angle, "deg", 0.0, 180.0};
inline constexpr Range share_of_thickness{D::none, "", 0.0, 10.0, above};
inline constexpr Range share{D::ratio, "", 0.0, 1.0};
inline constexpr Range over_weld{D::ratio, "", 1.0, 2.0};
inline constexpr Range site_factor{D::ratio, "", 1.0, 20.0};
inline constexpr Range cap_height{D::length, "mm", 0.0, 50.0};

// Metal.
inline constexpr Range ambient{D::temperature, "degC", -50.0, 60.0};
inline constexpr Range preheat{D::temperature, "degC", -50.0, 500.0};
inline constexpr Range interpass{D::temperature, "degC", 0.0, 600.0, above};
inline constexpr Range cooling_time{D::time, "s", 0.0, 1000.0, above};
inline constexpr Range later_heating{D::temperature, "degC", 0.0, 1000.0, above};
inline constexpr Range carbon{D::none, "", 0.0, 2.1, above};  // beyond either end it is no steel
inline constexpr Range element{D::none, "", 0.0, 50.0};
inline constexpr Range carbon_equivalent{D::none, "", 0.0, 3.0};
inline constexpr Range yield{D::stress, "MPa", 0.0, 3000.0, above};

// Wires, gases, settings.
inline constexpr Range wire_diameter{D::length, "mm", 0.0, 10.0, above};
inline constexpr Range linear_mass{D::linear_mass, "kg/m", 0.0, 10.0, above};
inline constexpr Range efficiency{D::ratio, "", 0.0, 1.0, above};
inline constexpr Range hydrogen{D::none, "", 0.0, 100.0, above};
inline constexpr Range price_per_kg{D::money_per_mass, "/kg", 0.0, 1e6};
inline constexpr Range price_per_m3{D::money_per_volume, "/m3", 0.0, 1e6};
inline constexpr Range price_per_kwh{D::money_per_energy, "/kWh", 0.0, 1e6};
inline constexpr Range price_per_hour{D::money_per_hour, "/h", 0.0, 1e6};
inline constexpr Range feed{D::speed, "m/min", 0.0, 100.0, above};
inline constexpr Range travel{D::speed, "cm/min", 0.0, 10000.0, above};
inline constexpr Range gouging_speed{D::speed, "cm/min", 0.0, 1000.0, above};
inline constexpr Range heating_power{D::power, "kW", 0.0, 1e6, above};
inline constexpr Range voltage{D::voltage, "V", 0.0, 120.0, above};
inline constexpr Range current{D::current, "A", 0.0, 3000.0, above};
inline constexpr Range tip_distance{D::length, "mm", 0.0, 200.0, above};
inline constexpr Range gas_flow{D::gas_flow, "l/min", 0.0, 200.0};
inline constexpr Range push{D::angle, "deg", -60.0, 60.0};
inline constexpr Range weave_width{D::length, "mm", 0.0, 100.0, above};
inline constexpr Range weave_frequency{D::frequency, "Hz", 0.0, 50.0, above};
inline constexpr Range area{D::area, "mm2", 0.0, 1e4, above};
inline constexpr Range tolerance_angle{D::angle, "deg", 0.0, 180.0};
inline constexpr Range ring_diameter{D::length, "mm", 0.0, 1e5};
inline constexpr Range rolling_lead{D::angle, "deg", 0.0, 15.0};
inline constexpr Range rolling_lead_length{D::length, "mm", 0.0, 1000.0};
inline constexpr Range gas_loss{D::ratio, "", 1.0, 10.0};
inline constexpr Range band{D::ratio, "", 0.0, 1.0, false, above};

// Cell.
inline constexpr Range axis_limit{D::angle, "deg", -36000.0, 36000.0};
inline constexpr Range axis_speed{D::angular_speed, "deg/s", 0.0, 3600.0, above};
inline constexpr Range axis_acceleration{D::angular_acceleration, "deg/s2", 0.0, 1e5, above};
inline constexpr Range axis_jerk{D::angular_jerk, "deg/s3", 0.0, 1e6, above};
inline constexpr Range between_axes{D::angle, "deg", 1.0, 179.0};
inline constexpr Range uncertainty{D::ratio, "", 0.0, 0.5};
inline constexpr Range torque{D::torque, "N m", 0.0, 1e8, above};
inline constexpr Range overhang{D::length, "mm", -1e5, 1e5};
inline constexpr Range air_speed{D::speed, "m/s", 0.0, 20.0, above};
inline constexpr Range air_acceleration{D::acceleration, "m/s2", 0.0, 1000.0, above};
inline constexpr Range torch_length{D::length, "mm", 0.0, 2000.0, above};
inline constexpr Range torch_bend{D::angle, "deg", 0.0, 90.0};
inline constexpr Range time{D::time, "s", 0.0, 1e6};
inline constexpr Range time_above_none{D::time, "s", 0.0, 1e6, above};

}  // namespace ranges

}  // namespace seamturn::io::detail
