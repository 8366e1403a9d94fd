// SPDX-License-Identifier: MIT
#include "seamturn/cooling/between_passes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::cooling {

namespace {

using std::numbers::pi;

using base::j_per_kj;
using base::mm2_per_m2;
// No steel is solid so far above its plate: a larger permitted rise means the same, no real wait,
// and would only make times too small for a double.
constexpr double rise_bound_k = 2000.0;

void require_plate(const CoolingPlate& plate) {
  SEAMTURN_REQUIRE(base::is_positive(plate.thickness_mm), plate.thickness_mm);
  SEAMTURN_REQUIRE(base::is_positive(plate.width_mm), plate.width_mm);
  SEAMTURN_REQUIRE(base::is_positive(plate.face_loss_w_m2_k), plate.face_loss_w_m2_k);
  SEAMTURN_REQUIRE(plate.heat_paths >= 1, plate.heat_paths);
  SEAMTURN_REQUIRE(std::isfinite(plate.start_c) && std::isfinite(plate.ambient_c),
                   plate.start_c,
                   plate.ambient_c);
}

/// What is left of a rise after both faces have lost heat for a time.
double left_by_faces(const CoolingPlate& plate, double time_s) {
  const double loss_w_mm2_k = plate.face_loss_w_m2_k / mm2_per_m2;
  return std::exp(-2.0 * loss_w_mm2_k * time_s / (heat_capacity_j_mm3_k * plate.thickness_mm));
}

/// Heat that two plate halves share; three take from each a third less, one must take all.
double shared_j_mm(const CoolingPlate& plate, double heat_input_kj_mm) {
  return j_per_kj * heat_input_kj_mm * 2.0 / plate.heat_paths;
}

/// Sum over all n of exp(-n^2 x): how far the far face, throwing heat back, raises the weld line
/// over that of endless depth. Below pi the mirrored series converges faster (Poisson); three terms
/// of either give full double precision.
double image_sum(double x) {
  const double nome = x < pi ? std::exp(-pi * pi / x) : std::exp(-x);
  const double nome_4 = nome * nome * nome * nome;
  const double sum = 1.0 + 2.0 * (nome + nome_4 * (1.0 + nome_4 * nome));
  return x < pi ? std::sqrt(pi / x) * sum : sum;
}

double tail_k(const CoolingPlate& plate, double heat_input_kj_mm, double time_s) {
  const double d = plate.thickness_mm;
  const double endless_depth =
      shared_j_mm(plate, heat_input_kj_mm) / (2.0 * pi * conductivity_w_mm_k * time_s);
  return endless_depth * image_sum(d * d / (diffusivity_mm2_s * time_s)) *
         left_by_faces(plate, time_s);
}

double lump_k(const CoolingPlate& plate, double heat_input_kj_mm, double time_s) {
  const double reached_mm = 4.0 * std::sqrt(diffusivity_mm2_s * time_s);
  const double strip_mm = std::min(plate.width_mm, reached_mm);
  return shared_j_mm(plate, heat_input_kj_mm) /
         (heat_capacity_j_mm3_k * plate.thickness_mm * strip_mm) * left_by_faces(plate, time_s);
}

using Rise = double (*)(const CoolingPlate&, double, double);

/// A falling function's root between two times: falsi on logarithms, for a rise is nearly a power
/// of time. `value` gives log(rise / permitted rise).
template <class Value>
double find_root_s(const Value& value, double guess_s) {
  double low = std::log(guess_s);
  double high = low;
  double at_low = value(guess_s);
  double at_high = at_low;
  while (at_low < 0.0) {
    high = low;
    at_high = at_low;
    low -= 0.5;
    at_low = value(std::exp(low));
  }
  for (double step = 0.5; at_high > 0.0; step *= 1.5) {
    low = high;
    at_low = at_high;
    high += step;
    at_high = value(std::exp(high));
  }
  int same_side = 0;  // Illinois: halve the value of an end that stays twice, else it creeps
  while (high - low > 1e-10) {
    const bool creeps = std::abs(same_side) > 8;
    const double middle =
        creeps ? 0.5 * (low + high) : low + (high - low) * at_low / (at_low - at_high);
    const double at_middle = value(std::exp(middle));
    if (std::abs(at_middle) < 1e-11) return std::exp(middle);
    if (at_middle > 0.0) {
      low = middle;
      at_low = at_middle;
      same_side = std::max(same_side, 0) + 1;
      if (same_side > 1) at_high *= 0.5;
    } else {
      high = middle;
      at_high = at_middle;
      same_side = std::min(same_side, 0) - 1;
      if (same_side < -1) at_low *= 0.5;
    }
  }
  return std::exp(high);
}

/// The least gaps by one model alone.
std::vector<double> least_gaps_s(Rise rise,
                                 const CoolingPlate& plate,
                                 std::span<const double> heat_inputs_kj_mm,
                                 double permitted_k) {
  std::vector<double> gaps;
  std::vector<double> starts = {0.0};
  double guess_s = 60.0;
  for (std::size_t k = 0; k + 1 < heat_inputs_kj_mm.size(); ++k) {
    const auto value = [&](double gap_s) {
      double rise_k = 0.0;
      for (std::size_t j = 0; j <= k; ++j) {
        rise_k += rise(plate, heat_inputs_kj_mm[j], starts[k] - starts[j] + gap_s);
      }
      return std::log(std::max(rise_k, 1e-300) / permitted_k);
    };
    guess_s = find_root_s(value, guess_s);
    gaps.push_back(guess_s);
    starts.push_back(starts[k] + guess_s);
  }
  return gaps;
}

}  // namespace

