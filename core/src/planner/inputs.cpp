// SPDX-License-Identifier: MIT
#include "seamturn/planner/inputs.hpp"

#include "seamturn/base/error.hpp"

namespace seamturn::planner {

const process::Wire& wire_of(const Inputs& inputs, const joint::Joint& joint) {
  const std::string& id = joint.wire.empty() ? inputs.weldment.wire : joint.wire;
  for (const process::Wire& wire : inputs.library.wires) {
    if (wire.id == id) return wire;
  }
  SEAMTURN_REQUIRE(false, id);
  return inputs.library.wires.front();
}

const fitup::Tolerances* fit_up_of(const Inputs& inputs, const joint::Joint& joint) {
  const std::vector<fitup::Tolerances>& rows = inputs.library.fit_ups;
  if (rows.empty() || joint.fit_up.empty()) return rows.empty() ? nullptr : &rows.front();
  for (const fitup::Tolerances& row : rows) {
    if (row.id == joint.fit_up) return &row;
  }
  SEAMTURN_REQUIRE(false, joint.fit_up);
  return nullptr;
}

}  // namespace seamturn::planner
