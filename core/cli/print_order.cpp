// SPDX-License-Identifier: MIT
// Orders by hand and balance as people read them.
#include <algorithm>
#include <cmath>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

std::string turns_count(int turns) {
  return base::counted(static_cast<std::size_t>(turns), "turn");
}

/// What it costs, or that it costs nothing.
std::string price_text(const plan::HandOrderPrice& price) {
  const double dearer_s = price.by_hand_s - price.own_s;
  const int more = price.by_hand_stances - price.own_stances;
  const std::string own = price.own_proved_best ? "proved best" : "best found";
  if (std::abs(dearer_s) < 0.5 && more == 0)
    return "costs nothing against seamturn's own (" + own + ")";
  std::string text = "without it, at the same rules, " + clock_text(price.own_s) + " and " +
                     turns_count(price.own_stances) + " (" + own + "): it costs " +
                     clock_text(dearer_s);
  if (more != 0) {
    text += std::string(more > 0 ? " and " : ", and saves ") + turns_count(std::abs(more));
  }
  return text;
}

std::string by_hand_text(const plan::Plan& plan) {
  std::string out;
  for (const plan::PlannedStage& stage : plan.stages) {
    if (!stage.by_hand) continue;
    const plan::HandOrderPrice& price = *stage.by_hand;
    const std::string head =
        stage.id.empty() ? "Order by hand: " : "Order by hand, stage " + stage.id + ": ";
    out += headed("",
                  head + base::listed(price.entries) + ". " + clock_text(price.by_hand_s) +
                      (stage.rehang_s > 0.0 ? " (without hanging) and " : " and ") +
                      turns_count(price.by_hand_stances) + "; " + price_text(price) + ".",
                  line_width) +
           "\n";
  }
  return out;
}

std::string furthest_text(const plan::PlannedTwins& twins, const UnitsShown& units) {
  const bool first = twins.ahead == twins.first;
  return twins.ahead + " is " + units.area(twins.ahead_mm2) + " " + units.area_unit() +
         " ahead of " + (first ? twins.second : twins.first) + " on the way, of " +
         units.area(first ? twins.metal_1_mm2 : twins.metal_2_mm2) + " and " +
         units.area(first ? twins.metal_2_mm2 : twins.metal_1_mm2) + " in the end";
}

/// What one side was ahead beyond what it is in the end: no order avoids that part.
double avoidable_mm2(const plan::PlannedTwins& twins) {
  return twins.ahead_mm2 - std::abs(twins.metal_1_mm2 - twins.metal_2_mm2);
}

bool has_one_layer(const plan::Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (seam.id == id || seam.drawn == id) return seam.stack.layers == 1;
    }
  }
  return false;
}

/// Where a side is one layer, step by step is one after the other.
std::string single_text(const plan::Plan& plan) {
  const auto singles =
      std::count_if(plan.twins.begin(), plan.twins.end(), [&](const plan::PlannedTwins& twins) {
        return twins.keeps_step && has_one_layer(plan, twins.first) &&
               has_one_layer(plan, twins.second);
      });
  if (singles == 0) return "";
  return " (" + std::to_string(singles) + " of one layer each: one after the other)";
}

std::string twins_text(const plan::Plan& plan, const UnitsShown& units) {
  std::string left_out;
  const plan::PlannedTwins* furthest = nullptr;
  int keeping = 0;
  for (const plan::PlannedTwins& twins : plan.twins) {
    if (furthest == nullptr || avoidable_mm2(twins) > avoidable_mm2(*furthest)) furthest = &twins;
    keeping += twins.keeps_step ? 1 : 0;
    if (twins.keeps_step) continue;
    left_out += (left_out.empty() ? "" : "; ") + twins.first + " with " + twins.second + " (" +
                twins.why_not + ")";
  }
  if (furthest == nullptr) return "";
  std::string text = std::to_string(keeping) + " of " + std::to_string(plan.twins.size()) +
                     (plan.twins.size() == 1 ? " pair" : " pairs") +
                     " of sides keep step, layer by layer" + single_text(plan) +
                     "; across the weld " + furthest_text(*furthest, units) + ".";
  if (!left_out.empty()) text += " Not kept: " + left_out + ".";
  return headed("Balance: ", text, line_width) + "\n";
}

/// Two digits of what is shown: it is an order of magnitude.
std::string rough_torque(double nm, const UnitsShown& units) {
  return units.rough_torque(nm) + " " + units.torque_unit();
}

std::string moment_text(const plan::Plan& plan, const UnitsShown& units) {
  if (!plan.shrink_moment) return "";
  const plan::ShrinkageMoment& moment = *plan.shrink_moment;
  return wrapped("Moment of all shrinkage about the part's centre: at most " +
                     rough_torque(moment.largest_nm, units) + " (along " + moment.axis +
                     ", after " + moment.seam + "), " + rough_torque(moment.final_nm, units) +
                     " in the end; from memory, to compare orders by, no forecast.",
                 line_width,
                 0) +
         "\n";
}

}  // namespace

std::string order_rules_text(const plan::Plan& plan, const UnitsShown& units) {
  const std::string out = by_hand_text(plan) + twins_text(plan, units) + moment_text(plan, units);
  return out.empty() ? out : out + "\n";
}

}  // namespace seamturn::cli
