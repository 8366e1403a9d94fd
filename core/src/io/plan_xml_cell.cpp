// SPDX-License-Identifier: MIT
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

double degrees(double radians) {
  return base::Angle::rad(radians).deg();
}

/// With its line in the cell, all axes at zero: as stated, or the one of the kind.
void put_axis(pugi::xml_node parent, const cell::Positioner& positioner, std::size_t index) {
  const cell::Axis& axis = positioner.axes[index];
  pugi::xml_node node = parent.append_child("axis");
  put_text(node, "name", axis.name);
  put_flag(node, "endless", axis.endless);
  if (!axis.endless) {
    put_number(node, "min_deg", axis.min.deg());
    put_number(node, "max_deg", axis.max.deg());
  }
  put_number(node, "speed_deg_s", degrees(axis.speed_rad_s));
  put_number(node, "acceleration_deg_s2", degrees(axis.acceleration_rad_s2));
  if (axis.jerk_rad_s3) put_number(node, "jerk_deg_s3", degrees(*axis.jerk_rad_s3));
  if (axis.stop_rad_s2) put_number(node, "stop_deg_s2", degrees(*axis.stop_rad_s2));
  put_number(node, "torque_max_nm", axis.torque_max_nm);
  put_number_if(node, "torque_peak_nm", axis.torque_peak_nm);
  const cell::AxisLine line = cell::axis_line(positioner, index);
  pugi::xml_node child = node.append_child("line");
  put_flag(child, "stated", axis.line.has_value());
  put_place(child, "at", line.at);
  put_direction(child, "along", line.along);
}

void put_bearing_and_margin(pugi::xml_node node, const cell::Positioner& positioner) {
  if (positioner.tailstock) {
    pugi::xml_node tailstock = node.append_child("tailstock");
    put_number(tailstock, "span_mm", positioner.tailstock->span_mm);
    put_number(tailstock, "load_max_kg", positioner.tailstock->load_max_kg);
  }
  if (positioner.margin) {
    pugi::xml_node margin = node.append_child("load-margin");
    put_number(margin, "mass_ratio", positioner.margin->mass_ratio);
    put_number(margin, "centre_mm", positioner.margin->centre_mm);
  }
}

void put_positioner(pugi::xml_node parent, const cell::Positioner& positioner) {
  using cell::PositionerKind;
  pugi::xml_node node = parent.append_child("positioner");
  put_text(node, "id", positioner.id);
  put_text(node, "kind", cell::positioner_kind_name(positioner.kind));
  put_number(node, "overhang_mm", positioner.overhang_mm);
  if (positioner.kind == PositionerKind::inclined) {
    put_number(node, "between_deg", positioner.between.deg());
  }
  put_number(node, "load_max_kg", positioner.load_max_kg);
  put_number(node, "load_centre_mm", positioner.load_centre_mm);
  put_number(node, "rolling_speed_max_deg_s", degrees(positioner.rolling_speed_max_rad_s));
  put_number_if(node, "rim_speed_max_mm_s", positioner.rim_speed_max_mm_s);
  put_number_if(node, "floor_clearance_mm", positioner.floor_clearance_mm);
  put_place(node, "tilt-centre", positioner.tilt_centre);
  if (positioner.kind == PositionerKind::station_changer) {
    put_place(node, "exchange-centre", positioner.exchange_centre);
  }
  put_pose(node, "faceplate", cell::faceplate_at_zero(positioner));
  put_bearing_and_margin(node, positioner);
  for (std::size_t i = 0; i < positioner.axes.size(); ++i) put_axis(node, positioner, i);
}

void put_times(pugi::xml_node parent, const cell::CellTimes& times) {
  pugi::xml_node node = parent.append_child("times");
  put_number(node, "arc_start_s", times.arc_start_s);
  put_number(node, "crater_fill_s", times.crater_fill_s);
  put_number(node, "settle_s", times.settle_s);
  put_number(node, "touch_s", times.touch_s);
  put_count(node, "touches_per_seam", times.touches_per_seam);
  put_number(node, "clean_every_s", times.clean_every_s);
  put_number(node, "clean_s", times.clean_s);
  put_number(node, "load_unload_s", times.load_unload_s);
}

void put_wire(pugi::xml_node parent, const process::Wire& wire) {
  pugi::xml_node node = parent.append_child("wire");
  put_text(node, "id", wire.id);
  put_text(node, "designation", wire.designation);
  put_text(node, "process", wire.process);
  put_number(node, "diameter_mm", wire.diameter_mm);
  put_number_if(node, "linear_mass_kg_m", wire.linear_mass_kg_m);
  put_number(node, "efficiency_ratio", wire.efficiency_ratio);
  put_number(node, "hydrogen_ml_100g", wire.hydrogen_ml_100g);
  put_number_if(node, "cet", wire.cet);
  put_number_if(node, "interpass_max_c", wire.interpass_max_c);
  put_number(node, "price_per_kg", wire.price_per_kg);
  put_text(node, "source", wire.source);
  put_text(node, "status", base::status_name(wire.status));
}

