// SPDX-License-Identifier: MIT
// Do the tacks of what is fitted carry it through the turns of its stage?
#include <algorithm>
#include <functional>

#include "detail_assemble.hpp"
#include "detail_carried.hpp"
#include "detail_joints.hpp"
#include "detail_tacking.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

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

/// Members that hold together in a stage: one, or those welded to one another in the stages before.
struct Body {
  std::vector<const joint::Member*> members;  ///< in the order of the file
  std::optional<int> level;  ///< 0: held; others by how many joints they are away from what is held

  [[nodiscard]] bool has(std::string_view member) const {
    return std::any_of(members.begin(), members.end(), [&](const joint::Member* one) {
      return one->id == member;
    });
  }
};

/// The bodies of a stage, and how they hang on one another.
class Bodies {
 public:
  Bodies(const Inputs& inputs,
         const std::vector<StageWork>& stages,
         std::size_t k,
         const joint::Member& held)
      : joints_(inputs.weldment.joints) {
    for (const joint::Member* member : stages[k].present) all_.push_back({{member}, {}});
    for (const joint::Joint& joint : joints_) {
      if (stage_index(stages, joint) < k) merge(joint);
    }
    std::vector<std::size_t> reached = {*find(held.id)};
    all_[reached.front()].level = 0;
    for (std::size_t i = 0; i < reached.size(); ++i) {
      for (std::size_t other = 0; other < all_.size(); ++other) {
        if (all_[other].level || !are_joined(all_[reached[i]], all_[other])) continue;
        all_[other].level = *all_[reached[i]].level + 1;
        reached.push_back(other);
      }
    }
  }

  [[nodiscard]] const std::vector<Body>& all() const { return all_; }

  /// It and those further out that hang on it, all of their weight.
  [[nodiscard]] std::vector<const Body*> hanging_on(const Body& body) const {
    std::vector<const Body*> group = {&body};
    for (std::size_t i = 0; i < group.size(); ++i) {
      for (const Body& other : all_) {
        if (!hangs_on(other, *group[i])) continue;
        if (std::find(group.begin(), group.end(), &other) == group.end()) group.push_back(&other);
      }
    }
    return group;
  }

  /// Some of a group but its first hangs on another body as well, and counts there too.
  [[nodiscard]] bool is_shared(const std::vector<const Body*>& group) const {
    return std::any_of(group.begin() + 1, group.end(), [&](const Body* one) {
      return std::any_of(all_.begin(), all_.end(), [&](const Body& other) {
        const bool in_group = std::find(group.begin(), group.end(), &other) != group.end();
        return !in_group && hangs_on(*one, other);
      });
    });
  }

  [[nodiscard]] const Body* body_of(std::string_view member) const {
    const auto index = find(member);
    return index ? &all_[*index] : nullptr;
  }

 private:
  [[nodiscard]] std::optional<std::size_t> find(std::string_view member) const {
    for (std::size_t i = 0; i < all_.size(); ++i) {
      if (all_[i].has(member)) return i;
    }
    return std::nullopt;
  }

  void merge(const joint::Joint& joint) {
    auto first = find(joint.member_1);
    auto second = find(joint.member_2);
    if (!first || !second || *first == *second) return;
    if (*first > *second) std::swap(first, second);
    std::vector<const joint::Member*>& members = all_[*second].members;
    std::vector<const joint::Member*>& into = all_[*first].members;
    into.insert(into.end(), members.begin(), members.end());
    std::sort(into.begin(), into.end(), std::less<>());  // of one list: as the file has them
    all_.erase(all_.begin() + static_cast<std::ptrdiff_t>(*second));
  }

  [[nodiscard]] bool are_joined(const Body& a, const Body& b) const {
    return std::any_of(joints_.begin(), joints_.end(), [&](const joint::Joint& joint) {
      return (a.has(joint.member_1) && b.has(joint.member_2)) ||
             (a.has(joint.member_2) && b.has(joint.member_1));
    });
  }

  [[nodiscard]] bool hangs_on(const Body& outer, const Body& inner) const {
    return outer.level && inner.level && *outer.level == *inner.level + 1 &&
           are_joined(outer, inner);
  }

  const std::vector<joint::Joint>& joints_;
  std::vector<Body> all_;
};

class Carrier {
 public:
  Carrier(const Inputs& inputs,
          const std::vector<StageWork>& stages,
          const std::vector<LaidTacks>& laid,
          plan::Plan& plan)
      : inputs_(inputs), stages_(stages), laid_(laid), plan_(plan) {}

