// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <set>

#include "detail_seam_directions.hpp"
#include "detail_segments.hpp"
#include "detail_stages.hpp"
#include "detail_starts.hpp"
#include "detail_twins.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using joint::Seam;

/// Why a joint is split; also the text told.
enum class Because { file, twin, datum, length, no_rolling };

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

bool can_be_split(const joint::Joint& joint) {
  const bool plug = std::holds_alternative<joint::Plug>(joint.preparation);
  return !plug && !joint.seams.empty() &&
         std::all_of(joint.seams.begin(), joint.seams.end(), [](const Seam& seam) {
           return seam.path && seam.asked.form != joint::LengthForm::intermittent;
         });
}

/// Seams as drawn, for what is found by place alone.
struct Drawn {
  std::vector<JointWork> joints;
  std::vector<SeamRef> seams;

  explicit Drawn(const joint::Weldment& weldment) {
    for (const joint::Joint& joint : weldment.joints) {
      JointWork work;
      work.joint = &joint;
      work.member_1 = joint::find_member(weldment, joint.member_1);
      work.member_2 = joint::find_member(weldment, joint.member_2);
      for (const Seam& seam : joint.seams) work.seams.push_back(SeamWork{&seam, {}, {}, {}});
      joints.push_back(std::move(work));
    }
    seams = all_seams(joints);
  }
};

class Splitter {
 public:
  Splitter(const Inputs& inputs, std::vector<Finding>& findings)
      : inputs_(inputs),
        findings_(findings),
        stages_(work_stages(inputs, not_here_)),
        drawn_(inputs.weldment) {}

  std::vector<joint::Joint> split() {
    const std::vector<joint::Joint>& all = inputs_.weldment.joints;
    find_drawn_rings();
    for (const joint::Joint& joint : all) decisions_.push_back(decide(joint));
    const bool any = std::any_of(
        decisions_.begin(), decisions_.end(), [](const Decision& one) { return one.count > 1; });
    if (any) twins_ = find_twins(inputs_, drawn_.seams);
    while (follow_twins()) {
    }
    std::vector<joint::Joint> joints;
    for (std::size_t i = 0; i < all.size(); ++i) {
      joints.push_back(decisions_[i].count > 1 ? split(all[i], decisions_[i]) : all[i]);
    }
    tell();
    return joints;
  }

 private:
  [[nodiscard]] bool is_balanced(const joint::Joint& joint) const {
    return joint.balance_off.empty() && inputs_.weldment.balance_off.empty();
  }

  /// A ring drawn in arcs is in segments already.
  void find_drawn_rings() {
    for (const Run& run : find_runs(drawn_.seams)) {
      for (const auto& rank : run.ranks) {
        for (const std::size_t seam : rank) {
          of_drawn_ring_.insert(drawn_.seams[seam].joint->joint->id);
        }
      }
    }
  }

  [[nodiscard]] Decision decide(const joint::Joint& joint) const {
    if (!can_be_split(joint)) return {};
    if (joint.seams.front().asked.segments) return {*joint.seams.front().asked.segments};
    if (const int arcs = arcs_of_datum(joint)) return {fitting(joint, arcs), Because::datum};
    return is_balanced(joint) ? by_length(joint) : Decision{};
  }

  /// What datums of either member ask of a ring; 0: nothing.
  [[nodiscard]] int arcs_of_datum(const joint::Joint& joint) const {
    int arcs = 0;
    for (const joint::Datum& datum : inputs_.weldment.datums) {
      if (joint::joins(joint, datum.member)) arcs = std::max(arcs, datum.arcs);
    }
    return std::all_of(joint.seams.begin(), joint.seams.end(), is_circle) ? arcs : 0;
  }

  /// As many as are long enough, 1 where two are not: what nobody asked of this seam is no error.
  [[nodiscard]] int fitting(const joint::Joint& joint, int count) const {
    while (count > 1 && !joint::splits(joint, splitting(joint, count))) --count;
    return count;
  }

  [[nodiscard]] Decision by_length(const joint::Joint& joint) const {
    const std::optional<LongSeams>& row = inputs_.library.long_seams;
    const auto is_long = [&](const Seam& seam) { return seam.length_mm > row->over_mm; };
    if (!row || !std::all_of(joint.seams.begin(), joint.seams.end(), is_long)) return {};
    if (std::all_of(joint.seams.begin(), joint.seams.end(), is_plain)) {
      const bool ring = of_drawn_ring_.contains(joint.id);
      return ring ? Decision{} : Decision{fitting(joint, row->segments), Because::length};
    }
    const bool rings = std::all_of(joint.seams.begin(), joint.seams.end(), is_circle);
    if (!rings || rolls(joint)) return {};
    return {fitting(joint, row->arcs), Because::no_rolling};
  }

  /// Without a cell nothing says how the ring is welded: it stays whole.
  [[nodiscard]] bool rolls(const joint::Joint& joint) const {
    const joint::Setup* setup = stages_[stage_index(stages_, joint)].setup;
    if (!inputs_.cell || setup == nullptr) return true;
    return std::all_of(joint.seams.begin(), joint.seams.end(), [&](const Seam& seam) {
      return can_roll(inputs_.cell->positioner, seam_in_D(*setup, seam));
    });
  }

