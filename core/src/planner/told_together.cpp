// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "detail_joints.hpp"

namespace seamturn::planner::detail {

namespace {

/// "joint J1: its text" in two.
struct OfJoint {
  std::string_view joint, text;
};

OfJoint split_of_joint(std::string_view text) {
  constexpr std::string_view one = "joint ", more = "joints ";
  const std::size_t colon = text.find(": ");
  if (colon == std::string_view::npos) return {};
  for (const std::string_view head : {one, more}) {
    if (!text.starts_with(head) || colon < head.size()) continue;
    return {text.substr(head.size(), colon - head.size()), text.substr(colon + 2)};
  }
  return {};
}

}  // namespace

std::vector<base::Finding> told_together(std::vector<base::Finding> findings) {
  std::vector<base::Finding> told;
  for (base::Finding& finding : findings) {
    if (!finding.code.ends_with(".out_of_range")) {
      told.push_back(std::move(finding));
      continue;
    }
    const OfJoint parts = split_of_joint(finding.text);
    const auto alike = std::find_if(told.begin(), told.end(), [&](const base::Finding& before) {
      return !parts.joint.empty() && before.code == finding.code &&
             before.severity == finding.severity && split_of_joint(before.text).text == parts.text;
    });
    if (alike == told.end()) {
      told.push_back(std::move(finding));
      continue;
    }
    const OfJoint before = split_of_joint(alike->text);
    alike->text = "joints " + std::string(before.joint) + ", " + std::string(parts.joint) + ": " +
                  std::string(parts.text);
  }
  return told;
}

}  // namespace seamturn::planner::detail
