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

}  // namespace seamturn::planner
