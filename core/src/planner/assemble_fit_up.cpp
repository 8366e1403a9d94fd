// SPDX-License-Identifier: MIT
// Fit-up of every seam in the position it is planned in.
#include <algorithm>

#include "detail_assemble.hpp"
#include "detail_joints.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/imperfection_limits.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

/// What a millimetre of the line drawn is to the metal: longer or shorter on rings.
double length_share(const plan::PlannedSeam& seam, double length_mm) {
  double area_mm2 = 0.0;
  double volume_mm3 = 0.0;
  for (const pass::Pass& pass : seam.stack.passes) {
    area_mm2 += pass.area_mm2;
    volume_mm3 += pass.area_mm2 * pass.travel_mm_s * pass.arc_time_s;
  }
  return volume_mm3 / (area_mm2 * length_mm);
}

plan::FitUpEnd end_of(const fitup::FitUpCase& item,
                      const plan::PlannedSeam& seam,
                      double length_mm) {
  plan::FitUpEnd end;
  end.area_mm2 = item.section.area_mm2;
  end.metal_kg = seam.metal_kg * item.section.area_mm2 / seam.section.area_mm2;
  end.closes = item.stack.has_value();
  end.why = item.why;
  if (!item.stack) return end;
  end.passes = static_cast<int>(item.stack->passes.size());
  end.arc_time_s = item.stack->arc_time_s * length_share(seam, length_mm);
  end.heat_input_min_kj_mm = item.stack->heat_input_min_kj_mm;
  end.heat_input_max_kj_mm = item.stack->heat_input_max_kj_mm;
  return end;
}

class FitUpMaker {
 public:
  FitUpMaker(const Inputs& inputs, const fitup::Tolerances& tolerances, plan::Plan& plan)
      : inputs_(inputs), tolerances_(tolerances), plan_(plan) {}

  void make(const JointWork& work, const SeamWork& seam_work, plan::PlannedSeam& seam) {
    const section::SectionParams drawn = section_params(*work.joint, *seam_work.seam);
    const pass::StackRequest request = stack_request(inputs_, work, seam_work, seam.position);
    const auto band = fitup::fit_up_band(drawn, tolerances_, request);
    if (!band) {
      warn(work, seam, band.error().text);
      return;
    }
    plan::PlannedFitUp out;
    out.tolerances = tolerances_.id;
    out.status = tolerances_.status;
    out.low = end_of(band->low, seam, request.length_mm);
    out.high = end_of(band->high, seam, request.length_mm);
    for (const plan::FitUpEnd* end : {&out.low, &out.high}) {
      if (!end->closes) warn(work, seam, end->why);
    }
    if (!std::holds_alternative<joint::Plug>(work.joint->preparation)) {
      const auto table = fitup::gap_table(drawn, stop_limit(work, drawn), request);
      if (table) out.gaps = *table;
    }
    take_misalignment(work, out);
    seam.fit_up = std::move(out);
  }

 private:
  void warn(const JointWork& work, const plan::PlannedSeam& seam, const std::string& why) {
    plan_.findings.push_back(
        Finding{Severity::warning,
                "fitup.case.open",
                "seam " + seam.id + " within the fit-up tolerances " + tolerances_.id + ": " + why,
                place_of(inputs_.weldment, "joint/" + work.joint->id),
                {}});
  }

  static joint::QualityLevel level_of(const JointWork& work) {
    return joint::find_quality(work.joint->quality).value_or(joint::QualityLevel::c);
  }

  static double thinner_mm(const JointWork& work) {
    return std::min(joint::wall_thickness_mm(work.member_1->shape),
                    joint::wall_thickness_mm(work.member_2->shape));
  }

  /// The tightest of what the shop and the standards say: no. 617 for fillets, the widest gap of
  /// the ranges for grooves, else what the tolerances allow.
  fitup::StopLimit stop_limit(const JointWork& work, const section::SectionParams& drawn) const {
    fitup::StopLimit stop;
    stop.gap_mm = joint::root_gap_mm(drawn.preparation) + tolerances_.gap_plus_mm;
    stop.reason = "drawn gap and the tolerance of " + tolerances_.id;
    stop.status = tolerances_.status;
    if (joint::is_fillet(drawn.preparation)) {
      take_fillet_limit(work, stop);
    } else {
      take_range_limit(work, stop);
    }
    if (tolerances_.gap_stop_mm && *tolerances_.gap_stop_mm < stop.gap_mm) {
      stop.gap_mm = *tolerances_.gap_stop_mm;
      stop.reason = "the shop's own limit, " + tolerances_.id;
      stop.status = tolerances_.status;
    }
    return stop;
  }

  static void take_fillet_limit(const JointWork& work, fitup::StopLimit& stop) {
    const double throat_mm = work.seams.front().section.throat_mm;
    const auto limit = joint::fillet_gap_limit(level_of(work), thinner_mm(work), throat_mm);
    if (!limit) return;
    stop.gap_mm = limit->limit_mm;
    stop.reason = "ISO 5817:2023 no. 617, level " + work.joint->quality;
    stop.status = limit->citation.status;
  }

  void take_range_limit(const JointWork& work, fitup::StopLimit& stop) const {
    const std::string name(joint::preparation_name(work.joint->preparation));
    for (const joint::PreparationRange& range : inputs_.library.preparation_ranges) {
      const bool fits = range.preparation == name && range.sides == sides_of(*work.joint) &&
                        range.gap.largest && *range.gap.largest > stop.gap_mm;
      if (!fits) continue;
      stop.gap_mm = *range.gap.largest;
      stop.reason = "range " + range.id;
      stop.status = range.gap.status;
    }
  }

  static void take_misalignment(const JointWork& work, plan::PlannedFitUp& out) {
    if (work.joint->type != joint::JointType::butt) return;
    const auto limit = joint::plate_misalignment_limit(level_of(work), thinner_mm(work));
    if (!limit) return;
    out.misalignment_max_mm = limit->limit_mm;
    out.misalignment = limit->citation;
  }

  const Inputs& inputs_;
  const fitup::Tolerances& tolerances_;
  plan::Plan& plan_;
};

}  // namespace

void assemble_fit_up(const Inputs& inputs, const std::vector<JointWork>& joints, plan::Plan& plan) {
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const fitup::Tolerances* tolerances = fit_up_of(inputs, *joints[i].joint);
    if (tolerances == nullptr) return;
    FitUpMaker maker(inputs, *tolerances, plan);
    for (std::size_t k = 0; k < joints[i].seams.size(); ++k) {
      maker.make(joints[i], joints[i].seams[k], plan.joints[i].seams[k]);
    }
  }
}

}  // namespace seamturn::planner::detail
