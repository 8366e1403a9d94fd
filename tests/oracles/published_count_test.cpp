// SPDX-License-Identifier: MIT
// How many published values the suite holds, counted from the rows themselves.
// tests/oracles/README.md carries the same numbers, and this test fails when they drift apart.
#include <doctest/doctest.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

#include "oracles/carbon_equivalent.hpp"
#include "oracles/consumables.hpp"
#include "oracles/cost.hpp"
#include "oracles/deposit.hpp"
#include "oracles/elements.hpp"
#include "oracles/heat.hpp"
#include "oracles/heat_tables.hpp"
#include "oracles/pass_limits.hpp"
#include "oracles/position.hpp"
#include "oracles/section.hpp"
#include "oracles/shrinkage.hpp"
#include "oracles/steel_rows.hpp"
#include "oracles/weld_size.hpp"
#include "repository.hpp"

namespace seamturn::tests {

namespace {

/// `computed`: a formula of ours gives the value. `held`: a table of ours must hold it.
struct Count {
  const char* file;
  const char* what;
  std::size_t computed;
  std::size_t held;
  std::size_t left_out;  ///< kept in the file but not counted: misprint, twin, remembered
};

/// Rows whose expected value was published.
template <class Rows, class Pick>
std::size_t published(const Rows& rows, Pick pick) {
  std::size_t count = 0;
  for (const auto& row : rows) {
    if (pick(row).origin == Origin::published) ++count;
  }
  return count;
}

template <class Rows>
std::size_t three_levels(const Rows& rows) {
  return 3 * std::size(rows);
}

std::size_t print_slips() {
  std::size_t count = 0;
  for (const VolumeRow& row : v_table) {
    for (const double angle_deg : v_table_angles_deg) count += is_print_slip(row, angle_deg);
  }
  return count;
}

std::size_t rows_against_mass() {
  std::size_t count = 0;
  for (const CoredWireRow& row : cored_wire_rows) count += row.agrees_with_mass;
  return count;
}

std::size_t predicted_feeds() {
  std::size_t count = 0;
  for (const FeedRow& row : feed_rows) count += !row.trial && !row.outside;
  return count;
}

/// A row of one value prints it once.
std::size_t distinct_efficiencies() {
  std::size_t count = 0;
  for (const TypicalEfficiencyRow& row : typical_efficiency_rows) {
    count += row.least_percent.value < row.most_percent.value ? 2 : 1;
  }
  return count;
}

std::size_t unit_costs() {
  return published(unit_cost_rows, [](const auto& row) { return row.labour_per_lb; }) +
         published(unit_cost_rows, [](const auto& row) { return row.wire_per_lb; }) +
         published(unit_cost_rows, [](const auto& row) { return row.gas_per_lb; }) +
         published(unit_cost_rows, [](const auto& row) { return row.total_per_lb; });
}

std::vector<Count> section_counts() {
  const std::size_t v_cells = 4 * std::size(v_table);
  return {
      {"section.hpp", "V volumes", v_cells - print_slips(), 0, print_slips()},
      {"section.hpp", "weight beside volume", std::size(volume_weight_rows), 0, 0},
      {"section.hpp", "fillets", std::size(fillet_weight_rows), 0, 0},
      {"section.hpp", "V and bevel", std::size(groove_weight_rows), 0, 0},
      {"section.hpp", "caps", std::size(cap_weight_rows), 0, 0},
      {"section.hpp", "wire per metre of fillet", 2 * std::size(consumption_rows), 0, 0},
      {"elements.hpp", "double V and double bevel", std::size(double_groove_rows), 0, 0},
      {"elements.hpp", "single elements", std::size(element_rows), 0, 0},
      {"elements.hpp", "misprints", 0, 0, std::size(misprint_rows) + 1},
      {"elements.hpp", "covered electrode per metre", std::size(covered_consumption_rows), 0, 0},
      {"elements.hpp", "opening of a V", std::size(opening_rows), 0, 0},
  };
}

std::vector<Count> deposit_counts() {
  const std::size_t cored = std::size(cored_wire_rows);
  return {
      {"deposit.hpp", "wire length per mass, m/kg", std::size(wire_length_rows), 0, 0},
      {"deposit.hpp", "the same in in/lb (a twin)", 0, 0, std::size(wire_length_rows)},
      {"deposit.hpp", "cored wire, deposit in lb/h", cored, 0, 0},
      {"deposit.hpp", "the same in kg/h (a twin)", 0, 0, cored},
      {"deposit.hpp",
       "cored wire, melt-off from mass",
       rows_against_mass(),
       0,
       cored - rows_against_mass()},
      {"deposit.hpp", "deposition test by weighing", 2, 0, 0},
      {"deposit.hpp", "solid wire as remembered", 0, 0, std::size(remembered_melt_off_rows)},
      {"consumables.hpp", "feed at a current", predicted_feeds(), 0, 1},
      {"consumables.hpp", "efficiencies, least and most", 0, distinct_efficiencies(), 0},
      {"consumables.hpp", "CO2 fillet conditions", 0, 0, 2 * std::size(condition_rows)},
  };
}

std::vector<Count> size_counts() {
  return {
      {"weld_size.hpp", "least legs", 0, std::size(least_leg_rows), std::size(metric_leg_rows)},
      {"weld_size.hpp", "largest leg along an edge", std::size(edge_rows), 0, 0},
      {"weld_size.hpp", "end-loaded share", std::size(end_loaded_rows), 0, 0},
      {"weld_size.hpp", "least partial throat", 0, std::size(partial_throat_rows), 0},
      {"weld_size.hpp", "deduction of partial grooves", 0, std::size(deduction_rows), 0},
      {"weld_size.hpp", "plug holes", 2 * std::size(plug_rows), 0, 0},
      {"weld_size.hpp", "tacks", std::size(tack_rows), 0, 0},
      {"weld_size.hpp",
       "misalignment and gap by level",
       three_levels(plate_misalignment_rows) + three_levels(tube_misalignment_rows) +
           three_levels(fillet_gap_rows) + three_levels(fillet_gap_sheet_rows),
       0,
       0},
      {"pass_limits.hpp",
       "leg and root by position, fill",
       0,
       2 * std::size(pass_limit_rows) + 1,
       0},
      {"pass_limits.hpp", "passes of a fillet", std::size(pass_count_rows), 0, 0},
      {"pass_limits.hpp", "layer heights", 0, 0, std::size(equal_bead_heights)},
  };
}

std::size_t limits_in(const material::Composition& k) {
  const double contents[] = {
      k.c, k.si, k.mn, k.p, k.s, k.cr, k.mo, k.v, k.ni, k.cu, k.nb, k.ti, k.al, k.b, k.n};
  return static_cast<std::size_t>(
      std::count_if(std::begin(contents), std::end(contents), [](double c) { return c > 0.0; }));
}

/// Limits and yields that the rows of other steels print; limits that stay count once.
std::size_t seen_values() {
  std::size_t count = 0;
  material::Composition last;
  for (const SeenRow& row : seen_rows) {
    if (row.yield_mpa > 0.0) ++count;
    if (row.limits != last) count += limits_in(row.limits);
    last = row.limits;
  }
  return count;
}

std::size_t seen_cells(const ToleranceRow (&rows)[4]) {
  std::size_t count = 0;
  for (const ToleranceRow& row : rows) count += row.seen;
  return count;
}

std::vector<Count> shrinkage_counts() {
  constexpr std::size_t linear_cells = 4 * 11;
  constexpr std::size_t form_cells = 4 * 10;
  return {
      {"shrinkage.hpp", "across single bevels", std::size(bevel_shrink_rows), 0, 0},
      {"shrinkage.hpp", "allowances", 0, std::size(allowances_mm), 1},
      {"shrinkage.hpp", "one butt, one lean: plausibility", 0, 0, 2},
      {"shrinkage.hpp",
       "tolerances of lengths",
       0,
       seen_cells(linear_rows),
       linear_cells - seen_cells(linear_rows)},
      {"shrinkage.hpp", "tolerances of angles, with mm/m", 0, 6 * std::size(angle_rows), 0},
      {"shrinkage.hpp",
       "tolerances of form",
       0,
       seen_cells(form_rows),
       form_cells - seen_cells(form_rows)},
  };
}

std::vector<Count> other_counts() {
  const auto expected = [](const auto& row) { return row.expected; };
  return {
      {"carbon_equivalent.hpp", "heats with Ceq", std::size(jis_heats), 0, 0},
      {"carbon_equivalent.hpp",
       "worked examples and certificates",
       published(published_carbon_rows, expected),
       0,
       0},
      {"steel_rows.hpp", "CEV by thickness", 0, std::size(cev_rows), 0},
      {"steel_rows.hpp", "yield by thickness", 0, std::size(yield_rows), 0},
      {"steel_rows.hpp", "carbon by thickness", 0, std::size(carbon_rows), 0},
      {"steel_rows.hpp", "other limits", 0, 6 * std::size(limit_rows) + 3, 0},
      {"steel_rows.hpp", "limits of a wear plate", 0, 6, 0},
      {"steel_rows.hpp", "bands of other steels", 0, seen_values(), 0},
      {"steel_rows.hpp", "categories of AWS D1.1", 0, std::size(steel_category_rows), 0},
      {"heat.hpp", "arc energy", published(arc_energy_rows, expected), 0, 0},
      {"heat.hpp", "thermal efficiency k", 0, std::size(efficiency_rows), 0},
      {"heat.hpp", "preheat", published(preheat_rows, expected), 0, 0},
      {"heat_tables.hpp", "combined thickness without preheat", 0, 4 * std::size(table_c1_rows), 0},
      {"heat_tables.hpp", "preheat by category", 0, 6 * std::size(category_rows), 0},
      {"heat_tables.hpp", "hold before testing", 0, 2 * std::size(hold_rows), 0},
      {"heat_tables.hpp", "letters of the annex", 0, 0, std::size(letter_rows)},
      {"position.hpp", "grooves with their code", std::size(oracles::published_grooves), 0, 0},
      {"cost.hpp", "unit costs", unit_costs(), 0, 0},
  };
}

std::string line_of(const Count& count) {
  return std::string("| ") + count.file + " | " + count.what + " | " +
         std::to_string(count.computed) + " | " + std::to_string(count.held) + " | " +
         std::to_string(count.left_out) + " |";
}

std::string total_line(const char* name, const std::vector<Count>& counts) {
  Count sum{name, "all", 0, 0, 0};
  for (const Count& count : counts) {
    sum.computed += count.computed;
    sum.held += count.held;
    sum.left_out += count.left_out;
  }
  return line_of(sum);
}

}  // namespace

TEST_SUITE("oracles/published_count") {
  TEST_CASE(
      "for the whole suite, law: 180 published values of weld metal or more, as README says") {
    std::vector<Count> metal;
    for (const auto& part : {section_counts(), deposit_counts(), size_counts()}) {
      metal.insert(metal.end(), part.begin(), part.end());
    }
    std::vector<Count> other = other_counts();
    for (const Count& count : shrinkage_counts()) other.push_back(count);
    std::vector<std::string> lines;
    for (const Count& count : metal) lines.push_back(line_of(count));
    lines.push_back(total_line("weld metal", metal));
    for (const Count& count : other) lines.push_back(line_of(count));
    lines.push_back(total_line("other rooms", other));

    std::size_t values = 0;
    for (const Count& count : metal) values += count.computed + count.held;
    MESSAGE("published values of weld metal: ", values, ", by file in tests/oracles/README.md");
    CHECK(values >= 180);
    const std::string readme = text_of(repository() / "tests/oracles/README.md");
    for (const std::string& line : lines) {
      INFO("tests/oracles/README.md must hold: ", line);
      CHECK(readme.find(line) != std::string::npos);
    }
  }
}

}  // namespace seamturn::tests
