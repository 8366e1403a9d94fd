// SPDX-License-Identifier: MIT
// Stages as people read them.
#include <algorithm>
#include <cmath>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

/// Frame of the part; no minus before a zero.
std::string centre_text(const geom::Vec3& centre, const UnitsShown& units) {
  std::string text;
  for (const double mm : {centre.x(), centre.y(), centre.z()}) {
    const double shown = std::abs(mm) < 0.5 ? 0.0 : mm;
    text += (text.empty() ? "" : ", ") + units.length(shown);
  }
  return text;
}

std::string minutes_text(double seconds) {
  return base::fixed_text(seconds / 60.0, 0) + " min";
}

/// "visual-test VT1, away: 30 min, 2 people; note".
std::string away_text(const plan::PlannedOperation& operation) {
  const std::string people =
      base::counted(static_cast<std::size_t>(operation.people), "person", "people");
  return std::string(joint::operation_name(operation.kind)) + " " + operation.id + ": " +
         minutes_text(operation.time_s) + ", " + people +
         (operation.note.empty() ? "" : "; " + operation.note);
}

/// Of a stage's members on tacks the one nearest to its limit, and all beyond it.
std::vector<const plan::CarriedMember*> worst_carried(const plan::Plan& plan,
                                                      const std::string& stage) {
  std::vector<const plan::CarriedMember*> shown;
  const plan::CarriedMember* worst = nullptr;
  for (const plan::CarriedMember& carried : plan.carried) {
    if (carried.stage != stage) continue;
    if (!carried.carry || carried.carry->utilisation_ratio > 1.0) {
      shown.push_back(&carried);
    } else if (worst == nullptr ||
               carried.carry->utilisation_ratio > worst->carry->utilisation_ratio) {
      worst = &carried;
    }
  }
  if (worst != nullptr) shown.push_back(worst);
  return shown;
}

std::string permitted_status(const plan::Plan& plan) {
  for (const plan::CarriedMember& carried : plan.carried) {
    if (carried.carry) return std::string(base::status_name(carried.carry->permitted.status));
  }
  return "not known";
}

std::string carried_text(const plan::Plan& plan, const UnitsShown& units) {
  if (plan.carried.empty()) return "";
  Table table({{"on tacks", "", Align::left},
               {"worst member", "", Align::left},
               {"weight on them", units.mass_unit()},
               {"tacks", ""},
               {"stress", "MPa"},
               {"permitted", "MPa"},
               {"worst attitude", "", Align::left}});
  for (const plan::PlannedStage& stage : plan.stages) {
    for (const plan::CarriedMember* carried : worst_carried(plan, stage.id)) {
      const bool judged = carried->carry.has_value();
      table.add_row({stage.id.empty() ? "the part" : stage.id,
                     carried->welded.empty()
                         ? carried->member
                         : carried->member + " and " + std::to_string(carried->welded.size()) +
                               " welded to it",
                     units.weight(carried->mass_kg),
                     std::to_string(carried->tacks),
                     judged ? base::fixed_text(carried->carry->stress_mpa, 1) : "-",
                     judged ? base::fixed_text(carried->carry->permitted.stress_mpa, 0) : "-",
                     !judged                                   ? "not judged"
                     : carried->carry->utilisation_ratio > 1.0 ? carried->attitude + ": NOT ENOUGH"
                                                               : carried->attitude});
    }
  }
  const bool shared = std::any_of(plan.carried.begin(),
                                  plan.carried.end(),
                                  [](const plan::CarriedMember& one) { return one.shared; });
  return table.text() +
         wrapped("Site factor " + base::fixed_text(plan.carried.front().site_factor, 1) +
                     " on the weight, as if nothing of the stage were welded; held is what the "
                     "set-up clamps, or what lies lowest on it. " +
                     (shared ? "What hangs on several members counts whole on each: on the safe "
                               "side. "
                             : "") +
                     "A simple rule, permitted stress " + permitted_status(plan) +
                     ", never a release: hold before the first turn until every tack is looked "
                     "at. Preheating for tacks counts within the time of the fit.",
                 line_width,
                 0) +
         "\n\n";
}

std::string hangs_text(const plan::Plan& plan, const UnitsShown& units) {
  std::string out;
  for (const plan::PlannedHang& planned : plan.hangs) {
    std::string text = units.weight(planned.mass_kg) + " " + units.mass_unit() + " on " +
                       base::counted(planned.points.size(), "sling") + ", ";
    if (planned.hang) {
      text += "hangs " + base::fixed_text(planned.hang->lean.deg(), 1) + " deg askew";
      for (std::size_t i = 0; i < planned.hang->slings.size(); ++i) {
        const turn::SlingLoad& sling = planned.hang->slings[i];
        text += (i == 0 ? "; " : ", ") + planned.points[i] + " carries " +
                base::fixed_text(100.0 * sling.share_ratio, 0) + " % at " +
                base::fixed_text(sling.from_vertical.deg(), 0) + " deg, " +
                base::fixed_text(sling.largest_force_n / 1000.0, 1) + " kN";
      }
    } else {
      text += planned.refused;
    }
    const char* when = planned.off ? ", taken off after stage " : ", hung for stage ";
    const std::string stage = planned.stage.empty() ? "" : when + planned.stage;
    if (planned.turned_over.deg() > 1.0) {
      text += "; turned over by " + base::fixed_text(planned.turned_over.deg(), 0) +
              " deg on the way, which is not judged";
    }
    out += headed("On the hook: ",
                  "lifting " + planned.lifting + stage + ": " + text +
                      ". Lifting gear is not judged here.",
                  line_width) +
           "\n";
  }
  return out.empty() ? out : out + "\n";
}