  void run() {
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

  void members_of(std::size_t k) {
    if (stages_[k].present.empty()) return;
    const std::vector<Attitude> attitudes = attitudes_of(plan_, k);
    if (attitudes.empty()) return;
    const Bodies bodies(inputs_, stages_, k, held_member(plan_.cell->positioner, stages_[k]));
    for (const Body& body : bodies.all()) {
      if (body.level.value_or(0) > 0) carry(k, bodies, body, attitudes);
    }
  }

  void carry(std::size_t k,
             const Bodies& bodies,
             const Body& body,
             const std::vector<Attitude>& attitudes) {
    plan::CarriedMember carried;
    carried.stage = plan_.stages[k].id;
    carried.member = body.members.front()->id;
    carried.site_factor = inputs_.weldment.tacking->site_factor_ratio;
    const std::vector<const Body*> hanging = bodies.hanging_on(body);
    carried.shared = bodies.is_shared(hanging);
    std::vector<joint::Member> group;
    for (const Body* one : hanging) {
      for (const joint::Member* member : one->members) {
        group.push_back(*member);
        if (member == body.members.front()) continue;
        (one == &body ? carried.welded : carried.with).push_back(member->id);
      }
    }
    const joint::Weight weight = joint::total_weight(group);
    carried.mass_kg = weight.mass_kg;
    std::vector<tack::HeldTack> tacks;
    std::vector<tack::TackSeam> seams;
    WeakestSteel weakest;
    for (const LaidTacks& laid : laid_) {
      const joint::Joint& joint = *laid.joint->joint;
      const bool first = body.has(joint.member_1);
      if (first == body.has(joint.member_2)) continue;
      const Body* other = bodies.body_of(first ? joint.member_2 : joint.member_1);
      if (other == nullptr || !other->level || *other->level >= *body.level) continue;
      const std::vector<tack::HeldTack> held = tack::held_tacks(laid.plan);
      tacks.insert(tacks.end(), held.begin(), held.end());
      seams.push_back(laid.seam);
      weakest.add(*laid.joint);
    }
    carried.tacks = tacks.size();
    if (tacks.empty()) {
      carried.refused = "no tack holds it: its joints have no place, or no tack fits on them";
    } else {
      judge(weight, tacks, seams, weakest, attitudes, carried);
    }
    tell(carried);
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

  /// "stage box: do the tacks of member bot carry it", "of members bot, top, welded together, ...".
  [[nodiscard]] static std::string question(const plan::CarriedMember& carried) {
    std::vector<std::string> members = {carried.member};
    members.insert(members.end(), carried.welded.begin(), carried.welded.end());
    const std::string who = carried.welded.empty() ? "member " + carried.member + " carry it"
                                                   : "members " + base::listed(members) +
                                                         ", welded together before, carry them";
    return (carried.stage.empty() ? "" : "stage " + carried.stage + ": ") + "do the tacks of " +
           who + " through the turns? ";
  }

  void tell(const plan::CarriedMember& carried) {
    std::string text;
    if (!carried.carry) {
      text = carried.refused;
    } else if (carried.carry->utilisation_ratio > 1.0) {
      text = base::counted(static_cast<std::size_t>(carried.tacks), "tack sees", "tacks see") +
             " " + base::fixed_text(carried.carry->stress_mpa, 1) + " MPa in the worst attitude (" +
             carried.attitude + "), " + base::fixed_text(carried.carry->permitted.stress_mpa, 1) +
             " are permitted by a simple rule; " +
             (carried.more_needed
                  ? std::to_string(*carried.more_needed) +
                        (*carried.more_needed == 1 ? " more is needed" : " more are needed")
                  : carried.no_more);
    }
    if (text.empty()) return;
    plan_.findings.push_back(Finding{Severity::warning,
                                     "plan.tacks.carry",
                                     question(carried) + text + "; do not turn it on them",
                                     place_of(inputs_.weldment, "member/" + carried.member),
                                     {}});
  }

  const Inputs& inputs_;
  const std::vector<StageWork>& stages_;
  const std::vector<LaidTacks>& laid_;
  plan::Plan& plan_;
};

}  // namespace

void assemble_carried(const Inputs& inputs,
                      const std::vector<StageWork>& stages,
                      const std::vector<LaidTacks>& laid,
                      plan::Plan& plan) {
  Carrier(inputs, stages, laid, plan).run();
}

}  // namespace seamturn::planner::detail
