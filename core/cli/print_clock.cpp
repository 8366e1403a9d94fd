// SPDX-License-Identifier: MIT
// The clock as people read it: seconds by kind, other orders, and the bound.
#include <cmath>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

using base::fixed_text;
using timeline::SecondKind;

double seconds_of(const plan::Plan& plan, SecondKind kind) {
  return plan.seconds[static_cast<std::size_t>(kind)];
}

std::string share_text(double part_s, double whole_s) {
  return fixed_text(whole_s > 0.0 ? 100.0 * part_s / whole_s : 0.0, 1);
}

std::string seconds_table(const plan::Plan& plan) {
  Table table({{"", "", Align::left}, {"time", "h:min:s"}, {"share", "%"}});
  for (std::size_t i = 0; i < timeline::second_kinds; ++i) {
    const auto kind = static_cast<SecondKind>(i);
    if (timeline::is_by_people(kind) && plan.seconds[i] <= 0.0) continue;
    table.add_row({std::string(timeline::second_kind_name(kind)),
                   clock_text(plan.seconds[i]),
                   share_text(plan.seconds[i], plan.cycle_s)});
  }
  table.add_rule();
  table.add_row({"cycle", clock_text(plan.cycle_s), "100.0"});
  return table.text();
}

std::string arc_text(const plan::Plan& plan) {
  double people_s = 0.0;
  for (std::size_t i = 0; i < timeline::second_kinds; ++i) {
    if (timeline::is_by_people(static_cast<SecondKind>(i))) people_s += plan.seconds[i];
  }
  const double arc_s = seconds_of(plan, SecondKind::arc);
  std::string text = "Arc is " + share_text(arc_s, plan.cycle_s) + " % of the cycle";
  if (people_s > 0.0) {
    text += "; of the " + clock_text(plan.cycle_s - people_s) + " without work of people it is " +
            share_text(arc_s, plan.cycle_s - people_s) + " %";
  }
  return text + ".\n";
}

std::string orders_table(const plan::Plan& plan) {
  if (plan.file_order.visits == 0) return "";
  int visits = 0;
  for (const plan::PlannedStance& stance : plan.stances) visits += stance.visits;
  Table table({{"order", "", Align::left},
               {"cycle", "h:min:s"},
               {"visits", "of stances"},
               {"longer", "h:min:s"}});
  const auto add = [&](const char* name, const plan::OtherOrder& other) {
    const std::string sign = other.longer_s < 0.0 ? "-" : "";
    table.add_row({name,
                   clock_text(plan.cycle_s + other.longer_s),
                   std::to_string(other.visits),
                   sign + clock_text(std::abs(other.longer_s))});
  };
  table.add_row({"this one", clock_text(plan.cycle_s), std::to_string(visits), ""});
  add("greedy", plan.greedy_order);
  add("as the file lists it", plan.file_order);
  return table.text() + "\n";
}

std::string bound_text(const plan::Plan& plan) {
  const double above_s = plan.cycle_s - plan.lower_bound_s;
  if (plan.proved_best) {
    std::string proved = "Proved best: no better order in this model at these times.";
    if (above_s >= 0.5) {
      proved += " It is at most " + clock_text(above_s) +
                " longer than the shortest, which turns the part or sends people in oftener than "
                "that is worth.";
    }
    return wrapped(proved, line_width, 0) + "\n";
  }
  std::string text = "Unavoidable by the bound: " + clock_text(plan.lower_bound_s) +
                     ", no order of this model is shorter. This one is " + clock_text(above_s) +
                     " longer, at most " + share_text(above_s, plan.cycle_s) +
                     " % of the cycle above the best, which may lie anywhere between.";
  const double wait_s = seconds_of(plan, SecondKind::wait);
  if (wait_s >= 0.5) {
    text += " " + clock_text(wait_s) +
            " of the cycle are waits; the bound knows waits only where one chain of passes is "
            "longer than all else together.";
  }
  return wrapped(text, line_width, 0) + "\n";
}

}  // namespace

std::string clock_report(const plan::Plan& plan) {
  return seconds_table(plan) + arc_text(plan) + "\n" + orders_table(plan) + bound_text(plan);
}

}  // namespace seamturn::cli
