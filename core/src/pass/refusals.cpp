// SPDX-License-Identifier: MIT
// What is said when no stack can be laid: the nearest miss, in numbers a welder can act on.
#include <algorithm>
#include <cmath>

#include "pass/detail_rows.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::pass {
namespace {

using base::fixed_text;
using process::PassRole;

// Welders speak of travel in cm/min.
[[nodiscard]] std::string travel_text(double travel_mm_s) {
  return fixed_text(travel_mm_s * 6.0, 1) + " cm/min";
}

[[nodiscard]] std::string pass_text(const Miss& miss) {
  const std::string role(process::role_name(miss.role));
  const std::string area = fixed_text(miss.area_mm2, 1) + " mm2";
  return miss.passes == 1
             ? "one " + role + " pass of " + area
             : std::to_string(miss.passes) + " passes of " + area + ", the " + role + " one";
}

[[nodiscard]] std::string where_text(const StackRulesRequest& request) {
  return "wire " + request.wire->id + " in position " +
         std::string(process::position_name(request.position));
}

[[nodiscard]] std::string barred_text(const Miss& miss) {
  return miss.barred_by.empty()
             ? std::string()
             : "; a larger bead is barred by limit " + std::string(miss.barred_by);
}

/// A heat input beside the band it misses: so many decimals that it does not read as its border.
[[nodiscard]] std::string heat_and_band_text(const StackRulesRequest& request, double kj_mm) {
  std::optional<double> low = request.heat_input_min_kj_mm;
  std::optional<double> high = request.heat_input_max_kj_mm;
  if (low) *low *= 1.0 + request.margin_ratio;
  if (high) *high *= 1.0 - request.margin_ratio;
  constexpr int most_decimals = 6;
  int decimals = 2;
  const auto text = [&](double value) { return fixed_text(value, decimals); };
  const auto reads_as = [&](const std::optional<double>& border) {
    return border && text(kj_mm) == text(*border);
  };
  while (decimals < most_decimals && (reads_as(low) || reads_as(high))) ++decimals;
  const std::string brings = text(kj_mm) + " kJ/mm, ";
  if (low && high) {
    return brings + text(*low) + " to " + text(*high) + " kJ/mm are permitted";
  }
  return brings + (low ? "at least " + text(*low) + " kJ/mm is due"
                       : "at most " + text(high.value_or(0.0)) + " kJ/mm is permitted");
}

[[nodiscard]] base::Refusal heat_refusal(const StackRulesRequest& request,
                                         const Miss& miss,
                                         const RowRange& range) {
  const double travel_mm_s = range.travel_mm_s(miss.area_mm2);
  return {"pass.heat_input.cannot_close",
          pass_text(miss) + ": settings " + range.row->id + " at " + travel_text(travel_mm_s) +
              " bring " + heat_and_band_text(request, range.heat_kw / travel_mm_s) + " (" +
              where_text(request) + ")" + barred_text(miss)};
}

[[nodiscard]] base::Refusal travel_refusal(const StackRulesRequest& request,
                                           const Miss& miss,
                                           const RowRange& range) {
  const double travel_mm_s = range.travel_mm_s(miss.area_mm2);
  const process::LinkedSettings& row = *range.row;
  const bool fast = travel_mm_s > range.fastest_mm_s;
  const double bound_mm_s = fast ? range.fastest_mm_s : range.slowest_mm_s;
  return {"pass.travel.cannot_close",
          pass_text(miss) + ": needs " + travel_text(travel_mm_s) + ", row " + row.id + " allows " +
              fixed_text(range.slowest_mm_s * 6.0, 1) + ".." + travel_text(range.fastest_mm_s) +
              ", " + fixed_text(std::abs(travel_mm_s / bound_mm_s - 1.0) * 100.0, 1) + " % too " +
              (fast ? "fast" : "slow") + " (" + where_text(request) + ")" +
              (fast ? barred_text(miss) : std::string()) +
              "; give a row of other feed, another size or another position"};
}

[[nodiscard]] base::Refusal missing_refusal(const StackRulesRequest& request, PassRole role) {
  std::string there;
  for (const process::LinkedSettings& row : request.settings) {
    if (row.wire != request.wire->id) {
      continue;
    }
    there += there.empty() ? "" : ", ";
    there += row.id + " (" + std::string(process::role_name(row.role));
    for (const process::WeldPosition position : row.positions) {
      there += ' ';
      there += process::position_name(position);
    }
    there += ')';
  }
  return {"pass.settings.none",
          "no settings for role " + std::string(process::role_name(role)) + " with " +
              where_text(request) + "; rows of this wire: " + (there.empty() ? "none" : there)};
}

// How far an area lies outside a range, as a ratio above 1.
[[nodiscard]] double distance_to(double area_mm2, double least_mm2, double most_mm2) {
  return std::max({1.0, least_mm2 / area_mm2, area_mm2 / most_mm2});
}

}  // namespace

void Misses::add(const Miss& miss) {
  // A bead some row lays is no miss: the limit that made it so small does not keep it from closing.
  if (miss.area_mm2 <= 0.0 || table_.pick(miss.role, miss.area_mm2) != nullptr) {
    return;
  }
  for (const RowRange& range : table_.rows(miss.role)) {
    const double distance = distance_to(miss.area_mm2, range.least_mm2, range.most_mm2);
    if (row_ == nullptr || distance < distance_) {
      nearest_ = miss;
      row_ = &range;
      distance_ = distance;
    }
  }
}

void Misses::add_missing_role(PassRole role) {
  if (!missing_) {
    missing_ = role;
  }
}

void Misses::add_barred(const Barred& barred) {
  if (!barred_) {
    barred_ = barred;
  }
}

base::Refusal Misses::refusal(const StackRulesRequest& request) const {
  base::Refusal refusal = nearest_refusal(request);
  if (request.margin_ratio > 0.0) {
    refusal.text += "; every limit is kept with a margin of " +
                    fixed_text(request.margin_ratio * 100.0, 1) + " %, the values told include it";
  }
  return refusal;
}

base::Refusal Misses::nearest_refusal(const StackRulesRequest& request) const {
  if (barred_ && !missing_ && row_ == nullptr) {
    return {"pass.limit.cannot_close",
            "the " + std::string(process::role_name(barred_->role)) + " layer is " +
                fixed_text(barred_->thickness_mm, 1) + " mm thick at least, limit " +
                std::string(barred_->id) + " allows " + fixed_text(barred_->most_mm, 1) + " mm (" +
                where_text(request) + ")"};
  }
  if (missing_) {
    return missing_refusal(request, *missing_);
  }
  if (row_ == nullptr) {
    return {"pass.layers.cannot_close",
            "no cut into layers keeps all limits of a pass (" + where_text(request) +
                "); give another size, preparation or position"};
  }
  const double area_mm2 = nearest_.area_mm2;
  const bool travel_closes =
      distance_to(area_mm2, row_->travel_least_mm2, row_->travel_most_mm2) <= 1.0 + 1e-9;
  return travel_closes ? heat_refusal(request, nearest_, *row_)
                       : travel_refusal(request, nearest_, *row_);
}

}  // namespace seamturn::pass
