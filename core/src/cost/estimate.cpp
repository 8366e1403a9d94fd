// SPDX-License-Identifier: MIT
#include "seamturn/cost/estimate.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::cost {

namespace {

using base::j_per_kwh;
using base::l_per_m3;
using base::s_per_h;
using base::s_per_min;

bool is_efficiency(double value) {
  return value > 0.0 && value <= 1.0;
}

void require(const Rates& rates) {
  SEAMTURN_REQUIRE(base::is_amount(rates.labour_per_hour) && base::is_amount(rates.cell_per_hour) &&
                       base::is_amount(rates.energy_per_kwh) &&
                       base::is_amount(rates.setup_per_batch_h) &&
                       base::is_amount(rates.gas_pre_post_flow_s),
                   rates.labour_per_hour,
                   rates.cell_per_hour,
                   rates.energy_per_kwh,
                   rates.setup_per_batch_h,
                   rates.gas_pre_post_flow_s);
  SEAMTURN_REQUIRE(is_efficiency(rates.power_source_efficiency_ratio),
                   rates.power_source_efficiency_ratio);
  SEAMTURN_REQUIRE(std::isfinite(rates.gas_loss_ratio) && rates.gas_loss_ratio >= 1.0,
                   rates.gas_loss_ratio);
  SEAMTURN_REQUIRE(rates.time_band_ratio >= 0.0 && rates.time_band_ratio <= 1.0 &&
                       rates.consumption_band_ratio >= 0.0 && rates.consumption_band_ratio <= 1.0,
                   rates.time_band_ratio,
                   rates.consumption_band_ratio);
}

void require(const PassUse& pass) {
  SEAMTURN_REQUIRE(is_efficiency(pass.efficiency_ratio), pass.efficiency_ratio);
  SEAMTURN_REQUIRE(base::is_amount(pass.arc_s) && base::is_amount(pass.deposit_kg) &&
                       base::is_amount(pass.wire_price_per_kg) &&
                       base::is_amount(pass.gas_flow_l_min) &&
                       base::is_amount(pass.gas_price_per_m3) && base::is_amount(pass.voltage_v) &&
                       base::is_amount(pass.current_a),
                   pass.arc_s,
                   pass.deposit_kg,
                   pass.wire_price_per_kg,
                   pass.gas_flow_l_min,
                   pass.gas_price_per_m3,
                   pass.voltage_v,
                   pass.current_a);
}

Item banded(std::string name, double amount, double band_ratio) {
  return Item{std::move(name), amount, amount * (1.0 - band_ratio), amount * (1.0 + band_ratio)};
}

void require(const CellUse& use) {
  SEAMTURN_REQUIRE(base::is_amount(use.cycle_s) && base::is_amount(use.load_unload_s) &&
                       base::is_amount(use.crew_s),
                   use.cycle_s,
                   use.load_unload_s,
                   use.crew_s);
}

}  // namespace

double time_price(const Rates& rates, const CellUse& use) {
  require(rates);
  require(use);
  const double cell_h = (use.cycle_s + use.load_unload_s) / s_per_h;
  return cell_h * (rates.labour_per_hour + rates.cell_per_hour) +
         use.crew_s / s_per_h * rates.labour_per_hour;
}

Estimate estimate(const Rates& rates,
                  const std::vector<PassUse>& passes,
                  const CellUse& use,
                  int parts) {
  require(rates);
  require(use);
  SEAMTURN_REQUIRE(parts >= 1, parts);
  Estimate result;
  double wire_cost = 0.0;
  double gas_cost = 0.0;
  for (const PassUse& pass : passes) {
    require(pass);
    const double wire_kg = pass.deposit_kg / pass.efficiency_ratio;
    const double gas_m3 = pass.gas_flow_l_min / l_per_m3 *
                          (pass.arc_s + pass.arc_starts * rates.gas_pre_post_flow_s) / s_per_min *
                          rates.gas_loss_ratio;
    result.wire_kg += wire_kg;
    result.gas_m3 += gas_m3;
    result.energy_kwh += pass.voltage_v * pass.current_a * pass.arc_s /
                         rates.power_source_efficiency_ratio / j_per_kwh;
    result.arc_time_s += pass.arc_s;
    wire_cost += wire_kg * pass.wire_price_per_kg;
    gas_cost += gas_m3 * pass.gas_price_per_m3;
  }
  result.cell_time_s = use.cycle_s + use.load_unload_s;
  result.crew_s = use.crew_s;
  const double cell_h = result.cell_time_s / s_per_h;
  const double setup_h = rates.setup_per_batch_h / parts;
  const double use_band = rates.consumption_band_ratio;
  const double time_band = rates.time_band_ratio;
  result.items = {
      banded("wire", wire_cost, use_band),
      banded("gas", gas_cost, use_band),
      banded("energy", result.energy_kwh * rates.energy_per_kwh, use_band),
      banded("labour", cell_h * rates.labour_per_hour, time_band),
      banded("cell", cell_h * rates.cell_per_hour, time_band),
      banded("set-up share", setup_h * (rates.labour_per_hour + rates.cell_per_hour), time_band),
  };
  if (use.crew_s > 0.0) {
    const double crew_cost = use.crew_s / s_per_h * rates.labour_per_hour;
    result.items.insert(result.items.end() - 1, banded("crew", crew_cost, time_band));
  }
  for (const Item& item : result.items) {
    result.total += item.amount;
    result.total_low += item.low;
    result.total_high += item.high;
  }
  result.currency = rates.currency;
  result.batch_parts = parts;
  result.batch_total = result.total * parts;
  return result;
}

UnitCost unit_cost(const UnitCostParams& params) {
  SEAMTURN_REQUIRE(
      base::is_amount(params.labour_per_hour) && base::is_amount(params.wire_price_per_kg) &&
          base::is_amount(params.gas_flow_m3_h) && base::is_amount(params.gas_price_per_m3),
      params.labour_per_hour,
      params.wire_price_per_kg,
      params.gas_flow_m3_h,
      params.gas_price_per_m3);
  SEAMTURN_REQUIRE(base::is_positive(params.deposit_kg_h), params.deposit_kg_h);
  SEAMTURN_REQUIRE(
      is_efficiency(params.efficiency_ratio) && is_efficiency(params.operating_factor_ratio),
      params.efficiency_ratio,
      params.operating_factor_ratio);
  UnitCost result;
  result.labour_per_kg =
      params.labour_per_hour / (params.deposit_kg_h * params.operating_factor_ratio);
  result.wire_per_kg = params.wire_price_per_kg / params.efficiency_ratio;
  result.gas_per_kg = params.gas_flow_m3_h * params.gas_price_per_m3 / params.deposit_kg_h;
  result.total_per_kg = result.labour_per_kg + result.wire_per_kg + result.gas_per_kg;
  return result;
}

}  // namespace seamturn::cost
