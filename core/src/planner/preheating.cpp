// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_preheating.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::planner::detail {

namespace {

/// Heat that brings the strip on every path, through its thickness, to where heating ends.
double strip_heat_j(const Inputs& inputs, const JointWork& work, const joint::Seam& seam) {
  const double rise_k =
      work.heat.preheat_c + cooling::heated_above_preheat_k - inputs.weldment.ambient_c;
  double across_mm2 = 0.0;
  for (const heat::HeatPath& path : work.heat.paths) {
    across_mm2 += path.average_mm * work.heat.zone_width_mm;
  }
  return across_mm2 * seam.length_mm * cooling::heat_capacity_j_mm3_k * rise_k;
}

/// Strips overlap: all together never take more than the whole part.
double part_heat_j(const Inputs& inputs, double part_kg, const std::vector<SeamRef>& seams) {
  double warmest_c = inputs.weldment.ambient_c;
  for (const SeamRef& seam : seams) warmest_c = std::max(warmest_c, seam.joint->heat.preheat_c);
  const double volume_mm3 = part_kg / process::steel_density_kg_mm3;
  return volume_mm3 * cooling::heat_capacity_j_mm3_k *
         (warmest_c + cooling::heated_above_preheat_k - inputs.weldment.ambient_c);
}

}  // namespace

cooling::WarmStrip warm_strip(const Inputs& inputs, const JointWork& work) {
  cooling::WarmStrip strip;
  strip.thickness_mm = thinner_mm(work);
  strip.half_width_mm = work.heat.zone_width_mm;
  strip.ambient_c = inputs.weldment.ambient_c;
  strip.preheat_c = work.heat.preheat_c;
  return strip;
}

double heating_time_s(const Inputs& inputs, const JointWork& work, const joint::Seam& seam) {
  if (!work.heat.needs_heating || !inputs.library.heating) return 0.0;
  return process::heating_time_s(
      *inputs.library.heating, strip_heat_j(inputs, work, seam), work.heat.soak_s);
}

double heating_time_at_once_s(const Inputs& inputs,
                              double part_kg,
                              const std::vector<SeamRef>& seams) {
  double heat_j = 0.0;
  double soak_s = 0.0;
  for (const SeamRef& seam : seams) {
    if (!seam.joint->heat.needs_heating) continue;
    heat_j += strip_heat_j(inputs, *seam.joint, *seam.work->seam);
    soak_s = std::max(soak_s, seam.joint->heat.soak_s);
  }
  if (heat_j <= 0.0 || !inputs.library.heating) return 0.0;
  heat_j = std::min(heat_j, part_heat_j(inputs, part_kg, seams));
  return process::heating_time_s(*inputs.library.heating, heat_j, soak_s);
}

cooling::Keep keep_after_heating(const Inputs& inputs, const JointWork& work) {
  return cooling::keep_after_heating(warm_strip(inputs, work));
}

cooling::Keep keep_after_pass(const Inputs& inputs,
                              const JointWork& work,
                              double heat_input_kj_mm) {
  cooling::CoolingPlate plate = cooling_plate(inputs, work);
  plate.thickness_mm = thicker_mm(work);
  return cooling::keep_after_pass(warm_strip(inputs, work), plate, heat_input_kj_mm);
}

}  // namespace seamturn::planner::detail
