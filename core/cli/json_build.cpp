// SPDX-License-Identifier: MIT
#include "json_build.hpp"

namespace seamturn::cli {

using Json = nlohmann::ordered_json;

namespace {

Json weight_of(const joint::Weight& weight) {
  return Json{{"mass_kg", weight.mass_kg},
              {"centre_mm", {weight.centre.x(), weight.centre.y(), weight.centre.z()}}};
}

Json time_of(const std::optional<double>& start_s) {
  return start_s ? Json(*start_s) : Json(nullptr);
}

}  // namespace

void add_build(const plan::Plan& plan, Json& out) {
  Json stages = Json::array();
  for (const plan::PlannedStage& stage : plan.stages) {
    Json closes = Json::array();
    for (const plan::ClosedOff& closed : stage.closes) {
      closes.push_back(Json{{"member", closed.member}, {"seams", closed.seams}});
    }
    stages.push_back(Json{{"stage", stage.id},
                          {"setup", stage.setup},
                          {"fitted", stage.fitted},
                          {"part", weight_of(stage.part)},
                          {"load", weight_of(stage.load)},
                          {"closes", closes},
                          {"rehang_s", stage.rehang_s},
                          {"start_s", time_of(stage.start_s)},
                          {"end_s", stage.start_s ? Json(stage.end_s) : Json(nullptr)},
                          {"lower_bound_s", stage.lower_bound_s},
                          {"proved_best", stage.proved_best}});
  }
  out["stages"] = stages;
  Json operations = Json::array();
  for (const plan::PlannedOperation& operation : plan.operations) {
    operations.push_back(Json{{"id", operation.id},
                              {"kind", std::string(joint::operation_name(operation.kind))},
                              {"stage", operation.stage},
                              {"stance", operation.stance},
                              {"start_s", time_of(operation.start_s)},
                              {"time_s", operation.time_s},
                              {"people", operation.people},
                              {"members", operation.members},
                              {"joints", operation.joints},
                              {"note", operation.note}});
  }
  out["operations"] = operations;
}

Json rehangs_of(const plan::Plan& plan) {
  Json rehangs = Json::array();
  for (const plan::PlannedStage& stage : plan.stages) {
    if (stage.rehang_s <= 0.0) continue;
    rehangs.push_back(Json{{"stage", stage.id},
                           {"setup", stage.setup},
                           {"time_s", stage.rehang_s},
                           {"people", stage.rehang_people},
                           {"amount", plan::rehang_price(plan, stage)}});
  }
  return rehangs;
}

}  // namespace seamturn::cli
