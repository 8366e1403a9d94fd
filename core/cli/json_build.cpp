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

Json carried_of(const plan::CarriedMember& one) {
  Json entry{{"stage", one.stage},
             {"member", one.member},
             {"mass_kg", one.mass_kg},
             {"tacks", one.tacks},
             {"site_factor", one.site_factor}};
  entry["stress_mpa"] = one.carry ? Json(one.carry->stress_mpa) : Json(nullptr);
  entry["permitted_mpa"] = one.carry ? Json(one.carry->permitted.stress_mpa) : Json(nullptr);
  entry["attitude"] = one.attitude;
  entry["refused"] = one.refused;
  entry["welded"] = one.welded;
  entry["with"] = one.with;
  entry["shared"] = one.shared;
  entry["no_more"] = one.no_more;
  entry["more_needed"] = one.more_needed ? Json(*one.more_needed) : Json(nullptr);
  return entry;
}

Json lift_of(const plan::PlannedHang& planned) {
  Json slings = Json::array();
  if (planned.hang) {
    for (std::size_t i = 0; i < planned.hang->slings.size(); ++i) {
      const turn::SlingLoad& sling = planned.hang->slings[i];
      slings.push_back(Json{{"point", planned.points.at(i)},
                            {"share_ratio", sling.share_ratio},
                            {"from_vertical_deg", sling.from_vertical.deg()},
                            {"force_n", sling.force_n},
                            {"largest_force_n", sling.largest_force_n}});
    }
  }
  return Json{{"stage", planned.stage},
              {"when", planned.off ? "taken off" : "hung"},
              {"turned_over_deg", planned.turned_over.deg()},
              {"lifting", planned.lifting},
              {"mass_kg", planned.mass_kg},
              {"lean_deg", planned.hang ? Json(planned.hang->lean.deg()) : Json(nullptr)},
              {"slings", slings},
              {"refused", planned.refused}};
}

Json band_of(const shrinkage::Band& band) {
  return Json{{"low_mm", band.low}, {"high_mm", band.high}};
}

Json direction_of(const shrinkage::DirectionBand& direction) {
  return Json{{"bend", std::string(shrinkage::bend_name(direction.bend))},
              {"bow", band_of(direction.bow_mm)},
              {"on_the_way", band_of(direction.worst_on_the_way_mm)},
              {"along", band_of(direction.along_mm)},
              {"across", band_of(direction.across_mm)}};
}

Json datum_of(const plan::PlannedDatum& planned) {
  const auto face = [&](const auto& direction) {
    return planned.face ? direction_of(direction(*planned.face)) : Json(nullptr);
  };
  const auto maybe = [](const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
  };
  return Json{{"datum", planned.id},
              {"u", face([](const shrinkage::FaceBand& f) { return f.u; })},
              {"v", face([](const shrinkage::FaceBand& f) { return f.v; })},
              {"closing", planned.closing_mm ? band_of(*planned.closing_mm) : Json(nullptr)},
              {"worst_mm", planned.worst_mm},
              {"flatness_mm", planned.flatness ? Json(planned.flatness->mm) : Json(nullptr)},
              {"allowance_mm", maybe(planned.allowance_mm)},
              {"bent_by", planned.bent_by}};
}

Json by_hand_of(const std::optional<plan::HandOrderPrice>& price) {
  if (!price) return nullptr;
  return Json{{"entries", price->entries},
              {"by_hand_s", price->by_hand_s},
              {"own_s", price->own_s},
              {"own_proved_best", price->own_proved_best},
              {"by_hand_turns", price->by_hand_stances},
              {"own_turns", price->own_stances}};
}

Json twins_of(const plan::PlannedTwins& twins) {
  return Json{{"first", twins.first},
              {"second", twins.second},
              {"kind", std::string(plan::twin_kind_name(twins.kind))},
              {"keeps_step", twins.keeps_step},
              {"why_not", twins.why_not},
              {"metal_1_mm2", twins.metal_1_mm2},
              {"metal_2_mm2", twins.metal_2_mm2},
              {"ahead_mm2", twins.ahead_mm2},
              {"ahead", twins.ahead},
              {"ahead_from_s", twins.ahead_from_s},
              {"ahead_kj_mm", twins.ahead_kj_mm}};
}

