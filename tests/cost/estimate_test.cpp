// SPDX-License-Identifier: MIT
#include "seamturn/cost/estimate.hpp"

#include "oracle.hpp"
#include "oracles/cost.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using cost::Estimate;
using cost::PassUse;
using cost::Rates;

namespace {

constexpr double kg_per_lb = 0.45359237;       // NIST SP 811 B.8, exact
constexpr double m3_per_ft3 = 0.028316846592;  // NIST SP 811 B.8, exact

Rates demo_rates() {
  Rates rates;
  rates.currency = "EUR";
  rates.labour_per_hour = 36.0;
  rates.cell_per_hour = 72.0;
  rates.energy_per_kwh = 0.25;
  rates.power_source_efficiency_ratio = 0.8;
  rates.gas_loss_ratio = 1.1;
  rates.gas_pre_post_flow_s = 2.0;
  rates.setup_per_batch_h = 2.0;
  rates.time_band_ratio = 0.10;
  rates.consumption_band_ratio = 0.05;
  rates.source = "invented for the test";
  return rates;
}

/// Whole numbers: 100 s at 24 V 300 A, 0.19 kg at 0.95, 20 l/min.
PassUse demo_pass() {
  PassUse pass;
  pass.arc_s = 100.0;
  pass.deposit_kg = 0.19;
  pass.efficiency_ratio = 0.95;
  pass.wire_price_per_kg = 2.0;
  pass.gas_flow_l_min = 20.0;
  pass.gas_price_per_m3 = 6.0;
  pass.voltage_v = 24.0;
  pass.current_a = 300.0;
  return pass;
}

double amount_of(const Estimate& got, const std::string& name) {
  for (const cost::Item& item : got.items) {
    if (item.name == name) return item.amount;
  }
  FAIL("no item " << name);
  return 0.0;
}

Expected by_hand(double value) {
  return {value, 1e-9, Origin::closed_form, "worked by hand"};
}

}  // namespace

