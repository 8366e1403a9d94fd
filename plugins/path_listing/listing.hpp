// SPDX-License-Identifier: MIT
// Where the torch goes, stance by stance in the order of the clock.
#pragma once

#include <string>

#include "plan_reader/plan_reader.hpp"

namespace seamturn::path_listing {

/// True when the plan has stances and a clock: without them there is nothing to list.
[[nodiscard]] bool has_listing(const plan_reader::PlanTree& plan);

/// The listing as XML (docs/schemas/paths.xsd).
[[nodiscard]] std::string listing_xml(const plan_reader::PlanTree& plan);

/// The pass of an arc event: gate before it, settings, points. `wait_s`: planned just before it.
void put_pass(pugi::xml_node visit,
              const plan_reader::PlanTree& plan,
              pugi::xml_node arc_event,
              double wait_s);

}  // namespace seamturn::path_listing