Json moment_of(const std::optional<plan::ShrinkageMoment>& moment) {
  if (!moment) return nullptr;
  return Json{{"largest_nm", moment->largest_nm},
              {"final_nm", moment->final_nm},
              {"axis", std::string(1, moment->axis)},
              {"seam", moment->seam},
              {"at_s", moment->at_s}};
}

Json per_axis(const plan::Plan& plan, const std::vector<double>& values) {
  Json axes = Json::object();
  for (std::size_t i = 0; i < values.size(); ++i) {
    axes[plan.cell->positioner.axes.at(i).name] = values[i];
  }
  return axes;
}

/// Settings a turn goes by, in degrees.
Json halts_of(const plan::Plan& plan, const plan::PlannedTurn& turn) {
  Json halts = Json::array();
  for (const std::vector<base::Angle>& halt : turn.halts) {
    std::vector<double> angles_deg;
    for (const base::Angle angle : halt) angles_deg.push_back(angle.deg());
    halts.push_back(per_axis(plan, angles_deg));
  }
  return halts;
}

Json turn_of(const plan::Plan& plan, const plan::PlannedTurn& turn) {
  const bool nothing_there = turn.lowest_of.empty();
  return Json{{"stage", plan.stages.at(turn.stage).id},
              {"kind", std::string(plan::turn_kind_name(turn))},
              {"from", turn.from},
              {"to", turn.to},
              {"torque_nm", per_axis(plan, turn.torque_nm)},
              {"moving_nm", per_axis(plan, turn.moving_nm)},
              {"stop_nm", turn.stop_nm.empty() ? Json(nullptr) : per_axis(plan, turn.stop_nm)},
              {"lowest_mm", nothing_there ? Json(nullptr) : Json(turn.lowest_mm)},
              {"lowest_of", turn.lowest_of},
              {"halts", halts_of(plan, turn)}};
}

}  // namespace

void add_other_orders(const plan::Plan& plan, Json& out) {
  if (plan.file_order.visits == 0) return;
  const auto entry = [&](const plan::OtherOrder& other) {
    return Json{{"cycle_time_s", plan.cycle_s + other.longer_s}, {"visits", other.visits}};
  };
  out["other_orders"] =
      Json{{"greedy", entry(plan.greedy_order)}, {"file", entry(plan.file_order)}};
}

void add_build(const plan::Plan& plan, Json& out) {
  Json turns = Json::array();
  for (const plan::PlannedTurn& turn : plan.turns) turns.push_back(turn_of(plan, turn));
  out["turns"] = turns;
  Json stages = Json::array();
  for (const plan::PlannedStage& stage : plan.stages) {
    Json closes = Json::array();
    for (const plan::ClosedOff& closed : stage.closes) {
      closes.push_back(Json{{"member", closed.member}, {"seams", closed.seams}});
    }
    stages.push_back(Json{{"stage", stage.id},
                          {"setup", stage.setup},
                          {"fitted", stage.fitted},
                          {"holds", stage.holds},
                          {"part", weight_of(stage.part)},
                          {"load", weight_of(stage.load)},
                          {"closes", closes},
                          {"rehang_s", stage.rehang_s},
                          {"start_s", time_of(stage.start_s)},
                          {"end_s", stage.start_s ? Json(stage.end_s) : Json(nullptr)},
                          {"lower_bound_s", stage.lower_bound_s},
                          {"proved_best", stage.proved_best},
                          {"by_hand", by_hand_of(stage.by_hand)}});
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
  Json carried = Json::array();
  for (const plan::CarriedMember& one : plan.carried) carried.push_back(carried_of(one));
  out["carried"] = carried;
  Json lifts = Json::array();
  for (const plan::PlannedHang& hang : plan.hangs) lifts.push_back(lift_of(hang));
  out["lifts"] = lifts;
  Json datums = Json::array();
  for (const plan::PlannedDatum& datum : plan.datums) datums.push_back(datum_of(datum));
  out["datums"] = datums;
  Json twins = Json::array();
  for (const plan::PlannedTwins& pair : plan.twins) twins.push_back(twins_of(pair));
  out["twins"] = twins;
  out["shrink_moment"] = moment_of(plan.shrink_moment);
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
