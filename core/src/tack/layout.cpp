// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <string>
#include <variant>

#include "detail_layout.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::tack::detail {

namespace {

using base::digits_text;
using base::Refusal;

using base::rounding_mm;
using base::rounding_ratio;
/// A straight part between ends or corners (an arc is one), and the tacks it has got so far.
struct Leg {
  double from_mm = 0.0;
  double to_mm = 0.0;
  int capacity = 0;
  int count = 0;
  [[nodiscard]] double length_mm() const { return to_mm - from_mm; }
};

/// From the first centre a leg can have to the last; below 0: it can have none.
double centre_range_mm(const Leg& leg, const LayoutRules& rules) {
  return leg.length_mm() - 2.0 * rules.clear_mm - rules.tack_mm;
}

int capacity_of(const Leg& leg, const LayoutRules& rules) {
  const double range_mm = centre_range_mm(leg, rules);
  if (range_mm < -rounding_mm) return 0;
  const double steps = std::floor(range_mm / (rules.tack_mm + rules.clear_mm) + rounding_ratio);
  // The second side has its tacks in the middle of as many steps.
  return rules.second_side ? std::max(1, static_cast<int>(steps)) : 1 + static_cast<int>(steps);
}

std::vector<Leg> legs_of(const geom::Path& path, const LayoutRules& rules) {
  std::vector<Leg> legs;
  for (const joint::Stretch& straight : straight_legs(path)) {
    legs.push_back({straight.from_mm, straight.to_mm, 0, 0});
    legs.back().capacity = capacity_of(legs.back(), rules);
  }
  return legs;
}

/// How far apart tacks lie on a leg; with one: how long the leg is.
double spacing_mm(const Leg& leg, const LayoutRules& rules) {
  if (leg.count <= 1) return leg.length_mm();
  return centre_range_mm(leg, rules) / (rules.second_side ? leg.count : leg.count - 1);
}

/// The leg that needs the next tack most: a bare one first, then the widest spacing.
Leg* neediest(std::vector<Leg>& legs, const LayoutRules& rules) {
  Leg* best = nullptr;
  for (Leg& leg : legs) {
    if (leg.count >= leg.capacity) continue;
    const bool barer = best != nullptr && (leg.count == 0) != (best->count == 0);
    if (best == nullptr || (barer && leg.count == 0) ||
        (!barer && spacing_mm(leg, rules) > spacing_mm(*best, rules) + rounding_mm)) {
      best = &leg;
    }
  }
  return best;
}

constexpr int least_on_circle = 4, least_on_leg_seam = 2;

bool is_enough(const Leg& next, int total, const LayoutRules& rules) {
  if (rules.count) return total >= *rules.count;
  return total >= least_on_leg_seam && next.count > 0 &&
         spacing_mm(next, rules) <= rules.pitch_mm + rounding_mm;
}

void add_centres(std::vector<double>& centres, const Leg& leg, const LayoutRules& rules) {
  const double first_mm = leg.from_mm + rules.clear_mm + 0.5 * rules.tack_mm;
  const double range_mm = centre_range_mm(leg, rules);
  for (int i = 0; i < leg.count; ++i) {
    const bool in_steps = rules.second_side || leg.count == 1;
    const double share =
        in_steps ? (i + 0.5) / leg.count : static_cast<double>(i) / (leg.count - 1);
    centres.push_back(first_mm + share * range_mm);
  }
}

base::Outcome<std::vector<double>> on_circle(double length_mm, const LayoutRules& rules) {
  const double by_pitch = std::ceil(length_mm / rules.pitch_mm - rounding_ratio);
  const int count = rules.count.value_or(std::max(least_on_circle, static_cast<int>(by_pitch)));
  const int possible =
      static_cast<int>(std::floor(length_mm / (rules.tack_mm + rules.clear_mm) + rounding_ratio));
  if (count > possible) {
    if (rules.count) return no_room_for(count, possible);
    return Refusal{
        "tack.seam.too_short",
        "a circle of " + digits_text(length_mm) + " mm has no room for " + std::to_string(count) +
            " tacks of " + digits_text(rules.tack_mm) +
            " mm; where the responsible welding coordinator agrees, state shorter ones in the "
            "shop's <tacks length-min=\"...\"/>"};
  }
  std::vector<double> centres;
  for (int i = 0; i < count; ++i) {
    centres.push_back(length_mm * (i + (rules.second_side ? 0.0 : 0.5)) / count);
  }
  return centres;
}

}  // namespace

Refusal no_room_for(int count, int possible) {
  return {"tack.count.no_room",
          base::counted(static_cast<std::size_t>(count), "tack is", "tacks are") +
              " asked for and only " + std::to_string(possible) +
              " of that length fit clear of ends, corners and one another; ask for fewer or "
              "shorter ones (the shop's <tacks length-min=\"...\"/>)"};
}

int least_tacks(const geom::Path& path) {
  return std::holds_alternative<geom::CirclePath>(path) ? least_on_circle : least_on_leg_seam;
}

std::vector<joint::Stretch> straight_legs(const geom::Path& path) {
  if (std::holds_alternative<geom::CirclePath>(path)) return {};
  const double length_mm = geom::path_length_mm(path);
  std::vector<double> ends = geom::corner_stations_mm(path);
  if (geom::is_closed(path)) {
    ends.push_back(ends.front() + length_mm);
  } else {
    ends.insert(ends.begin(), 0.0);
    ends.push_back(length_mm);
  }
  std::vector<joint::Stretch> legs;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) legs.push_back({ends[i], ends[i + 1]});
  return legs;
}

base::Outcome<std::vector<double>> tack_centres_mm(const geom::Path& path,
                                                   const LayoutRules& rules) {
  if (!rules.within.empty()) return centres_within_mm(path, rules);
  if (std::holds_alternative<geom::CirclePath>(path)) {
    return on_circle(geom::path_length_mm(path), rules);
  }
  std::vector<Leg> legs = legs_of(path, rules);
  int total = 0;
  Leg* next = neediest(legs, rules);
  if (next == nullptr) {
    return Refusal{
        "tack.seam.too_short",
        "no tack of " + digits_text(rules.tack_mm) + " mm fits " + digits_text(rules.clear_mm) +
            " mm clear of ends and corners; hold the parts by other seams (tacks=\"0\" here), or, "
            "where the responsible welding coordinator agrees, state shorter ones in the "
            "shop's <tacks length-min=\"...\"/>"};
  }
  while (next != nullptr && !is_enough(*next, total, rules)) {
    ++next->count;
    ++total;
    next = neediest(legs, rules);
  }
  if (rules.count && total < *rules.count) return no_room_for(*rules.count, total);
  std::vector<double> centres;
  for (const Leg& leg : legs) add_centres(centres, leg, rules);
  if (geom::is_closed(path)) {  // the last leg runs on over the start
    const double length_mm = geom::path_length_mm(path);
    for (double& centre_mm : centres) centre_mm = geom::wrapped_station_mm(centre_mm, length_mm);
    std::sort(centres.begin(), centres.end());
  }
  return centres;
}

}  // namespace seamturn::tack::detail
