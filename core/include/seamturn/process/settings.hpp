// SPDX-License-Identifier: MIT
// Linked settings: feed, voltage, current and tip distance that belong together on one power
// source, proved on a trial plate. They are never mixed across rows.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::process {

struct LinkedSettings {
  std::string id;
  std::string process;  ///< ISO 4063 number
  std::string wire;     ///< id of a Wire
  std::string gas;      ///< id of a Gas
  PassRole role = PassRole::fill;
  std::vector<WeldPosition> positions;  ///< where the row may be used
  double feed_mm_s = 0.0;
  double voltage_v = 0.0;
  double current_a = 0.0;
  double tip_distance_mm = 0.0;  ///< contact tip to work
  double gas_flow_l_min = 0.0;
  double travel_min_mm_s = 0.0;  ///< slowest travel at which the pool stays under control
  double travel_max_mm_s = 0.0;
  double travel_preferred_mm_s = 0.0;  ///< for passes whose size is free
  double weave_width_mm = 0.0;         ///< peak to peak; 0: none
  double weave_frequency_hz = 0.0;
  base::Angle push;      ///< torch leans back by this, pointing forward; drag is negative
  std::string transfer;  ///< "dip", "globular", "spray", "pulsed"
  base::Status status = base::Status::proposed;
  std::string source;
};

}  // namespace seamturn::process
