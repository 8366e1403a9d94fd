// SPDX-License-Identifier: MIT
// Stages as people read them.
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

std::string list_of(const std::vector<std::string>& ids) {
  std::string list;
  for (const std::string& id : ids) list += (list.empty() ? "" : ", ") + id;
  return list;
}

std::string minutes_text(double seconds) {
  return base::fixed_text(seconds / 60.0, 0) + " min";
}

/// "visual-test VT1, away: 30 min, 2 people; note".
std::string away_text(const plan::PlannedOperation& operation) {
  const std::string people =
      operation.people == 1 ? "1 person" : std::to_string(operation.people) + " people";
  return std::string(joint::operation_name(operation.kind)) + " " + operation.id + ": " +
         minutes_text(operation.time_s) + ", " + people +
         (operation.note.empty() ? "" : "; " + operation.note);
}

}  // namespace

std::string stages_text(const plan::Plan& plan, const UnitsShown& units) {
  if (plan.stages.empty() || plan.stages.front().id.empty()) return "";
  Table table({{"stage", "", Align::left},
               {"set-up", "", Align::left},
               {"part", units.mass_unit()},
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
                   in_cell ? units.weight(stage.load.mass_kg) : "",
                   stage.rehang_s > 0.0 ? base::fixed_text(stage.rehang_s / 60.0, 0) : "",
                   in_cell ? std::to_string(entries) : "",
                   in_cell ? clock_text(stage.end_s - *stage.start_s) : ""});
  }
  return table.text() + "\n";
}

std::string stage_heading(const plan::Plan& plan, const plan::PlannedStage& stage) {
  if (stage.id.empty()) return "";
  std::string text = "stage " + stage.id;
  text += stage.setup.empty() ? ", away from the cell" : ", set-up " + stage.setup;
  if (!stage.fitted.empty()) text += ": fits " + list_of(stage.fitted);
  std::string out = headed("", text, line_width) + "\n";
  for (const plan::ClosedOff& closed : stage.closes) {
    const std::string note =
        closed.member + " closes off " + list_of(closed.seams) + ", welded before";
    out += headed("  ", note, line_width) + "\n";
  }
  if (stage.start_s) return out;
  for (const plan::PlannedOperation& operation : plan.operations) {
    if (operation.stage == stage.id) {
      out += headed("          away  ", away_text(operation), line_width) + "\n";
    }
  }
  return out;
}

}  // namespace seamturn::cli
