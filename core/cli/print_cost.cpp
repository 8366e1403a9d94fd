// SPDX-License-Identifier: MIT
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

using base::fixed_text;

namespace {

bool has_backing(const plan::Plan& plan) {
  const auto& joints = plan.weldment.joints;
  return std::any_of(joints.begin(), joints.end(), [](const joint::Joint& joint) {
    return joint.root == joint::RootDecision::steel_backing ||
           joint.root == joint::RootDecision::ceramic_backing;
  });
}

bool has_tabs(const plan::Plan& plan) {
  const auto& joints = plan.weldment.joints;
  return std::any_of(joints.begin(), joints.end(), [](const joint::Joint& joint) {
    return std::any_of(joint.seams.begin(), joint.seams.end(), [](const joint::Seam& seam) {
      return seam.asked.run_on_mm > 0.0 || seam.asked.run_off_mm > 0.0;
    });
  });
}

std::string people_text(int people) {
  return base::counted(static_cast<std::size_t>(people), "person", "people");
}

}  // namespace

std::string cost_text(const plan::Plan& plan, const UnitsShown& units) {
  const cost::Estimate& estimate = plan.estimate;
  Table use({{"per part", "", Align::left}, {"amount", ""}, {"", "", Align::left}});
  use.add_row({"weld metal", units.mass(plan.totals.metal_kg), units.mass_unit()});
  use.add_row({"wire bought", units.mass(estimate.wire_kg), units.mass_unit()});
  use.add_row({"shielding gas", units.gas(estimate.gas_m3), units.gas_unit()});
  use.add_row({"mains energy of arcs", fixed_text(estimate.energy_kwh, 1), "kWh"});
  use.add_row({"arc time", clock_text(estimate.arc_time_s), "h:min:s"});
  use.add_row({"cell time", clock_text(estimate.cell_time_s), "h:min:s"});

  Table items({{"item", "", Align::left},
               {"per part", estimate.currency},
               {"low", estimate.currency},
               {"high", estimate.currency},
               {"share", "%"}});
  for (const cost::Item& item : estimate.items) {
    const double share = estimate.total > 0.0 ? 100.0 * item.amount / estimate.total : 0.0;
    items.add_row({item.name,
                   fixed_text(item.amount, 2),
                   fixed_text(item.low, 2),
                   fixed_text(item.high, 2),
                   fixed_text(share, 1)});
  }
  items.add_rule();
  items.add_row({"total per part",
                 fixed_text(estimate.total, 2),
                 fixed_text(estimate.total_low, 2),
                 fixed_text(estimate.total_high, 2),
                 "100.0"});
  const bool fits = std::any_of(plan.operations.begin(), plan.operations.end(), [](const auto& op) {
    return op.kind == joint::OperationKind::fit;
  });
  const bool tests =
      std::any_of(plan.operations.begin(), plan.operations.end(), [](const auto& op) {
        return op.kind != joint::OperationKind::fit && op.time_s > 0.0;
      });
  std::string rehangs;
  for (const plan::PlannedStage& stage : plan.stages) {
    if (stage.rehang_s <= 0.0) continue;
    rehangs += headed("Of it: ",
                      "re-hang for stage " + stage.id + " in set-up " + stage.setup + ", " +
                          fixed_text(stage.rehang_s / 60.0, 0) + " min with " +
                          people_text(stage.rehang_people) + ": " +
                          fixed_text(plan::rehang_price(plan, stage), 2) + " " + estimate.currency +
                          " a part.",
                      line_width) +
               "\n";
  }
  if (!rehangs.empty()) rehangs += "\n";
  return title_text(plan) + "\n\n" + use.text() + "\n" + items.text() + "\n" + rehangs +
         wrapped("Batch of " + std::to_string(estimate.batch_parts) + ": " +
                     fixed_text(estimate.batch_total, 2) + " " + estimate.currency +
                     ". Low and high move all times by " +
                     fixed_text(100.0 * plan.rates.time_band_ratio, 0) +
                     " % and all consumption by " +
                     fixed_text(100.0 * plan.rates.consumption_band_ratio, 0) +
                     " % the same way at once. Not in the price: plate, cutting, " +
                     std::string(fits ? "" : "fit-up and tacking, ") +
                     std::string(has_backing(plan) ? "backing, " : "") +
                     std::string(has_tabs(plan) ? "tabs and their removal, " : "") +
                     std::string(plan.heating ? "the energy of preheating (its time is)"
                                              : "preheating") +
                     (tests ? ", inspection beyond that of the stages, furnace and machine tools, "
                            : ", inspection, ") +
                     "overheads not in the rates.",
                 line_width,
                 0) +
         "\n";
}

}  // namespace seamturn::cli
