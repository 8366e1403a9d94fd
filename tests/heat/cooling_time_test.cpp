// SPDX-License-Identifier: MIT
#include "seamturn/heat/cooling_time.hpp"

#include <algorithm>
#include <limits>
#include <string>

#include "oracles/heat.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using heat::cooling_time;
using heat::CoolingParams;
using heat::CoolingTime;
using heat::HeatFlow;

namespace {

CoolingTime time_of(const CoolingParams& params) {
  const auto got = cooling_time(params);
  REQUIRE(got.has_value());
  return *got;
}

constexpr CoolingCase all_cases[] = {CoolingCase::run_on_plate,
                                     CoolingCase::butt,
                                     CoolingCase::fillet_tee,
                                     CoolingCase::fillet_corner};

CoolingParams random_params(base::Random& random) {
  return {all_cases[random.below(4)],
          random.between(0.3, 5.0),
          random.between(3.0, 80.0),
          random.between(-20.0, 350.0)};
}

}  // namespace

TEST_SUITE("heat/cooling_time") {
  // remembered: EN 1011-2 table D.1 knows butts, tees and corners; a lap has three ways as a tee
  TEST_CASE("given a joint, its factors are those of the ways it leads heat away") {
    CHECK(heat::cooling_case_of(joint::JointType::butt) == heat::CoolingCase::butt);
    CHECK(heat::cooling_case_of(joint::JointType::tee) == heat::CoolingCase::fillet_tee);
    CHECK(heat::cooling_case_of(joint::JointType::lap) == heat::CoolingCase::fillet_tee);
    CHECK(heat::cooling_case_of(joint::JointType::corner) == heat::CoolingCase::fillet_corner);
  }

  TEST_CASE("given the printed exercise 1.5 kJ/mm from 20 degC in thick plate, t8/5 is 7.9 s") {
    check_expected("TEACH-DE",
                   time_of({CoolingCase::run_on_plate, 1.5, 100.0, 20.0}).t85_s,
                   {7.9,
                    0.05,
                    Origin::published,
                    "TEACH-DE, exercise on t8/5",
                    "weak: teaching exercise of unnamed author"});
  }

  TEST_CASE("given eight computed cases, both times, the governing one and the border agree") {
    for (const CoolingRow& row : cooling_rows) {
      std::ostringstream inputs;
      inputs << "Q " << row.params.heat_input_kj_mm << ", d " << row.params.thickness_mm << ", T0 "
             << row.params.start_c;
      const CoolingTime time = time_of(row.params);
      check_expected(inputs.str(), time.t85_s, row.t85_s);
      check_expected("2-D " + inputs.str(),
                     time.t85_2d_s,
                     {row.t85_2d_s, 0.0006, Origin::computed, cooling_script});
      check_expected("3-D " + inputs.str(),
                     time.t85_3d_s,
                     {row.t85_3d_s, 0.0006, Origin::computed, cooling_script});
      check_expected("transition " + inputs.str(),
                     time.transition_thickness_mm,
                     {row.transition_mm, 0.0006, Origin::computed, cooling_script});
      CHECK(time.flow == row.flow);
    }
  }

  TEST_CASE("given EN 1011-2 table D.1 from memory, each case has its shape factors") {
    constexpr const char* source = "EN 1011-2:2001 table D.1, from memory";
    struct Row {
      CoolingCase weld;
      double f2, f2_long, f3;
    };
    for (const Row& row : {Row{CoolingCase::run_on_plate, 1.0, 1.0, 1.0},
                           Row{CoolingCase::butt, 0.9, 0.9, 0.9},
                           Row{CoolingCase::fillet_tee, 0.45, 0.67, 0.67},
                           Row{CoolingCase::fillet_corner, 0.9, 0.9, 0.67}}) {
      const std::string name(cooling_case_name(row.weld));
      const CoolingTime time = time_of({row.weld, 1.0, 10.0, 20.0});
      const CoolingTime plain = time_of({CoolingCase::run_on_plate, 1.0, 10.0, 20.0});
      check_expected(name, time.factor_2d, {row.f2, 0.0, Origin::remembered, source});
      check_expected(name, time.factor_3d, {row.f3, 0.0, Origin::remembered, source});
      check_expected(name,
                     time.t85_2d_long_s / plain.t85_2d_s,
                     {row.f2_long, 1e-12, Origin::remembered, source});
    }
  }

  TEST_CASE("for any run, law: t8/5 is the longer of the two and the flow says which") {
    base::Random random(base::named_seed(20261125, "t85 longer"));
    INFO("seed 20261125");
    for (int i = 0; i < 500; ++i) {
      const CoolingParams p = random_params(random);
      const CoolingTime time = time_of(p);
      CHECK(time.t85_s == std::max(time.t85_2d_s, time.t85_3d_s));
      const double named = time.flow == HeatFlow::two_dimensional ? time.t85_2d_s : time.t85_3d_s;
      CHECK(time.t85_s == doctest::Approx(named).epsilon(1e-9));
    }
  }

  TEST_CASE("for any run, law: at the transition thickness both times are equal") {
    base::Random random(base::named_seed(20261125, "t85 transition"));
    INFO("seed 20261125");
    for (int i = 0; i < 500; ++i) {
      CoolingParams p = random_params(random);
      p.thickness_mm = time_of(p).transition_thickness_mm;
      const CoolingTime time = time_of(p);
      CHECK(time.t85_2d_s == doctest::Approx(time.t85_3d_s).epsilon(1e-9));
    }
  }

  TEST_CASE(
      "for any run, law: more heat or a hotter start never cools faster, thickness never slower") {
    base::Random random(base::named_seed(20261125, "t85 monotone"));
    INFO("seed 20261125");
    for (int i = 0; i < 500; ++i) {
      const CoolingParams p = random_params(random);
      const double here = time_of(p).t85_s;
      CoolingParams more = p;
      more.heat_input_kj_mm *= 1.01;
      CHECK(time_of(more).t85_s > here);
      more = p;
      more.start_c += 1.0;
      CHECK(time_of(more).t85_s > here);
      more = p;
      more.thickness_mm *= 1.01;
      CHECK(time_of(more).t85_s <= here);
    }
  }

  TEST_CASE("refuses a start at 500 degC because the plate never cools from 800 to 500") {
    CHECK(cooling_time({CoolingCase::butt, 1.0, 20.0, 499.9}).has_value());
    const auto refused = cooling_time({CoolingCase::butt, 1.0, 20.0, 500.0});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "heat.t85.start_too_hot");
    CHECK_FALSE(cooling_time({CoolingCase::butt, 1.0, 20.0, 900.0}).has_value());
  }

  TEST_CASE("given a start just above 350 degC, a warning stands beside the number") {
    CHECK(time_of({CoolingCase::butt, 1.0, 20.0, 350.0}).findings.empty());
    const CoolingTime warned = time_of({CoolingCase::butt, 1.0, 20.0, 350.1});
    REQUIRE(warned.findings.size() == 1);
    CHECK(warned.findings.front().code == "heat.t85.out_of_range");
    CHECK(warned.findings.front().severity == base::Severity::warning);
  }

  TEST_CASE("refuses heat or thickness that is none because it is a caller's bug") {
    CHECK_THROWS_AS((void)cooling_time({CoolingCase::butt, 0.0, 20.0, 20.0}),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling_time({CoolingCase::butt, 1.0, -1.0, 20.0}),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling_time(
                        {CoolingCase::butt, 1.0, 20.0, std::numeric_limits<double>::quiet_NaN()}),
                    base::ContractViolation);
  }

  TEST_CASE("given the names, case and flow read as on the command line") {
    CHECK(cooling_case_name(CoolingCase::run_on_plate) == "run-on-plate");
    CHECK(cooling_case_name(CoolingCase::fillet_corner) == "fillet-corner");
    CHECK(heat_flow_name(HeatFlow::three_dimensional) == "3-D");
    CHECK(heat_flow_name(HeatFlow::two_dimensional) == "2-D");
  }
}

}  // namespace seamturn::tests
