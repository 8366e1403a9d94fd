// SPDX-License-Identifier: MIT
#include <algorithm>

#include "pass/detail_rules.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::pass {
namespace {

using base::rounding_ratio;

void keep_margin(Caps& caps, double margin_ratio) {
  for (Bound* bound : {&caps.leg_mm, &caps.area_mm2, &caps.thickness_mm, &caps.split_mm}) {
    bound->value *= 1.0 - margin_ratio;
  }
}

}  // namespace

base::Outcome<StackRules> StackRules::make(const StackRulesRequest& request) {
  SEAMTURN_REQUIRE(request.wire != nullptr, "request without wire");
  SEAMTURN_REQUIRE(request.margin_ratio >= 0.0 && request.margin_ratio < 0.5, request.margin_ratio);
  SEAMTURN_REQUIRE(request.aim == StackAim::preferred_point || request.margin_ratio > 0.0,
                   request.margin_ratio);
  auto rows = RowTable::make(request);
  if (!rows) {
    return rows.error();
  }
  using process::PassRole;
  auto rules = std::make_shared<Rules>();
  rules->request = request;
  rules->rows = std::move(rows).value();
  for (const PassRole role : {PassRole::root, PassRole::fill, PassRole::cap, PassRole::single}) {
    Caps& caps = rules->caps[static_cast<std::size_t>(role)];
    caps = find_caps(request.limits, {request.family, request.position, role});
    keep_margin(caps, request.margin_ratio);
  }
  return StackRules(std::move(rules));
}

bool is_better(const Score& score, const Score& than, bool by_time) {
  if (by_time && score.arc_s_mm < than.arc_s_mm * (1.0 - rounding_ratio)) {
    return true;
  }
  if (by_time && score.arc_s_mm > than.arc_s_mm * (1.0 + rounding_ratio)) {
    return false;
  }
  return score.passes < than.passes ||
         (score.passes == than.passes && score.departure < than.departure);
}

}  // namespace seamturn::pass