/// "0.3 to 0.5 mm".
std::string band_text(const shrinkage::Band& band, const UnitsShown& units) {
  return units.warp(band.low) + " to " + units.warp(band.high) + " " + units.length_unit();
}

/// What rounds to nothing has no direction to be told.
std::string bow_text(const shrinkage::DirectionBand& band, const UnitsShown& units) {
  const std::string none = units.warp(0.0);
  const std::string worst = units.warp(band.worst_on_the_way_mm.high);
  if (units.warp(band.bow_mm.low) == none && units.warp(band.bow_mm.high) == none &&
      worst == none) {
    return "stays flat within " + units.least_warp() + " " + units.length_unit();
  }
  return "bows " + band_text(band.bow_mm, units) + " (" +
         std::string(shrinkage::bend_name(band.bend)) + ", on the way up to " + worst + ")";
}

std::string limits_text(const plan::PlannedDatum& planned, const UnitsShown& units) {
  std::string text;
  if (planned.flatness) {
    text += "class permits " + units.size(planned.flatness->mm) + " " + units.length_unit() +
            " as welded (" + std::string(base::status_name(planned.flatness->citation.status)) +
            ")";
  }
  if (planned.allowance_mm) {
    text += (text.empty() ? "" : ", ") + units.size(*planned.allowance_mm) + " " +
            units.length_unit() + " are left to machine";
  }
  return text.empty() ? "no limit stated" : text;
}

std::string face_text(const shrinkage::FaceBand& face, const UnitsShown& units) {
  std::string text;
  const auto direction = [&](const char* name, const shrinkage::DirectionBand& band) {
    text += std::string(name) + " " + bow_text(band, units) + ", shortens " +
            band_text(band.along_mm, units) + " along and " + band_text(band.across_mm, units) +
            " across; ";
  };
  direction("first direction", face.u);
  direction("second", face.v);
  double lift_mm = 0.0;
  for (const auto& tilt : face.tilts) lift_mm = std::max(lift_mm, tilt.lift_mm.high);
  if (!face.tilts.empty()) {
    text += "one weld lifts its plate's edge by 0 to " + units.warp(lift_mm) + " " +
            units.length_unit() + "; ";
  }
  return text;
}

std::string datums_text(const plan::Plan& plan, const UnitsShown& units) {
  std::string out;
  for (const plan::PlannedDatum& planned : plan.datums) {
    std::string text;
    if (planned.face) text += face_text(*planned.face, units);
    if (planned.closing_mm) text += "closes by " + band_text(*planned.closing_mm, units) + "; ";
    if (!planned.face && !planned.closing_mm) text += "no rule here speaks of it; ";
    text += limits_text(planned, units);
    if (!planned.bent_by.empty()) text += "; most by " + base::listed(planned.bent_by);
    out += headed("Datum " + planned.id + ": ", text + ".", line_width) + "\n";
  }
  if (out.empty()) return out;
  return out +
         wrapped(
             "Bands between rules that disagree, most of them from memory. Never a release: "
             "measure "
             "after welding.",
             line_width,
             0) +
         "\n\n";
}

}  // namespace

std::string stages_text(const plan::Plan& plan, const UnitsShown& units) {
  if (plan.stages.empty() || plan.stages.front().id.empty()) return "";
  Table table({{"stage", "", Align::left},
               {"set-up", "", Align::left},
               {"part", units.mass_unit()},
               {"its centre x, y, z", units.length_unit(), Align::left},
               {"on table", units.mass_unit()},
               {"re-hang", "min"},
               {"people in", ""},
               {"cycle", "h:min:s"}});
  for (const plan::PlannedStage& stage : plan.stages) {
    const auto entries = std::count_if(
        plan.operations.begin(), plan.operations.end(), [&](const plan::PlannedOperation& op) {
          return op.stage == stage.id && op.start_s;
        });
    const bool in_cell = stage.start_s.has_value();
    table.add_row({stage.id,
                   stage.setup.empty() ? "away" : stage.setup,
                   units.weight(stage.part.mass_kg),
                   centre_text(stage.part.centre, units),
                   in_cell ? units.weight(stage.load.mass_kg) : "",
                   stage.rehang_s > 0.0 ? base::fixed_text(stage.rehang_s / 60.0, 0) : "",
                   in_cell ? std::to_string(entries) : "",
                   in_cell ? clock_text(stage.end_s - *stage.start_s) : ""});
  }
  return table.text() + "\n";
}

std::string build_text(const plan::Plan& plan, const UnitsShown& units) {
  return carried_text(plan, units) + hangs_text(plan, units) + datums_text(plan, units);
}

std::string stage_heading(const plan::Plan& plan, const plan::PlannedStage& stage) {
  if (stage.id.empty()) return "";
  std::string text = "stage " + stage.id;
  text += stage.setup.empty() ? ", away from the cell" : ", set-up " + stage.setup;
  if (!stage.fitted.empty()) text += ": fits " + base::listed(stage.fitted);
  std::string out = headed("", text, line_width) + "\n";
  for (const plan::ClosedOff& closed : stage.closes) {
    const std::string note =
        closed.member + " closes off " + base::listed(closed.seams) + ", welded before";
    out += headed("  ", note, line_width) + "\n";
  }
  if (!stage.setup.empty()) return out;
  for (const plan::PlannedOperation& operation : plan.operations) {
    if (operation.stage == stage.id) {
      out += headed("          away  ", away_text(operation), line_width) + "\n";
    }
  }
  return out;
}

}  // namespace seamturn::cli
