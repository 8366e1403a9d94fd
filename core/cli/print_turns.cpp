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

/// Passes of a seam laid one after another; or "gouge J1.b", "heat all", "wait 0:40" without.
struct Item {
  std::string name;
  std::vector<int> passes;
};

/// What is done at one stance without leaving it, in order.
struct Visit {
  std::string stance;
  double start_s = 0.0;
  std::vector<Item> items;
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
      if (members.size() <= few) return "fit " + base::listed(members, " + ");
      return "fit " + members.front() + " and " + std::to_string(members.size() - 1) + " more";
    }
  }
  const bool all = event.kind == SecondKind::heat && plan.heating && plan.heating->holds;
  return std::string(timeline::second_kind_name(event.kind)) + " " + (all ? "all" : event.seam);
}

std::string stance_name(const plan::PlannedEvent& event) {
  if (event.kind == SecondKind::hang) return "crane";
  return event.stance.empty() ? "rest" : event.stance;
}

/// What stops the arcs, as the list names it; empty: nothing to be said.
std::string stop_name(const plan::Plan& plan, const plan::PlannedEvent& event) {
  constexpr double shown_s = 0.5;
  if (timeline::is_by_people(event.kind)) return work_name(plan, event);
  if (event.kind == SecondKind::clean) return "clean";
  const double seconds = event.end_s - event.start_s;
  if (event.kind == SecondKind::wait && seconds >= shown_s) return "wait " + clock_text(seconds);
  return {};
}

/// Whether a stage's turn from one stance to another goes by other settings.
bool goes_round(const plan::Plan& plan,
                std::size_t stage,
                const std::string& from,
                const std::string& to) {
  return std::any_of(plan.turns.begin(), plan.turns.end(), [&](const plan::PlannedTurn& turn) {
    return turn.stage == stage && turn.from == from && turn.to == to && !turn.halts.empty();
  });
}

/// Visits of a stage.
std::vector<Visit> visits_of(const plan::Plan& plan, std::size_t stage) {
  std::vector<Visit> visits;
  std::string held;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.stage != stage) continue;
    if (event.stance != held && goes_round(plan, stage, held, event.stance)) {
      visits.push_back(Visit{stance_name(event), event.end_s, {{"way round", {}}}});
    }
    held = event.stance;
    const bool is_arc = event.kind == SecondKind::arc;
    const std::string stop = is_arc ? std::string() : stop_name(plan, event);
    if (!is_arc && stop.empty()) continue;
    const std::string stance = stance_name(event);
    if (visits.empty() || visits.back().stance != stance) {
      visits.push_back(Visit{stance, event.start_s, {}});
    }
    Visit& visit = visits.back();
    const std::string& name = is_arc ? event.seam : stop;
    if (!is_arc || visit.items.empty() || visit.items.back().name != name) {
      visit.items.push_back({name, {}});
    }
    if (is_arc) visit.items.back().passes.push_back(event.pass);
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

/// What the clock turns beside going to stances: to rest, and rolled rings to their starts.
std::string other_turning_text(const plan::Plan& plan) {
  constexpr double shown_s = 1.0;
  double to_stances_s = 0.0;
  for (const plan::PlannedStance& stance : plan.stances) to_stances_s += stance.turn_time_s;
  double to_rest_s = 0.0;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind != SecondKind::turn || !event.stance.empty()) continue;
    to_rest_s += event.end_s - event.start_s;
  }
  const double all_s = plan.seconds[static_cast<std::size_t>(SecondKind::turn)];
  const double wound_s = all_s - to_stances_s - to_rest_s;
  std::string text;
  if (to_rest_s >= shown_s) text += "Turns to rest take " + clock_text(to_rest_s) + " more. ";
  if (wound_s >= shown_s) {
    text +=
        "Rolled rings are wound to their starts and back for " + clock_text(wound_s) + " more. ";
  }
  if (text.empty()) return "";
  return wrapped(text + clock_text(all_s) + " of turning in all.", line_width, 0) + "\n";
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
  return table.text() + other_turning_text(plan);
}

/// Axis values of a stance, each in a column of its own; blanks for rest and crane.
std::string axes_text(const plan::Plan& plan, const std::string& id) {
  constexpr std::size_t column = 7;
  std::string text;
  const auto add = [&](const std::string& value) {
    text += std::string(column - std::min(column, value.size()), ' ') + value;
  };
  for (const plan::PlannedStance& stance : plan.stances) {
    if (stance.id != id) continue;
    for (const base::Angle axis : stance.stance.axes) add(fixed_text(axis.deg(), 1));
    return text;
  }
  for (std::size_t i = 0; i < plan.cell->positioner.axes.size(); ++i) add("");
  return text;
}

/// "A: J1 1-3, wait 0:40, B: J2.a 1": a gate is named where it is another than before.
std::string items_text(const Visit& visit, const std::map<std::string, std::string>& gates) {
  std::string text;
  std::string held;
  for (const Item& item : visit.items) {
    std::string shown = seam_passes(item.name, item.passes);
    const auto gate = item.passes.empty() ? gates.end() : gates.find(item.name);
    if (gate != gates.end() && gate->second != held) {
      held = gate->second;
      shown = held + ": " + shown;
    }
    std::replace(shown.begin(), shown.end(), ' ', unbreakable_blank);
    text += (text.empty() ? "" : ", ") + shown;
  }
  return text;
}

std::string visits_text(const plan::Plan& plan,
                        std::size_t stage,
                        const std::map<std::string, std::string>& gates) {
  std::string out;
  for (const Visit& visit : visits_of(plan, stage)) {
    const std::string clock = clock_text(visit.start_s);
    const std::string stance =
        visit.stance + std::string(5 - std::min<std::size_t>(5, visit.stance.size()), ' ');
    const std::string head = std::string(8 - std::min<std::size_t>(8, clock.size()), ' ') + clock +
                             "  " + stance + axes_text(plan, visit.stance) + "  ";
    out += headed(head, items_text(visit, gates), line_width) + '\n';
  }
  return out;
}

std::string order_list(const plan::Plan& plan) {
  std::string axes;
  for (const cell::Axis& axis : plan.cell->positioner.axes) {
    axes += (axes.empty() ? "" : ", ") + axis.name;
  }
  std::string out =
      wrapped("Order: start, stance, " + axes +
                  " in deg; then gate, seams with their passes, waits (min:s), cleaning, work of "
                  "people" +
                  (plan.cell->times.touches_per_seam > 0
                       ? "; after every turn a seam is touched before it is welded"
                       : ""),
              line_width,
              0) +
      "\n";
  const std::map<std::string, std::string> gates = gate_letters(plan);
  for (std::size_t k = 0; k < plan.stages.size(); ++k) {
    out += stage_heading(plan, plan.stages[k]) + visits_text(plan, k, gates);
  }
  return out;
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
  out += order_list(plan) + "\n";
  out += order_rules_text(plan, units);
  out += build_text(plan, units);
  out += gates_text(plan, units) + "\n";
  out += clock_report(plan);
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
