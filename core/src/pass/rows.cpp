// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <limits>

#include "pass/detail_rows.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::pass {
namespace {

using process::LinkedSettings;
using process::PassRole;

using base::rounding_ratio;

[[nodiscard]] bool serves(const LinkedSettings& row,
                          const StackRulesRequest& request,
                          PassRole role) {
  return row.role == role && row.wire == request.wire->id &&
         std::find(row.positions.begin(), row.positions.end(), request.position) !=
             row.positions.end();
}

[[nodiscard]] bool lays(const RowRange& range, double area_mm2) {
  return area_mm2 >= range.least_mm2 * (1.0 - rounding_ratio) &&
         area_mm2 <= range.most_mm2 * (1.0 + rounding_ratio);
}

[[nodiscard]] RowRange row_range(const LinkedSettings& row,
                                 double efficiency_ratio,
                                 const StackRulesRequest& request) {
  const double above = 1.0 + request.margin_ratio;
  const double below = 1.0 - request.margin_ratio;
  RowRange range;
  range.row = &row;
  range.efficiency_ratio = efficiency_ratio;
  range.laid_mm3_s = process::bead_area_mm2(*request.wire, row.feed_mm_s, 1.0);
  range.heat_kw = efficiency_ratio * row.voltage_v * row.current_a * 1e-3;
  range.slowest_mm_s = row.travel_min_mm_s * above;
  range.fastest_mm_s = row.travel_max_mm_s * below;
  range.preferred_mm2 = range.laid_mm3_s / row.travel_preferred_mm_s;
  range.travel_least_mm2 = range.laid_mm3_s / range.fastest_mm_s;
  range.travel_most_mm2 = range.laid_mm3_s / range.slowest_mm_s;
  // Heat input grows with the bead: heat = power / travel, travel = laid / area.
  const double mm2_per_kj_mm = range.laid_mm3_s / range.heat_kw;
  range.least_mm2 = std::max(range.travel_least_mm2,
                             request.heat_input_min_kj_mm.value_or(0.0) * above * mm2_per_kj_mm);
  range.most_mm2 = range.travel_most_mm2;
  if (request.heat_input_max_kj_mm) {
    range.most_mm2 =
        std::min(range.most_mm2, *request.heat_input_max_kj_mm * below * mm2_per_kj_mm);
  }
  return range;
}

}  // namespace

base::Outcome<RowTable> RowTable::make(const StackRulesRequest& request) {
  RowTable table;
  table.by_time_ = request.aim == StackAim::least_arc_time;
  const auto append = [&](PassRole role) -> std::optional<base::Refusal> {
    for (const LinkedSettings& row : request.settings) {
      if (serves(row, request, role)) {
        const auto efficiency = heat::arc_efficiency_ratio(row.process);
        if (!efficiency) {
          return efficiency.error();
        }
        table.rows_.push_back(row_range(row, *efficiency, request));
      }
    }
    return std::nullopt;
  };
  for (const PassRole role :
       {PassRole::tack, PassRole::root, PassRole::fill, PassRole::cap, PassRole::single}) {
    const std::size_t first = table.rows_.size();
    table.first_[static_cast<std::size_t>(role)] = first;
    if (auto refusal = append(role)) {
      return *std::move(refusal);
    }
    if (role == PassRole::single) {
      table.own_single_ = table.rows_.size() > first;
      if (!table.own_single_) {
        if (auto refusal = append(PassRole::fill)) {
          return *std::move(refusal);
        }
      }
    }
  }
  table.first_.back() = table.rows_.size();
  table.find_extremes();
  return table;
}

void RowTable::find_extremes() {
  for (std::size_t role = 0; role < extremes_.size(); ++role) {
    for (const RowRange& range : rows(static_cast<PassRole>(role))) {
      Extremes& extremes = extremes_[role];
      extremes.least_mm2 = std::min(extremes.least_mm2, range.least_mm2);
      extremes.most_mm2 = std::max(extremes.most_mm2, range.most_mm2);
      most_mm3_s_ = std::max(most_mm3_s_, range.laid_mm3_s);
    }
  }
}

const RowRange* RowTable::pick(PassRole role, double area_mm2) const {
  const RowRange* best = nullptr;
  double best_departure = 0.0;
  for (const RowRange& range : rows(role)) {
    if (!lays(range, area_mm2)) {
      continue;
    }
    const double departure = range.departure(area_mm2);
    const bool same_speed = !by_time_ || best == nullptr || range.laid_mm3_s == best->laid_mm3_s;
    if (best == nullptr ||
        (same_speed ? departure < best_departure : range.laid_mm3_s > best->laid_mm3_s)) {
      best = &range;
      best_departure = departure;
    }
  }
  return best;
}

std::optional<double> RowTable::nearest_mm2(PassRole role,
                                            double wanted_mm2,
                                            double most_mm2) const {
  std::optional<double> nearest;
  for (const RowRange& range : rows(role)) {
    const double most = std::min(range.most_mm2, most_mm2);
    if (range.least_mm2 <= most) {
      const double area_mm2 = std::clamp(wanted_mm2, range.least_mm2, most);
      if (!nearest || std::abs(area_mm2 - wanted_mm2) < std::abs(*nearest - wanted_mm2)) {
        nearest = area_mm2;
      }
    }
  }
  return nearest;
}

}  // namespace seamturn::pass
