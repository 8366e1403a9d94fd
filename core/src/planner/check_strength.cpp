// SPDX-License-Identifier: MIT
// Wires weaker than what they join.
#include <algorithm>
#include <map>

#include "detail_assemble.hpp"
#include "detail_joints.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/process/wire_strength.hpp"

namespace seamturn::planner::detail {

namespace {

/// Of the weaker member; nothing where a standard states none.
std::optional<double> weaker_yield_mpa(const JointWork& work) {
  const auto first = stated_yield_mpa(*work.steel_1, *work.member_1);
  const auto second = stated_yield_mpa(*work.steel_2, *work.member_2);
  if (!first || !second) return std::nullopt;
  return std::min(*first, *second);
}

}  // namespace

void check_strength(const Inputs& inputs, const std::vector<JointWork>& joints, plan::Plan& plan) {
  // One finding a wire and kind of weld: most joints of a part share both.
  std::map<std::pair<std::string, bool>, std::vector<std::string>> weak;
  for (const JointWork& work : joints) {
    const auto promised_mpa = process::designated_yield_mpa(work.wire->designation);
    const auto plate_mpa = weaker_yield_mpa(work);
    if (!promised_mpa || !plate_mpa || *promised_mpa >= *plate_mpa) continue;
    const bool is_groove = std::holds_alternative<joint::Groove>(work.joint->preparation);
    weak[{work.wire->id, is_groove}].push_back(work.joint->id + " (" +
                                               base::fixed_text(*plate_mpa, 0) + " MPa)");
  }
  for (const auto& [key, list] : weak) {
    const auto& [wire, is_groove] = key;
    plan.findings.push_back(base::Finding{
        is_groove ? base::Severity::warning : base::Severity::note,
        "plan.wire.undermatch",
        "wire " + wire +
            " promises less yield, by the symbol of its designation, than the weaker part of " +
            base::listed(list) + ": an undermatching weld, which only the design can allow" +
            (is_groove ? "; take a stronger wire, or have it allowed"
                       : "; in fillets and plugs it often does (common practice), sized to suit"),
        place_of(inputs.weldment, "weldment"),
        {}});
  }
}

}  // namespace seamturn::planner::detail
