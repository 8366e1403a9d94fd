// SPDX-License-Identifier: MIT
#include <algorithm>
#include <iterator>
#include <set>

#include "detail_assemble.hpp"
#include "detail_turns.hpp"
#include "seamturn/joint/segments.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::planner::detail {

namespace {

const process::LinkedSettings& settings_row(const Library& library, const std::string& id) {
  for (const process::LinkedSettings& row : library.settings) {
    if (row.id == id) return row;
  }
  SEAMTURN_REQUIRE(false, id);
  return library.settings.front();
}

const process::Gas& gas_of(const Library& library, const pass::Pass& pass) {
  const std::string& id = settings_row(library, pass.settings).gas;
  for (const process::Gas& gas : library.gases) {
    if (gas.id == id) return gas;
  }
  SEAMTURN_REQUIRE(false, id);
  return library.gases.front();
}

procedure::SeamWork seam_work(const Inputs& inputs,
                              const JointWork& work,
                              const joint::Seam& seam,
                              const plan::PlannedSeam& planned,
                              const heat::HoldTime& hold) {
  procedure::SeamWork out;
  out.joint = work.joint;
  out.seam = &seam;
  out.section = &planned.section;
  out.stack = &planned.stack;
  out.heat = &work.heat;
  out.hold = &hold;
  out.wire = work.wire;
  out.gas = &gas_of(inputs.library, planned.stack.passes.front());
  out.steel_1 = work.member_1->steel;
  out.steel_2 = work.member_2->steel;
  out.group_1 = work.steel_1->group;
  out.group_2 = work.steel_2->group;
  out.thickness_1_mm = joint::wall_thickness_mm(work.member_1->shape);
  out.thickness_2_mm = joint::wall_thickness_mm(work.member_2->shape);
  const auto* circle =
      seam.path ? std::get_if<geom::CirclePath>(&joint::drawn_course(seam)) : nullptr;
  out.closed = circle != nullptr;
  if (circle != nullptr) out.diameter_mm = 2.0 * circle->radius_mm;
  return out;
}

const plan::PlannedJoint& planned_joint(const plan::Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    if (joint.id == id) return joint;
  }
  SEAMTURN_REQUIRE(false, id);
  return plan.joints.front();
}

/// The plates of a procedure's joints that need a class, each once. Before the lines of the
/// contract, which come last.
void add_tearing_line(const plan::Plan& plan, procedure::Procedure& procedure) {
  std::set<std::string> plates;
  for (const std::string& id : procedure.joints) {
    const auto& check = planned_joint(plan, id).aftercare.tearing;
    if (!check || check->points.required == heat::ZClass::none) continue;
    plates.insert(check->member + " (" + std::string(heat::z_class_name(check->points.required)) +
                  " asked for, " + std::string(heat::z_class_name(check->plate)) + " ordered)");
  }
  if (plates.empty()) return;
  std::string list;
  for (const std::string& plate : plates) list += (list.empty() ? "" : ", ") + plate;
  procedure.inspection.insert(
      std::prev(procedure.inspection.end()),
      "lamellar tearing: ultrasonic test beneath the weld for laminations before welding (EN "
      "10160) and for tearing after the hold time; plates " +
          list);
}

/// What one joint adds to the cautions of all documents it stands in.
void add_triggers(const plan::PlannedJoint& joint, procedure::CautionTriggers& triggers) {
  triggers.thickness_max_mm = std::max(triggers.thickness_max_mm, joint.heat.thickness_mm);
  triggers.cet_max = std::max(triggers.cet_max, joint.heat.cet_governing);
  if (joint.heat.needs_heating) {
    triggers.preheat_max_c = std::max(triggers.preheat_max_c, joint.heat.preheat_c);
  }
  const auto& tearing = joint.aftercare.tearing;
  if (tearing && tearing->verdict == heat::TearingVerdict::not_met) triggers.may_tear = true;
  if (joint.heat.outside_range) triggers.outside_range = true;
}

