// SPDX-License-Identifier: MIT
// The order of a plan as a person takes it up to change it.
#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/plan/order_to_edit.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

std::string element_text(const joint::HandOrder& order) {
  std::vector<std::string> entries;
  for (const joint::HandEntry& entry : order.entries) entries.push_back(entry.text);
  const std::string stage = order.stage.empty() ? "" : "stage=\"" + order.stage + "\" ";
  return headed("  <hand-order " + stage + "seams=\"",
                base::listed(entries, " ") + "\"/>",
                line_width) +
         "\n";
}

}  // namespace

std::string order_to_edit_text(const plan::Plan& plan) {
  const std::vector<joint::HandOrder> orders = plan::order_to_edit(plan);
  if (orders.empty()) return "Nothing is turned: there is no order to change.\n";
  std::string text =
      headed("  <!-- ",
             "The order of " + plan.weldment.title + ", revision " + plan.weldment.revision +
                 ": cycle " + clock_text(plan.cycle_s) +
                 ". Put it before the joints of the weldment, change it or leave entries away, "
                 "and plan again: seamturn turns tells what it costs. R1.2: layer 2 of R1; R1:2: "
                 "its pass 2. -->",
             line_width) +
      "\n";
  for (const joint::HandOrder& order : orders) text += element_text(order);
  return text;
}

}  // namespace seamturn::cli
