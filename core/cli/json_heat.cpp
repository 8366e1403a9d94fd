// SPDX-License-Identifier: MIT
#include "json_heat.hpp"

namespace seamturn::cli {

namespace {

using Json = nlohmann::ordered_json;

Json number_or_null(const std::optional<double>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json methods_of(const procedure::HeatLimits& heat) {
  Json methods = Json::array();
  for (const procedure::PreheatAnswer& answer : heat.answers) {
    methods.push_back(Json{{"method", answer.method},
                           {"preheat_c", number_or_null(answer.preheat_c)},
                           {"says", answer.says},
                           {"may_govern", answer.may_govern},
                           {"status", std::string(base::status_name(answer.status))}});
  }
  return methods;
}

Json window_of(const procedure::HeatWindow& window) {
  return Json{{"t85_least_s", window.t85_least_s},
              {"t85_most_s", window.t85_most_s},
              {"stated_by", window.stated_by},
              {"status", std::string(base::status_name(window.status))},
              {"binds", window.binds},
              {"kept", window.kept},
              {"heat_input_least_kj_mm", number_or_null(window.heat_input_least_kj_mm)},
              {"heat_input_most_kj_mm", number_or_null(window.heat_input_most_kj_mm)}};
}

Json waits_of(const plan::PlannedJoint& joint) {
  Json waits = Json::array();
  for (const plan::PlannedSeam& seam : joint.seams) {
    for (const plan::PlannedPass& pass : seam.passes) {
      if (pass.gap_long_s <= 0.0) continue;
      waits.push_back(Json{{"seam", seam.id},
                           {"pass", pass.pass.number},
                           {"gap_short_s", pass.gap_short_s},
                           {"gap_long_s", pass.gap_long_s}});
    }
  }
  return waits;
}

}  // namespace

Json heat_entry(const plan::PlannedJoint& joint) {
  const procedure::HeatLimits& heat = joint.heat;
  const plan::Aftercare& after = joint.aftercare;
  Json out{{"cen", number_or_null(heat.cen_plate)},
           {"ceq_jis", number_or_null(heat.jis_plate)},
           {"combined_thickness_mm", heat.combined_thickness_mm},
           {"methods", methods_of(heat)},
           {"own_preheat_c", heat.own_preheat_c},
           {"neighbour", heat.neighbour.empty() ? Json(nullptr) : Json(heat.neighbour)},
           {"measure_distance_mm", heat.measure_distance_mm},
           {"zone_width_mm", heat.zone_width_mm},
           {"soak_s", heat.soak_s},
           {"window", heat.window ? window_of(*heat.window) : Json(nullptr)},
           {"waits", waits_of(joint)},
           {"hold_h", after.hold.hours},
           {"hardness_hv", nullptr},
           {"keep_s", nullptr},
           {"tearing", nullptr},
           {"later_heating_max_c", nullptr}};
  if (after.hardness) {
    out["hardness_hv"] = {after.hardness->estimate.lowest_hv, after.hardness->estimate.highest_hv};
  }
  if (after.keep) out["keep_s"] = {after.keep->strip_s, after.keep->heated_through_s};
  if (after.tearing) {
    out["tearing"] =
        Json{{"points", after.tearing->points.total},
             {"required", std::string(heat::z_class_name(after.tearing->points.required))},
             {"plate", std::string(heat::z_class_name(after.tearing->plate))}};
  }
  if (after.later) out["later_heating_max_c"] = after.later->limit.value_c;
  return out;
}

}  // namespace seamturn::cli
