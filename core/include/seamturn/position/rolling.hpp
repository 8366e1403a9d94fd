// SPDX-License-Identifier: MIT
// A ring turned under an arc that stands still: how far ahead of dead centre, and how fast.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::position {

using base::Angle;

/// How far the arc stands ahead of dead centre, in travel, so that the pool freezes there. A row of
/// the library: an angle, or a length along the ring.
struct RollingLead {
  std::string process;                   ///< ISO 4063 number
  std::vector<process::PassRole> roles;  ///< empty: every role
  double over_mm = 0.0;                  ///< outside diameter, this one not included
  std::optional<double> up_to_mm;        ///< this one included
  std::optional<Angle> lead;
  std::optional<double> lead_mm;
  base::Status status = base::Status::proposed;
  std::string source;
};

struct LeadKey {
  std::string process;
  process::PassRole role = process::PassRole::fill;
  double diameter_mm = 0.0;
};

/// More would be downhill beyond PA.
inline constexpr Angle largest_lead = Angle::deg(15.0);

/// Angle of a row's lead on a ring: as stated, or length over radius; never above largest_lead.
/// Units: mm -> Angle. Pre: diameter above 0; the row states one lead.
/// Source: arc over radius. Tests: position/rolling - published leads [TWI-SAW-RING].
[[nodiscard]] Angle lead_angle(const RollingLead& row, double diameter_mm);

/// Lead of a pass: of the rows for its process, role and diameter the first that names its role,
/// else the first; 0 when there is none.
[[nodiscard]] Angle rolling_lead(std::span<const RollingLead> rows, const LeadKey& key);

/// Turning speed that gives a travel at a radius: that of the layer being laid, not the drawn one.
/// Units: mm/s, mm -> rad/s. Pre: radius above 0.
/// Source: travel over radius. Tests: position/rolling - computed rows of a table, law.
[[nodiscard]] double rolling_speed_rad_s(double travel_mm_s, double radius_mm);

/// Time of a pass that goes so far round, overlap included.
/// Units: mm/s, mm, Angle -> s. Pre: travel and radius above 0.
[[nodiscard]] double rolling_time_s(double travel_mm_s, double radius_mm, Angle round);

}  // namespace seamturn::position
