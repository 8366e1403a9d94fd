// SPDX-License-Identifier: MIT
// What stages, tacks, datums and duties add to the sheets, and what the welding circuit asks for.
#include <algorithm>
#include <iterator>
#include <set>

#include "detail_tacking.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::fixed_text;
using base::Severity;

/// Before the lines of the contract, which come last.
void add_line(procedure::Procedure& procedure, const std::string& text) {
  procedure.inspection.insert(std::prev(procedure.inspection.end()), text);
}

std::string duty_line(joint::Duty duty) {
  switch (duty) {
    case joint::Duty::strength:
      return {};
    case joint::Duty::tight:
      return "tight weld: at least two passes, starts and stops of one never over those of the "
             "other "
             "(common practice); leak test after the visual one and before paint, medium and "
             "pressure by the contract";
    case joint::Duty::seal:
      return "seal weld: closed all round and carries no load; the room behind it is vented until "
             "it is closed (common practice)";
    case joint::Duty::buttering:
      return "buttering: laid and tested on the surface before the second member is fitted; "
             "dressed to "
             "the drawing, thickness measured after dressing (common practice)";
    case joint::Duty::build_up:
      return "build-up: at least one layer above the finished size, machined, and the machined "
             "surface tested (common practice)";
  }
  return {};
}

/// Only where the file states stages: then all work is in them.
bool lacks_leak_test(const joint::Weldment& weldment, const std::string& joint) {
  for (const joint::Stage& stage : weldment.stages) {
    for (const joint::Operation& operation : stage.operations) {
      const auto& about = operation.joints;
      const bool ours =
          about.empty() || std::find(about.begin(), about.end(), joint) != about.end();
      if (operation.kind == joint::OperationKind::leak_test && ours) return false;
    }
  }
  return !weldment.stages.empty();
}

/// Of the tacks on a procedure's seams, which all are laid alike.
std::string tack_line(const plan::Plan& plan, const procedure::Procedure& procedure) {
  const auto found =
      std::find_if(plan.tacks.begin(), plan.tacks.end(), [&](const plan::PlannedTacks& tacks) {
        return tacks.seam == procedure.seams.front();
      });
  if (found == plan.tacks.end() || found->plan.tacks.empty()) return {};
  const std::string who = plan.weldment.tacking && !plan.weldment.tacking->certificate.empty()
                              ? "tacker's certificate " + plan.weldment.tacking->certificate
                              : "by a certified welder (ISO 9606-1)";
  return "tacks: every one looked at before the part is turned and before it is welded over; a "
         "cracked one is cut out; " +
         who;
}

std::string guard_words(const joint::DatumGuard& guard) {
  std::vector<std::string> words;
  const auto add = [&](bool yes, const char* word) {
    if (yes) words.emplace_back(word);
  };
  add(guard.strike, "no arc struck on it");
  add(guard.earth, "no return clamp on it");
  add(guard.spatter, "covered against spatter");
  return base::listed(words);
}

/// Tests and other work the stages hold about a procedure's joints.
void add_operation_lines(const plan::Plan& plan, procedure::Procedure& procedure) {
  for (const joint::Stage& stage : plan.weldment.stages) {
    for (const joint::Operation& operation : stage.operations) {
      const auto names = [&](const std::vector<std::string>& joints) {
        return std::any_of(joints.begin(), joints.end(), [&](const std::string& id) {
          const auto& own = procedure.joints;
          return std::find(own.begin(), own.end(), id) != own.end();
        });
      };
      if (!names(operation.joints) && !names(operation.after) && !names(operation.before)) continue;
      std::string text = std::string(joint::operation_name(operation.kind)) + " " + operation.id +
                         ", stage " + stage.id;
      if (!operation.joints.empty()) text += ", of " + base::listed(operation.joints);
      if (!operation.after.empty()) text += ", after " + base::listed(operation.after);
      if (!operation.before.empty()) text += ", before " + base::listed(operation.before);
      if (!operation.note.empty()) text += ": " + operation.note;
      add_line(procedure, text);
    }
  }
}

