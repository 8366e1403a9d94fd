// SPDX-License-Identifier: MIT
// Tacks where only some stretches of a seam are welded, or may be tacked.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "detail_layout.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::tack::detail {

namespace {

using base::rounding_mm;
using joint::Stretch;

/// Stretches cut at the corners, clear of them and of the ends.
std::vector<Stretch> cut_at_corners(const geom::Path& path, const LayoutRules& rules) {
  const std::vector<Stretch> legs = straight_legs(path);
  if (legs.empty()) return rules.within;
  std::vector<double> turns_mm = {0.0};  // a stretch of a closed path may run on round
  if (geom::is_closed(path)) {
    const double round_mm = geom::path_length_mm(path);
    turns_mm = {-round_mm, 0.0, round_mm};
  }
  std::vector<Stretch> cut;
  for (const Stretch& leg : legs) {
    for (const Stretch& one : rules.within) {
      for (const double on_mm : turns_mm) {
        const double from_mm = std::max(one.from_mm + on_mm, leg.from_mm + rules.clear_mm);
        const double to_mm = std::min(one.to_mm + on_mm, leg.to_mm - rules.clear_mm);
        if (to_mm > from_mm) cut.push_back({from_mm, to_mm});
      }
    }
  }
  return cut;
}

/// Where the middle of a tack may lie.
class Rooms {
 public:
  Rooms(const geom::Path& path, const LayoutRules& rules) {
    if (geom::is_closed(path)) round_mm_ = geom::path_length_mm(path);
    for (Stretch one : cut_at_corners(path, rules)) {
      const double spare_mm = one.to_mm - one.from_mm - rules.tack_mm;
      if (spare_mm < -rounding_mm) continue;
      if (round_mm_ > 0.0) {
        const double from_mm = geom::wrapped_station_mm(one.from_mm, round_mm_);
        one = {from_mm, from_mm + one.to_mm - one.from_mm};
      }
      const double half_mm = 0.5 * rules.tack_mm;
      const double middle_mm = 0.5 * (one.from_mm + one.to_mm);
      const bool for_one = spare_mm < rules.tack_mm + rules.clear_mm - rounding_mm;
      rooms_.push_back(for_one ? Stretch{middle_mm, middle_mm}
                               : Stretch{one.from_mm + half_mm, one.to_mm - half_mm});
    }
    std::sort(rooms_.begin(), rooms_.end(), [](const Stretch& a, const Stretch& b) {
      return a.from_mm < b.from_mm;
    });
  }

  [[nodiscard]] bool empty() const { return rooms_.empty(); }
  [[nodiscard]] double first_mm() const { return rooms_.front().from_mm; }
  [[nodiscard]] double last_mm() const { return rooms_.back().to_mm; }
  [[nodiscard]] double round_mm() const { return round_mm_; }  ///< 0: open

  [[nodiscard]] std::optional<double> at_or_after(double at_mm) const {
    for (const Stretch& room : rooms_) {
      if (room.to_mm >= at_mm - rounding_mm) return std::clamp(at_mm, room.from_mm, room.to_mm);
    }
    return std::nullopt;
  }
  [[nodiscard]] std::optional<double> at_or_before(double at_mm) const {
    for (auto room = rooms_.rbegin(); room != rooms_.rend(); ++room) {
      if (room->from_mm <= at_mm + rounding_mm) {
        return std::clamp(at_mm, room->from_mm, room->to_mm);
      }
    }
    return std::nullopt;
  }

