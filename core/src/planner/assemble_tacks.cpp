// SPDX-License-Identifier: MIT
// The tack plan, and whether the tacks of each member fitted carry it through the turns.
#include <algorithm>
#include <cmath>
#include <map>

#include "detail_assemble.hpp"
#include "detail_tacking.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

/// Nothing where the standard states none.
std::optional<double> stated_yield_mpa(const material::Steel& steel, const joint::Member& member) {
  const auto* band = material::find_band(steel, joint::wall_thickness_mm(member.shape));
  return band != nullptr ? band->yield_mpa : std::nullopt;
}

std::string more_text(int more) {
  return std::to_string(more) + (more == 1 ? " more is needed" : " more are needed");
}

/// The stronger of both members asks for the longer tack.
double stronger_mpa(const JointWork& work) {
  return std::max(stated_yield_mpa(*work.steel_1, *work.member_1).value_or(unknown_yield_mpa),
                  stated_yield_mpa(*work.steel_2, *work.member_2).value_or(unknown_yield_mpa));
}

/// The least yield beside the tacks that hold a member, and the steels that state none.
struct WeakestSteel {
  double yield_mpa = unknown_yield_mpa;
  std::vector<std::string> unstated;  ///< each once

  void add(const JointWork& work) {
    add(*work.steel_1, *work.member_1);
    add(*work.steel_2, *work.member_2);
  }

 private:
  void add(const material::Steel& steel, const joint::Member& member) {
    const auto stated = stated_yield_mpa(steel, member);
    const bool known =
        std::find(unstated.begin(), unstated.end(), steel.designation) != unstated.end();
    if (!stated && !known) unstated.push_back(steel.designation);
    yield_mpa = std::min(yield_mpa, stated.value_or(yield_mpa));
  }
};

/// A seam to be tacked, as planned.
struct SeamToTack {
  const JointWork* joint = nullptr;
  const plan::PlannedSeam* planned = nullptr;
  tack::TackSeam seam;
  double from_mm = 0.0;  ///< of the seam's path, where that of the tacks begins
};

/// The widest gap the fit-up tolerances let through.
double widest_gap_mm(const Inputs& inputs, const joint::Joint& joint, double drawn_mm) {
  const fitup::Tolerances* row = fit_up_of(inputs, joint);
  return row == nullptr ? drawn_mm : drawn_mm + row->gap_plus_mm;
}

/// A run that is the whole weld is tacked thinner, so that it takes the tack in. Common practice.
constexpr double tack_of_single_run = 2.0 / 3.0;

tack::TackSeam tack_seam(const Inputs& inputs,
                         const JointWork& work,
                         const SeamWork& seam_work,
                         const plan::PlannedSeam& planned,
                         bool second) {
  const joint::Joint& joint = *work.joint;
  tack::TackSeam seam;
  seam.path = *seam_work.seam->path;
  if (const auto& segment = seam_work.seam->segment) {
    const joint::Stretch own = joint::own_stretch(*seam_work.seam);
    seam.path = geom::part_of_path(seam.path, own.from_mm, own.to_mm);
    if (joint.tacks) seam.count = (*joint.tacks + segment->of - 1) / segment->of;
  } else {
    seam.count = joint.tacks;
  }
  seam.thicker_mm = thicker_mm(work);
  seam.yield_mpa = stronger_mpa(work);
  if (const auto* groove = std::get_if<joint::Groove>(&joint.preparation)) {
    seam.drawn_gap_mm = groove->gap_mm;
    seam.gap_mm = widest_gap_mm(inputs, joint, groove->gap_mm);
  }
  if (const auto* fillet = std::get_if<joint::Fillet>(&joint.preparation)) {
    seam.gap_mm = fillet->gap_mm;
  }
  seam.weld_throat_mm = planned.section.throat_mm;
  const double root_mm2 = planned.stack.passes.front().area_mm2;
  seam.root_run_mm = planned.section.is_fillet
                         ? tack::fillet_throat_mm(root_mm2, seam_work.seam->between_walls)
                         : std::sqrt(root_mm2);  // of a groove's root bead: as high as it is wide
  if (planned.section.is_fillet && planned.stack.passes.size() == 1) {
    seam.root_run_mm = tack_of_single_run * seam.weld_throat_mm;
  }
  seam.second_side = second;
  seam.gouged_from_it = joint.root == joint::RootDecision::gouge && seam_work.seam->side == 2;
  return seam;
}

std::vector<SeamToTack> seams_to_tack(const Inputs& inputs,
                                      const std::vector<JointWork>& joints,
                                      const plan::Plan& plan) {
  std::vector<SeamToTack> seams;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    const bool none = joints[j].joint->tacks == 0;
    const bool plug = std::holds_alternative<joint::Plug>(joints[j].joint->preparation);
    if (none || plug) continue;
    for (std::size_t s = 0; s < joints[j].seams.size(); ++s) {
      const SeamWork& work = joints[j].seams[s];
      if (!work.seam->path) continue;
      const plan::PlannedSeam& planned = plan.joints[j].seams[s];
      const bool second = planned.drawn != plan.joints[j].seams.front().drawn;
      seams.push_back(
          {&joints[j], &planned, tack_seam(inputs, joints[j], work, planned, second), 0.0});
      if (work.seam->segment) seams.back().from_mm = joint::own_stretch(*work.seam).from_mm;
    }
  }
  return seams;
}