  /// A seam whose twin is split is split alike, unless the file says how many it has: whole, only
  /// one of the twin's segments could keep step with it. True when one was.
  bool follow_twins() {
    bool any = false;
    for (const Twins& twins : twins_) {
      if (!twins.off.empty()) continue;
      for (const auto& [one, other] :
           {std::pair(twins.first, twins.second), std::pair(twins.second, twins.first)}) {
        const std::size_t from = index_of(one);
        const std::size_t to = index_of(other);
        const joint::Joint& joint = inputs_.weldment.joints[to];
        const bool free = can_be_split(joint) && !joint.seams.front().asked.segments;
        if (!free || decisions_[from].count <= decisions_[to].count) continue;
        const int count = fitting(joint, decisions_[from].count);
        if (count != decisions_[from].count) continue;
        decisions_[to] = {count, Because::twin};
        any = true;
      }
    }
    return any;
  }
  [[nodiscard]] std::size_t index_of(std::size_t seam) const {
    return static_cast<std::size_t>(drawn_.seams[seam].joint - drawn_.joints.data());
  }

  [[nodiscard]] joint::Splitting splitting(const joint::Joint& joint, int count) const {
    const joint::WeldLength& asked = joint.seams.front().asked;
    const std::optional<LongSeams>& row = inputs_.library.long_seams;
    joint::Splitting out{count, asked.travel, asked.stop_stagger_mm, asked.overlap_mm};
    if (row && !(out.overlap_mm > 0.0)) out.overlap_mm = row->overlap_mm;
    return out;
  }

  joint::Joint split(const joint::Joint& joint, const Decision& decision) {
    const joint::Splitting how = splitting(joint, decision.count);
    if (!joint::splits(joint, how)) {
      tell(Severity::error,
           "plan.segments.short",
           joint,
           "its " + std::to_string(how.count) + " segments are " +
               base::fixed_text(joint.seams.front().length_mm / how.count, 0) +
               " mm long; where they meet, stops staggered by " +
               base::fixed_text(how.stagger_mm, 0) + " mm and an overlap of " +
               base::fixed_text(how.overlap_mm, 0) + " mm need more than " +
               base::fixed_text(2.0 * (how.stagger_mm + how.overlap_mm), 0) +
               " mm; give segments= fewer, or state a smaller stop-stagger and overlap");
      return joint;
    }
    check_corners(joint, how);
    told_[static_cast<std::size_t>(decision.because)].push_back(joint.id + " (" +
                                                                std::to_string(how.count) + ')');
    return joint::split_joint(joint, how);
  }

  void check_corners(const joint::Joint& joint, const joint::Splitting& how) {
    const double reach_mm = (how.stagger_mm + how.overlap_mm) / 2.0;
    for (const Seam& seam : joint.seams) {
      const double each_mm = seam.length_mm / how.count;
      const bool closed = geom::is_closed(*seam.path);
      for (const double corner_mm : geom::corner_stations_mm(*seam.path)) {
        const double mark_mm = std::round(corner_mm / each_mm) * each_mm;
        const bool meet = closed || (mark_mm > 0.0 && mark_mm < seam.length_mm - 0.5 * each_mm);
        const double off_mm = std::abs(corner_mm - mark_mm) - reach_mm;
        if (!meet || off_mm >= seam.asked.corner_clear_mm) continue;
        tell(Severity::warning,
             "plan.segments.corner",
             joint,
             "two segments of " + seam.id + " meet " + base::fixed_text(std::max(0.0, off_mm), 0) +
                 " mm from a corner, where starts and stops do not belong; take another number of "
                 "segments, or let the path begin between two corners");
        return;
      }
    }
  }

  void tell(Severity severity, const char* code, const joint::Joint& joint, std::string text) {
    findings_.push_back(joint_finding(inputs_, joint, severity, code, text));
  }

  void tell() {
    const std::optional<LongSeams>& row = inputs_.library.long_seams;
    const std::string over = row ? base::fixed_text(row->over_mm, 0) + " mm" : std::string();
    const std::string why[] = {"as the file says",
                               "as the seams they keep step with",
                               "arcs= of a datum on the member",
                               "longer than " + over + " (<long-seams> of the library)",
                               "rings longer than " + over + " that the positioner cannot roll"};
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < std::size(told_); ++i) {
      if (!told_[i].empty()) parts.push_back(base::listed(told_[i]) + ": " + why[i]);
    }
    if (parts.empty()) return;
    findings_.push_back(Finding{
        Severity::note,
        "plan.segments",
        "welded in segments, lines from the middle outward, rings in opposite arcs; " +
            base::listed(parts, "; ") +
            ". Where a run begins or ends on a start or a crater, grind that first. <welded "
            "segments=\"1\"/> has a seam welded in one",
        place_of(inputs_.weldment, "weldment"),
        {}});
  }

  const Inputs& inputs_;
  std::vector<Finding>& findings_;
  std::vector<Finding> not_here_;  ///< told when the stages are worked out
  std::vector<StageWork> stages_;
  Drawn drawn_;
  std::set<std::string> of_drawn_ring_;  ///< joints
  std::vector<Decision> decisions_;      ///< one a joint
  std::vector<Twins> twins_;             ///< among the seams drawn
  std::vector<std::string> told_[5];
};

}  // namespace

Inputs in_segments(const Inputs& inputs, std::vector<Finding>& findings) {
  Inputs out = with_stops_apart(inputs);
  std::vector<joint::Joint> joints = Splitter(out, findings).split();
  out.weldment.joints = std::move(joints);
  return out;
}

}  // namespace seamturn::planner::detail
