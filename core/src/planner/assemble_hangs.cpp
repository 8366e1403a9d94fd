// SPDX-License-Identifier: MIT
// The part on the crane's hook, wherever a stage hangs it.
#include <algorithm>

#include "detail_tacking.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

const joint::Lifting* find_lifting(const joint::Weldment& weldment, const std::string& id) {
  for (const joint::Lifting& lifting : weldment.liftings) {
    if (lifting.id == id) return &lifting;
  }
  return nullptr;
}

/// What the crane holds: the part as it was in the stage before.
const StageWork& lifted(const std::vector<StageWork>& stages, std::size_t k) {
  return k == 0 ? stages[k] : stages[k - 1];
}

}  // namespace

void assemble_hangs(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan) {
  for (std::size_t k = 0; k < stages.size(); ++k) {
    if (stages[k].setup == nullptr || (k > 0 && !stages[k].rehangs)) continue;
    const joint::Setup& setup = *stages[k].setup;
    const joint::Lifting* lifting = find_lifting(inputs.weldment, setup.lifting);
    if (lifting == nullptr) continue;
    const joint::Weight weight = lifted(stages, k).part_J;
    plan::PlannedHang planned;
    planned.stage = plan.stages.at(k).id;
    planned.lifting = lifting->id;
    planned.mass_kg = weight.mass_kg;
    turn::HangParams params;
    params.mass_kg = weight.mass_kg;
    params.centre_of_gravity = weight.centre;
    params.hook = lifting->hook;
    const geom::Vec3 normal_D =
        inputs.cell ? cell::faceplate_normal_D(inputs.cell->positioner.kind) : geom::Vec3::UnitZ();
    // Set down on a table at rest, the part's up is the faceplate's normal; between centres the
    // sky's.
    const bool upright = normal_D.z() > 0.5;
    params.up = upright ? geom::Vec3(setup.X_DJ.rotation.transpose() * normal_D)
                        : geom::Vec3(setup.X_DJ.rotation.transpose() * geom::Vec3::UnitZ());
    constexpr double lean_limit_deg = 5.0;  // common practice
    params.lean_limit = Angle::deg(lean_limit_deg);
    for (const joint::LiftPoint& point : lifting->points) {
      planned.points.push_back(point.id);
      params.lifting_points.push_back(point.at);
    }
    const base::Outcome<turn::Hang> hang = turn::hang(params);
    const auto tell = [&](const std::string& code, const std::string& text) {
      plan.findings.push_back(
          Finding{Severity::warning,
                  code,
                  "lifting " + lifting->id + " for " + stages[k].name() + ": " + text,
                  place_of(inputs.weldment, "lifting/" + lifting->id),
                  {}});
    };
    if (hang) {
      planned.hang = *hang;
      for (const Finding& finding : hang->findings) tell(finding.code, finding.text);
    } else {
      planned.refused = hang.error().text;
      tell(hang.error().code, hang.error().text);
    }
    plan.hangs.push_back(std::move(planned));
  }
}

}  // namespace seamturn::planner::detail