void add_datum_lines(const plan::Plan& plan, procedure::Procedure& procedure) {
  for (const plan::PlannedDatum& planned : plan.datums) {
    const bool on =
        std::any_of(procedure.joints.begin(), procedure.joints.end(), [&](const std::string& id) {
          return std::find(planned.joints.begin(), planned.joints.end(), id) !=
                 planned.joints.end();
        });
    if (!on) continue;
    const auto datum = std::find_if(plan.weldment.datums.begin(),
                                    plan.weldment.datums.end(),
                                    [&](const joint::Datum& d) { return d.id == planned.id; });
    std::string text = std::string(joint::datum_kind_name(datum->kind)) + " " + datum->id + ": ";
    const std::string guards = guard_words(datum->guard);
    text += guards.empty() ? "measured after welding" : guards;
    if (datum->temperature_max_c) {
      text += "; never above " + fixed_text(*datum->temperature_max_c, 0) + " degC";
    }
    add_line(procedure, text + "; measured before and after this weld");
  }
}

}  // namespace

void check_circuit(const Inputs& inputs, plan::Plan& plan) {
  double most_a = 0.0;
  for (const plan::PlannedJoint& joint : plan.joints) {
    const joint::Joint& described = *joint::find_joint(inputs.weldment, joint.id);
    if (described.duty == joint::Duty::tight && lacks_leak_test(inputs.weldment, joint.id)) {
      plan.findings.push_back(
          joint_finding(inputs,
                        described,
                        Severity::warning,
                        "plan.duty.no_leak_test",
                        "it is to be tight, and no stage holds a leak test of it; add <operation "
                        "kind=\"leak-test\" joints=\"" +
                            joint.id + "\" .../>"));
    }
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes) {
        most_a = std::max(most_a, pass.pass.current_a);
      }
      if (described.duty != joint::Duty::tight || seam.passes.size() > 1) continue;
      plan.findings.push_back(
          joint_finding(inputs,
                        described,
                        Severity::warning,
                        "plan.duty.one_pass",
                        "seam " + seam.id +
                            " is to be tight and is laid in one pass; two are due, so that no "
                            "pore goes through (common practice)"));
    }
  }
  if (!plan.cell || !plan.cell->return_path) return;
  const auto tell = [&](const char* code, const std::string& text) {
    plan.findings.push_back(
        Finding{Severity::warning, code, text, place_of(inputs.weldment, "weldment"), {}});
  };
  const cell::ReturnPath& path = *plan.cell->return_path;
  if (!path.on_rotating_side) {
    tell("cell.return.fixed",
         "the cell's return lead ends on the fixed side: the welding current runs through the "
         "positioner's bearings and ruins them; clamp it on what turns with the part, or fit a "
         "slip ring");
  }
  if (most_a > path.current_max_a) {
    tell("cell.return.overload",
         "passes are planned with up to " + fixed_text(most_a, 0) +
             " A, the return path is rated for " + fixed_text(path.current_max_a, 0) +
             " A; take a larger clamp or slip ring, or two of them");
  }
}

void add_build_lines(plan::Plan& plan) {
  for (procedure::Procedure& procedure : plan.procedures) {
    std::set<joint::Duty> duties;
    for (const std::string& id : procedure.joints) {
      duties.insert(joint::find_joint(plan.weldment, id)->duty);
    }
    for (const joint::Duty duty : duties) {
      if (const std::string line = duty_line(duty); !line.empty()) add_line(procedure, line);
    }
    if (const std::string line = tack_line(plan, procedure); !line.empty()) {
      add_line(procedure, line);
    }
    add_operation_lines(plan, procedure);
    add_datum_lines(plan, procedure);
    if (plan.weldment.magnet_handled) {
      add_line(procedure,
               "residual field at the edges before welding, by meter; demagnetise where the arc "
               "is blown aside (above about 2 mT, common practice)");
    }
  }
}

}  // namespace seamturn::planner::detail
