// SPDX-License-Identifier: MIT
#include "seamturn/tack/tack_plan.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <variant>

#include "detail_layout.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/joint/groove_size.hpp"

namespace seamturn::tack {

namespace {

using base::digits_text;
using base::Severity;

using base::rounding_mm;

void require(const TackSeam& seam, const TackRules& rules) {
  SEAMTURN_REQUIRE(are_rules(rules));
  SEAMTURN_REQUIRE(base::is_positive(seam.thicker_mm), seam.thicker_mm);
  SEAMTURN_REQUIRE(base::is_positive(seam.yield_mpa), seam.yield_mpa);
  SEAMTURN_REQUIRE(base::is_positive(seam.weld_throat_mm), seam.weld_throat_mm);
  SEAMTURN_REQUIRE(base::is_positive(seam.root_run_mm), seam.root_run_mm);
  SEAMTURN_REQUIRE(base::is_amount(seam.gap_mm), seam.gap_mm);
  SEAMTURN_REQUIRE(base::is_amount(seam.drawn_gap_mm), seam.drawn_gap_mm);
  for (const joint::Stretch& one : seam.within) {
    SEAMTURN_REQUIRE(one.to_mm > one.from_mm, one.from_mm, one.to_mm);
  }
  SEAMTURN_REQUIRE(!seam.count || *seam.count > 0, seam.count.value_or(0));
  SEAMTURN_REQUIRE(!seam.length_mm || base::is_positive(*seam.length_mm),
                   seam.length_mm.value_or(0.0));
  SEAMTURN_REQUIRE(!seam.pitch_mm || base::is_positive(*seam.pitch_mm),
                   seam.pitch_mm.value_or(0.0));
}

void warn(TackPlan& plan, const char* code, std::string text) {
  plan.findings.push_back({Severity::warning, code, std::move(text), {}, {}});
}

void set_length(TackPlan& plan, const TackSeam& seam, const TackRules& rules) {
  plan.length = tack_length(seam.thicker_mm, seam.yield_mpa, rules);
  if (seam.length_mm) {
    plan.length.length_mm = *seam.length_mm;
    plan.length.status = base::Status::proposed;
    plan.length.why = "stated for this seam";
  }
  const double least_mm = joint::least_tack_length_mm(seam.thicker_mm);
  const bool longer = joint::needs_two_run_tacks(seam.thicker_mm, seam.yield_mpa);
  const double length_mm = plan.length.length_mm;
  if (length_mm >= least_mm - rounding_mm && (!longer || length_mm > least_mm + rounding_mm))
    return;
  warn(plan,
       "tack.length.short",
       "tacks of " + digits_text(length_mm) + " mm; EN 1011-2:2001 clause 13 asks for " +
           (longer ? "more than " : "at least ") + digits_text(least_mm) +
           " mm here: let the responsible welding coordinator agree");
}

void set_throat(TackPlan& plan, const TackSeam& seam, const TackRules& rules) {
  double throat_mm = rules.throat_mm ? rules.throat_mm->value : seam.root_run_mm;
  if (rules.throat_mm && throat_mm > seam.weld_throat_mm + rounding_mm) {
    warn(plan,
         "tack.throat.above_weld",
         "tacks of " + digits_text(throat_mm) + " mm would stand above the weld of " +
             digits_text(seam.weld_throat_mm) + " mm: laid as thick as the weld");
  }
  throat_mm = std::min(throat_mm, seam.weld_throat_mm);
  if (throat_mm < std::min(seam.root_run_mm, seam.weld_throat_mm) - rounding_mm) {
    warn(plan,
         "tack.throat.thin",
         "tacks of " + digits_text(throat_mm) + " mm are thinner than the root run of " +
             digits_text(seam.root_run_mm) + " mm: lay them as thick as that run");
  }
  plan.throat_mm = throat_mm;
  if (seam.gouged_from_it) {
    plan.fate = TackFate::gouged_out;
  } else {
    plan.fate =
        throat_mm <= seam.root_run_mm + rounding_mm ? TackFate::remelted : TackFate::ground_back;
  }
}

void place(TackPlan& plan, const geom::Path& path, const std::vector<double>& centres_mm) {
  const double half_mm = 0.5 * plan.length.length_mm;
  for (const double centre_mm : centres_mm) {
    const geom::Station station = geom::path_station(path, centre_mm);
    plan.tacks.push_back(
        {centre_mm - half_mm, centre_mm + half_mm, station.point, station.tangent});
  }
}

/// Stretches of the seam without the middle of a tack: between two, and at the ends of an open one.
struct Stretch {
  double from_mm = 0.0;
  double to_mm = 0.0;
  [[nodiscard]] double length_mm() const { return to_mm - from_mm; }
};

std::vector<Stretch> between_tacks(const std::vector<double>& centres_mm) {
  std::vector<Stretch> all;
  for (std::size_t i = 0; i + 1 < centres_mm.size(); ++i) {
    all.push_back({centres_mm[i], centres_mm[i + 1]});
  }
  return all;
}

bool holds_corner(const Stretch& stretch, const geom::Path& path) {
  const std::vector<double> corners = geom::corner_stations_mm(path);
  const double round_mm = geom::is_closed(path) ? geom::path_length_mm(path) : 0.0;
  return std::any_of(corners.begin(), corners.end(), [&](double corner_mm) {
    const auto inside = [&](double at_mm) {
      return at_mm > stretch.from_mm && at_mm < stretch.to_mm;
    };
    return inside(corner_mm) || inside(corner_mm + round_mm);
  });
}

/// How much further apart tacks of the second side may lie round a corner: the first side's are
/// there, one on each leg, as near to the corner as the rule lets.
double corner_allowance_mm(const Stretch& stretch,
                           const TackSeam& seam,
                           double tack_mm,
                           const TackRules& rules) {
  const bool allowed = seam.second_side && holds_corner(stretch, seam.path);
  return allowed ? tack_mm + 2.0 * rules.clear_of_ends_mm.value : 0.0;
}

void judge_pitch(TackPlan& plan,
                 const TackSeam& seam,
                 const std::vector<double>& centres_mm,
                 const TackRules& rules) {
  const double length_mm = geom::path_length_mm(seam.path);
  const double pitch_mm = seam.pitch_mm.value_or(rules.pitch_mm.value);
  std::vector<Stretch> stretches = between_tacks(centres_mm);
  const bool closed = geom::is_closed(seam.path);
  if (closed && centres_mm.size() > 1) {
    stretches.push_back({centres_mm.back(), centres_mm.front() + length_mm});
  }
  for (const Stretch& one : stretches) {
    plan.widest_pitch_mm = std::max(plan.widest_pitch_mm, one.length_mm());
  }
  if (!closed) {
    stretches.push_back({0.0, centres_mm.front()});
    stretches.push_back({centres_mm.back(), length_mm});
  }
  double widest_mm = 0.0;
  for (const Stretch& one : stretches) {
    const double more_mm = corner_allowance_mm(one, seam, plan.length.length_mm, rules);
    if (one.length_mm() > pitch_mm + more_mm + rounding_mm) {
      widest_mm = std::max(widest_mm, one.length_mm());
    }
  }
  if (widest_mm == 0.0) return;
  warn(plan,
       "tack.pitch.wide",
       digits_text(widest_mm) +
           " mm of the seam lie between two tacks, or from one to an end; at most " +
           digits_text(pitch_mm) + " mm are asked for: more or shorter tacks, or clamps there");
}

void judge_count(TackPlan& plan, const geom::Path& path) {
  const auto least = static_cast<std::size_t>(detail::least_tacks(path));
  if (plan.tacks.size() >= least) return;
  warn(plan,
       "tack.count.few",
       std::to_string(plan.tacks.size()) + " of the " + std::to_string(least) +
           " tacks a seam like this should have: hold the parts otherwise until it is welded");
}

}  // namespace

std::string_view tack_fate_name(TackFate fate) {
  constexpr std::string_view names[] = {"remelted", "ground back", "gouged out"};
  const auto index = static_cast<std::size_t>(fate);
  SEAMTURN_REQUIRE(index < std::size(names), index);
  return names[index];
}

base::Outcome<TackPlan> plan_tacks(const TackSeam& seam, const TackRules& rules) {
  require(seam, rules);
  const double widest_mm = seam.drawn_gap_mm + rules.gap_max_mm.value;
  if (seam.gap_mm > widest_mm + rounding_mm) {
    return base::Refusal{"tack.gap.too_wide",
                         "a gap of " + digits_text(seam.gap_mm) + " mm; tacks are laid up to " +
                             digits_text(widest_mm) + " mm (" + rules.gap_max_mm.source +
                             "): stop, refit the parts, and call the responsible welding "
                             "coordinator"};
  }
  TackPlan plan;
  set_length(plan, seam, rules);
  set_throat(plan, seam, rules);
  const double pitch_mm = seam.pitch_mm.value_or(rules.pitch_mm.value);
  const auto centres = detail::tack_centres_mm(seam.path,
                                               {plan.length.length_mm,
                                                pitch_mm,
                                                rules.clear_of_ends_mm.value,
                                                seam.count,
                                                seam.second_side,
                                                seam.within});
  if (!centres) return centres.error();
  place(plan, seam.path, *centres);
  judge_pitch(plan, seam, *centres, rules);
  judge_count(plan, seam.path);
  return plan;
}

}  // namespace seamturn::tack
