// SPDX-License-Identifier: MIT
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

using base::counted;
using base::fixed_text;

namespace {

double highest_preheat_c(const plan::Plan& plan) {
  double highest = 0.0;
  for (const plan::PlannedJoint& joint : plan.joints) {
    if (joint.heat.needs_heating) highest = std::max(highest, joint.heat.preheat_c);
  }
  return highest;
}

std::size_t seam_count(const plan::Plan& plan) {
  std::size_t count = 0;
  for (const plan::PlannedJoint& joint : plan.joints) count += joint.seams.size();
  return count;
}

std::string order_line(const plan::Plan& plan) {
  if (!plan.cell || plan.stances.empty()) return "not planned (no cell, or no seam with a place)";
  std::size_t turns = 0;
  for (const plan::PlannedStance& stance : plan.stances) {
    turns += static_cast<std::size_t>(stance.visits);
  }
  const double arc_share = plan.cycle_s > 0.0 ? 100.0 * plan.seconds[0] / plan.cycle_s : 0.0;
  return counted(plan.stances.size(), "stance") + ", " + counted(turns, "visit") + "; cycle " +
         clock_text(plan.cycle_s) + " h:min:s, " + fixed_text(arc_share, 0) + " % arc; " +
         (plan.proved_best ? "proved best"
                           : "no order shorter than " + clock_text(plan.lower_bound_s));
}

}  // namespace

std::string title_text(const plan::Plan& plan) {
  return plan.weldment.title + ", revision " + plan.weldment.revision +
         (plan.weldment.invented ? " (invented demo data)" : "");
}

std::string cautions_text(const std::vector<procedure::Caution>& cautions) {
  std::string out;
  for (const procedure::Caution& caution : cautions) {
    out += wrapped("- " + caution.text + " (" + caution.defer_to + ")", line_width, 2) + "\n";
  }
  return out;
}

std::string summary_text(const plan::Plan& plan,
                         const UnitsShown& units,
                         const std::string& folder,
                         const std::vector<std::string>& files) {
  const double preheat_c = highest_preheat_c(plan);
  std::string out = title_text(plan) + "\n\n";
  const auto line = [&](const std::string& name, const std::string& text) {
    const std::string head = name + std::string(13 - std::min<std::size_t>(13, name.size()), ' ');
    out += headed(head, text, line_width) + "\n";
  };
  line("part",
       units.weight(plan.part.mass_kg) + " " + units.mass_unit() + ", " +
           counted(plan.weldment.members.size(), "member"));
  line("welds",
       counted(plan.joints.size(), "joint") + ", " + counted(seam_count(plan), "seam") + ", " +
           units.length(plan.totals.length_mm) + " " + units.length_unit() + ", " +
           units.mass(plan.totals.metal_kg) + " " + units.mass_unit() + " of metal in " +
           counted(static_cast<std::size_t>(plan.totals.passes), "pass", "passes"));
  line("procedures",
       counted(plan.procedures.size(), "sheet") + ", all preliminary; preheat up to " +
           (preheat_c > 0.0 ? units.least_temperature(preheat_c) + " " + units.temperature_unit()
                            : std::string("none")));
  line("order", order_line(plan));
  line("price",
       fixed_text(plan.estimate.total, 2) + " " + plan.estimate.currency + " a part (" +
           fixed_text(plan.estimate.total_low, 0) + " to " +
           fixed_text(plan.estimate.total_high, 0) + "), wire " +
           units.mass(plan.estimate.wire_kg) + " " + units.mass_unit() + ", arc " +
           clock_text(plan.estimate.arc_time_s) + " h:min:s");
  if (!files.empty()) {
    line("documents", counted(files.size(), "file") + " in " + folder);
  }
  return out + "\nCautions\n" + cautions_text(plan.cautions);
}

}  // namespace seamturn::cli
