// SPDX-License-Identifier: MIT
// How warm each place is when its passes start, as the clock has it. For clock and price: the floor
// measures.
#include <algorithm>

#include "detail_assemble.hpp"
#include "detail_preheating.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

/// Passes over one place in the order of the clock.
std::vector<plan::PlannedPass*> in_order(const std::vector<plan::PlannedSeam*>& seams) {
  std::vector<plan::PlannedPass*> passes;
  for (plan::PlannedSeam* seam : seams) {
    for (plan::PlannedPass& pass : seam->passes) {
      if (pass.start_s) passes.push_back(&pass);
    }
  }
  std::stable_sort(passes.begin(), passes.end(), [](const auto* a, const auto* b) {
    return *a->start_s < *b->start_s;
  });
  return passes;
}

void set_temperatures(const cooling::CoolingPlate& plate,
                      const std::vector<plan::PlannedPass*>& passes) {
  const double plate_c = std::max(plate.start_c, plate.ambient_c);
  for (std::size_t k = 0; k < passes.size(); ++k) {
    double tail_k = 0.0;
    double lump_k = 0.0;
    for (std::size_t j = 0; j < k; ++j) {
      const double since_s = *passes[k]->start_s - *passes[j]->start_s;
      const double heat_kj_mm = passes[j]->pass.heat_input_kj_mm;
      tail_k += cooling::tail_rise_k(plate, heat_kj_mm, since_s);
      lump_k += cooling::lump_rise_k(plate, heat_kj_mm, since_s);
    }
    passes[k]->start_low_c = plate_c + std::min(tail_k, lump_k);
    passes[k]->start_high_c = plate_c + std::max(tail_k, lump_k);
  }
}

}  // namespace

void assemble_start_temperatures(const Inputs& inputs,
                                 const std::vector<JointWork>& joints,
                                 plan::Plan& plan) {
  SEAMTURN_REQUIRE(joints.size() == plan.joints.size(), joints.size());
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const cooling::CoolingPlate plate = cooling_plate(inputs, joints[i]);
    std::vector<plan::PlannedSeam>& seams = plan.joints[i].seams;
    const std::vector<joint::Seam>& described = joints[i].joint->seams;
    for (std::size_t s = 0; s < seams.size(); ++s) {
      const bool one_place = s + 1 < seams.size() && seams[s].side != seams[s + 1].side &&
                             joint::lie_beside(described[s], described[s + 1]);
      if (one_place) {
        set_temperatures(plate, in_order({&seams[s], &seams[s + 1]}));
        ++s;
      } else {
        set_temperatures(plate, in_order({&seams[s]}));
      }
    }
  }
}

}  // namespace seamturn::planner::detail