double tail_rise_k(const CoolingPlate& plate, double heat_input_kj_mm, double time_s) {
  require_plate(plate);
  SEAMTURN_REQUIRE(
      base::is_positive(heat_input_kj_mm) && base::is_positive(time_s), heat_input_kj_mm, time_s);
  return tail_k(plate, heat_input_kj_mm, time_s);
}

double lump_rise_k(const CoolingPlate& plate, double heat_input_kj_mm, double time_s) {
  require_plate(plate);
  SEAMTURN_REQUIRE(
      base::is_positive(heat_input_kj_mm) && base::is_positive(time_s), heat_input_kj_mm, time_s);
  return lump_k(plate, heat_input_kj_mm, time_s);
}

base::Outcome<std::vector<Wait>> waits_between_passes(const CoolingPlate& plate,
                                                      std::span<const double> heat_inputs_kj_mm,
                                                      double interpass_max_c) {
  require_plate(plate);
  SEAMTURN_REQUIRE(std::isfinite(interpass_max_c), interpass_max_c);
  for (const double heat : heat_inputs_kj_mm) SEAMTURN_REQUIRE(base::is_positive(heat), heat);
  const double plate_c = std::max(plate.start_c, plate.ambient_c);
  const double permitted_k = interpass_max_c - plate_c;
  if (permitted_k <= 0.0) {
    return base::Refusal{"cooling.interpass.below_start",
                         "the interpass maximum of " + base::digits_text(interpass_max_c) +
                             " degC is not above the plate's own " + base::digits_text(plate_c) +
                             " degC (preheat or ambient): it never cools so far; lower the "
                             "preheat or ask for a steel or wire with a higher interpass maximum"};
  }
  const double rise_k = std::min(permitted_k, rise_bound_k);
  const std::vector<double> tail = least_gaps_s(tail_k, plate, heat_inputs_kj_mm, rise_k);
  const std::vector<double> lump = least_gaps_s(lump_k, plate, heat_inputs_kj_mm, rise_k);
  std::vector<Wait> waits;
  for (std::size_t k = 0; k < tail.size(); ++k) {
    Wait wait;
    wait.tail_s = tail[k];
    wait.lump_s = lump[k];
    waits.push_back(wait);
  }
  return waits;
}

}  // namespace seamturn::cooling
