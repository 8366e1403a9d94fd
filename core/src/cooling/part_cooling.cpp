// SPDX-License-Identifier: MIT
#include "seamturn/cooling/part_cooling.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::cooling {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr double zero_c_k = 273.15;
constexpr double stefan_boltzmann_w_m2_k4 = 5.670374419e-8;  // exact since 2019
using base::mm2_per_m2;
constexpr double relative_step = 1e-10;

void require_part(const PartCooling& part) {
  SEAMTURN_REQUIRE(base::is_positive(part.thickness_mm), part.thickness_mm);
  SEAMTURN_REQUIRE(base::is_amount(part.face_loss_w_m2_k), part.face_loss_w_m2_k);
  SEAMTURN_REQUIRE(part.emissivity >= 0.0 && part.emissivity <= 1.0, part.emissivity);
  SEAMTURN_REQUIRE(part.face_loss_w_m2_k > 0.0 || part.emissivity > 0.0, part.emissivity);
  SEAMTURN_REQUIRE(std::isfinite(part.from_c) && part.from_c > part.to_c, part.from_c, part.to_c);
  SEAMTURN_REQUIRE(std::isfinite(part.to_c) && part.to_c > -zero_c_k, part.to_c);
  SEAMTURN_REQUIRE(std::isfinite(part.ambient_c) && part.ambient_c > -zero_c_k, part.ambient_c);
}

/// Air and radiation as one loss at a rise over ambient: T^4 - Ta^4 = (T - Ta)(T + Ta)(T^2 + Ta^2).
double loss_w_m2_k(const PartCooling& part, double rise_k) {
  const double air_k = part.ambient_c + zero_c_k;
  const double part_k = air_k + rise_k;
  return part.face_loss_w_m2_k + part.emissivity * stefan_boltzmann_w_m2_k4 * (part_k + air_k) *
                                     (part_k * part_k + air_k * air_k);
}

/// Integral of 1/loss over the logarithm of the rise, in m2 K/W.
double integral_m2_k_w(const PartCooling& part, int steps) {
  const double low = std::log(part.to_c - part.ambient_c);
  const double step = (std::log(part.from_c - part.ambient_c) - low) / steps;
  const auto value = [&](double at) { return 1.0 / loss_w_m2_k(part, std::exp(low + step * at)); };
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) sum += value(i) + 4.0 * value(i + 0.5) + value(i + 1.0);
  return sum * step / 6.0;
}

double time_s(const PartCooling& part) {
  const double storage_j_m2_k =
      heat_capacity_j_mm3_k * part.thickness_mm / 2.0 * mm2_per_m2;  // of half the plate
  int steps = 8;
  double last = integral_m2_k_w(part, steps);
  while (steps < 1 << 20) {
    steps *= 2;
    const double now = integral_m2_k_w(part, steps);
    const bool settled = std::abs(now - last) <= relative_step * now;
    last = now;
    if (settled) break;
  }
  return storage_j_m2_k * last;
}

}  // namespace

base::Outcome<PartCoolingTime> part_cooling(const PartCooling& part) {
  require_part(part);
  if (part.to_c <= part.ambient_c) {
    return base::Refusal{"cooling.part.never_reached",
                         "the part never cools to " + base::digits_text(part.to_c) +
                             " degC: that is not above the ambient " +
                             base::digits_text(part.ambient_c) + " degC"};
  }
  PartCoolingTime result;
  result.hottest_loss_w_m2_k = loss_w_m2_k(part, part.from_c - part.ambient_c);
  result.biot =
      result.hottest_loss_w_m2_k / mm2_per_m2 * part.thickness_mm / 2.0 / conductivity_w_mm_k;
  if (result.biot >= biot_limit) {
    return base::Refusal{"cooling.part.biot",
                         "Biot number " + base::digits_text(result.biot, 3) +
                             ", 0.1 or more: the middle stays warmer than the faces and one "
                             "temperature for the whole part misleads; measure"};
  }
  result.time_s = time_s(part);
  return result;
}

const base::FigureCard& part_cooling_card() {
  static const FigureKey keys[] = {
      {"thickness", Dimension::length, "plate that cools on both faces", "> 0"},
      {"from", Dimension::temperature, "temperature at the start, all through", "above to="},
      {"to", Dimension::temperature, "temperature asked for", "above ambient="},
      {"ambient", Dimension::temperature, "surroundings, 20 degC if not given", "", false},
      {"face-loss",
       Dimension::none,
       "of each face in W/m2 K, 15 if not given; with emissivity= of the air alone",
       "> 0; still air about 5, all together 12 to 22",
       false},
      {"emissivity",
       Dimension::none,
       "of the faces; then face-loss= must be given too",
       "above 0 to 1; oxidised plate about 0.8",
       false},
  };
  static const Citation sources[] = {
      {"CODATA", "Stefan-Boltzmann constant, exact", Status::from_memory},
      {"EN 1993-1-2",
       "2005, 3.4.1: heat capacity and conductivity behind the constants",
       Status::verified},
  };
  static const base::FigureCard card{
      "part-cooling",
      "time a part warm all through takes to cool in air",
      "rho c d/2 dT/dt = -h (T - Ta) - eps sigma (T^4 - Ta^4), kelvin; "
      "without radiation t = rho c d/(2 h) ln[(T1 - Ta)/(T2 - Ta)]; rho c .003925 J/mm3 K",
      "s",
      "evenly heated parts with a Biot number below 0.1. Beside a fresh bead on a cold plate it is "
      "2.1 to 4.4 times too slow. h and emissivity are guesses: measure",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::cooling
