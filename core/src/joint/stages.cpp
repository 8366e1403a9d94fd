// SPDX-License-Identifier: MIT
#include "seamturn/joint/stages.hpp"

#include <array>

namespace seamturn::joint {

std::span<const std::string_view> operation_names() {
  static constexpr std::array<std::string_view, 14> names = {"fit",
                                                             "temperature-check",
                                                             "visual-test",
                                                             "surface-test",
                                                             "volume-test",
                                                             "leak-test",
                                                             "residual-field",
                                                             "grinding",
                                                             "cleaning",
                                                             "straightening",
                                                             "vent-hole",
                                                             "stress-relief",
                                                             "machining",
                                                             "hold"};
  return names;
}

std::string_view operation_name(OperationKind kind) {
  return operation_names()[static_cast<std::size_t>(kind)];
}

SetupWeight fixture_weight(const Setup& setup) {
  SetupWeight weight;
  for (const SetupSolid& solid : setup.solids) {
    weight.mass_kg += solid.mass_kg;
    weight.centre += solid.mass_kg * solid.centre;
  }
  if (weight.mass_kg > 0.0) weight.centre /= weight.mass_kg;
  return weight;
}

std::vector<std::string> fitted_members(const Stage& stage) {
  std::vector<std::string> members;
  for (const Operation& operation : stage.operations) {
    if (operation.kind != OperationKind::fit) continue;
    members.insert(members.end(), operation.members.begin(), operation.members.end());
  }
  return members;
}

}  // namespace seamturn::joint
