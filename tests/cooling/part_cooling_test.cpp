// SPDX-License-Identifier: MIT
#include "seamturn/cooling/part_cooling.hpp"

#include <boost/numeric/odeint/integrate/integrate_adaptive.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>
#include <cmath>
#include <limits>
#include <vector>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using cooling::part_cooling;
using cooling::PartCooling;

namespace {

constexpr double sigma = 5.670374419e-8;  // W/m2 K4

double time_of(const PartCooling& part) {
  const auto got = part_cooling(part);
  REQUIRE(got.has_value());
  return got->time_s;
}

PartCooling random_part(base::Random& random) {
  PartCooling part;
  part.thickness_mm = random.between(4.0, 60.0);
  part.ambient_c = random.between(-10.0, 35.0);
  part.to_c = part.ambient_c + random.between(5.0, 150.0);
  part.from_c = part.to_c + random.between(5.0, 300.0);
  part.face_loss_w_m2_k = random.between(2.0, 30.0);
  part.emissivity = random.between(0.1, 1.0);
  return part;
}

/// The other way round: temperature over time by Boost.Numeric.Odeint, Dormand and Prince.
double temperature_after_c(const PartCooling& part, double time_s) {
  namespace ode = boost::numeric::odeint;
  using State = std::vector<double>;
  const double storage_j_m2_k = cooling::heat_capacity_j_mm3_k * 1e9 * part.thickness_mm / 2000.0;
  const double air_k = part.ambient_c + 273.15;
  const auto rate = [&](const State& kelvin, State& change, double) {
    change[0] = -(part.face_loss_w_m2_k * (kelvin[0] - air_k) +
                  part.emissivity * sigma * (std::pow(kelvin[0], 4) - std::pow(air_k, 4))) /
                storage_j_m2_k;
  };
  State kelvin = {part.from_c + 273.15};
  ode::integrate_adaptive(ode::make_controlled<ode::runge_kutta_dopri5<State>>(1e-10, 1e-10),
                          rate,
                          kelvin,
                          0.0,
                          time_s,
                          time_s / 100.0);
  return kelvin[0] - 273.15;
}

}  // namespace

