// SPDX-License-Identifier: MIT
// What stages, tacks, datums and duties add to the sheets.
#include <algorithm>
#include <iterator>
#include <set>

#include "detail_tacking.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

namespace {

using base::fixed_text;

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

/// Of the tacks on a procedure's seams, which all are laid alike.
std::string tack_line(const plan::Plan& plan, const procedure::Procedure& procedure) {
  const auto found =
      std::find_if(plan.tacks.begin(), plan.tacks.end(), [&](const plan::PlannedTacks& tacks) {
        const auto& own = procedure.seams;
        return !tacks.plan.tacks.empty() &&
               std::find(own.begin(), own.end(), tacks.seam) != own.end();
      });
  if (found == plan.tacks.end()) return {};
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
    const joint::Datum* datum = joint::find_datum(plan.weldment, planned.id);
    const bool on =
        std::any_of(procedure.joints.begin(), procedure.joints.end(), [&](const std::string& id) {
          return joint::joins(*joint::find_joint(plan.weldment, id), datum->member);
        });
    if (!on) continue;
    std::string text = std::string(joint::datum_kind_name(datum->kind)) + " " + datum->id + ": ";
    if (const std::string guards = guard_words(datum->guard); !guards.empty()) {
      text += guards + "; ";
    }
    if (datum->temperature_max_c) {
      text += "not above " + fixed_text(*datum->temperature_max_c, 0) + " degC at any time; ";
    }
    add_line(procedure, text + "measured before and after this weld");
  }
}

}  // namespace

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
