// SPDX-License-Identifier: MIT
#include "seamturn/heat/heat_input_band.hpp"

#include <algorithm>
#include <cmath>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

struct Edge {
  double heat_input_kj_mm;
  HeatFlow flow;
};

/// The 3-D time grows with Q, the 2-D time with its square, and the longer holds: so the smaller of
/// the two heat inputs is meant.
Edge edge_of(double t85_s, double at_1_kj_3d_s, double at_1_kj_2d_s) {
  const double heat_3d = t85_s / at_1_kj_3d_s;
  const double heat_2d = std::sqrt(t85_s / at_1_kj_2d_s);
  return heat_3d < heat_2d ? Edge{heat_3d, HeatFlow::three_dimensional}
                           : Edge{heat_2d, HeatFlow::two_dimensional};
}

}  // namespace

base::Outcome<HeatInputBand> heat_input_band(const BandParams& p) {
  SEAMTURN_REQUIRE(base::is_positive(p.t85_least_s) && p.t85_least_s < p.t85_most_s,
                   p.t85_least_s,
                   p.t85_most_s);
  SEAMTURN_REQUIRE(std::isfinite(p.t85_most_s), p.t85_most_s);
  SEAMTURN_REQUIRE(p.coolest_start_c <= p.hottest_start_c, p.coolest_start_c, p.hottest_start_c);
  const auto cool = cooling_time({p.weld, 1.0, p.thickness_mm, p.coolest_start_c});
  if (!cool) return cool.error();
  const auto hot = cooling_time({p.weld, 1.0, p.thickness_mm, p.hottest_start_c});
  if (!hot) return hot.error();
  const Edge least = edge_of(p.t85_least_s, cool->t85_3d_s, cool->t85_2d_s);
  const Edge most = edge_of(p.t85_most_s, hot->t85_3d_s, hot->t85_2d_long_s);
  if (least.heat_input_kj_mm > most.heat_input_kj_mm) {
    return base::Refusal{
        "heat.band.empty",
        "the window does not close: " + base::digits_text(p.t85_least_s) + " s at " +
            base::digits_text(p.coolest_start_c) + " degC need at least " +
            base::digits_text(least.heat_input_kj_mm) + " kJ/mm, " +
            base::digits_text(p.t85_most_s) + " s at " + base::digits_text(p.hottest_start_c) +
            " degC permit at most " + base::digits_text(most.heat_input_kj_mm) +
            " kJ/mm; lower the interpass maximum, raise the preheat, or take a wider window"};
  }
  HeatInputBand band{
      least.heat_input_kj_mm, most.heat_input_kj_mm, least.flow, most.flow, hot->findings};
  return band;
}

const base::FigureCard& heat_band_card() {
  static const FigureKey keys[] = {
      detail::case_key,
      {"thickness", Dimension::length, "plate thickness", "> 0"},
      {"preheat", Dimension::temperature, "coolest start of a run", "below the interpass maximum"},
      {"interpass",
       Dimension::temperature,
       "hottest start of a run",
       "below 500 degC; warned about above 350 degC"},
      {"t85-min", Dimension::time, "least t8/5", "> 0"},
      {"t85-max",
       Dimension::time,
       "most t8/5",
       "above t85-min; a window that does not close is refused"},
  };
  static const Citation sources[] = {
      {"SSAB-17", "ed. 2, p. 17: both formulas, inverted", Status::verified},
      {"EN 1011-2", "2001, table D.1: shape factors", Status::from_memory},
  };
  static const base::FigureCard card{
      "heat-band",
      "heat input that keeps t8/5 inside a window from preheat to interpass maximum",
      "least: t8/5 at its least, coolest start; most: t8/5 at its most, hottest start; the smaller "
      "of t/t3D(1) and sqrt(t/t2D(1)) each",
      "kJ/mm",
      "as cooling-time, in the middle of a long run; at starts, stops and tacks t8/5 is about "
      "half. "
      "Of the tee's factor range each end takes the careful side",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
