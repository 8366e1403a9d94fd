// SPDX-License-Identifier: MIT
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

using base::fixed_text;
using timeline::SecondKind;

/// Arcs, and the work of people among them, at one stance without leaving it.
struct Visit {
  std::string stance;
  double start_s = 0.0;
  /// Seams with pass numbers, in order; "gouge J1.b", "heat all", "visual-test VT1" without.
  std::vector<std::pair<std::string, std::vector<int>>> items;
};

/// What people do, as the list names it.
std::string work_name(const plan::Plan& plan, const plan::PlannedEvent& event) {
  if (event.kind == SecondKind::hang) return event.operation;
  if (event.kind == SecondKind::work) {
    for (const plan::PlannedOperation& operation : plan.operations) {
      const std::string kind(joint::operation_name(operation.kind));
      if (operation.id != event.operation) continue;
      constexpr std::size_t few = 3;
      const std::vector<std::string>& members = operation.members;
      if (operation.kind != joint::OperationKind::fit) return kind + " " + operation.id;
      return "fit " + (members.size() <= few ? base::listed(members, " + ")
                                             : std::to_string(members.size()) + " members");
    }
  }
  const bool all = event.kind == SecondKind::heat && plan.heating && plan.heating->holds;
  return std::string(timeline::second_kind_name(event.kind)) + " " + (all ? "all" : event.seam);
}

std::string stance_name(const plan::PlannedEvent& event) {
  if (event.kind == SecondKind::hang) return "crane";
  return event.stance.empty() ? "rest" : event.stance;
}

/// Visits of a stage.
std::vector<Visit> visits_of(const plan::Plan& plan, std::size_t stage) {
  std::vector<Visit> visits;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind != SecondKind::arc && !timeline::is_by_people(event.kind)) continue;
    if (event.stage != stage) continue;
    const std::string stance = stance_name(event);
    if (visits.empty() || visits.back().stance != stance) {
      visits.push_back(Visit{stance, event.start_s, {}});
    }
    Visit& visit = visits.back();
    if (timeline::is_by_people(event.kind)) {
      visit.items.push_back({work_name(plan, event), {}});
      continue;
    }
    if (visit.items.empty() || visit.items.back().first != event.seam) {
      visit.items.push_back({event.seam, {}});
    }
    visit.items.back().second.push_back(event.pass);
  }
  return visits;
}

/// "J4.a 1-3": consecutive passes as a range.
std::string seam_passes(const std::string& seam, const std::vector<int>& passes) {
  if (passes.empty()) return seam;
  std::string text = seam + " " + std::to_string(passes.front());
  if (passes.size() > 1) text += "-" + std::to_string(passes.back());
  return text;
}

std::string stance_table(const plan::Plan& plan, const UnitsShown& units) {
  const bool several = plan.weldment.setups.size() > 1;
  std::vector<Table::Column> columns = {{"stance", "", Align::left}};
  if (several) columns.push_back({"set-up", "", Align::left});
  for (const cell::Axis& axis : plan.cell->positioner.axes) columns.push_back({axis.name, "deg"});
  for (const cell::Axis& axis : plan.cell->positioner.axes) {
    columns.push_back({"torque " + axis.name, units.torque_unit()});
  }
  columns.push_back({"visits", ""});
  columns.push_back({"turning", "s"});
  columns.push_back({"seams", ""});
  columns.push_back({"", "", Align::left});
  Table table(columns);
  for (const plan::PlannedStance& stance : plan.stances) {
    std::vector<std::string> row = {stance.id};
    if (several) row.push_back(stance.setup);
    for (const base::Angle axis : stance.stance.axes) row.push_back(fixed_text(axis.deg(), 1));
    for (const double torque : stance.torque_nm) row.push_back(units.torque(torque));
    row.push_back(std::to_string(stance.visits));
    row.push_back(fixed_text(stance.turn_time_s, 0));
    row.push_back(std::to_string(stance.seams.size()));
    row.push_back(!stance.stance.rolling ? "" : several ? "rolls" : "rolls during the weld");
    table.add_row(row);
  }
  return table.text();
}

