// SPDX-License-Identifier: MIT
#include "docs/method_plots.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/heat/preheat_ito_bessyo.hpp"
#include "seamturn/heat/preheat_tables.hpp"
#include "seamturn/heat/preheat_zone.hpp"
#include "seamturn/heat/thickness_seen.hpp"

namespace seamturn::tests {

namespace {

NamedPlot cet_plot() {
  NamedPlot out{"preheat-cet.svg",
                {"Preheat by the CET method at 5 ml/100 g and 1 kJ/mm",
                 {"thickness, mm", {3, 10, 20, 40, 60, 90, 120}},
                 {"preheat, degC", {-100, -50, 0, 50, 100, 150, 200, 250, 300}},
                 std::pair(10.0, 90.0),
                 {}}};
  for (const double cet : {0.50, 0.40, 0.30, 0.20}) {
    const auto preheat_c = [cet](double mm) {
      return heat::preheat_cet({cet, mm, 5.0, 1.0})->preheat_c;
    };
    out.plot.curves.push_back(
        curve_of("CET " + base::digits_text(cet) + " %", 3.0, 120.0, 39, preheat_c));
  }
  return out;
}

NamedPlot table_c1_plot() {
  NamedPlot out{"table-c1.svg",
                {"Table C.1 of EN 1011-2: no preheat up to this combined thickness",
                 {"diffusible hydrogen, ml/100 g", {0, 3, 5, 10, 15, 20}},
                 {"combined thickness, mm", {0, 20, 40, 60, 80, 100}},
                 std::nullopt,
                 {}}};
  struct Column {
    double cev, heat_input_kj_mm;
  };
  for (const Column column :
       {Column{0.43, 2.0}, Column{0.49, 2.0}, Column{0.43, 1.0}, Column{0.49, 1.0}}) {
    out.plot.curves.push_back(stairs_of(
        "CE " + base::digits_text(column.cev) + ", " + base::digits_text(column.heat_input_kj_mm) +
            " kJ/mm",
        0.0,
        {3.0, 5.0, 10.0, 15.0, 20.0},
        [column](double ml) {
          return heat::table_c1({column.cev, column.heat_input_kj_mm, ml})->largest_combined_mm;
        }));
    out.plot.curves.back().dashed = column.cev > 0.45;
  }
  return out;
}

NamedPlot category_plot() {
  NamedPlot out{"aws-category.svg",
                {"Prequalified preheat by category; C as A but 10 degC up to 20 mm",
                 {"thickness, mm", {3, 20, 38, 65, 100}},
                 {"preheat, degC", {0, 50, 100, 150, 200}},
                 std::pair(3.0, 100.0),
                 {}}};
  for (const char category : {'A', 'B', 'C', 'D'}) {
    out.plot.curves.push_back(stairs_of(
        std::string("category ") + category, 3.0, {20.0, 38.0, 65.0, 100.0}, [category](double mm) {
          return heat::aws_category_preheat({category, mm, 4.0})->preheat_c;
        }));
    out.plot.curves.back().dashed = category > 'B';
  }
  return out;
}

NamedPlot annex_plot() {
  NamedPlot out{"aws-hydrogen.svg",
                {"Hydrogen-control annex, UNCONFIRMED: H2, medium restraint; 20 is 20 or less",
                 {"thickness, mm", {0, 10, 20, 38, 75, 100}},
                 {"preheat, degC (20: 20 or less)", {0, 50, 100, 150, 200}},
                 std::nullopt,
                 {}}};
  for (const double pcm : {0.37, 0.32, 0.27, 0.22, 0.17}) {
    out.plot.curves.push_back(stairs_of(
        "Pcm < " + base::digits_text(pcm + 0.01),
        0.0,
        {10.0, 20.0, 38.0, 75.0, 100.0},
        [pcm](double mm) {
          return heat::aws_hydrogen_preheat({pcm, 8.0, joint::Restraint::medium, mm})->preheat_c;
        }));
  }
  return out;
}

NamedPlot ito_bessyo_plot() {
  NamedPlot out{"ito-bessyo.svg",
                {"Ito-Bessyo temperature at 3 ml/100 g (glycerine)",
                 {"thickness, mm", {10, 19, 30, 40, 50, 60}},
                 {"To, degC", {-50, 0, 50, 100, 150, 200, 250, 300}},
                 std::pair(19.0, 50.0),
                 {}}};
  for (const double pcm : {0.30, 0.26, 0.22, 0.18}) {
    out.plot.curves.push_back(
        curve_of("Pcm " + base::digits_text(pcm) + " %", 10.0, 60.0, 10, [pcm](double mm) {
          return heat::preheat_ito_bessyo({pcm, 3.0, mm, 2.0})->preheat_c;
        }));
  }
  return out;
}

NamedPlot zone_plot() {
  NamedPlot out{"preheat-zone.svg",
                {"Where to heat and where to measure",
                 {"thickness, mm", {0, 12.5, 25, 50, 75, 100}},
                 {"distance from the weld, mm", {0, 25, 50, 75, 100}},
                 std::nullopt,
                 {}}};
  out.plot.curves.push_back(
      curve_of("heated width each side", 1.0, 100.0, 99, heat::zone_width_mm));
  out.plot.curves.push_back(
      curve_of("measuring point", 1.0, 100.0, 198, heat::measure_distance_mm));
  return out;
}

NamedPlot combined_plot() {
  NamedPlot out{"combined-thickness.svg",
                {"Combined thickness of joints of equal plates",
                 {"thickness of each plate, mm", {0, 10, 20, 30, 40}},
                 {"combined thickness, mm", {0, 20, 40, 60, 80, 100, 120}},
                 std::nullopt,
                 {}}};
  const auto paths = [](double mm, std::size_t count) {
    return std::vector<heat::HeatPath>(count, heat::HeatPath{"plate", mm});
  };
  out.plot.curves.push_back(curve_of("tee, one fillet", 1.0, 40.0, 1, [&paths](double mm) {
    return heat::combined_thickness_mm(paths(mm, 3), false);
  }));
  out.plot.curves.push_back(curve_of("butt", 1.0, 40.0, 1, [&paths](double mm) {
    return heat::combined_thickness_mm(paths(mm, 2), false);
  }));
  out.plot.curves.push_back(curve_of("tee, opposed pair", 1.0, 40.0, 1, [&paths](double mm) {
    return heat::combined_thickness_mm(paths(mm, 3), true);
  }));
  return out;
}

}  // namespace

std::vector<NamedPlot> preheat_plots() {
  return {cet_plot(),
          table_c1_plot(),
          category_plot(),
          annex_plot(),
          ito_bessyo_plot(),
          zone_plot(),
          combined_plot()};
}

}  // namespace seamturn::tests