 private:
  std::vector<Stretch> rooms_;
  double round_mm_ = 0.0;
};

/// Where the tack of an index would lie best, all round or from the first place to the last.
double wanted_mm(const Rooms& rooms, int index, int count, bool second_side) {
  if (rooms.round_mm() > 0.0) {
    return rooms.round_mm() * (index + (second_side ? 0.0 : 0.5)) / count;
  }
  const bool in_steps = second_side || count == 1;
  const double share = in_steps ? (index + 0.5) / count : static_cast<double>(index) / (count - 1);
  return rooms.first_mm() + share * (rooms.last_mm() - rooms.first_mm());
}

/// So many tacks, each as near as can be to where it is wanted and clear of the one before; none
/// where they have no room.
std::optional<std::vector<double>> laid(const Rooms& rooms, int count, const LayoutRules& rules) {
  const double step_mm = rules.tack_mm + rules.clear_mm;
  double bound_mm = rooms.last_mm();
  if (rooms.round_mm() > 0.0) {
    bound_mm = std::min(bound_mm, rooms.first_mm() + rooms.round_mm() - step_mm);
  }
  std::vector<double> latest_mm(static_cast<std::size_t>(count));
  for (auto late = latest_mm.rbegin(); late != latest_mm.rend(); ++late) {
    const std::optional<double> found = rooms.at_or_before(bound_mm);
    if (!found) return std::nullopt;
    *late = *found;
    bound_mm = *found - step_mm;
  }
  std::vector<double> centres;
  for (int i = 0; i < count; ++i) {
    const double least_mm = centres.empty() ? rooms.first_mm() : centres.back() + step_mm;
    const double most_mm = latest_mm[static_cast<std::size_t>(i)];
    const double from_mm = rooms.at_or_after(least_mm).value_or(most_mm);
    const double at_mm =
        std::max(from_mm, std::min(most_mm, wanted_mm(rooms, i, count, rules.second_side)));
    const double up_mm = rooms.at_or_after(at_mm).value_or(most_mm);
    const double down_mm = std::max(from_mm, rooms.at_or_before(at_mm).value_or(from_mm));
    const bool is_up = up_mm <= most_mm + rounding_mm && up_mm - at_mm < at_mm - down_mm;
    centres.push_back(is_up ? up_mm : down_mm);
  }
  return centres;
}

/// A single one leaves all of the seam bare.
double widest_mm(const std::vector<double>& centres, const Rooms& rooms) {
  if (centres.size() < 2) return std::numeric_limits<double>::infinity();
  double widest =
      rooms.round_mm() > 0.0 ? centres.front() + rooms.round_mm() - centres.back() : 0.0;
  for (std::size_t i = 1; i < centres.size(); ++i) {
    widest = std::max(widest, centres[i] - centres[i - 1]);
  }
  return widest;
}

base::Refusal too_short(const LayoutRules& rules) {
  double longest_mm = 0.0;
  for (const Stretch& one : rules.within) {
    longest_mm = std::max(longest_mm, one.to_mm - one.from_mm);
  }
  return {"tack.seam.too_short",
          "no tack of " + base::digits_text(rules.tack_mm) + " mm fits into what is welded, " +
              base::digits_text(longest_mm) + " mm at a time, " +
              base::digits_text(rules.clear_mm) +
              " mm clear of the seam's ends and corners; hold the parts by other seams "
              "(tacks=\"0\" here), or, where the responsible welding coordinator agrees, state "
              "shorter ones in the shop's <tacks length-min=\"...\"/>"};
}

}  // namespace

base::Outcome<std::vector<double>> centres_within_mm(const geom::Path& path,
                                                     const LayoutRules& rules) {
  const Rooms rooms(path, rules);
  if (rooms.empty()) return too_short(rules);
  std::vector<double> best;
  int count = rules.count.value_or(1);
  for (; const auto centres = laid(rooms, count, rules); ++count) {
    const double wide_mm = widest_mm(*centres, rooms);
    const bool is_better = best.empty() || wide_mm < widest_mm(best, rooms) - rounding_mm;
    if (is_better) best = *centres;
    const bool enough = count >= least_tacks(path) && wide_mm <= rules.pitch_mm + rounding_mm;
    if (rules.count || enough) break;
  }
  if (best.empty()) {
    int possible = count - 1;
    while (possible > 0 && !laid(rooms, possible, rules)) --possible;
    return no_room_for(count, possible);
  }
  for (double& centre_mm : best) {
    if (rooms.round_mm() > 0.0) centre_mm = geom::wrapped_station_mm(centre_mm, rooms.round_mm());
  }
  std::sort(best.begin(), best.end());
  return best;
}

}  // namespace seamturn::tack::detail