/// Of the part and the cell, whatever joint is welded.
procedure::CautionTriggers part_triggers(const plan::Plan& plan) {
  procedure::CautionTriggers triggers;
  triggers.on_positioner = plan.cell.has_value();
  triggers.part_mass_kg = plan.part.mass_kg;
  triggers.magnet_handled = plan.weldment.magnet_handled;
  triggers.on_tacks = !plan.carried.empty();
  triggers.re_hung = std::any_of(plan.stages.begin(), plan.stages.end(), [](const auto& stage) {
    return stage.rehang_s > 0.0;
  });
  // A faceplate that stands upright does not lean: it turns the part over.
  const bool is_upright =
      plan.cell && cell::faceplate_normal_D(plan.cell->positioner.kind).z() < 0.5;
  for (const plan::PlannedStance& stance : plan.stances) {
    for (const Angle axis : stance.stance.axes) {
      if (axis.rad() == 0.0) continue;
      (is_upright ? triggers.rolling_over : triggers.tilting) = true;
    }
  }
  for (const joint::Member& member : plan.weldment.members) {
    const auto* tube = std::get_if<joint::Tube>(&member.shape);
    if (tube != nullptr && 2.0 * tube->wall_mm < tube->outer_diameter_mm) {
      triggers.closed_cavity = true;
    }
    const auto* forging = std::get_if<joint::Forging>(&member.shape);
    if (forging != nullptr && forging->bore_mm > 0.0) triggers.closed_cavity = true;
  }
  return triggers;
}

void keep_used_consumables(const Inputs& inputs, plan::Plan& plan) {
  const auto uses_wire = [&](const process::Wire& wire) {
    return std::any_of(plan.procedures.begin(), plan.procedures.end(), [&](const auto& p) {
      return p.wire == wire.id;
    });
  };
  const auto uses_gas = [&](const process::Gas& gas) {
    return std::any_of(plan.procedures.begin(), plan.procedures.end(), [&](const auto& p) {
      return p.gas == gas.id;
    });
  };
  std::copy_if(inputs.library.wires.begin(),
               inputs.library.wires.end(),
               std::back_inserter(plan.wires),
               uses_wire);
  std::copy_if(inputs.library.gases.begin(),
               inputs.library.gases.end(),
               std::back_inserter(plan.gases),
               uses_gas);
}

bool uses_settings(const plan::Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes) {
        if (pass.pass.settings == id) return true;
      }
    }
  }
  return false;
}

/// What the sheets say of metal and settings beside their numbers: standard, transfer, source.
void keep_used_rows(const Inputs& inputs, plan::Plan& plan) {
  for (const process::LinkedSettings& row : inputs.library.settings) {
    if (uses_settings(plan, row.id)) plan.settings.push_back(row);
  }
  const std::vector<joint::Joint>& joints = plan.weldment.joints;
  const bool is_gouged = std::any_of(joints.begin(), joints.end(), [](const joint::Joint& joint) {
    return joint.root == joint::RootDecision::gouge;
  });
  if (is_gouged) plan.gouging = inputs.library.gouging;
  const bool is_heated =
      std::any_of(plan.joints.begin(), plan.joints.end(), [](const plan::PlannedJoint& joint) {
        return joint.heat.needs_heating;
      });
  if (is_heated) plan.heating = inputs.library.heating;
  const std::vector<joint::Member>& members = plan.weldment.members;
  for (const material::Steel& steel : inputs.library.steels) {
    const bool used = std::any_of(members.begin(), members.end(), [&](const joint::Member& member) {
      return member.steel == steel.designation;
    });
    if (used) plan.steels.push_back(steel);
  }
}