TEST_SUITE("cost/estimate") {
  TEST_CASE("given WELD-COST-SHEET examples 1 and 2, weld metal costs 11.93 and 29.11 $/lb") {
    for (const UnitCostRow& row : unit_cost_rows) {
      cost::UnitCostParams params;
      params.labour_per_hour = row.labour_per_hour;
      params.deposit_kg_h = row.deposit_lb_h * kg_per_lb;
      params.operating_factor_ratio = row.operating_factor_ratio;
      params.wire_price_per_kg = row.wire_price_per_lb / kg_per_lb;
      params.efficiency_ratio = row.efficiency_ratio;
      params.gas_flow_m3_h = row.gas_flow_ft3_h * m3_per_ft3;
      params.gas_price_per_m3 = row.gas_price_per_ft3 / m3_per_ft3;
      const cost::UnitCost got = cost::unit_cost(params);
      const std::string name = row.name;
      check_expected(name + " labour", got.labour_per_kg * kg_per_lb, row.labour_per_lb);
      check_expected(name + " wire", got.wire_per_kg * kg_per_lb, row.wire_per_lb);
      check_expected(name + " gas", got.gas_per_kg * kg_per_lb, row.gas_per_lb);
      check_expected(name + " total", got.total_per_kg * kg_per_lb, row.total_per_lb);
    }
  }

  TEST_CASE("given a metre of 8 mm fillet at a factor of 0.80, it costs 4.948 a metre") {
    // Computed beforehand from section 35.2 mm2, 5.061 kg/h, 305.2 mm/min; printed to 3 decimals.
    const char* const origin = "docs/methods/cost.md, example";
    PassUse pass;
    pass.deposit_kg = 0.2763;
    pass.arc_s = 3.276 * 60.0;
    pass.efficiency_ratio = 0.95;
    pass.wire_price_per_kg = 1.6;
    pass.gas_flow_l_min = 15.0;
    pass.gas_price_per_m3 = 6.0;
    pass.voltage_v = 32.0;
    pass.current_a = 300.0;
    Rates rates;
    rates.labour_per_hour = 60.0;
    rates.energy_per_kwh = 0.15;
    rates.power_source_efficiency_ratio = 0.85;
    const Estimate got = cost::estimate(rates, {pass}, {pass.arc_s / 0.80, 0.0}, 1);
    check_expected("labour", amount_of(got, "labour"), {4.095, 5e-4, Origin::computed, origin});
    check_expected("wire", amount_of(got, "wire"), {0.465, 5e-4, Origin::computed, origin});
    check_expected("gas", amount_of(got, "gas"), {0.295, 5e-4, Origin::computed, origin});
    const char* const edge = "0.0925 lies on the edge of rounding, the inputs carry 4 digits";
    check_expected(
        "energy", amount_of(got, "energy"), {0.093, 6e-4, Origin::computed, origin, edge});
    check_expected("total", got.total, {4.948, 5e-4, Origin::computed, origin});
  }

  TEST_CASE("given whole numbers, every item is as worked by hand") {
    const Estimate got =
        cost::estimate(demo_rates(), {demo_pass(), demo_pass()}, {300.0, 100.0}, 10);
    check_expected("wire kg", got.wire_kg, by_hand(0.4));
    check_expected("gas m3", got.gas_m3, by_hand(2.0 * 0.02 * 102.0 / 60.0 * 1.1));
    check_expected("energy kWh", got.energy_kwh, by_hand(0.5));  // 2 x 0.72 MJ / 0.8 / 3.6 MJ
    check_expected("arc s", got.arc_time_s, by_hand(200.0));
    check_expected("cell s", got.cell_time_s, by_hand(400.0));
    check_expected("wire", amount_of(got, "wire"), by_hand(0.8));
    check_expected("gas", amount_of(got, "gas"), by_hand(0.4488));
    check_expected("energy", amount_of(got, "energy"), by_hand(0.125));
    check_expected("labour", amount_of(got, "labour"), by_hand(4.0));
    check_expected("cell", amount_of(got, "cell"), by_hand(8.0));
    check_expected("set-up", amount_of(got, "set-up share"), by_hand(21.6));
    check_expected("total", got.total, by_hand(34.9738));
    check_expected("low", got.total_low, by_hand(0.9 * 33.6 + 0.95 * 1.3738));
    check_expected("high", got.total_high, by_hand(1.1 * 33.6 + 1.05 * 1.3738));
    check_expected("batch", got.batch_total, by_hand(349.738));
    CHECK(got.batch_parts == 10);
    CHECK(got.currency == "EUR");
  }

  TEST_CASE("for any prices, law: items add up, bands enclose, twice a price is twice its item") {
    const std::uint64_t seed = base::named_seed(1, "cost items add up");
    INFO("seed " << seed);
    base::Random random(seed);
    for (int round = 0; round < 100; ++round) {
      Rates rates = demo_rates();
      rates.labour_per_hour = random.between(0.0, 90.0);
      rates.cell_per_hour = random.between(0.0, 150.0);
      rates.energy_per_kwh = random.between(0.0, 1.0);
      std::vector<PassUse> passes(1 + random.below(20), demo_pass());
      for (PassUse& pass : passes) pass.arc_s = random.between(0.0, 400.0);
      const double cycle_s = random.between(0.0, 9000.0);
      const int parts = 1 + static_cast<int>(random.below(50));
      const Estimate got = cost::estimate(rates, passes, {cycle_s, 300.0}, parts);
      double sum = 0.0;
      for (const cost::Item& item : got.items) {
        sum += item.amount;
        CHECK(item.low <= item.amount);
        CHECK(item.amount <= item.high);
      }
      CHECK(sum == doctest::Approx(got.total).epsilon(1e-12).scale(0.0));
      CHECK(got.batch_total == doctest::Approx(got.total * parts).epsilon(1e-12).scale(0.0));

      Rates dearer = rates;
      dearer.labour_per_hour *= 2.0;
      const Estimate labour = cost::estimate(dearer, passes, {cycle_s, 300.0}, parts);
      const double hours = got.cell_time_s / 3600.0 + rates.setup_per_batch_h / parts;
      CHECK(labour.total - got.total ==
            doctest::Approx(rates.labour_per_hour * hours).epsilon(1e-9).scale(1e-6));
      std::vector<PassUse> dear_wire = passes;
      for (PassUse& pass : dear_wire) pass.wire_price_per_kg *= 2.0;
      const Estimate wire = cost::estimate(rates, dear_wire, {cycle_s, 300.0}, parts);
      CHECK(amount_of(wire, "wire") ==
            doctest::Approx(2.0 * amount_of(got, "wire")).epsilon(1e-12).scale(0.0));
      CHECK(amount_of(wire, "gas") == amount_of(got, "gas"));
    }
  }

  TEST_CASE("law: a time costs what the estimate grows by when it is added") {
    const cost::CellUse base_use{900.0, 300.0, 0.0};
    const cost::CellUse more{1300.0, 360.0, 250.0};
    const cost::CellUse added{400.0, 60.0, 250.0};
    const Estimate before = cost::estimate(demo_rates(), {demo_pass()}, base_use, 1);
    const Estimate after = cost::estimate(demo_rates(), {demo_pass()}, more, 1);
    // The energy the cell draws idle is no part of it.
    const double energy = amount_of(after, "energy") - amount_of(before, "energy");
    CHECK(cost::time_price(demo_rates(), added) ==
          doctest::Approx(after.total - before.total - energy).epsilon(1e-9).scale(0.0));
    CHECK(cost::time_price(demo_rates(), {}) == 0.0);
    CHECK(cost::time_price(demo_rates(), {0.0, 0.0, 250.0}) > 0.0);
  }

  TEST_CASE("given a larger batch, only the set-up share of a part falls") {
    const Estimate one = cost::estimate(demo_rates(), {demo_pass()}, {300.0, 100.0}, 1);
    const Estimate many = cost::estimate(demo_rates(), {demo_pass()}, {300.0, 100.0}, 4);
    check_expected("set-up of 1", amount_of(one, "set-up share"), by_hand(216.0));
    check_expected("set-up of 4", amount_of(many, "set-up share"), by_hand(54.0));
    check_expected("difference", one.total - many.total, by_hand(162.0));
  }

  TEST_CASE(
      "refuses efficiencies outside 0 to 1 and no parts because the price would be nonsense") {
    Rates rates = demo_rates();
    CHECK_THROWS_AS((void)cost::estimate(rates, {}, {1.0, 1.0}, 0), base::ContractViolation);
    CHECK_THROWS_AS((void)cost::estimate(rates, {}, {-1.0, 1.0}, 1), base::ContractViolation);
    PassUse pass = demo_pass();
    pass.efficiency_ratio = 1.0;
    CHECK_NOTHROW((void)cost::estimate(rates, {pass}, {1.0, 1.0}, 1));
    pass.efficiency_ratio = 1.01;
    CHECK_THROWS_AS((void)cost::estimate(rates, {pass}, {1.0, 1.0}, 1), base::ContractViolation);
    rates.power_source_efficiency_ratio = 0.0;
    CHECK_THROWS_AS((void)cost::estimate(rates, {}, {1.0, 1.0}, 1), base::ContractViolation);
    CHECK_THROWS_AS((void)cost::unit_cost({}), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