TEST_SUITE("cooling/part_cooling") {
  TEST_CASE("given 20 mm losing 25 W/m2 K, 250 to 150 degC takes 1570 s ln(230/130)") {
    const PartCooling part{20.0, 250.0, 150.0, 20.0, 25.0, 0.0};
    const double constant_s = 0.003925 * 20.0 / 50e-6;
    check_expected("time",
                   time_of(part),
                   {constant_s * std::log(230.0 / 130.0), 1e-6, Origin::closed_form, "lumped"});
    check_expected(
        "I-1", time_of(part), {895.8, 0.05, Origin::computed, "lumped, by a separate script"});
    check_expected("Biot",
                   part_cooling(part)->biot,
                   {25e-6 * 10.0 / 0.045, 1e-12, Origin::closed_form, "h d / 2 lambda"});
  }

  TEST_CASE("given radiation alone, the time is that of its closed form") {
    // t = rho c d/(8 eps sigma Ta^3) [g(T2) - g(T1)], g(T) = ln|(Ta + T)/(Ta - T)| + 2 atan(T/Ta).
    for (const double to_c : {150.0, 60.0, 21.0}) {
      const PartCooling part{20.0, 250.0, to_c, 20.0, 0.0, 0.8};
      const double air_k = 293.15;
      const auto g = [air_k](double c) {
        const double k = c + 273.15;
        return std::log(std::abs((air_k + k) / (air_k - k))) + 2.0 * std::atan(k / air_k);
      };
      const double closed_s =
          3.925e6 * 0.02 / (8.0 * 0.8 * sigma * std::pow(air_k, 3)) * (g(to_c) - g(250.0));
      INFO("to ", to_c);
      check_expected("time",
                     time_of(part),
                     {closed_s, 1e-8 * closed_s, Origin::closed_form, "partial fractions"});
    }
    check_expected("I-2",
                   time_of({20.0, 250.0, 150.0, 20.0, 0.0, 0.8}),
                   {2143.6, 0.1, Origin::computed, "two ways, by a separate script"});
  }

  TEST_CASE("given air and radiation together, the times of a separate script") {
    check_expected("I-3",
                   time_of({20.0, 250.0, 150.0, 20.0, 5.0, 0.8}),
                   {1444.8, 0.05, Origin::computed, "Runge-Kutta, by a separate script"});
    check_expected("I-4",
                   time_of({12.0, 300.0, 100.0, 20.0, 6.0, 0.8}),
                   {1879.5, 0.05, Origin::computed, "Runge-Kutta, by a separate script"});
  }

  TEST_CASE("given another integrator, it arrives at the temperature asked for in that time") {
    base::Random random(base::named_seed(20261126, "part cooling"));
    INFO("seed 20261126");
    for (int i = 0; i < 200; ++i) {
      const PartCooling part = random_part(random);
      check_expected("to",
                     temperature_after_c(part, time_of(part)),
                     {part.to_c, 1e-5, Origin::cross, "Boost.Numeric.Odeint, Dormand-Prince"});
    }
  }

  TEST_CASE(
      "for any part, law: times add up, more loss is quicker, twice the plate twice as long") {
    base::Random random(base::named_seed(20261126, "part laws"));
    INFO("seed 20261126");
    for (int i = 0; i < 200; ++i) {
      const PartCooling part = random_part(random);
      const double all_s = time_of(part);
      PartCooling first = part, second = part;
      first.to_c = second.from_c = 0.5 * (part.from_c + part.to_c);
      CHECK(time_of(first) + time_of(second) == doctest::Approx(all_s).epsilon(1e-9));
      PartCooling other = part;
      other.thickness_mm *= 2.0;
      CHECK(time_of(other) == doctest::Approx(2.0 * all_s).epsilon(1e-12));
      other = part;
      other.face_loss_w_m2_k += 1.0;
      CHECK(time_of(other) < all_s);
      other = part;
      other.emissivity *= 0.9;
      CHECK(time_of(other) > all_s);
      // Between the losses at both ends, each taken as constant.
      const double hottest = part_cooling(part)->hottest_loss_w_m2_k;
      other = part;
      other.emissivity = 0.0;
      other.face_loss_w_m2_k = hottest;
      CHECK(time_of(other) < all_s);
    }
  }

  TEST_CASE("refuses a Biot number of 0.1, and accepts one just below") {
    // h d/(2 lambda) = 0.1: at 30 W/m2 K 300 mm.
    CHECK(part_cooling({299.9, 250.0, 150.0, 20.0, 30.0, 0.0}).has_value());
    const auto refused = part_cooling({300.1, 250.0, 150.0, 20.0, 30.0, 0.0});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "cooling.part.biot");
    // Radiation counts: eps 1 at 700 degC loses 74 W/m2 K besides.
    CHECK(part_cooling({140.0, 300.0, 150.0, 20.0, 5.0, 1.0}).has_value());
    CHECK_FALSE(part_cooling({140.0, 700.0, 150.0, 20.0, 5.0, 1.0}).has_value());
  }

  TEST_CASE("refuses a target that is not above ambient because it is never reached") {
    CHECK(part_cooling({20.0, 250.0, 20.001, 20.0, 15.0, 0.0}).has_value());
    const auto refused = part_cooling({20.0, 250.0, 20.0, 20.0, 15.0, 0.0});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "cooling.part.never_reached");
  }

  TEST_CASE("refuses parts that are none because they are a caller's bug") {
    const PartCooling good{20.0, 250.0, 150.0, 20.0, 15.0, 0.5};
    const auto throws = [&good](auto spoil) {
      PartCooling part = good;
      spoil(part);
      CHECK_THROWS_AS((void)part_cooling(part), base::ContractViolation);
    };
    throws([](PartCooling& part) { part.thickness_mm = 0.0; });
    throws([](PartCooling& part) { part.to_c = 250.0; });
    throws([](PartCooling& part) { part.from_c = std::numeric_limits<double>::infinity(); });
    throws([](PartCooling& part) { part.ambient_c = -300.0; });
    throws([](PartCooling& part) { part.face_loss_w_m2_k = -1.0; });
    throws([](PartCooling& part) { part.emissivity = 1.1; });
    throws([](PartCooling& part) { part.emissivity = part.face_loss_w_m2_k = 0.0; });
  }
}

}  // namespace seamturn::tests
