// SPDX-License-Identifier: MIT
#include <algorithm>
#include <string>

#include "seamturn/base/error.hpp"
#include "seamturn/tack/carry.hpp"

namespace seamturn::tack {

namespace {

std::vector<HeldTack> all_held(const std::vector<TackPlan>& plans) {
  std::vector<HeldTack> all;
  for (const TackPlan& plan : plans) {
    const std::vector<HeldTack> held = held_tacks(plan);
    all.insert(all.end(), held.begin(), held.end());
  }
  return all;
}

/// How far apart tacks lie; one alone is the furthest from any other.
double apart_mm(const TackSeam& seam, const TackPlan& plan) {
  return plan.tacks.size() > 1 ? plan.widest_pitch_mm : geom::path_length_mm(seam.path);
}

/// One more tack on the seam where they lie furthest apart and there is room. False: nowhere.
bool add_one(std::vector<TackPlan>& plans,
             const std::vector<TackSeam>& seams,
             const TackRules& rules) {
  std::vector<std::size_t> order(seams.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return apart_mm(seams[a], plans[a]) > apart_mm(seams[b], plans[b]);
  });
  for (const std::size_t i : order) {
    TackSeam seam = seams[i];
    seam.count = static_cast<int>(plans[i].tacks.size()) + 1;
    const base::Outcome<TackPlan> plan = plan_tacks(seam, rules);
    if (!plan) continue;
    plans[i] = *plan;
    return true;
  }
  return false;
}

}  // namespace

base::Outcome<MoreTacks> more_tacks_needed(const std::vector<TackSeam>& seams,
                                           const TackRules& rules,
                                           const CarriedPart& part,
                                           int most) {
  SEAMTURN_REQUIRE(!seams.empty());
  SEAMTURN_REQUIRE(most >= 0, most);
  std::vector<TackPlan> plans;
  for (const TackSeam& seam : seams) {
    const base::Outcome<TackPlan> plan = plan_tacks(seam, rules);
    if (!plan) return plan.error();
    plans.push_back(*plan);
  }
  int more = 0;
  for (; more <= most; ++more) {
    const base::Outcome<Carry> carried = carry(all_held(plans), part);
    if (!carried) return carried.error();
    if (carried->utilisation_ratio <= 1.0) return MoreTacks{more, plans, *carried};
    if (!add_one(plans, seams, rules)) break;
  }
  return base::Refusal{
      "tack.carry.not_by_more",
      (more == 0 ? std::string("no seam has room for another tack")
                 : std::to_string(std::min(more, most)) + " more tacks do not carry the part") +
          ": longer or thicker ones, brackets, or "
          "hold the part by other means until it is welded"};
}

}  // namespace seamturn::tack
