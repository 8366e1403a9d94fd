// SPDX-License-Identifier: MIT
#include "seamturn/process/spool.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::process {

namespace {

using base::rounding_ratio;
constexpr double most_changes = 1e6;

std::string wrong_values(const SpoolUse& use) {
  std::string wrong;
  const auto note = [&](bool bad, const char* text) {
    if (bad) wrong += (wrong.empty() ? "" : "; ") + std::string(text);
  };
  note(!(use.wire_needed_kg >= 0.0), "the wire needed is below 0 kg");
  note(!(use.linear_mass_kg_m > 0.0), "the mass of a metre must be above 0 kg/m");
  note(!(use.spool_kg > 0.0), "the wire on a spool must be above 0 kg");
  note(!(use.leftover_m >= 0.0), "the left-over is below 0 m");
  note(!(use.started_m >= 0.0), "the wire on the first spool is below 0 m");
  return wrong;
}

}  // namespace

base::Outcome<SpoolPlan> plan_spools(const SpoolUse& use) {
  for (const double value :
       {use.wire_needed_kg, use.linear_mass_kg_m, use.spool_kg, use.leftover_m, use.started_m}) {
    SEAMTURN_REQUIRE(std::isfinite(value), value);
  }
  const std::string wrong = wrong_values(use);
  if (!wrong.empty()) return base::Refusal{"process.spool.value", wrong};
  SpoolPlan plan;
  plan.spool_m = use.spool_kg / use.linear_mass_kg_m;
  plan.needed_m = use.wire_needed_kg / use.linear_mass_kg_m;
  if (use.started_m > plan.spool_m * (1.0 + rounding_ratio)) {
    return base::Refusal{"process.spool.value",
                         "the first spool is said to hold " + base::digits_text(use.started_m) +
                             " m, a full one holds " + base::digits_text(plan.spool_m) + " m"};
  }
  const double usable_m = plan.spool_m - use.leftover_m;
  if (!(usable_m > 0.0)) {
    return base::Refusal{"process.spool.leftover",
                         "a spool of " + base::digits_text(plan.spool_m) +
                             " m gives nothing when " + base::digits_text(use.leftover_m) +
                             " m are left over: take a larger spool"};
  }
  const double on_first_m = use.started_m > 0.0 ? use.started_m : plan.spool_m;
  const double first_m = std::max(on_first_m - use.leftover_m, 0.0);
  const double beyond_m = plan.needed_m - first_m;
  const double slack_m = rounding_ratio * std::max(plan.needed_m, plan.spool_m);
  if (beyond_m <= slack_m) {
    plan.rest_m = on_first_m - plan.needed_m;
    return plan;
  }
  const double changes = std::ceil((beyond_m - slack_m) / usable_m);
  if (changes > most_changes) {
    return base::Refusal{"process.spool.count",
                         base::digits_text(plan.needed_m) +
                             " m of wire need more than a million spools: check the units"};
  }
  plan.changes = std::llround(changes);
  plan.thrown_m = on_first_m - first_m + (changes - 1.0) * use.leftover_m;
  plan.rest_m = plan.spool_m - (beyond_m - (changes - 1.0) * usable_m);
  return plan;
}

const base::FigureCard& spool_card() {
  using base::Citation;
  using base::Dimension;
  using base::FigureKey;
  using base::Status;
  static const FigureKey keys[] = {
      {"wire", Dimension::length, "diameter of the wire", "> 0"},
      {"used", Dimension::mass, "wire used up", ">= 0; or metal with efficiency, or length", false},
      {"metal", Dimension::mass, "weld metal laid", ">= 0, with efficiency", false},
      {"efficiency",
       Dimension::ratio,
       "deposited mass / melted mass",
       "above 0, up to 1 (100 %)",
       false},
      {"length", Dimension::length, "length of wire used up", ">= 0", false},
      {"spool", Dimension::mass, "wire on a full spool", "> 0; absent: 15 kg", false},
      {"leftover", Dimension::length, "left when a spool is changed", ">= 0; absent: 10 m", false},
      {"started",
       Dimension::length,
       "wire on the spool at the start",
       "absent: a full spool",
       false},
      {"linear-mass", Dimension::linear_mass, "mass of a metre", "> 0; cored wire needs it", false},
  };
  static const Citation sources[] = {
      {"MIGH-10", "table of wire length per mass", Status::verified},
      {"ISO 544", "15 kg on a spool of 300 mm", Status::from_memory},
  };
  static const base::FigureCard card{
      "spool",
      "how often a spool of wire is changed, and how far one reaches",
      "metres = mass / mass of a metre; changes = round up ((needed - usable on the first) / "
      "usable "
      "on a full one), usable = metres - left-over",
      "",
      "the left-over of each spool changed is thrown away, the last spool's rest stays on the "
      "machine. "
      "A job that ends with the spool needs no change",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::process
