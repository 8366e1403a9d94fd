// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_assemble.hpp"
#include "detail_heat.hpp"
#include "detail_stances.hpp"
#include "detail_starts.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::planner::detail {

namespace {

/// What is welded of a seam: of a segment, whose layers differ in length, their mean by metal.
double laid_length_mm(const joint::Seam& seam, const pass::PassStack& stack) {
  if (!seam.segment) return joint::welded_length_mm(seam);
  double volume_mm3 = 0.0;
  double area_mm2 = 0.0;
  for (const pass::Pass& pass : stack.passes) {
    volume_mm3 += pass.area_mm2 * joint::layer_length_mm(seam, pass.layer);
    area_mm2 += pass.area_mm2;
  }
  return volume_mm3 / area_mm2;
}

/// Weld metal of a seam. Legs of a polyline count by their length on the seam's line: what the
/// section's offset adds outside a corner and saves inside one is left out.
double metal_kg(const JointWork& work, const SeamWork& seam_work, double length_mm) {
  const SeamRef ref{&work, &seam_work};
  const double length_share = section_share(ref, section::centroid(seam_work.section));
  return seam_work.section.area_mm2 * length_share * length_mm * process::steel_density_kg_mm3;
}

class JointAssembler {
 public:
  JointAssembler(const Inputs& inputs, const JointWork& work, plan::Plan& plan)
      : inputs_(inputs), work_(work), plan_(plan) {}

  plan::PlannedSeam seam(const SeamWork& seam, const std::vector<Placement>& placements) {
    plan::PlannedSeam planned;
    planned.id = seam.seam->id;
    planned.joint = work_.joint->id;
    planned.drawn = joint::drawn_id(*seam.seam);
    planned.length_mm = seam.seam->length_mm;
    planned.arc_starts = static_cast<int>(joint::stretches_of(*seam.seam).size());
    planned.side = seam.seam->side;
    planned.section = seam.section;
    const std::size_t chosen =
        placements.empty() ? 0 : static_cast<std::size_t>(placements.front().stack);
    planned.stack = seam.stacks[chosen].stack;
    planned.welded_mm = laid_length_mm(*seam.seam, planned.stack);
    planned.metal_kg = metal_kg(work_, seam, planned.welded_mm);
    planned.position = seam.stacks[chosen].position;
    planned.rolling = !placements.empty() && placements.front().rolling;
    const Gaps& gaps = seam.stacks[chosen].gaps;
    for (std::size_t k = 0; k < planned.stack.passes.size(); ++k) {
      const pass::Pass& pass = planned.stack.passes[k];
      plan::PlannedPass out;
      out.pass = pass;
      out.gap_short_s = gaps.shorter_s[k];
      out.gap_long_s = gaps.longer_s[k];
      set_cooling_times(pass, out);
      planned.passes.push_back(std::move(out));
    }
    base::append_findings(plan_.findings, planned.stack.findings);
    set_starts(*seam.seam, planned);
    return planned;
  }

 private:
  void set_starts(const joint::Seam& seam, plan::PlannedSeam& planned) {
    joint::StartStopMap starts = layer_starts(seam, planned.stack);
    planned.starts = std::move(starts.layers);
    for (base::Finding& finding : starts.findings) {
      finding.text = "seam " + seam.id + ": " + finding.text;
      finding.place = place_of(inputs_.weldment, "joint/" + work_.joint->id);
      plan_.findings.push_back(std::move(finding));
    }
  }

  /// Shortest where the thicker part takes the heat, longest where the thinner does. A start too
  /// hot has none; heat limits told it.
  void set_cooling_times(const pass::Pass& pass, plan::PlannedPass& out) {
    const double q = pass.heat_input_kj_mm;
    const heat::CoolingCase weld = work_.cooling_case;
    const auto brief = heat::cooling_time({weld, q, thicker_mm(work_), work_.heat.preheat_c});
    const auto slow = heat::cooling_time({weld, q, thinner_mm(work_), work_.heat.interpass_max_c});
    if (brief) out.t85_s = brief->t85_s;
    if (slow) out.t85_long_s = std::max(slow->t85_s, slow->t85_2d_long_s);
  }

  const Inputs& inputs_;
  const JointWork& work_;
  plan::Plan& plan_;
};

}  // namespace

void assemble_joints(const Inputs& inputs,
                     const std::vector<JointWork>& joints,
                     const std::vector<std::vector<Placement>>& placements,
                     plan::Plan& plan) {
  std::size_t index = 0;
  for (const JointWork& work : joints) {
    plan::PlannedJoint planned;
    planned.id = work.joint->id;
    planned.heat = work.heat;
    planned.steel_1 = work.member_1->steel;
    planned.steel_2 = work.member_2->steel;
    JointAssembler assembler(inputs, work, plan);
    for (const SeamWork& seam : work.seams) {
      const std::vector<Placement> none;
      const auto& own = index < placements.size() ? placements[index] : none;
      planned.seams.push_back(assembler.seam(seam, own));
      if (own.empty()) plan.not_turned.push_back(seam.seam->id);
      ++index;
      const plan::PlannedSeam& done = planned.seams.back();
      plan.totals.length_mm += done.length_mm;
      plan.totals.welded_mm += done.welded_mm;
      plan.totals.metal_kg += done.metal_kg;
      plan.totals.arc_time_s += done.stack.arc_time_s;
    }
    plan.totals.passes += plan::pass_count(planned);
    plan.joints.push_back(std::move(planned));
  }
}

plan::PlannedSeam& planned_seam(plan::Plan& plan, const std::string& id) {
  for (plan::PlannedJoint& joint : plan.joints) {
    for (plan::PlannedSeam& seam : joint.seams) {
      if (seam.id == id) return seam;
    }
  }
  SEAMTURN_REQUIRE(false, id);
  return plan.joints.front().seams.front();
}

}  // namespace seamturn::planner::detail
