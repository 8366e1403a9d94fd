// SPDX-License-Identifier: MIT
#include "seamturn/joint/weld_length.hpp"

#include <algorithm>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::joint {

namespace {

using base::Refusal;

using base::rounding_mm;

std::string mm(double value) {
  return base::digits_text(value) + " mm";
}

std::optional<Refusal> does_not_suit_course(const WeldLength& asked, const SeamCourse& course) {
  const bool tabs = asked.run_on_mm > 0.0 || asked.run_off_mm > 0.0;
  const bool returns = asked.end_return_mm > 0.0;
  if (course.closed && (tabs || returns)) {
    return Refusal{"joint.length.closed",
                   "a seam that closes upon itself has no ends for tabs or end returns; leave "
                   "run-on, run-off and end-return out, and give overlap= instead"};
  }
  if (!course.closed && asked.form == LengthForm::all_round) {
    return Refusal{"joint.length.not_closed",
                   "all round is asked for and the path has two ends; draw a circle or a closed "
                   "polyline, or leave form= out"};
  }
  const bool in_segments = asked.segments.value_or(1) > 1;
  if (!course.closed && asked.overlap_mm > 0.0 && !in_segments) {
    return Refusal{"joint.length.not_closed",
                   "an overlap of start and stop is asked for and the path has two ends; leave "
                   "overlap= out, or draw a closed path"};
  }
  if (asked.overlap_mm * std::max(1, asked.segments.value_or(1)) > course.length_mm) {
    return Refusal{"joint.length.overlap",
                   "the overlap is " + mm(asked.overlap_mm) + " and the seam " +
                       mm(course.length_mm) +
                       " long; expected no more than a seam, or each of its segments, is long; "
                       "correct it"};
  }
  return std::nullopt;
}

std::optional<Refusal> additions_clash(const WeldLength& asked) {
  const bool tabs = asked.run_on_mm > 0.0 || asked.run_off_mm > 0.0;
  const bool returns = asked.end_return_mm > 0.0;
  const bool any = tabs || returns || asked.overlap_mm > 0.0;
  if (asked.form == LengthForm::intermittent && any) {
    return Refusal{"joint.length.additions",
                   "tabs, end returns and overlap belong to a weld that reaches the ends of its "
                   "seam, and this one is intermittent; leave them out"};
  }
  if (asked.form == LengthForm::intermittent && asked.segments.value_or(1) > 1) {
    return Refusal{"joint.length.segments",
                   "the weld is intermittent: its elements are its segments; leave segments= out"};
  }
  if (tabs && returns) {
    return Refusal{"joint.length.additions",
                   "run-on or run-off tabs and end returns are both asked for, and an end has "
                   "either; leave one out"};
  }
  return std::nullopt;
}

/// What elements and gaps need: of a staggered pair both sides together, which on a closed seam is
/// no more than one side; there the gap over the start counts too.
double needed_mm(const WeldLength& asked, const SeamCourse& course) {
  const double pitch_mm = asked.each_mm + asked.gap_mm;
  if (course.closed) return asked.count * pitch_mm;
  const double shift_mm = asked.pattern == LengthPattern::staggered ? pitch_mm / 2.0 : 0.0;
  return asked.count * pitch_mm - asked.gap_mm + shift_mm;
}

base::Outcome<WeldedLength> lay_elements(const WeldLength& asked, const SeamCourse& course) {
  const double pitch_mm = asked.each_mm + asked.gap_mm;
  const double over_mm = needed_mm(asked, course) - course.length_mm;
  if (over_mm > rounding_mm) {
    return Refusal{"joint.length.too_long",
                   length_notation(asked) + " needs " + mm(needed_mm(asked, course)) +
                       " and the seam is " + mm(course.length_mm) + " long: " + mm(over_mm) +
                       " too much; take fewer or shorter elements, or a smaller gap"};
  }
  const double start_gap_mm = course.closed ? asked.gap_mm : 0.0;
  double from_mm = (std::max(0.0, -over_mm) + start_gap_mm) / 2.0;
  // Against the first side's travel the second side's own start already lies half a pitch on.
  const bool shifted = asked.pattern == LengthPattern::staggered && course.second_side &&
                       (course.closed || !course.opposed);
  if (shifted) from_mm += pitch_mm / 2.0;
  WeldedLength welded;
  for (int i = 0; i < asked.count; ++i) {
    welded.stretches.push_back({from_mm, from_mm + asked.each_mm});
    from_mm += pitch_mm;
  }
  return welded;
}

}  // namespace

base::Outcome<WeldedLength> welded_length(const WeldLength& asked, const SeamCourse& course) {
  SEAMTURN_REQUIRE(course.length_mm > 0.0, course.length_mm);
  SEAMTURN_REQUIRE(asked.run_on_mm >= 0.0 && asked.run_off_mm >= 0.0 &&
                       asked.end_return_mm >= 0.0 && asked.overlap_mm >= 0.0,
                   asked.run_on_mm,
                   asked.run_off_mm,
                   asked.end_return_mm,
                   asked.overlap_mm);
  if (auto refusal = does_not_suit_course(asked, course)) return *refusal;
  if (auto refusal = additions_clash(asked)) return *refusal;
  if (asked.form == LengthForm::intermittent) {
    SEAMTURN_REQUIRE(asked.count >= 1 && asked.each_mm > 0.0 && asked.gap_mm > 0.0,
                     asked.count,
                     asked.each_mm,
                     asked.gap_mm);
    return lay_elements(asked, course);
  }
  WeldedLength welded;
  // Where segments meet they overlap; split_joint counts it.
  const double overlap_mm = course.closed ? asked.overlap_mm : 0.0;
  welded.stretches.push_back({-asked.run_on_mm, course.length_mm + asked.run_off_mm + overlap_mm});
  welded.tabs_mm = asked.run_on_mm + asked.run_off_mm;
  welded.overlap_mm = overlap_mm;
  welded.returns_mm = 2.0 * asked.end_return_mm;
  return welded;
}

double welded_mm(const WeldedLength& welded) {
  double sum_mm = welded.returns_mm;
  for (const Stretch& stretch : welded.stretches) sum_mm += stretch.to_mm - stretch.from_mm;
  return sum_mm;
}

std::string length_notation(const WeldLength& asked) {
  if (asked.form == LengthForm::continuous) return "";
  if (asked.form == LengthForm::all_round) return "all round";
  const std::string elements = std::to_string(asked.count) + " x " +
                               base::digits_text(asked.each_mm) + " (" +
                               base::digits_text(asked.gap_mm) + ")";
  return asked.pattern == LengthPattern::staggered ? elements + " staggered" : elements;
}

}  // namespace seamturn::joint
