// SPDX-License-Identifier: MIT
#include "detail_two_sides.hpp"

#include "seamturn/pass/sides.hpp"

namespace seamturn::planner::detail {

std::vector<SidePass> weld_order(const joint::Joint& joint,
                                 const pass::PassStack& side_1,
                                 const pass::PassStack& side_2,
                                 bool is_balanced) {
  const std::vector<double> areas_1_mm2 = pass::layer_areas_mm2(side_1);
  const std::vector<double> areas_2_mm2 = pass::layer_areas_mm2(side_2);
  pass::SidesRequest request;
  request.side_1_mm2 = areas_1_mm2;
  request.side_2_mm2 = areas_2_mm2;
  request.is_gouged = joint.root == joint::RootDecision::gouge;
  request.first_share = joint::first_share_of(joint);
  request.is_balanced = is_balanced;
  std::vector<SidePass> order;
  bool is_gouged_now = false;
  for (const pass::SideStep& step : pass::alternate_sides(request)) {
    if (step.work == pass::SideWork::gouge) {
      is_gouged_now = true;
      continue;
    }
    const std::vector<pass::Pass>& passes = (step.side == 1 ? side_1 : side_2).passes;
    for (std::size_t k = 0; k < passes.size(); ++k) {
      if (passes[k].layer != step.layer) continue;
      order.push_back({step.side, static_cast<int>(k), is_gouged_now});
      is_gouged_now = false;
    }
  }
  return order;
}

}  // namespace seamturn::planner::detail
