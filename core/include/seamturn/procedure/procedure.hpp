// SPDX-License-Identifier: MIT
// The content of a procedure sheet: everything ISO 15609-1 asks for that this weldment decides.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/heat/hold_time.hpp"
#include "seamturn/joint/joint.hpp"
#include "seamturn/pass/pass_stack.hpp"
#include "seamturn/procedure/caution.hpp"
#include "seamturn/procedure/heat_limits.hpp"
#include "seamturn/process/consumables.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::procedure {

/// One seam's share of a procedure, as an input of grouping.
struct SeamWork {
  const joint::Joint* joint = nullptr;
  const joint::Seam* seam = nullptr;
  const section::WeldSection* section = nullptr;
  const pass::PassStack* stack = nullptr;  ///< of the position planned
  const HeatLimits* heat = nullptr;
  const heat::HoldTime* hold = nullptr;  ///< of the joint as a whole
  const process::Wire* wire = nullptr;
  const process::Gas* gas = nullptr;
  std::string steel_1, steel_2, group_1, group_2;
  double thickness_1_mm = 0.0, thickness_2_mm = 0.0;
  bool closed = false;       ///< ring seam, rolled or walked round
  double diameter_mm = 0.0;  ///< ring seams; else 0
};

/// Joints welded alike: same type, preparation, sizes, steels, thicknesses, wire, position, passes.
/// Values only: a procedure may outlive what it was grouped from.
struct Procedure {
  std::string id;  ///< "P01" ...
  std::vector<std::string> joints;
  std::vector<std::string> seams;  ///< the first stands for all: section, passes, heat limits
  process::WeldPosition position = process::WeldPosition::pa;
  std::string wire;  ///< id
  std::string gas;   ///< id
  std::string steel_1, steel_2, group_1, group_2;
  double thickness_1_mm = 0.0, thickness_2_mm = 0.0;
  int side = 1;                         ///< of a double or gouged groove
  bool closed = false;                  ///< ring seams
  double diameter_mm = 0.0;             ///< ring seams; else 0
  std::vector<std::string> inspection;  ///< lines, quality level first
  std::vector<Caution> cautions;
  std::string qualification;  ///< "preliminary: ..." until a record covers it
};

/// Groups seams into procedures in the order given; ids by first appearance.
/// Pre: pointers set. Tests: procedure/procedure - law (every seam in exactly one).
[[nodiscard]] std::vector<Procedure> group_procedures(const std::vector<SeamWork>& work);

}  // namespace seamturn::procedure