void put_gas(pugi::xml_node parent, const process::Gas& gas) {
  pugi::xml_node node = parent.append_child("gas");
  put_text(node, "id", gas.id);
  put_text(node, "designation", gas.designation);
  put_number(node, "price_per_m3", gas.price_per_m3);
  put_text(node, "source", gas.source);
  put_text(node, "status", base::status_name(gas.status));
}

void put_settings(pugi::xml_node parent, const process::LinkedSettings& row) {
  pugi::xml_node node = parent.append_child("settings-row");
  put_text(node, "id", row.id);
  put_text(node, "process", row.process);
  put_text(node, "wire", row.wire);
  put_text(node, "gas", row.gas);
  put_text(node, "role", process::role_name(row.role));
  std::string positions;
  for (const process::WeldPosition position : row.positions) {
    if (!positions.empty()) positions += ' ';
    positions += process::position_name(position);
  }
  put_text(node, "positions", positions);
  put_text_if(node, "transfer", row.transfer);
  put_number(node, "travel_min_mm_s", row.travel_min_mm_s);
  put_number(node, "travel_max_mm_s", row.travel_max_mm_s);
  put_text(node, "source", row.source);
  put_text(node, "status", base::status_name(row.status));
}

void put_gouging(pugi::xml_node parent, const process::Gouging& row) {
  pugi::xml_node node = parent.append_child("gouging");
  put_text(node, "id", row.id);
  put_text(node, "method", row.method);
  put_number(node, "speed_mm_s", row.speed_mm_s);
  put_number(node, "entry_s", row.entry_s);
  put_text(node, "source", row.source);
  put_text(node, "status", base::status_name(row.status));
}

void put_heating(pugi::xml_node parent, const process::Heating& row) {
  pugi::xml_node node = parent.append_child("heating");
  put_text(node, "id", row.id);
  put_text(node, "method", row.method);
  put_number(node, "power_w", row.power_w);
  put_number(node, "useful_ratio", row.useful_ratio);
  put_number(node, "entry_s", row.entry_s);
  put_flag(node, "holds", row.holds);
  put_text(node, "source", row.source);
  put_text(node, "status", base::status_name(row.status));
}

}  // namespace

void put_cell(pugi::xml_node root, const plan::Plan& plan) {
  if (!plan.cell) return;
  const cell::Cell& cell = *plan.cell;
  pugi::xml_node node = root.append_child("cell");
  put_text(node, "title", cell.title);
  put_flag(node, "invented", cell.invented);
  put_positioner(node, cell.positioner);
  pugi::xml_node robot = node.append_child("robot");
  put_text(robot, "id", cell.robot.id);
  put_number(robot, "air_speed_mm_s", cell.robot.air_speed_mm_s);
  put_number(robot, "air_acceleration_mm_s2", cell.robot.air_acceleration_mm_s2);
  put_number(robot, "retract_mm", cell.robot.retract_mm);
  put_place(robot, "home", cell.robot.home);
  pugi::xml_node torch = node.append_child("torch");
  put_text(torch, "id", cell.torch.id);
  put_number(torch, "nozzle_diameter_mm", cell.torch.nozzle_diameter_mm);
  put_number_if(torch, "nozzle_recess_mm", cell.torch.nozzle_recess_mm);
  if (const std::optional<cell::TorchBody>& body = cell.torch.body) {
    put_number(torch, "tip_to_bend_mm", body->tip_to_bend_mm);
    put_number(torch, "bend_deg", body->bend.deg());
    put_number(torch, "body_length_mm", body->length_mm);
    put_number(torch, "body_diameter_mm", body->diameter_mm);
  }
  put_times(node, cell.times);
  if (!cell.return_path) return;
  pugi::xml_node lead = node.append_child("return-path");
  put_flag(lead, "on_rotating_side", cell.return_path->on_rotating_side);
  put_number(lead, "current_max_a", cell.return_path->current_max_a);
}

void put_consumables(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node node = root.append_child("consumables");
  for (const process::Wire& wire : plan.wires) put_wire(node, wire);
  for (const process::Gas& gas : plan.gases) put_gas(node, gas);
  for (const process::LinkedSettings& row : plan.settings) put_settings(node, row);
  if (plan.gouging) put_gouging(node, *plan.gouging);
  if (plan.heating) put_heating(node, *plan.heating);
}

}  // namespace seamturn::io::detail
