// SPDX-License-Identifier: MIT
// Stances, and the turns between them as they were judged, in plan.xml.
#include "detail_plan_xml.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::io::detail {

namespace {

/// One axis on its way. Pre: the plan's cell has it.
void put_axis(pugi::xml_node turn,
              const plan::Plan& plan,
              const plan::PlannedTurn& planned,
              std::size_t index) {
  SEAMTURN_REQUIRE(plan.cell && index < plan.cell->positioner.axes.size(), index);
  pugi::xml_node node = turn.append_child("axis");
  put_text(node, "name", plan.cell->positioner.axes[index].name);
  put_number(node, "torque_nm", planned.torque_nm[index]);
  put_number(node, "moving_nm", planned.moving_nm.at(index));
  if (!planned.stop_nm.empty()) put_number(node, "stop_nm", planned.stop_nm.at(index));
}

/// A setting of all axes the turn goes by.
void put_halt(pugi::xml_node turn, const plan::Plan& plan, const std::vector<base::Angle>& halt) {
  SEAMTURN_REQUIRE(plan.cell && halt.size() == plan.cell->positioner.axes.size(), halt.size());
  pugi::xml_node node = turn.append_child("halt");
  for (std::size_t i = 0; i < halt.size(); ++i) {
    pugi::xml_node axis = node.append_child("axis");
    put_text(axis, "name", plan.cell->positioner.axes[i].name);
    put_number(axis, "angle_deg", halt[i].deg());
  }
}

void put_turn(pugi::xml_node turns, const plan::Plan& plan, const plan::PlannedTurn& planned) {
  pugi::xml_node node = turns.append_child("turn");
  put_text(node, "kind", plan::turn_kind_name(planned));
  put_stage_if(node, plan, planned.stage);
  put_text_if(node, "from", planned.from);
  put_text_if(node, "to", planned.to);
  if (!planned.lowest_of.empty()) {
    put_number(node, "lowest_mm", planned.lowest_mm);
    put_text(node, "lowest_of", planned.lowest_of);
  }
  for (const std::vector<base::Angle>& halt : planned.halts) put_halt(node, plan, halt);
  for (std::size_t i = 0; i < planned.torque_nm.size(); ++i) put_axis(node, plan, planned, i);
}

}  // namespace

void put_stances(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node stances = root.append_child("stances");
  for (const plan::PlannedStance& planned : plan.stances) {
    pugi::xml_node node = stances.append_child("stance");
    put_text(node, "id", planned.id);
    put_text_if(node, "setup", planned.setup);
    put_number(node, "load_kg", planned.load.mass_kg);
    put_flag(node, "rolling", planned.stance.rolling);
    put_number(node, "turn_time_s", planned.turn_time_s);
    put_count(node, "visits", planned.visits);
    for (std::size_t i = 0; i < planned.stance.axes.size(); ++i) {
      pugi::xml_node axis = node.append_child("axis");
      put_text(axis, "name", i < planned.axis_names.size() ? planned.axis_names[i] : "");
      put_number(axis, "angle_deg", planned.stance.axes[i].deg());
      if (i < planned.torque_nm.size()) put_number(axis, "torque_nm", planned.torque_nm[i]);
    }
    for (const std::string& seam : planned.seams) put_text(node.append_child("weld"), "seam", seam);
  }
}

void put_turns(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node turns = root.append_child("turns");
  for (const plan::PlannedTurn& planned : plan.turns) put_turn(turns, plan, planned);
}

}  // namespace seamturn::io::detail
