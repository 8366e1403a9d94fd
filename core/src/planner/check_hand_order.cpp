// SPDX-License-Identifier: MIT
// Orders by hand and stated twins against the stages of the build.
#include "detail_stages.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

void check_hand_orders(const Inputs& inputs,
                       const std::vector<StageWork>& stages,
                       std::vector<Finding>& findings) {
  const joint::Weldment& weldment = inputs.weldment;
  for (std::size_t i = 0; i < weldment.hand_orders.size(); ++i) {
    const joint::HandOrder& order = weldment.hand_orders[i];
    for (const joint::HandEntry& entry : order.entries) {
      const joint::Joint* joint = joint::find_joint(weldment, entry.joint);
      if (joint == nullptr || order.stage.empty()) continue;
      const StageWork& welded_in = stages[stage_index(stages, *joint)];
      if (welded_in.stage == nullptr || welded_in.stage->id == order.stage) continue;
      findings.push_back(Finding{Severity::error,
                                 "stage.hand_order.elsewhere",
                                 "the order by hand of stage " + order.stage + " names " +
                                     entry.text + ", which is welded in " + welded_in.name() +
                                     "; name it in an order of that stage, or take it away",
                                 place_of(weldment, "hand-order/" + std::to_string(i) + "@seams"),
                                 {}});
    }
  }
}

void check_twins(const Inputs& inputs,
                 const std::vector<StageWork>& stages,
                 std::vector<Finding>& findings) {
  for (const joint::Joint& joint : inputs.weldment.joints) {
    if (joint.balance_with.empty()) continue;
    const joint::Joint* other = joint::find_joint(inputs.weldment, joint.balance_with);
    if (other == nullptr) continue;
    const std::size_t own = stage_index(stages, joint);
    const std::size_t others = stage_index(stages, *other);
    if (own == others) continue;
    findings.push_back(Finding{Severity::error,
                               "stage.balance.elsewhere",
                               "joint " + joint.id + " of " + stages[own].name() +
                                   " is to keep step with joint " + other->id +
                                   ", which is welded in " + stages[others].name() +
                                   "; weld both in one stage, or take the <balance> away",
                               place_of(inputs.weldment, "balance/" + joint.id + "@with"),
                               {}});
  }
}

}  // namespace

void check_order(const Inputs& inputs,
                 const std::vector<StageWork>& stages,
                 std::vector<Finding>& findings) {
  check_hand_orders(inputs, stages, findings);
  check_twins(inputs, stages, findings);
}

}  // namespace seamturn::planner::detail
