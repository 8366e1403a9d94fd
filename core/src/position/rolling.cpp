// SPDX-License-Identifier: MIT
#include "seamturn/position/rolling.hpp"

#include <algorithm>

#include "seamturn/base/error.hpp"

namespace seamturn::position {

Angle lead_angle(const RollingLead& row, double diameter_mm) {
  SEAMTURN_REQUIRE(diameter_mm > 0.0 && row.lead.has_value() != row.lead_mm.has_value(),
                   diameter_mm);
  const Angle lead = row.lead ? *row.lead : Angle::rad(2.0 * *row.lead_mm / diameter_mm);
  return std::min(lead, largest_lead);
}

Angle rolling_lead(std::span<const RollingLead> rows, const LeadKey& key) {
  const RollingLead* found = nullptr;
  for (const RollingLead& row : rows) {
    const bool in_range =
        key.diameter_mm > row.over_mm && (!row.up_to_mm || key.diameter_mm <= *row.up_to_mm);
    if (row.process != key.process || !in_range) continue;
    const bool names = std::find(row.roles.begin(), row.roles.end(), key.role) != row.roles.end();
    if (names) return lead_angle(row, key.diameter_mm);
    if (row.roles.empty() && found == nullptr) found = &row;
  }
  return found == nullptr ? Angle() : lead_angle(*found, key.diameter_mm);
}

double rolling_speed_rad_s(double travel_mm_s, double radius_mm) {
  SEAMTURN_REQUIRE(radius_mm > 0.0, radius_mm);
  return travel_mm_s / radius_mm;
}

double rolling_time_s(double travel_mm_s, double radius_mm, Angle round) {
  SEAMTURN_REQUIRE(travel_mm_s > 0.0, travel_mm_s);
  return round.rad() / rolling_speed_rad_s(travel_mm_s, radius_mm);
}

}  // namespace seamturn::position
