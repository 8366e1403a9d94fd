// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <limits>

#include "pass/detail_rows.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::pass {
namespace {

using process::LinkedSettings;
using process::PassRole;

// An area at the very edge of a row's range is within it, whatever the rounding.
constexpr double rounding_ratio = 1e-9;

[[nodiscard]] bool serves(const LinkedSettings& row, const StackRequest& request, PassRole role) {
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
                                 const StackRequest& request) {
  RowRange range;
  range.row = &row;
  range.laid_mm3_s = process::bead_area_mm2(*request.wire, row.feed_mm_s, 1.0);
  range.heat_kw = efficiency_ratio * row.voltage_v * row.current_a * 1e-3;
  range.preferred_mm2 = range.laid_mm3_s / row.travel_preferred_mm_s;
  range.travel_least_mm2 = range.laid_mm3_s / row.travel_max_mm_s;
  range.travel_most_mm2 = range.laid_mm3_s / row.travel_min_mm_s;
  // Heat input grows with the bead: heat = power / travel, travel = laid / area.
  const double mm2_per_kj_mm = range.laid_mm3_s / range.heat_kw;
  range.least_mm2 =
      std::max(range.travel_least_mm2, request.heat_input_min_kj_mm.value_or(0.0) * mm2_per_kj_mm);
  range.most_mm2 = range.travel_most_mm2;
  if (request.heat_input_max_kj_mm) {
    range.most_mm2 = std::min(range.most_mm2, *request.heat_input_max_kj_mm * mm2_per_kj_mm);
  }
  return range;
}

}  // namespace

double RowRange::departure(double area_mm2) const {
  return std::abs(travel_mm_s(area_mm2) / row->travel_preferred_mm_s - 1.0);
}

base::Outcome<RowTable> RowTable::make(const StackRequest& request) {
  RowTable table;
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
  return table;
}

std::span<const RowRange> RowTable::rows(PassRole role) const {
  const auto index = static_cast<std::size_t>(role);
  return std::span(rows_).subspan(first_[index], first_[index + 1] - first_[index]);
}

const RowRange* RowTable::pick(PassRole role, double area_mm2) const {
  const RowRange* best = nullptr;
  for (const RowRange& range : rows(role)) {
    if (lays(range, area_mm2) &&
        (best == nullptr || range.departure(area_mm2) < best->departure(area_mm2))) {
      best = &range;
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

double RowTable::least_mm2(PassRole role) const {
  double least = std::numeric_limits<double>::infinity();
  for (const RowRange& range : rows(role)) {
    least = std::min(least, range.least_mm2);
  }
  return least;
}

}  // namespace seamturn::pass