/// Person-seconds besides the operator: hands more than his in the cell, all hands elsewhere.
double crew_s(const plan::Plan& plan) {
  double total_s = 0.0;
  for (const plan::PlannedOperation& operation : plan.operations) {
    const int others = operation.start_s ? operation.people - 1 : operation.people;
    total_s += others * operation.time_s;
  }
  for (const plan::PlannedStage& stage : plan.stages) total_s += plan::rehang_use(stage).crew_s;
  return total_s;
}

}  // namespace

void assemble_procedures(const Inputs& inputs,
                         const std::vector<JointWork>& joints,
                         plan::Plan& plan) {
  std::vector<procedure::SeamWork> work;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    for (std::size_t s = 0; s < joints[j].seams.size(); ++s) {
      work.push_back(seam_work(inputs,
                               joints[j],
                               *joints[j].seams[s].seam,
                               plan.joints[j].seams[s],
                               plan.joints[j].aftercare.hold));
    }
  }
  plan.procedures = procedure::group_procedures(work);
  procedure::CautionTriggers of_all = part_triggers(plan);
  for (const plan::PlannedJoint& joint : plan.joints) add_triggers(joint, of_all);
  plan.cautions = procedure::find_cautions(of_all);
  for (procedure::Procedure& procedure : plan.procedures) {
    procedure::CautionTriggers triggers = part_triggers(plan);
    for (const std::string& id : procedure.joints) add_triggers(planned_joint(plan, id), triggers);
    add_tearing_line(plan, procedure);
    procedure.cautions = procedure::find_cautions(triggers);
    for (const std::string& seam : procedure.seams)
      planned_seam(plan, seam).procedure = procedure.id;
  }
  keep_used_consumables(inputs, plan);
  keep_used_rows(inputs, plan);
}

namespace {

/// Loading that the cell waits for. A station changer is loaded on its other side meanwhile: what
/// is left of the loading, and the exchange.
double loading_s(const cell::Cell& cell, double cycle_s) {
  const double load_s = cell.times.load_unload_s;
  if (cell.positioner.kind != cell::PositionerKind::station_changer) return load_s;
  return std::max(0.0, load_s - cycle_s) + exchange_s(cell);
}

}  // namespace

void assemble_estimate(const Inputs& inputs, plan::Plan& plan) {
  std::vector<cost::PassUse> uses;
  for (const plan::PlannedJoint& joint : plan.joints) {
    const joint::Joint& described = *joint::find_joint(plan.weldment, joint.id);
    const process::Wire& wire = wire_of(inputs, described);
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& planned : seam.passes) {
        const pass::Pass& pass = planned.pass;
        const process::Gas& gas = gas_of(inputs.library, pass);
        cost::PassUse use;
        use.arc_s = pass.arc_time_s;
        // A pass gets its share of the seam's metal, so that rings count with their own radius.
        use.deposit_kg = seam.metal_kg * pass.area_mm2 / seam.section.area_mm2;
        use.efficiency_ratio = wire.efficiency_ratio;
        use.wire_price_per_kg = wire.price_per_kg;
        use.gas_flow_l_min = pass.gas_flow_l_min;
        use.gas_price_per_m3 = gas.price_per_m3;
        use.voltage_v = pass.voltage_v;
        use.current_a = pass.current_a;
        use.arc_starts = seam.arc_starts;
        uses.push_back(use);
      }
    }
  }
  plan.rates = *inputs.library.rates;
  const bool planned = plan.cell.has_value();
  // Seams without a place take at least their arc time in the cell.
  double cycle_s = planned ? plan.cycle_s : 0.0;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (!seam.turned) cycle_s += seam.stack.arc_time_s;
    }
  }
  cost::CellUse use;
  use.cycle_s = cycle_s;
  use.load_unload_s = planned ? loading_s(*plan.cell, cycle_s) : 0.0;
  use.crew_s = crew_s(plan);
  plan.estimate = cost::estimate(plan.rates, uses, use, plan.weldment.batch.parts);
}

}  // namespace seamturn::planner::detail
