// SPDX-License-Identifier: MIT
// How each pass of a joint lies as its stance holds the part.
#include <algorithm>
#include <cmath>

#include "detail_explain.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/plan/lie.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Angle;
using position::Attitude;
using position::WorkingTolerance;

/// Passes of one seam that lie alike in one stance.
struct Run {
  const plan::PlannedSeam* seam = nullptr;
  const plan::PlannedPass* first = nullptr;
  std::vector<int> passes;  ///< numbers, rising
  Attitude lies;
};

bool alike(const Run& run, const plan::PlannedPass& pass, const Attitude& lies) {
  const auto same = [](Angle a, Angle b) { return std::abs((a - b).deg()) < 0.05; };
  return run.first->stance == pass.stance && same(run.lies.slope, lies.slope) &&
         same(run.lies.bank, lies.bank);
}

const joint::Seam* described_as(const joint::Joint& joint, const std::string& id) {
  for (const joint::Seam& seam : joint.seams) {
    if (seam.id == id) return &seam;
  }
  return nullptr;
}

std::vector<Run> runs_of(const Subject& subject, const plan::PlannedSeam& seam) {
  std::vector<Run> runs;
  const joint::Seam* described = described_as(subject.described, seam.id);
  if (described == nullptr) return runs;
  for (const plan::PlannedPass& pass : seam.passes) {
    const auto lies = plan::lie_at_start(subject.plan, subject.described, *described, pass);
    if (!lies) continue;
    auto run = std::find_if(
        runs.begin(), runs.end(), [&](const Run& one) { return alike(one, pass, *lies); });
    if (run == runs.end()) run = runs.insert(run, Run{&seam, &pass, {}, *lies});
    run->passes.push_back(pass.pass.number);
  }
  return runs;
}

/// The bank a PB aims at, by the angle from the face to a plate.
Angle pb_bank(const joint::Seam& seam) {
  return position::pb_bank_near(geom::angle_between(seam.face, seam.wall_1));
}

/// Of the rows for its position and role the one it uses up least.
const WorkingTolerance* row_for(const Subject& subject, const Run& run, Angle level) {
  const WorkingTolerance* best = nullptr;
  for (const WorkingTolerance& row : subject.inputs.library.tolerances) {
    const bool has_role =
        row.roles.empty() ||
        std::find(row.roles.begin(), row.roles.end(), run.first->pass.role) != row.roles.end();
    if (row.position != run.seam->position || !has_role) continue;
    const auto strain = [&](const WorkingTolerance& one) {
      return position::strain_ratio(one, run.lies, level);
    };
    if (best == nullptr || strain(row) < strain(*best)) best = &row;
  }
  return best;
}

/// "pass 2", "passes 1, 4-6".
std::string passes_text(const std::vector<int>& passes) {
  return (passes.size() == 1 ? "pass " : "passes ") + base::listed_runs(passes);
}

/// Off nominal by what the shop lets through. A rolled ring's slope is its lead's affair.
void add_limits(const Subject& subject, const Run& run, Angle level, ExplainStep& step) {
  const WorkingTolerance* row = row_for(subject, run, level);
  if (row == nullptr) return;
  const auto number = row - subject.inputs.library.tolerances.data() + 1;
  const std::string key = "working-tolerance/" + std::to_string(number);
  const Attitude nominal = position::nominal_attitude(run.seam->position, level);
  const double slope_deg = run.lies.slope.deg() - nominal.slope.deg();
  if (!run.seam->rolling) {
    step.how_close.push_back(how_close(
        "slope off nominal",
        slope_deg,
        "deg",
        within({-row->downhill.deg(), row->uphill.deg()}, subject.of_library(key, "uphill"))));
  }
  const double bank_deg = std::abs(run.lies.bank.deg()) - std::abs(nominal.bank.deg());
  step.how_close.push_back(
      how_close("bank off nominal",
                bank_deg,
                "deg",
                within({-row->bank.deg(), row->bank.deg()}, subject.of_library(key, "bank"))));
}

void add_run(const Subject& subject, const Run& run, std::vector<ExplainStep>& steps) {
  const joint::Seam& seam = *described_as(subject.described, run.seam->id);
  const plan::PlannedStance& stance =
      subject.plan.stances.at(static_cast<std::size_t>(run.first->stance));
  ExplainStep step =
      step_of(position::position_card(),
              "position",
              "seam " + seam.id + ", " + passes_text(run.passes) + ", in " + stance.id);
  for (std::size_t i = 0; i < stance.stance.axes.size(); ++i) {
    const bool rolls = run.first->roll_from && i + 1 == stance.stance.axes.size();
    const Angle value = rolls ? *run.first->roll_from : stance.stance.axes[i];
    add(step.inputs,
        stance.axis_names.at(i),
        value.deg(),
        "deg",
        rolls ? "where the pass is struck" : "stance " + stance.id);
  }
  const geom::Mat3 R_WJ = plan::rotation_WJ(subject.plan, *run.first);
  const joint::SectionFrame frame =
      joint::section_frame(subject.described, seam, plan::start_station_mm(seam, *run.first));
  const double sense = run.first->reversed ? -1.0 : 1.0;
  add(step.results, "travel rises by", sense * (R_WJ * frame.tangent).z(), "", "its unit vector");
  add(step.results, "face rises by", (R_WJ * frame.face).z(), "", "normal of the weld face");
  add(step.results, "slope", run.lies.slope.deg(), "deg", "+ uphill in travel");
  add(step.results, "bank", run.lies.bank.deg(), "deg", "from straight up to the face");
  add_word(step.results,
           "position",
           std::string(process::position_name(run.seam->position)),
           run.seam->rolling ? "rolled: the arc stays there" : "where the pass starts");
  add_limits(subject, run, pb_bank(seam), step);
  steps.push_back(std::move(step));
}

}  // namespace

void explain_position(const Subject& subject, std::vector<ExplainStep>& steps) {
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    for (const Run& run : runs_of(subject, seam)) add_run(subject, run, steps);
  }
}

}  // namespace seamturn::figures::detail
