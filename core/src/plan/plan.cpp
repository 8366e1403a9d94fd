// SPDX-License-Identifier: MIT
#include "seamturn/plan/plan.hpp"

#include <algorithm>
#include <map>

#include "seamturn/base/error.hpp"

namespace seamturn::plan {

std::vector<const section::WeldSection*> sections_of(const PlannedJoint& joint) {
  std::vector<const section::WeldSection*> sections;
  for (const PlannedSeam& seam : joint.seams) {
    const bool known = seam.side <= static_cast<int>(sections.size());
    if (!known) sections.push_back(&seam.section);
  }
  return sections;
}

int pass_count(const PlannedJoint& joint) {
  std::map<std::string, std::size_t> across;
  for (const PlannedSeam& seam : joint.seams) {
    std::size_t& most = across[seam.drawn];
    most = std::max(most, seam.passes.size());
  }
  std::size_t sum = 0;
  for (const auto& [drawn, passes] : across) sum += passes;
  return static_cast<int>(sum);
}

double section_area_mm2(const PlannedJoint& joint) {
  double area_mm2 = 0.0;
  for (const section::WeldSection* section : sections_of(joint)) area_mm2 += section->area_mm2;
  return area_mm2;
}

std::string_view turn_kind_name(const PlannedTurn& turn) {
  if (turn.from != turn.to) return "turn";
  return turn.from.empty() ? "exchange" : "rolling";
}

const joint::Setup& setup_of(const Plan& plan, const PlannedStance& stance) {
  const joint::Setup* setup = joint::find_setup(plan.weldment, stance.setup);
  SEAMTURN_REQUIRE(setup != nullptr, stance.id, stance.setup);
  return *setup;
}

cost::CellUse rehang_use(const PlannedStage& stage) {
  cost::CellUse use;
  if (stage.rehang_s <= 0.0) return use;
  const bool in_cell = stage.start_s.has_value();
  if (in_cell) use.cycle_s = stage.rehang_s;
  use.crew_s = (stage.rehang_people - (in_cell ? 1 : 0)) * stage.rehang_s;
  return use;
}

double rehang_price(const Plan& plan, const PlannedStage& stage) {
  return cost::time_price(plan.rates, rehang_use(stage));
}

joint::Weight heaviest_load(const Plan& plan) {
  joint::Weight heaviest;
  for (const PlannedStage& stage : plan.stages) {
    if (stage.load.mass_kg > heaviest.mass_kg) heaviest = stage.load;
  }
  return heaviest;
}

}  // namespace seamturn::plan
