// SPDX-License-Identifier: MIT
// Wire, gas, power, time and money of a part and of a batch.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/money.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::cost {

/// Rates of the shop, from the library.
struct Rates {
  std::string currency;
  double labour_per_hour = 0.0;  ///< operator, while the cell works on the part
  double cell_per_hour = 0.0;    ///< machine hour rate of the cell
  double energy_per_kwh = 0.0;
  double power_source_efficiency_ratio = 0.0;
  double gas_loss_ratio = 1.0;          ///< gas bought / gas through the nozzle (surge, leaks)
  double gas_pre_post_flow_s = 0.0;     ///< per arc start
  double setup_per_batch_h = 0.0;       ///< cell hours once per batch
  double time_band_ratio = 0.0;         ///< +- on times, e.g. 0.10
  double consumption_band_ratio = 0.0;  ///< +- on wire, gas, energy
  std::string source;
};

/// Consumption of one pass, plain numbers.
struct PassUse {
  double arc_s = 0.0;
  double deposit_kg = 0.0;
  double efficiency_ratio = 1.0;
  double wire_price_per_kg = 0.0;
  double gas_flow_l_min = 0.0;
  double gas_price_per_m3 = 0.0;
  double voltage_v = 0.0;
  double current_a = 0.0;
  int arc_starts = 1;  ///< gas flows before and after each
};

struct Item {
  std::string name;
  double amount = 0.0;
  double low = 0.0;
  double high = 0.0;
};

/// Items are disjoint and add up to the total.
struct Estimate {
  double wire_kg = 0.0;     ///< bought
  double gas_m3 = 0.0;      ///< bought
  double energy_kwh = 0.0;  ///< from the mains, arcs only
  double arc_time_s = 0.0;
  double cell_time_s = 0.0;  ///< cycle + load and unload
  double crew_s = 0.0;       ///< person-seconds besides the cell's operator
  std::vector<Item> items;   ///< per part, set-up share included
  std::string currency;
  double total = 0.0;
  double total_low = 0.0;
  double total_high = 0.0;
  int batch_parts = 1;
  double batch_total = 0.0;
};

/// Time a part takes of the cell and of people.
struct CellUse {
  double cycle_s = 0.0;
  double load_unload_s = 0.0;
  double crew_s = 0.0;  ///< person-seconds besides the operator whom every hour of the cell counts
};

/// What a time costs by the rates: cell and operator while the cell is taken, labour of the others.
/// Of the estimate's items the share that this time has. Units: s -> currency. Pre: times >= 0.
/// Source: unit cost equations of docs/methods/cost.md. Tests: cost/estimate - law.
[[nodiscard]] double time_price(const Rates& rates, const CellUse& use);

/// Units: as named.
/// Pre: efficiencies in (0,1], times >= 0, parts >= 1.
/// Source: unit cost equations of docs/methods/cost.md. Accuracy: bands are the rates' own.
/// Tests: cost/estimate - published example, laws (linear in each price, items add up).
[[nodiscard]] Estimate estimate(const Rates& rates,
                                const std::vector<PassUse>& passes,
                                const CellUse& use,
                                int parts);

/// Cost per kilogram of weld metal by the handbook form: labour / (deposit x factor) + wire + gas.
struct UnitCostParams {
  double labour_per_hour = 0.0;
  double deposit_kg_h = 0.0;
  double operating_factor_ratio = 0.0;
  double wire_price_per_kg = 0.0;
  double efficiency_ratio = 0.0;
  double gas_flow_m3_h = 0.0;
  double gas_price_per_m3 = 0.0;
};
struct UnitCost {
  double labour_per_kg = 0.0;
  double wire_per_kg = 0.0;
  double gas_per_kg = 0.0;
  double total_per_kg = 0.0;
};
[[nodiscard]] UnitCost unit_cost(const UnitCostParams& params);

}  // namespace seamturn::cost
