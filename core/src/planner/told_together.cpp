// SPDX-License-Identifier: MIT
#include <algorithm>
#include <utility>

#include "detail_joints.hpp"

namespace seamturn::planner::detail {

namespace {

bool is_of_range(const base::Finding& finding) {
  return finding.code.ends_with(".out_of_range") && !finding.joints.ids.empty();
}

bool say_the_same(const base::Finding& a, const base::Finding& b) {
  return a.code == b.code && a.severity == b.severity &&
         base::said_without_joints(a) == base::said_without_joints(b);
}

}  // namespace

std::vector<base::Finding> told_together(std::vector<base::Finding> findings) {
  std::vector<base::Finding> told;
  for (base::Finding& finding : findings) {
    const auto alike = std::find_if(told.begin(), told.end(), [&](const base::Finding& before) {
      return is_of_range(finding) && is_of_range(before) && say_the_same(before, finding);
    });
    if (alike == told.end()) {
      told.push_back(std::move(finding));
      continue;
    }
    std::vector<std::string> ids = alike->joints.ids;
    ids.insert(ids.end(), finding.joints.ids.begin(), finding.joints.ids.end());
    *alike = base::said_of_joints(std::move(*alike), std::move(ids));
  }
  return told;
}

}  // namespace seamturn::planner::detail
