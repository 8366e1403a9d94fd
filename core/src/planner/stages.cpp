// SPDX-License-Identifier: MIT
#include <algorithm>
#include <map>

#include "detail_stages.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

/// Index of the stage that fits each member; the first when none or the file has no stages.
std::map<std::string_view, std::size_t> fitted_in(const joint::Weldment& weldment) {
  std::map<std::string_view, std::size_t> stage_of;
  for (std::size_t k = 0; k < weldment.stages.size(); ++k) {
    for (const joint::Operation& operation : weldment.stages[k].operations) {
      if (operation.kind != joint::OperationKind::fit) continue;
      for (const std::string& member : operation.members) stage_of.emplace(member, k);
    }
  }
  return stage_of;
}

void set_weights(StageWork& stage) {
  std::vector<joint::Member> members;
  for (const joint::Member* member : stage.present) members.push_back(*member);
  stage.part_J = joint::total_weight(members);
  if (stage.setup == nullptr) return;
  joint::Weight part_D = stage.part_J;
  part_D.centre = stage.setup->X_DJ.point(part_D.centre);
  const joint::SetupWeight fixture = joint::fixture_weight(*stage.setup);
  stage.load_D = turn::combined_weight(part_D, joint::Weight{fixture.mass_kg, fixture.centre});
}

std::size_t stage_of_joint(const joint::Weldment& weldment,
                           const joint::Joint& joint,
                           const std::map<std::string_view, std::size_t>& stage_of) {
  const auto& stages = weldment.stages;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    if (!joint.stage.empty() && stages[k].id == joint.stage) return k;
  }
  std::size_t first = 0;
  for (const std::string& member : {joint.member_1, joint.member_2}) {
    const auto found = stage_of.find(member);
    if (found != stage_of.end()) first = std::max(first, found->second);
  }
  // What is fitted away from the cell is welded in the next stage that is not.
  while (first + 1 < stages.size() && stages[first].setup.empty()) ++first;
  return first;
}

/// Nothing is turned before somebody has looked at the tacks.
std::vector<joint::Operation> with_hold(const joint::Stage& stage) {
  std::vector<joint::Operation> operations = stage.operations;
  const auto after_fits =
      std::find_if(operations.rbegin(), operations.rend(), [](const joint::Operation& operation) {
        return operation.kind == joint::OperationKind::fit;
      });
  if (after_fits == operations.rend()) return operations;
  joint::Operation hold;
  hold.id = "tacks " + stage.id;
  hold.kind = joint::OperationKind::hold;
  hold.place = joint::OperationPlace::start;
  hold.level = true;
  hold.members = joint::fitted_members(stage);
  hold.note = "every tack looked at, none cracked; signed before the first turn";
  operations.insert(after_fits.base(), std::move(hold));
  return operations;
}

std::vector<StageWork> without_stages(const Inputs& inputs, std::vector<Finding>& findings) {
  const joint::Weldment& weldment = inputs.weldment;
  StageWork all;
  if (!weldment.setups.empty()) all.setup = &weldment.setups.front();
  for (const joint::Member& member : weldment.members) all.present.push_back(&member);
  for (const joint::Joint& joint : weldment.joints) all.joints.insert(joint.id);
  set_weights(all);
  if (weldment.setups.size() > 1) {
    findings.push_back(Finding{Severity::error,
                               "stage.setup.unused",
                               "the file states " + std::to_string(weldment.setups.size()) +
                                   " set-ups and no stage says which is used when; add <stage "
                                   "id=\"...\" setup=\"" +
                                   weldment.setups.front().id + "\"> with <fit .../>",
                               place_of(weldment, "setup/" + weldment.setups[1].id),
                               {}});
  }
  return {all};
}

}  // namespace

bool StageWork::has(std::string_view member) const {
  return std::any_of(
      present.begin(), present.end(), [&](const joint::Member* m) { return m->id == member; });
}

std::string StageWork::name() const {
  return stage == nullptr ? "the part" : "stage " + stage->id;
}

std::vector<StageWork> work_stages(const Inputs& inputs, std::vector<Finding>& findings) {
  const joint::Weldment& weldment = inputs.weldment;
  if (weldment.stages.empty()) return without_stages(inputs, findings);
  const auto stage_of = fitted_in(weldment);
  std::vector<StageWork> stages(weldment.stages.size());
  const joint::Setup* hangs_in = nullptr;
  bool has_hung = false;  // the first hang is the cell's loading, wherever the build began
  for (std::size_t k = 0; k < stages.size(); ++k) {
    StageWork& work = stages[k];
    work.stage = &weldment.stages[k];
    work.operations = weldment.tacking ? with_hold(*work.stage) : work.stage->operations;
    work.setup = joint::find_setup(weldment, work.stage->setup);
    work.rehangs = has_hung && work.setup != nullptr && work.setup != hangs_in;
    hangs_in = work.setup;
    has_hung = has_hung || work.setup != nullptr;
    for (const joint::Member& member : weldment.members) {
      const auto found = stage_of.find(member.id);
      if (found != stage_of.end() && found->second <= k) work.present.push_back(&member);
    }
    set_weights(work);
  }
  for (const joint::Joint& joint : weldment.joints) {
    stages[stage_of_joint(weldment, joint, stage_of)].joints.insert(joint.id);
  }
  return stages;
}

}  // namespace seamturn::planner::detail
