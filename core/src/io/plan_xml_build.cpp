// SPDX-License-Identifier: MIT
// Set-ups, stages and operations in plan.xml.
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

void put_weight(pugi::xml_node parent, const char* name, const joint::Weight& weight) {
  pugi::xml_node node = parent.append_child(name);
  put_number(node, "mass_kg", weight.mass_kg);
  put_place(node, "centre", weight.centre);
}

void put_ids(pugi::xml_node parent,
             const char* name,
             const char* attribute,
             const std::vector<std::string>& ids) {
  for (const std::string& id : ids) put_text(parent.append_child(name), attribute, id);
}

void put_stage(pugi::xml_node build, const plan::PlannedStage& stage) {
  pugi::xml_node node = build.append_child("stage");
  put_text_if(node, "id", stage.id);
  put_text_if(node, "setup", stage.setup);
  if (stage.rehang_s > 0.0) {
    put_number(node, "rehang_s", stage.rehang_s);
    put_count(node, "rehang_people", stage.rehang_people);
  }
  if (stage.start_s) {
    put_number(node, "start_s", *stage.start_s);
    put_number(node, "end_s", stage.end_s);
    put_number(node, "lower_bound_s", stage.lower_bound_s);
    put_flag(node, "proved_best", stage.proved_best);
  }
  put_weight(node, "part", stage.part);
  if (!stage.setup.empty()) put_weight(node, "load", stage.load);
  put_ids(node, "fitted", "member", stage.fitted);
  put_ids(node, "present", "member", stage.present);
  for (const plan::ClosedOff& closed : stage.closes) {
    pugi::xml_node child = node.append_child("closes");
    put_text(child, "member", closed.member);
    put_ids(child, "weld", "seam", closed.seams);
  }
}

void put_operation(pugi::xml_node build, const plan::PlannedOperation& operation) {
  pugi::xml_node node = build.append_child("operation");
  put_text(node, "id", operation.id);
  put_text(node, "kind", joint::operation_name(operation.kind));
  put_text(node, "stage", operation.stage);
  put_text_if(node, "stance", operation.stance);
  put_number_if(node, "start_s", operation.start_s);
  put_number(node, "time_s", operation.time_s);
  put_count(node, "people", operation.people);
  put_text_if(node, "note", operation.note);
  put_ids(node, "about", "member", operation.members);
  put_ids(node, "about", "joint", operation.joints);
}

}  // namespace

void put_setups(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node setups = root.append_child("setups");
  for (const joint::Setup& setup : plan.weldment.setups) {
    pugi::xml_node node = setups.append_child("setup");
    put_text(node, "id", setup.id);
    put_pose(node, "part-on-faceplate", setup.X_DJ);
    for (const joint::SetupSolid& solid : setup.solids) {
      pugi::xml_node child = node.append_child("solid");
      put_text(child, "kind", solid.kind);
      put_number(child, "mass_kg", solid.mass_kg);
      put_place(child, "centre", solid.centre);
      if (solid.size_mm) put_place(child, "size", *solid.size_mm);
    }
    for (const joint::Clamp& clamp : setup.clamps) {
      pugi::xml_node child = node.append_child("clamp");
      put_text(child, "id", clamp.id);
      put_number(child, "radius_mm", clamp.radius_mm);
      put_place(child, "at", clamp.at);
    }
  }
}

void put_build(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node build = root.append_child("build");
  put_weight(build, "part", plan.part);
  for (const plan::PlannedStage& stage : plan.stages) put_stage(build, stage);
  for (const plan::PlannedOperation& operation : plan.operations) put_operation(build, operation);
}

}  // namespace seamturn::io::detail
