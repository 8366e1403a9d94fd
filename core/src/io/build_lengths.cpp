// SPDX-License-Identifier: MIT
// Lays what is asked for in trade form on the seams of a joint.
#include <algorithm>
#include <cmath>

#include "detail_drafts.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::io::detail {

namespace {

using joint::Seam;

bool is_staggered(const Seam& seam) {
  return seam.asked.form == joint::LengthForm::intermittent &&
         seam.asked.pattern == joint::LengthPattern::staggered;
}

/// Staggered elements face the gaps of the other side: both sides must be there and alike.
void check_staggered(const JointDraft& draft, const joint::Joint& joint, Report& report) {
  for (std::size_t i = 0; i < joint.seams.size(); ++i) {
    if (!is_staggered(joint.seams[i])) continue;
    if (joint.seams.size() < 2) {
      report.error(draft.seams[i].asked_spot,
                   "joint.length.one_side",
                   "a staggered weld has elements on two sides and this joint has one seam; write "
                   "the second seam, or pattern=\"chain\"");
      return;
    }
    constexpr double alike_mm = 1.0;
    const Seam& other = joint.seams[1 - i];
    if (joint.seams[i].asked == other.asked &&
        std::abs(joint.seams[i].length_mm - other.length_mm) <= alike_mm) {
      continue;
    }
    report.error(draft.seams[i].asked_spot,
                 "joint.length.sides_differ",
                 "the two sides of a staggered weld are " +
                     base::digits_text(joint.seams[i].length_mm) + " mm and " +
                     base::digits_text(other.length_mm) +
                     " mm long, or state different elements; their elements face each other's gaps "
                     "only on equal sides: state one <welded> for the joint and equal paths");
    return;
  }
}

/// Segments lie beside segments: both sides are split alike, and both have a place.
void check_segments(const JointDraft& draft, const joint::Joint& joint, Report& report) {
  for (std::size_t i = 0; i < joint.seams.size(); ++i) {
    const Seam& seam = joint.seams[i];
    const joint::WeldLength& first = joint.seams.front().asked;
    if (seam.asked.segments != first.segments || seam.asked.travel != first.travel) {
      report.error(draft.seams[i].asked_spot,
                   "joint.length.segments",
                   "the two sides of the joint state different segments; expected the same, so "
                   "that segments lie beside segments: state one <welded> for the joint");
      return;
    }
    if (seam.asked.segments.value_or(1) == 1 || seam.path) continue;
    report.error(draft.seams[i].asked_spot,
                 "joint.length.segments",
                 "seam " + seam.id +
                     " is to be welded in segments and has no place in the weldment; expected a "
                     "line, arc, circle or polyline; draw it, or leave segments= out");
    return;
  }
}

/// Warnings about elements too short, and gaps too wide, for a fillet of this size.
std::vector<base::Finding> element_findings(const joint::Joint& joint,
                                            const Seam& seam,
                                            const Plates& plates) {
  const auto* fillet = std::get_if<joint::Fillet>(&joint.preparation);
  if (fillet == nullptr || seam.asked.form != joint::LengthForm::intermittent) return {};
  joint::FilletSize size;
  size.leg_mm = std::min(fillet->leg_1_mm, fillet->leg_2_mm);
  size.thinner_mm = plates.thinner_mm;
  size.thicker_mm = plates.thicker_mm;
  size.length_mm = seam.asked.each_mm;
  size.intermittent = joint::IntermittentRun{seam.asked.each_mm, seam.asked.gap_mm};
  const auto checks = joint::check_fillet_size(size);
  if (!checks) return {};  // told where sizes are judged
  std::vector<joint::SizeCheck> of_length;
  for (const joint::SizeCheck& check : *checks) {
    const bool is_of_length = check.rule == "least-length-aws" ||
                              check.rule == "least-segment-aws" ||
                              check.rule == "largest-clear-aws";
    if (is_of_length && !check.holds) of_length.push_back(check);
  }
  return joint::size_findings(of_length);
}

}  // namespace

void build_lengths(const JointDraft& draft,
                   const Plates& plates,
                   joint::Joint& joint,
                   Report& report) {
  check_staggered(draft, joint, report);
  check_segments(draft, joint, report);
  std::string told;
  for (std::size_t i = 0; i < joint.seams.size(); ++i) {
    Seam& seam = joint.seams[i];
    const Spot& spot = draft.seams[i].asked_spot;
    if (!(seam.length_mm > 0.0)) continue;
    if (seam.asked.end_return_mm > 0.0 && !joint::is_fillet(joint.preparation)) {
      report.error(spot,
                   "joint.length.return_of_groove",
                   "end returns are asked for on a groove; they carry a fillet round the edge of "
                   "its member; leave end-return out, or give run-on and run-off tabs");
      continue;
    }
    const bool holes = std::holds_alternative<joint::Plug>(joint.preparation);
    joint::WeldLength crater_only;
    crater_only.crater_s = seam.asked.crater_s;
    if (holes && seam.asked != crater_only) {
      report.error(spot,
                   "joint.length.holes",
                   "plugs and slots are welded whole; leave all but crater-time out");
      continue;
    }
    joint::SeamCourse course;
    course.length_mm = seam.length_mm;
    course.closed = seam.path && geom::is_closed(*seam.path);
    course.second_side = i > 0;
    course.opposed = i > 0 && joint::runs_against(seam, joint.seams.front());
    const base::Outcome<joint::WeldedLength> welded = joint::welded_length(seam.asked, course);
    if (!welded) {
      // What the joint asks of all its seams is told once where they lack the same.
      const bool as_before = i > 0 && draft.seams[i - 1].asked_spot.offset == spot.offset &&
                             welded.error().text == told;
      told = welded.error().text;
      if (!as_before) report.error(spot, welded.error().code, told);
      continue;
    }
    seam.welded = *welded;
    for (const base::Finding& finding : element_findings(joint, seam, plates)) {
      report.add(finding.severity, spot, finding.code, "seam " + seam.id + ": " + finding.text);
    }
  }
}

}  // namespace seamturn::io::detail