std::string visits_text(const plan::Plan& plan, std::size_t stage) {
  std::string out;
  for (const Visit& visit : visits_of(plan, stage)) {
    const std::string clock = clock_text(visit.start_s);
    const std::string stance =
        visit.stance + std::string(5 - std::min<std::size_t>(5, visit.stance.size()), ' ');
    const std::string head =
        std::string(8 - std::min<std::size_t>(8, clock.size()), ' ') + clock + "  " + stance + " ";
    std::string items;
    for (const auto& [name, passes] : visit.items) {
      std::string item = seam_passes(name, passes);
      std::replace(item.begin(), item.end(), ' ', unbreakable_blank);
      items += (items.empty() ? "" : ", ") + item;
    }
    out += headed(head, items, line_width) + '\n';
  }
  return out;
}

std::string order_list(const plan::Plan& plan) {
  std::string out;
  for (std::size_t k = 0; k < plan.stages.size(); ++k) {
    out += stage_heading(plan, plan.stages[k]) + visits_text(plan, k);
  }
  return out;
}

std::string seconds_table(const plan::Plan& plan) {
  Table table({{"", "", Align::left}, {"time", "h:min:s"}, {"share", "%"}});
  for (std::size_t i = 0; i < timeline::second_kinds; ++i) {
    const auto kind = static_cast<SecondKind>(i);
    if (timeline::is_by_people(kind) && plan.seconds[i] <= 0.0) continue;
    const double share = plan.cycle_s > 0.0 ? 100.0 * plan.seconds[i] / plan.cycle_s : 0.0;
    table.add_row({std::string(timeline::second_kind_name(kind)),
                   clock_text(plan.seconds[i]),
                   fixed_text(share, 1)});
  }
  table.add_rule();
  table.add_row({"cycle", clock_text(plan.cycle_s), "100.0"});
  return table.text();
}

std::string bound_text(const plan::Plan& plan) {
  if (plan.proved_best) return "Proved best: no order of this model is shorter at these times.\n";
  const double gap = 100.0 * (plan.cycle_s - plan.lower_bound_s) / plan.cycle_s;
  return wrapped("No order of this model can be shorter than " + clock_text(plan.lower_bound_s) +
                     "; this one is at most " + fixed_text(gap, 1) +
                     " % of the cycle above the best. The best may lie anywhere between.",
                 line_width,
                 0) +
         "\n";
}

}  // namespace

std::string turns_text(const plan::Plan& plan, const UnitsShown& units) {
  std::string out = title_text(plan) + "\n\n";
  if (!plan.cell) return out + "The weldment names no cell: nothing is turned.\n";
  if (plan.stances.empty())
    return out + "No seam has a place in the weldment: nothing is turned.\n";
  out += "On positioner " + plan.cell->positioner.id + ": part " + units.weight(plan.part.mass_kg) +
         " " + units.mass_unit() + ", with fixture " +
         units.weight(plan::heaviest_load(plan).mass_kg) + " " + units.mass_unit() + ".\n\n";
  out += stages_text(plan, units);
  out += stance_table(plan, units) + "\n";
  out += turn_loads_text(plan, units);
  out +=
      "Order (start, stance, seams with their passes, work of people)\n" + order_list(plan) + "\n";
  out += build_text(plan, units);
  out += gates_text(plan, units) + "\n";
  out += seconds_table(plan) + "\n" + bound_text(plan);
  if (!plan.not_turned.empty()) {
    out +=
        wrapped(
            "Left out, no place in the weldment: " + base::listed(plan.not_turned), line_width, 2) +
        "\n";
  }
  out += wrapped(
             "Turn only with the robot withdrawn; the first full turn slowly and with nobody "
             "near. Times are for planning: the floor measures before each pass and welds only "
             "between preheat and interpass maximum.",
             line_width,
             0) +
         "\n";
  return out;
}

}  // namespace seamturn::cli
