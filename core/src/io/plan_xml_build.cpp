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

void put_by_hand(pugi::xml_node stage, const plan::HandOrderPrice& price) {
  pugi::xml_node node = stage.append_child("by-hand");
  put_number(node, "by_hand_s", price.by_hand_s);
  put_number(node, "own_s", price.own_s);
  put_flag(node, "own_proved_best", price.own_proved_best);
  put_count(node, "by_hand_turns", price.by_hand_stances);
  put_count(node, "own_turns", price.own_stances);
  put_ids(node, "entry", "names", price.entries);
}

void put_stage(pugi::xml_node build, const plan::PlannedStage& stage) {
  pugi::xml_node node = build.append_child("stage");
  put_text_if(node, "id", stage.id);
  put_text_if(node, "setup", stage.setup);
  put_text_if(node, "holds", stage.holds);
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
  if (stage.by_hand) put_by_hand(node, *stage.by_hand);
}

void put_twins(pugi::xml_node build, const plan::PlannedTwins& twins) {
  pugi::xml_node node = build.append_child("twins");
  put_text(node, "first", twins.first);
  put_text(node, "second", twins.second);
  put_text(node, "kind", plan::twin_kind_name(twins.kind));
  put_flag(node, "keeps_step", twins.keeps_step);
  put_text_if(node, "why_not", twins.why_not);
  put_number(node, "metal_1_mm2", twins.metal_1_mm2);
  put_number(node, "metal_2_mm2", twins.metal_2_mm2);
  put_number(node, "ahead_mm2", twins.ahead_mm2);
  put_text(node, "ahead", twins.ahead);
  put_number(node, "ahead_from_s", twins.ahead_from_s);
  put_number(node, "ahead_kj_mm", twins.ahead_kj_mm);
}