class Tacker {
 public:
  Tacker(const Inputs& inputs,
         const std::vector<StageWork>& stages,
         std::vector<SeamToTack> seams,
         plan::Plan& plan)
      : inputs_(inputs), stages_(stages), seams_(std::move(seams)), plan_(plan) {}

  void run() {
    for (const SeamToTack& seam : seams_) lay(seam);
    if (!plan_.cell) return;
    if (!inputs_.weldment.tacking) return not_asked();
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      if (plan_.stages.at(k).start_s) members_of(k);
    }
  }

 private:
  void not_asked() {
    if (inputs_.weldment.stages.empty()) return;
    plan_.findings.push_back(
        Finding{Severity::note,
                "plan.tacks.not_asked",
                "whether the tacks carry the members through the turns was not asked; state "
                "<tacking site-factor=\"...\"/>, the factor on weight for crane and turning",
                place_of(inputs_.weldment, "weldment"),
                {}});
  }

  /// The stage in which both members are there first: then the tacks are made.
  [[nodiscard]] std::size_t stage_of(const JointWork& work) const {
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      if (stages_[k].has(work.joint->member_1) && stages_[k].has(work.joint->member_2)) return k;
    }
    return 0;
  }

  void lay(const SeamToTack& seam) {
    plan::PlannedTacks tacks;
    tacks.seam = seam.planned->id;
    tacks.clear_of_ends_mm = inputs_.library.tack_rules.clear_of_ends_mm.value;
    tacks.preheat_c = seam.joint->heat.preheat_c;
    const std::size_t stage = stage_of(*seam.joint);
    if (stages_[stage].stage != nullptr) tacks.stage = stages_[stage].stage->id;
    base::Outcome<tack::TackPlan> laid = tack::plan_tacks(seam.seam, inputs_.library.tack_rules);
    if (laid) {
      tacks.plan = *laid;
      for (tack::Tack& tack : tacks.plan.tacks) {
        tack.from_mm += seam.from_mm;
        tack.to_mm += seam.from_mm;
      }
    } else {
      tacks.refused = laid.error().text;
      plan_.findings.push_back(joint_finding(inputs_,
                                             *seam.joint->joint,
                                             Severity::warning,
                                             laid.error().code,
                                             "seam " + tacks.seam + ": " + laid.error().text));
    }
    plan_.tacks.push_back(std::move(tacks));
  }

  /// What is held while a stage goes on: the member in the set-up, and what was welded to it in the
  /// stages before. Level 0; all others by how many joints they are away from it.
  [[nodiscard]] std::map<std::string, int> levels(std::size_t k) const {
    const StageWork& stage = stages_[k];
    std::map<std::string, int> level;
    level[held_member(plan_.cell->positioner, stage).id] = 0;
    const auto reach = [&](int from_level, int to_level, bool welded_before) {
      bool grew = false;
      for (const joint::Joint& joint : inputs_.weldment.joints) {
        if (!stage.has(joint.member_1) || !stage.has(joint.member_2)) continue;
        if (welded_before && stage_index(stages_, joint) >= k) continue;
        for (const auto& [from, to] : {std::pair(joint.member_1, joint.member_2),
                                       std::pair(joint.member_2, joint.member_1)}) {
          const auto found = level.find(from);
          const bool starts = found != level.end() && found->second == from_level;
          if (starts && level.emplace(to, to_level).second) grew = true;
        }
      }
      return grew;
    };
    while (reach(0, 0, true)) {
    }
    for (int now = 0; reach(now, now + 1, false); ++now) {
    }
    return level;
  }

  void members_of(std::size_t k) {
    if (stages_[k].present.empty()) return;
    const std::map<std::string, int> level = levels(k);
    const std::vector<Attitude> attitudes = attitudes_of(plan_, k);
    if (attitudes.empty()) return;
    for (const joint::Member* member : stages_[k].present) {
      const auto own = level.find(member->id);
      if (own == level.end() || own->second == 0) continue;
      carry(k, *member, level, attitudes);
    }
  }

  /// Members further out that hang on this one, all of their weight.
  [[nodiscard]] std::vector<const joint::Member*> hanging_on(
      std::size_t k, const joint::Member& member, const std::map<std::string, int>& level) const {
    std::vector<const joint::Member*> group = {&member};
    for (std::size_t i = 0; i < group.size(); ++i) {
      for (const joint::Member* other : stages_[k].present) {
        const auto at = level.find(other->id);
        if (at == level.end() || at->second != level.at(group[i]->id) + 1) continue;
        const bool known = std::find(group.begin(), group.end(), other) != group.end();
        if (!known && are_joined(group[i]->id, other->id)) group.push_back(other);
      }
    }
    return group;
  }

  [[nodiscard]] bool are_joined(const std::string& a, const std::string& b) const {
    const auto& joints = inputs_.weldment.joints;
    return std::any_of(joints.begin(), joints.end(), [&](const joint::Joint& joint) {
      return joint::joins(joint, a) && joint::joins(joint, b);
    });
  }

  void carry(std::size_t k,
             const joint::Member& member,
             const std::map<std::string, int>& level,
             const std::vector<Attitude>& attitudes) {
    plan::CarriedMember carried;
    carried.stage = plan_.stages[k].id;
    carried.member = member.id;
    carried.site_factor = inputs_.weldment.tacking->site_factor_ratio;
    std::vector<joint::Member> group;
    for (const joint::Member* one : hanging_on(k, member, level)) {
      group.push_back(*one);
      if (one != &member) carried.with.push_back(one->id);
    }
    const joint::Weight weight = joint::total_weight(group);
    carried.mass_kg = weight.mass_kg;
    std::vector<tack::HeldTack> tacks;
    std::vector<tack::TackSeam> seams;
    WeakestSteel weakest;
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      const joint::Joint& joint = *seams_[i].joint->joint;
      const bool first = joint.member_1 == member.id;
      if (!first && joint.member_2 != member.id) continue;
      const auto other = level.find(first ? joint.member_2 : joint.member_1);
      if (other == level.end() || other->second >= level.at(member.id)) continue;
      const std::vector<tack::HeldTack> held = tack::held_tacks(plan_.tacks[i].plan);
      tacks.insert(tacks.end(), held.begin(), held.end());
      seams.push_back(seams_[i].seam);
      weakest.add(*seams_[i].joint);
    }
    carried.tacks = tacks.size();
    if (tacks.empty()) {
      carried.refused = "no tack holds it: its joints have no place, or no tack fits on them";
    } else {
      judge(weight, tacks, seams, weakest, attitudes, carried);
    }
    tell(member, carried);
    plan_.carried.push_back(std::move(carried));
  }

  void judge(const joint::Weight& weight,
             const std::vector<tack::HeldTack>& tacks,
             const std::vector<tack::TackSeam>& seams,
             const WeakestSteel& weakest,
             const std::vector<Attitude>& attitudes,
             plan::CarriedMember& carried) const {
    const tack::TackRules& rules = inputs_.library.tack_rules;
    if (!weakest.unstated.empty() && !rules.stress_mpa) {
      carried.refused = "the standard of " + base::listed(weakest.unstated) +
                        " states no yield here, so that no stress follows from it; state what the "
                        "tacks may see, <tacks stress=\"...\">, agreed with the responsible "
                        "welding coordinator";
      return;
    }
    const auto permitted = tack::permitted_stress(
        tack::remembered_ultimate_mpa(weakest.yield_mpa), weakest.yield_mpa, rules);
    if (!permitted) {
      carried.refused = permitted.error().text;
      return;
    }
    tack::CarriedPart part;
    part.mass_kg = weight.mass_kg;
    part.centre_of_gravity = weight.centre;
    part.site_factor = carried.site_factor;
    part.permitted = *permitted;
    for (const Attitude& attitude : attitudes) part.gravity_directions.push_back(attitude.down_J);
    base::Outcome<tack::Carry> found = tack::carry(tacks, part);
    if (!found) {
      carried.refused = found.error().text;
      return;
    }
    carried.carry = *found;
    carried.attitude = attitudes[found->worst_attitude].name;
    if (found->utilisation_ratio <= 1.0) return;
    const auto more = tack::more_tacks_needed(seams, rules, part);
    if (more) {
      carried.more_needed = more->more;
    } else {
      carried.no_more = more.error().text;
    }
  }

  void tell(const joint::Member& member, const plan::CarriedMember& carried) {
    std::string text;
    if (!carried.carry) {
      text = carried.refused;
    } else if (carried.carry->utilisation_ratio > 1.0) {
      text = base::counted(static_cast<std::size_t>(carried.tacks), "tack sees", "tacks see") +
             " " + base::fixed_text(carried.carry->stress_mpa, 1) + " MPa in the worst attitude (" +
             carried.attitude + "), " + base::fixed_text(carried.carry->permitted.stress_mpa, 1) +
             " are permitted by a simple rule; " +
             (carried.more_needed ? more_text(*carried.more_needed) : carried.no_more);
    }
    if (text.empty()) return;
    plan_.findings.push_back(Finding{Severity::warning,
                                     "plan.tacks.carry",
                                     "do the tacks of member " + member.id +
                                         " carry it through the turns? " + text +
                                         "; do not turn it on them",
                                     place_of(inputs_.weldment, "member/" + member.id),
                                     {}});
  }

  const Inputs& inputs_;
  const std::vector<StageWork>& stages_;
  std::vector<SeamToTack> seams_;
  plan::Plan& plan_;
};

}  // namespace

void assemble_tacks(const Inputs& inputs,
                    const std::vector<StageWork>& stages,
                    const std::vector<JointWork>& joints,
                    plan::Plan& plan) {
  Tacker(inputs, stages, seams_to_tack(inputs, joints, plan), plan).run();
}

}  // namespace seamturn::planner::detail
