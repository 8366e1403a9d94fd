// SPDX-License-Identifier: MIT
#include <algorithm>
#include <map>

#include "detail_build.hpp"
#include "seamturn/base/listed.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

/// Seams by the member that closes them off.
using ByMember = std::map<std::string, std::vector<std::string>>;

void tell(const Inputs& inputs, const StageWork& stage, const ByMember& late, plan::Plan& plan) {
  const bool states_stages = stage.stage != nullptr;
  for (const auto& [member, seams] : late) {
    const bool bolted = joint::find_member(inputs.weldment, member) == nullptr;
    const std::string what = bolted ? "the " + member : "member " + member;
    plan.findings.push_back(Finding{
        states_stages ? Severity::error : Severity::warning,
        "stage.seam.hidden",
        "when " + stage.name() + (states_stages ? " welds" : " stands complete, no torch reaches") +
            " seams " + base::listed(seams) + (states_stages ? ", no torch reaches them" : "") +
            ": " + what + " closes them off (straight ways only; no robot was tried); " +
            (states_stages
                 ? (bolted ? "hang the part another way"
                           : "fit it in a later stage, or weld them in an earlier one; where "
                             "somebody has proved the reach, say reach=\"proved\" on the joint")
                 : "state stages that fit it later, if it is so"),
        place_of(inputs.weldment, bolted ? "setup/" + stage.setup->id : "member/" + member),
        {}});
  }
}

}  // namespace

void check_hidden(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan) {
  // Seams hidden so far, by the member whose fitting hid them. A solid of a set-up closes nothing
  // off: the next hang may free the seam again.
  std::map<std::string, std::string> closed;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    ByMember late;
    ByMember done;
    for (const HiddenSeam& hidden : find_hidden_seams(inputs, stages[k])) {
      const std::size_t own = stage_index(stages, *hidden.joint);
      const bool by_member = joint::find_member(inputs.weldment, hidden.by) != nullptr;
      const bool is_new = by_member && closed.emplace(hidden.seam->id, hidden.by).second;
      const auto known = closed.find(hidden.seam->id);
      const std::string& by = known == closed.end() ? hidden.by : known->second;
      if (own == k) late[by].push_back(hidden.seam->id);
      if (own < k && is_new) done[by].push_back(hidden.seam->id);
    }
    tell(inputs, stages[k], late, plan);
    if (k >= plan.stages.size()) continue;
    for (const auto& [member, seams] : done) plan.stages[k].closes.push_back({member, seams});
  }
}

}  // namespace seamturn::planner::detail