void put_moment(pugi::xml_node build, const plan::ShrinkageMoment& moment) {
  pugi::xml_node node = build.append_child("shrink-moment");
  put_number(node, "largest_nm", moment.largest_nm);
  put_number(node, "final_nm", moment.final_nm);
  put_text(node, "axis", std::string_view(&moment.axis, 1));
  put_text(node, "seam", moment.seam);
  put_number(node, "at_s", moment.at_s);
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

void put_hang(pugi::xml_node build, const plan::PlannedHang& planned) {
  pugi::xml_node node = build.append_child("lift");
  put_text_if(node, "stage", planned.stage);
  put_text(node, "when", planned.off ? "taken off" : "hung");
  put_number(node, "turned_over_deg", planned.turned_over.deg());
  put_text(node, "lifting", planned.lifting);
  put_number(node, "mass_kg", planned.mass_kg);
  if (!planned.hang) {
    put_text(node, "refused", planned.refused);
    return;
  }
  put_number(node, "lean_deg", planned.hang->lean.deg());
  for (std::size_t i = 0; i < planned.hang->slings.size(); ++i) {
    const turn::SlingLoad& sling = planned.hang->slings[i];
    pugi::xml_node child = node.append_child("sling");
    put_text(child, "point", planned.points.at(i));
    put_number(child, "share_ratio", sling.share_ratio);
    put_number(child, "from_vertical_deg", sling.from_vertical.deg());
    put_number(child, "force_n", sling.force_n);
    put_number(child, "largest_force_n", sling.largest_force_n);
  }
}

void put_carried(pugi::xml_node build, const plan::CarriedMember& carried) {
  pugi::xml_node node = build.append_child("carried");
  put_text_if(node, "stage", carried.stage);
  put_text(node, "member", carried.member);
  put_number(node, "mass_kg", carried.mass_kg);
  put_count(node, "tacks", static_cast<long long>(carried.tacks));
  put_number(node, "site_factor", carried.site_factor);
  if (carried.carry) {
    put_number(node, "stress_mpa", carried.carry->stress_mpa);
    put_number(node, "permitted_mpa", carried.carry->permitted.stress_mpa);
    put_text(node, "permitted_by", carried.carry->permitted.why);
    put_text(node, "permitted_status", base::status_name(carried.carry->permitted.status));
    put_number(node, "utilisation_ratio", carried.carry->utilisation_ratio);
    put_text(node, "attitude", carried.attitude);
  }
  put_text_if(node, "refused", carried.refused);
  if (carried.more_needed) put_count(node, "more_needed", *carried.more_needed);
  put_text_if(node, "no_more", carried.no_more);
  if (carried.shared) put_flag(node, "shared", true);
  put_ids(node, "welded", "member", carried.welded);
  put_ids(node, "with", "member", carried.with);
}

void put_band(pugi::xml_node parent, const char* name, const shrinkage::Band& band) {
  pugi::xml_node node = parent.append_child(name);
  put_number(node, "low_mm", band.low);
  put_number(node, "high_mm", band.high);
}

void put_direction(pugi::xml_node parent,
                   const char* name,
                   const shrinkage::DirectionBand& direction) {
  pugi::xml_node node = parent.append_child(name);
  put_text(node, "bend", shrinkage::bend_name(direction.bend));
  put_band(node, "bow", direction.bow_mm);
  put_band(node, "on-the-way", direction.worst_on_the_way_mm);
  put_band(node, "along", direction.along_mm);
  put_band(node, "across", direction.across_mm);
}

void put_datum(pugi::xml_node build, const plan::Plan& plan, const plan::PlannedDatum& planned) {
  pugi::xml_node node = build.append_child("datum");
  put_text(node, "id", planned.id);
  const joint::Datum& datum = *joint::find_datum(plan.weldment, planned.id);
  put_text(node, "kind", joint::datum_kind_name(datum.kind));
  put_text(node, "member", datum.member);
  put_number_if(node, "temperature_max_c", datum.temperature_max_c);
  put_number_if(node, "allowance_mm", planned.allowance_mm);
  if (planned.flatness) {
    put_number(node, "flatness_mm", planned.flatness->mm);
    put_text(node, "flatness_status", base::status_name(planned.flatness->citation.status));
  }
  if (planned.face) {
    put_direction(node, "u", planned.face->u);
    put_direction(node, "v", planned.face->v);
    for (const shrinkage::FilletTilt& tilt : planned.face->tilts) {
      put_band(node, "tilt", tilt.lift_mm);
      put_text(node.last_child(), "seam", tilt.seam_id);
      put_flag(node.last_child(), "one_rule", tilt.one_rule);
    }
  }
  if (planned.closing_mm) put_band(node, "closing", *planned.closing_mm);
  put_ids(node, "bent-by", "seam", planned.bent_by);
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
  for (const plan::PlannedHang& hang : plan.hangs) put_hang(build, hang);
  for (const plan::CarriedMember& carried : plan.carried) put_carried(build, carried);
  for (const plan::PlannedDatum& datum : plan.datums) put_datum(build, plan, datum);
  for (const plan::PlannedTwins& twins : plan.twins) put_twins(build, twins);
  if (plan.shrink_moment) put_moment(build, *plan.shrink_moment);
}

void put_tacks(pugi::xml_node seam, const plan::Plan& plan, const std::string& id) {
  for (const plan::PlannedTacks& tacks : plan.tacks) {
    if (tacks.seam != id) continue;
    pugi::xml_node node = seam.append_child("tacks");
    put_text_if(node, "stage", tacks.stage);
    put_text_if(node, "refused", tacks.refused);
    if (tacks.plan.tacks.empty()) return;
    put_number(node, "length_mm", tacks.plan.length.length_mm);
    put_count(node, "runs", tacks.plan.length.runs);
    put_number(node, "throat_mm", tacks.plan.throat_mm);
    put_number(node, "widest_pitch_mm", tacks.plan.widest_pitch_mm);
    put_number(node, "clear_of_ends_mm", tacks.clear_of_ends_mm);
    put_number(node, "preheat_c", tacks.preheat_c);
    put_text(node, "fate", tack::tack_fate_name(tacks.plan.fate));
    put_text(node, "why", tacks.plan.length.why);
    put_text(node, "status", base::status_name(tacks.plan.length.status));
    for (const tack::Tack& tack : tacks.plan.tacks) {
      pugi::xml_node child = put_place(node, "tack", tack.centre);
      put_number(child, "from_mm", tack.from_mm);
      put_number(child, "to_mm", tack.to_mm);
    }
  }
}

}  // namespace seamturn::io::detail
