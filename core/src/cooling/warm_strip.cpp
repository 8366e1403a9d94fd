// SPDX-License-Identifier: MIT
#include "seamturn/cooling/warm_strip.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::cooling {

namespace {

using base::mm2_per_m2;

void require_strip(const WarmStrip& strip) {
  SEAMTURN_REQUIRE(base::is_positive(strip.thickness_mm), strip.thickness_mm);
  SEAMTURN_REQUIRE(base::is_positive(strip.half_width_mm), strip.half_width_mm);
  SEAMTURN_REQUIRE(base::is_positive(strip.face_loss_w_m2_k), strip.face_loss_w_m2_k);
}

double needed_rise_k(const WarmStrip& strip) {
  const double needed_k = strip.preheat_c - strip.ambient_c;
  SEAMTURN_REQUIRE(base::is_positive(needed_k), strip.preheat_c, strip.ambient_c);
  return needed_k;
}

/// When a falling function of time is zero, by halving on the logarithm of time.
template <class Value>
double last_time_s(const Value& value) {
  double low = std::log(1e-6);
  double high = std::log(1e9);
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (value(std::exp(middle)) > 0.0 ? low : high) = middle;
  }
  return std::exp(low);
}

using Left = double (*)(const WarmStrip&, double);

double after_heating_s(Left left, const WarmStrip& strip) {
  const double needed_k = needed_rise_k(strip);
  return last_time_s([&](double time_s) {
    return (needed_k + heated_above_preheat_k) * left(strip, time_s) - needed_k;
  });
}

}  // namespace

double heated_through_left_ratio(const WarmStrip& strip, double time_s) {
  require_strip(strip);
  SEAMTURN_REQUIRE(base::is_positive(time_s), time_s);
  const double loss_w_mm2_k = strip.face_loss_w_m2_k / mm2_per_m2;
  return std::exp(-2.0 * loss_w_mm2_k * time_s / (heat_capacity_j_mm3_k * strip.thickness_mm));
}

double strip_left_ratio(const WarmStrip& strip, double time_s) {
  return heated_through_left_ratio(strip, time_s) *
         std::erf(strip.half_width_mm / (2.0 * std::sqrt(diffusivity_mm2_s * time_s)));
}

Keep keep_after_heating(const WarmStrip& strip) {
  require_strip(strip);
  return Keep{after_heating_s(strip_left_ratio, strip),
              after_heating_s(heated_through_left_ratio, strip)};
}

Keep keep_after_pass(const WarmStrip& strip, const CoolingPlate& plate, double heat_input_kj_mm) {
  require_strip(strip);
  const double needed_k = needed_rise_k(strip);
  const auto falls_at_s = [&](Left left, bool warmer) {
    return last_time_s([&](double time_s) {
      const double tail_k = tail_rise_k(plate, heat_input_kj_mm, time_s);
      const double lump_k = lump_rise_k(plate, heat_input_kj_mm, time_s);
      const double pass_k = warmer ? std::max(tail_k, lump_k) : std::min(tail_k, lump_k);
      return pass_k - needed_k * (1.0 - left(strip, time_s));
    });
  };
  return Keep{falls_at_s(strip_left_ratio, false), falls_at_s(heated_through_left_ratio, true)};
}

}  // namespace seamturn::cooling
