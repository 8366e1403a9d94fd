// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <map>

#include "detail_stages.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/joint/bounds.hpp"
#include "seamturn/joint/inside.hpp"
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

/// Nothing is turned before somebody has looked at the tacks: after the fits of one stance, and
/// where the file goes on with another one.
std::vector<joint::Operation> with_holds(const joint::Stage& stage) {
  std::vector<joint::Operation> all;
  std::vector<std::string> fitted;
  int holds = 0;
  for (std::size_t i = 0; i < stage.operations.size(); ++i) {
    const joint::Operation& operation = stage.operations[i];
    all.push_back(operation);
    if (operation.kind != joint::OperationKind::fit) continue;
    fitted.insert(fitted.end(), operation.members.begin(), operation.members.end());
    const bool last = i + 1 == stage.operations.size();
    const bool goes_on = !last && operation.level && stage.operations[i + 1].level &&
                         stage.operations[i + 1].kind == joint::OperationKind::fit;
    if (goes_on) continue;
    joint::Operation hold;
    hold.id = "tacks " + stage.id + (++holds > 1 ? " " + std::to_string(holds) : "");
    hold.kind = joint::OperationKind::hold;
    hold.place = joint::OperationPlace::start;
    hold.level = operation.level;
    hold.axes = operation.axes;
    hold.members = std::move(fitted);
    hold.note = "every tack looked at, none cracked; signed before the next turn";
    all.push_back(std::move(hold));
    fitted.clear();
  }
  return all;
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
    work.operations = with_holds(*work.stage);
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
  for (const joint::Setup& setup : weldment.setups) {
    const bool used = std::any_of(stages.begin(), stages.end(), [&](const StageWork& stage) {
      return stage.setup == &setup;
    });
    if (used) continue;
    findings.push_back(
        Finding{Severity::warning,
                "stage.setup.unused",
                "set-up " + setup.id + " is used by no stage; name it in one, or delete it",
                place_of(weldment, "setup/" + setup.id),
                {}});
  }
  return stages;
}

std::size_t stage_index(const std::vector<StageWork>& stages, const joint::Joint& joint) {
  std::size_t k = 0;
  while (k + 1 < stages.size() && !stages[k].welds(joint)) ++k;
  return k;
}

const joint::Member& held_member(const cell::Positioner& positioner, const StageWork& stage) {
  SEAMTURN_REQUIRE(!stage.present.empty() && stage.setup != nullptr, stage.name());
  for (const joint::Clamp& clamp : stage.setup->clamps) {
    for (const joint::Member* member : stage.present) {
      if (joint::is_inside(*member, clamp.at, clamp.radius_mm)) return *member;
    }
  }
  const geom::Vec3 up_J =
      stage.setup->X_DJ.rotation.transpose() * cell::faceplate_normal_D(positioner.kind);
  const joint::Member* lowest = stage.present.front();
  for (const joint::Member* member : stage.present) {
    constexpr double level_mm = 1e-6;  // of two as low the heavier one
    const double by_mm = joint::lowest_mm(*lowest, up_J) - joint::lowest_mm(*member, up_J);
    const bool heavier = joint::mass_kg(*member) > joint::mass_kg(*lowest);
    if (by_mm > level_mm || (by_mm > -level_mm && heavier)) lowest = member;
  }
  return *lowest;
}

}  // namespace seamturn::planner::detail
