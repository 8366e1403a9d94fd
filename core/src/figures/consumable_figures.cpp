// SPDX-License-Identifier: MIT
#include "detail_figures.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/process/burn_off.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/process/spool.hpp"

namespace seamturn::figures::detail {

namespace {

using base::mm_per_m;
constexpr double mm_s_per_m_min = mm_per_m / 60.0;

/// Adds a bad value for every key given that is not above zero.
void require_positive(Arguments& arguments, std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    if (arguments.has(key) && !(arguments.number(key) > 0.0)) {
      arguments.add_bad_value(std::string(key) + " must be above zero");
    }
  }
}

process::Wire plain_wire(const Arguments& arguments) {
  process::Wire wire;
  wire.diameter_mm = arguments.number("wire");
  wire.linear_mass_kg_m = arguments.find_number("linear-mass");
  return wire;
}

int count_given(const Arguments& arguments, std::initializer_list<std::string_view> keys) {
  int count = 0;
  for (const std::string_view key : keys) count += arguments.has(key) ? 1 : 0;
  return count;
}

/// Whether a trial is given; half a trial is wrong usage.
bool has_trial(Arguments& arguments) {
  const int given = count_given(arguments, {"current-1", "feed-1", "current-2", "feed-2"});
  if (given != 0 && given != 4) {
    arguments.add_usage("a trial takes all of current-1= feed-1= current-2= feed-2=");
  }
  if (given == 0 && arguments.has("trial-length")) {
    arguments.add_usage("trial-length= needs the two trial points");
  }
  return given == 4;
}

base::Outcome<process::BurnOffLaw> law_of(const Arguments& arguments, bool trial) {
  const process::Wire wire = plain_wire(arguments);
  if (!trial) return process::remembered_burn_off(wire);
  return process::fit_burn_off(wire,
                               {arguments.number("current-1"), arguments.number("feed-1")},
                               {arguments.number("current-2"), arguments.number("feed-2")},
                               arguments.number("trial-length", arguments.number("extension")));
}

}  // namespace

Answer burn_off_figure(Arguments& arguments) {
  const bool trial = has_trial(arguments);
  if (count_given(arguments, {"current", "feed"}) != 1) {
    arguments.add_usage("give current= or feed=, one of them");
  }
  require_positive(arguments,
                   {"wire",
                    "extension",
                    "current",
                    "feed",
                    "current-1",
                    "feed-1",
                    "current-2",
                    "feed-2",
                    "trial-length",
                    "linear-mass"});
  const double ratio = arguments.number("extrapolation", process::burn_off_extrapolation_ratio);
  if (!(ratio >= 0.0 && ratio < 1.0)) {
    arguments.add_bad_value("extrapolation lies from 0 up to below 1");
  }
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<process::BurnOffLaw> law = law_of(arguments, trial);
  if (!law) return law.error();
  const double extension_mm = arguments.number("extension");
  const bool forward = arguments.has("current");
  const base::Outcome<process::BurnOff> result =
      forward ? process::burn_off_at_current(*law, extension_mm, arguments.number("current"), ratio)
              : process::burn_off_at_feed(*law, extension_mm, arguments.number("feed"), ratio);
  if (!result) return result.error();
  const double feed_m_min = result->feed_mm_s / mm_s_per_m_min;
  ResultMaker made("burn-off");
  if (forward) {
    made.principal(feed_m_min, "m/min");
  } else {
    made.principal(result->current_a, "A");
  }
  return made.value("feed_m_min", feed_m_min, "m/min")
      .value("current_a", result->current_a, "A")
      .value("melt_off_kg_h", result->melt_off_kg_h, "kg/h")
      .value("a_kg_h_a", law->a_kg_h_a, "kg/(h A)")
      .value("b_kg_h_a2_mm", law->b_kg_h_a2_mm, "kg/(h A2 mm)")
      .value("coefficients", std::string(base::status_name(law->citation.status)))
      .findings(result->findings)
      .done();
}

Answer spool_figure(Arguments& arguments) {
  if (count_given(arguments, {"used", "metal", "length"}) != 1) {
    arguments.add_usage("give one of used=, metal= with efficiency=, or length=");
  }
  if (arguments.has("metal") != arguments.has("efficiency")) {
    arguments.add_usage("metal= and efficiency= go together");
  }
  require_positive(arguments, {"wire", "efficiency", "linear-mass", "spool"});
  if (arguments.number("efficiency") > 1.0) {
    arguments.add_bad_value("efficiency lies above 0 and up to 1 (100 %)");
  }
  if (!arguments.good()) return FigureResult{};
  process::SpoolUse use;
  use.linear_mass_kg_m = process::wire_linear_mass_kg_m(plain_wire(arguments));
  use.spool_kg = arguments.number("spool", process::usual_spool_kg);
  use.leftover_m = arguments.number("leftover", process::usual_leftover_m * mm_per_m) / mm_per_m;
  use.started_m = arguments.number("started") / mm_per_m;
  if (arguments.has("used")) {
    use.wire_needed_kg = arguments.number("used");
  } else if (arguments.has("metal")) {
    use.wire_needed_kg = arguments.number("metal") / arguments.number("efficiency");
  } else {
    use.wire_needed_kg = arguments.number("length") / mm_per_m * use.linear_mass_kg_m;
  }
  const base::Outcome<process::SpoolPlan> plan = process::plan_spools(use);
  if (!plan) return plan.error();
  return ResultMaker("spool")
      .principal(static_cast<double>(plan->changes), "")
      .value("changes", static_cast<double>(plan->changes), "")
      .value("spool_m", plan->spool_m, "m")
      .value("needed_m", plan->needed_m, "m")
      .value("needed_kg", use.wire_needed_kg, "kg")
      .value("rest_m", plan->rest_m, "m")
      .value("thrown_m", plan->thrown_m, "m")
      .done();
}

}  // namespace seamturn::figures::detail
