// SPDX-License-Identifier: MIT
// What the fit of the parts does to each seam, under the joint list.
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

using base::fixed_text;

/// Three values, or the drawn one alone where an end does not close.
std::string band(const std::string& least, const std::string& drawn, const std::string& most) {
  if (least == drawn && drawn == most) return drawn;
  return least + " " + drawn + " " + most;
}

std::string passes_of(const plan::FitUpEnd& end) {
  return end.closes ? std::to_string(end.passes) : "-";
}

std::string minutes_of(const plan::FitUpEnd& end) {
  return end.closes ? fixed_text(end.arc_time_s / 60.0, 1) : "-";
}

std::string heat_of(const plan::FitUpEnd& least,
                    const plan::FitUpEnd& most,
                    const UnitsShown& units) {
  if (!least.closes || !most.closes) return "-";
  const double low = std::min(least.heat_input_min_kj_mm, most.heat_input_min_kj_mm);
  const double high = std::max(least.heat_input_max_kj_mm, most.heat_input_max_kj_mm);
  return units.heat_input(low) + "-" + units.heat_input(high);
}

void add_row(Table& table, const plan::PlannedSeam& seam, const UnitsShown& units) {
  const plan::PlannedFitUp& fit = *seam.fit_up;
  table.add_row(
      {seam.id,
       band(units.area(fit.low.area_mm2),
            units.area(seam.section.area_mm2),
            units.area(fit.high.area_mm2)),
       band(units.mass(fit.low.metal_kg), units.mass(seam.metal_kg), units.mass(fit.high.metal_kg)),
       band(passes_of(fit.low), std::to_string(seam.passes.size()), passes_of(fit.high)),
       band(minutes_of(fit.low), fixed_text(seam.stack.arc_time_s / 60.0, 1), minutes_of(fit.high)),
       heat_of(fit.low, fit.high, units),
       fit.gaps ? units.size(fit.gaps->stop.gap_mm) : "-"});
}

/// "plasma-cut (proposed)", once each; which seams a row is for is told when there are several.
struct Told {
  std::string tolerances;
  std::string seams;
};

void note_tolerances(std::vector<Told>& told, const plan::PlannedSeam& seam) {
  const std::string name =
      seam.fit_up->tolerances + " (" + std::string(base::status_name(seam.fit_up->status)) + ")";
  for (Told& one : told) {
    if (one.tolerances != name) continue;
    one.seams += " " + seam.id;
    return;
  }
  told.push_back(Told{name, " " + seam.id});
}

std::string tolerances_text(const std::vector<Told>& told) {
  std::string text = "Fit-up within the tolerances ";
  for (const Told& one : told) {
    text += (&one == &told.front() ? "" : "; ") + one.tolerances;
    if (told.size() > 1) text += " of" + one.seams;
  }
  return text;
}

}  // namespace

std::string fit_up_text(const plan::Plan& plan, const UnitsShown& units) {
  Table table({{"seam", "", Align::left},
               {"section", units.area_unit()},
               {"metal", units.mass_unit()},
               {"passes", ""},
               {"arc", "min"},
               {"heat input", units.heat_input_unit()},
               {"stop above", units.length_unit()}});
  std::vector<Told> tolerances;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (!seam.fit_up) continue;
      note_tolerances(tolerances, seam);
      add_row(table, seam, units);
    }
  }
  if (tolerances.empty()) return {};
  return wrapped(tolerances_text(tolerances) + ": least, drawn, most", line_width, 0) + "\n\n" +
         table.text() + "\n" +
         wrapped(
             "Stop above: the gap beyond which the welder stops and calls; what to weld at "
             "which gap stands on the sheets.",
             line_width,
             0) +
         "\n";
}

}  // namespace seamturn::cli
