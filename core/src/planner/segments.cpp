// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_seam_directions.hpp"
#include "detail_segments.hpp"
#include "detail_stages.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using joint::Seam;

/// Why a joint is split; also the text told.
enum class Because { file, datum, length, no_rolling };

struct Decision {
  int count = 1;
  Because because = Because::file;
};

bool is_circle(const Seam& seam) {
  return std::holds_alternative<geom::CirclePath>(*seam.path);
}

bool is_plain(const Seam& seam) {
  return std::holds_alternative<geom::LinePath>(*seam.path) ||
         std::holds_alternative<geom::ArcPath>(*seam.path);
}

class Splitter {
 public:
  Splitter(const Inputs& inputs, std::vector<Finding>& findings)
      : inputs_(inputs), findings_(findings), stages_(work_stages(inputs, not_here_)) {}

  std::vector<joint::Joint> split() {
    std::vector<joint::Joint> joints;
    for (const joint::Joint& joint : inputs_.weldment.joints) {
      const Decision decision = decide(joint);
      joints.push_back(decision.count > 1 ? split(joint, decision) : joint);
    }
    tell();
    return joints;
  }

 private:
  [[nodiscard]] bool can_be_split(const joint::Joint& joint) const {
    return std::all_of(joint.seams.begin(), joint.seams.end(), [](const Seam& seam) {
      return seam.path && seam.asked.form != joint::LengthForm::intermittent;
    });
  }

  [[nodiscard]] Decision decide(const joint::Joint& joint) const {
    const bool plug = std::holds_alternative<joint::Plug>(joint.preparation);
    if (joint.seams.empty() || plug || !can_be_split(joint)) return {};
    if (joint.seams.front().asked.segments) return {*joint.seams.front().asked.segments};
    if (!joint.balance_off.empty() || !inputs_.weldment.balance_off.empty()) return {};
    if (const int arcs = arcs_of_datum(joint)) return {arcs, Because::datum};
    return by_length(joint);
  }

  /// What datums of either member ask of a ring; 0: nothing.
  [[nodiscard]] int arcs_of_datum(const joint::Joint& joint) const {
    int arcs = 0;
    for (const joint::Datum& datum : inputs_.weldment.datums) {
      if (joint::joins(joint, datum.member)) arcs = std::max(arcs, datum.arcs);
    }
    return std::all_of(joint.seams.begin(), joint.seams.end(), is_circle) ? arcs : 0;
  }

  [[nodiscard]] Decision by_length(const joint::Joint& joint) const {
    const std::optional<LongSeams>& row = inputs_.library.long_seams;
    const auto is_long = [&](const Seam& seam) { return seam.length_mm > row->over_mm; };
    if (!row || !std::all_of(joint.seams.begin(), joint.seams.end(), is_long)) return {};
    if (std::all_of(joint.seams.begin(), joint.seams.end(), is_plain)) {
      return {row->segments, Because::length};
    }
    const bool rings = std::all_of(joint.seams.begin(), joint.seams.end(), is_circle);
    return rings && !rolls(joint) ? Decision{row->arcs, Because::no_rolling} : Decision{};
  }

  /// Without a cell nothing says how the ring is welded: it stays whole.
  [[nodiscard]] bool rolls(const joint::Joint& joint) const {
    const joint::Setup* setup = stages_[stage_index(stages_, joint)].setup;
    if (!inputs_.cell || setup == nullptr) return true;
    return std::all_of(joint.seams.begin(), joint.seams.end(), [&](const Seam& seam) {
      return can_roll(inputs_.cell->positioner, seam_in_D(*setup, seam));
    });
  }

  [[nodiscard]] joint::Splitting splitting(const joint::Joint& joint, int count) const {
    const joint::WeldLength& asked = joint.seams.front().asked;
    const std::optional<LongSeams>& row = inputs_.library.long_seams;
    joint::Splitting out{count, asked.travel, asked.stop_stagger_mm, asked.overlap_mm};
    if (row && !(out.stagger_mm > 0.0)) out.stagger_mm = row->stagger_mm;
    if (row && !(out.overlap_mm > 0.0)) out.overlap_mm = row->overlap_mm;
    return out;
  }

  joint::Joint split(const joint::Joint& joint, const Decision& decision) {
    const joint::Splitting how = splitting(joint, decision.count);
    if (!joint::splits(joint, how)) {
      tell(Severity::error,
           "plan.segments.short",
           joint,
           "in " + std::to_string(how.count) + " segments of " +
               base::fixed_text(joint.seams.front().length_mm / how.count, 0) +
               " mm, and stops staggered by " + base::fixed_text(how.stagger_mm, 0) +
               " mm with an overlap of " + base::fixed_text(how.overlap_mm, 0) +
               " mm ask for twice as much as both at least; take fewer segments, or less of these");
      return joint;
    }
    check_corners(joint, how);
    told_[static_cast<std::size_t>(decision.because)].push_back(joint.id + " (" +
                                                                std::to_string(how.count) + ')');
    return joint::split_joint(joint, how);
  }

  void check_corners(const joint::Joint& joint, const joint::Splitting& how) {
    for (const Seam& seam : joint.seams) {
      const double each_mm = seam.length_mm / how.count;
      const bool closed = geom::is_closed(*seam.path);
      for (const double corner_mm : geom::corner_stations_mm(*seam.path)) {
        const double mark_mm = std::round(corner_mm / each_mm) * each_mm;
        const bool meet = closed || (mark_mm > 0.0 && mark_mm < seam.length_mm - 0.5 * each_mm);
        const double off_mm = std::abs(corner_mm - mark_mm) - how.stagger_mm / 2.0;
        if (!meet || off_mm >= seam.asked.corner_clear_mm) continue;
        tell(Severity::warning,
             "plan.segments.corner",
             joint,
             "two segments of " + seam.id + " meet " + base::fixed_text(std::max(0.0, off_mm), 0) +
                 " mm from a corner, where starts and stops do not belong; take another number of "
                 "segments");
        return;
      }
    }
  }

  void tell(Severity severity, const char* code, const joint::Joint& joint, std::string text) {
    findings_.push_back(joint_finding(inputs_, joint, severity, code, text));
  }

  void tell() {
    constexpr const char* why[] = {"the file says so",
                                   "a datum on the member asks for arcs",
                                   "longer than the library's <long-seams> row lets pass in one",
                                   "as long, and rings the positioner cannot roll"};
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < std::size(told_); ++i) {
      if (!told_[i].empty()) parts.push_back(base::listed(told_[i]) + ": " + why[i]);
    }
    if (parts.empty()) return;
    findings_.push_back(Finding{
        Severity::note,
        "plan.segments",
        "welded in segments, from the middle outward, rings in opposite arcs: " +
            base::listed(parts, "; ") + ". <welded segments=\"1\"/> has a seam welded in one",
        place_of(inputs_.weldment, "weldment"),
        {}});
  }

  const Inputs& inputs_;
  std::vector<Finding>& findings_;
  std::vector<Finding> not_here_;  ///< told when the stages are worked out
  std::vector<StageWork> stages_;
  std::vector<std::string> told_[4];
};

}  // namespace

Inputs in_segments(const Inputs& inputs, std::vector<Finding>& findings) {
  Inputs out = inputs;
  out.weldment.joints = Splitter(inputs, findings).split();
  return out;
}

}  // namespace seamturn::planner::detail
