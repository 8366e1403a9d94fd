// SPDX-License-Identifier: MIT
// The figures passes and nozzle-access: wired to the pass room, sizes from their keys.
#include <numbers>

#include "figures/figure_calls.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::tests {

namespace {

using figures::FigureTable;

Arguments with(Arguments first, const Arguments& more) {
  first.insert(first.end(), more.begin(), more.end());
  return first;
}

/// 1.2 mm wire at 10 m/min, 30 V, 300 A, 95 %; travel hardly bound.
Arguments row(const Arguments& more) {
  return with({{"position", "PA"},
               {"wire", "1.2 mm"},
               {"efficiency", "95 %"},
               {"feed", "10 m/min"},
               {"voltage", "30 V"},
               {"current", "300 A"},
               {"travel-min", "5 cm/min"},
               {"travel", "40 cm/min"},
               {"travel-max", "200 cm/min"}},
              more);
}

Arguments vee(const std::string& angle, const Arguments& more = {}) {
  return with({{"preparation", "single-v"},
               {"thickness", "40 mm"},
               {"gap", "3 mm"},
               {"root-face", "2 mm"},
               {"angle", angle}},
              more);
}

/// A nozzle of 20 mm, its tip 3 mm inside, 18 mm off the work.
Arguments nozzle(const Arguments& more) {
  return with({{"nozzle", "20 mm"}, {"recess", "3 mm"}, {"stick-out", "18 mm"}}, more);
}

double cell(const FigureTable& table, std::size_t line, const std::string& column) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (table.columns[i].name == column) return std::get<double>(table.rows.at(line)[i]);
  }
  FAIL("no column named ", column);
  return 0.0;
}

std::string cell_word(const FigureTable& table, std::size_t line, const std::string& column) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (table.columns[i].name == column) return std::get<std::string>(table.rows.at(line)[i]);
  }
  FAIL("no column named ", column);
  return {};
}

double sum(const FigureTable& table, const std::string& column) {
  double total = 0.0;
  for (std::size_t i = 0; i < table.rows.size(); ++i) total += cell(table, i, column);
  return total;
}

Expected by_hand(double value, double tolerance) {
  return {value, tolerance, Origin::closed_form, "plane geometry, by hand"};
}

}  // namespace

TEST_SUITE("figures/pass_figures") {
  TEST_CASE("given a fillet of leg 8 mm in one pass, passes tells travel, time and heat input") {
    const FigureResult result =
        result_of("passes", row({{"preparation", "fillet"}, {"leg", "8 mm"}}));
    CHECK(principal(result) == 1.0);
    REQUIRE(result.table.has_value());
    const FigureTable& table = *result.table;
    // closed-form: pi/4 1.2^2 x 10000/60 x 0.95 = 179.07 mm3/s on 32 mm2.
    const double travel = 0.25 * std::numbers::pi * 1.44 * (10000.0 / 60.0) * 0.95 / 32.0;
    check_expected("travel", cell(table, 0, "travel_mm_s"), by_hand(travel, 1e-9));
    check_expected("arc", cell(table, 0, "arc_time_s"), by_hand(1000.0 / travel, 1e-6));
    check_expected("arc", number(result, "arc_time_s"), by_hand(1000.0 / travel, 1e-6));
    const Expected heat = {0.8 * 9.0 / travel, 1e-9, Origin::computed, "EN 1011-1: k U I / v"};
    check_expected("heat", cell(table, 0, "heat_input_kj_mm"), heat);
    check_expected("centre", cell(table, 0, "centre_x_mm"), by_hand(0.0, 1e-9));
    CHECK(cell_word(table, 0, "role") == "single");
    CHECK(cell_word(table, 0, "limited_by").empty());
  }

  TEST_CASE("given the legs of one pass in a code, passes names the limit that splits") {
    // published: AWS D1.1 2020 table 5.1, largest single-pass leg in PB 10 mm. Three: layers 1, 2.
    const auto count = [&](const std::string& leg) {
      return principal(result_of(
          "passes", row({{"preparation", "fillet"}, {"leg", leg}, {"leg-max", "10 mm"}})));
    };
    CHECK(count("10 mm") == 1.0);
    CHECK(count("10.1 mm") == 3.0);
    const FigureResult split = result_of(
        "passes", row({{"preparation", "fillet"}, {"leg", "10.1 mm"}, {"leg-max", "10 mm"}}));
    CHECK(cell_word(*split.table, 0, "limited_by") == "leg-max");
    CHECK(number(split, "layers") == 2.0);
  }

  TEST_CASE("for every preparation, law: areas of the passes add up to that of section") {
    const std::vector<std::pair<Arguments, std::string>> all = {
        {{{"preparation", "fillet"}, {"leg-1", "14 mm"}, {"leg-2", "20 mm"}}, "area_mm2"},
        {vee("60 deg", {{"cap-height", "2 mm"}, {"toe-lap", "1 mm"}}), "area_mm2"},
        {{{"preparation", "single-bevel"},
          {"thickness", "25 mm"},
          {"gap", "4 mm"},
          {"root-face", "1 mm"},
          {"angle", "50 deg"}},
         "area_mm2"},
        {{{"preparation", "single-u"},
          {"thickness", "30 mm"},
          {"gap", "2 mm"},
          {"root-face", "3 mm"},
          {"angle", "10 deg"},
          {"radius", "6 mm"}},
         "area_mm2"},
        {{{"preparation", "double-v"},
          {"thickness", "40 mm"},
          {"gap", "3 mm"},
          {"root-face", "2 mm"},
          {"angle", "50 deg"},
          {"depth-1", "25 mm"}},
         "side_1_area_mm2"},
    };
    for (const auto& one : all) {
      const Arguments& sizes = one.first;
      const std::string& name = one.second;
      INFO(sizes.front().second);
      const double area_mm2 = number(result_of("section", sizes), name);
      const FigureResult result = result_of(
          "passes",
          with(row({{"area-max", "40 mm2"}, {"thickness-max", "6 mm"}, {"split-width", "16 mm"}}),
               sizes));
      CHECK(result.table->rows.size() > 3);
      CHECK(principal(result) == static_cast<double>(result.table->rows.size()));
      CHECK(sum(*result.table, "area_mm2") == doctest::Approx(area_mm2).epsilon(1e-9));
      CHECK(number(result, "section_area_mm2") == doctest::Approx(area_mm2).epsilon(1e-12));
      CHECK(sum(*result.table, "arc_time_s") ==
            doctest::Approx(number(result, "arc_time_s")).epsilon(1e-9));
    }
  }

  TEST_CASE("given the two sides of a double V, passes fills the one asked for") {
    const Arguments sizes = {{"preparation", "double-v"},
                             {"thickness", "40 mm"},
                             {"gap", "3 mm"},
                             {"root-face", "2 mm"},
                             {"angle", "50 deg"},
                             {"depth-1", "25 mm"}};
    const double side_2_mm2 = number(result_of("section", sizes), "side_2_area_mm2");
    const FigureResult second =
        result_of("passes", with(row({{"area-max", "40 mm2"}, {"side", "2"}}), sizes));
    CHECK(sum(*second.table, "area_mm2") == doctest::Approx(side_2_mm2).epsilon(1e-9));
    CHECK(usage_of("passes", with(row({{"side", "2"}}), vee("60 deg"))).find("side=2 needs") !=
          std::string::npos);
  }

  TEST_CASE(
      "given an upper bound of heat input, passes splits until it is kept and names the row") {
    // closed-form: heat input is k U I / travel, travel = 179.07 mm3/s / area: 1 kJ/mm is 24.87
    // mm2.
    const Arguments fillet = {{"preparation", "fillet"}, {"leg", "8 mm"}};
    const FigureResult result =
        result_of("passes", with(row({{"heat-input-max", "1 kJ/mm"}}), fillet));
    CHECK(principal(result) == 2.0);
    CHECK(number(result, "heat_input_max_kj_mm") <= 1.0 + 1e-9);
    CHECK(principal(result_of("passes", with(row({{"heat-input-max", "1.3 kJ/mm"}}), fillet))) ==
          1.0);
  }

  TEST_CASE("refuses passes that no travel closes, rows out of order and unknown positions") {
    const Arguments fillet = {{"preparation", "fillet"}, {"leg", "8 mm"}};
    Arguments slow = row(fillet);
    for (auto& [key, value] : slow) {
      if (key == "travel-max") value = "40 cm/min";
      if (key == "travel-min") value = "39 cm/min";
    }
    CHECK(code_of("passes", slow) == "pass.travel.cannot_close");
    Arguments falling = row(fillet);
    for (auto& [key, value] : falling) {
      if (key == "travel-max") value = "30 cm/min";
    }
    CHECK(code_of("passes", falling) == "figure.value.out_of_range");
    Arguments nowhere = row(fillet);
    nowhere.front().second = "PX";
    CHECK(code_of("passes", nowhere) == "figure.word.unknown");
    CHECK(code_of("passes", with(row({{"process", "999"}}), fillet)) == "heat.process.unknown");
    CHECK(code_of("passes", with(row({{"area-max", "-1 mm2"}}), fillet)) ==
          "figure.value.out_of_range");
  }

  TEST_CASE("given a V of 60 deg 40 mm deep, nozzle-access says no, by how much and the ways out") {
    const FigureResult result =
        result_of("nozzle-access", vee("60 deg", nozzle({{"clearance", "0 mm"}})));
    CHECK(std::get<std::string>(result.principal.value) == "no");
    const double slope = 1.0 / std::sqrt(3.0);  // tan 30 deg
    // The face r = 1.5 + (s - 2) tan 30 has r - 10 = 15 - s at s = (23.5 + 2 tan) / (1 + tan).
    const double s_mm = (23.5 + 2.0 * slope) / (1.0 + slope);
    check_expected("clearance", number(result, "clearance_mm"), by_hand(15.0 - s_mm, 1e-9));
    check_expected("short", number(result, "short_mm"), by_hand(s_mm - 15.0, 1e-9));
    check_expected("largest nozzle",
                   number(result, "largest_nozzle_mm"),
                   by_hand(2.0 * (1.5 + 13.0 * slope), 1e-9));
    check_expected("least stick-out",
                   number(result, "least_stick_out_mm"),
                   by_hand(2.0 + 8.5 / slope + 3.0, 1e-9));
    check_expected("least angle",
                   number(result, "least_included_deg"),
                   by_hand(2.0 * std::atan(8.5 / 13.0) * 180.0 / std::numbers::pi, 0.01));
    CHECK(number(result, "torch_deg") == doctest::Approx(0.0).scale(1.0));
    REQUIRE(result.findings.size() == 1);
    CHECK(result.findings[0].code == "pass.nozzle.no_access");
  }

  TEST_CASE("given the ways out just taken, nozzle-access says yes, and just not, no") {
    const auto word_of = [](const Arguments& arguments) {
      return std::get<std::string>(result_of("nozzle-access", arguments).principal.value);
    };
    const Arguments close = {{"clearance", "0 mm"}};
    CHECK(word_of(vee("66.4 deg", nozzle(close))) == "yes");  // by hand 66.36
    CHECK(word_of(vee("66.3 deg", nozzle(close))) == "no");
    const auto sized = [&](const std::string& diameter, const std::string& tip) {
      return word_of(vee(
          "60 deg",
          {{"nozzle", diameter}, {"recess", "3 mm"}, {"stick-out", tip}, {"clearance", "0 mm"}}));
    };
    CHECK(sized("18.0 mm", "18 mm") == "yes");  // by hand 18.01
    CHECK(sized("18.1 mm", "18 mm") == "no");
    CHECK(sized("20 mm", "19.8 mm") == "yes");  // by hand 19.72
    CHECK(sized("20 mm", "19.7 mm") == "no");
    // closed-form: the fillet at 90 deg of docs/methods/nozzle-access.md, 2 mm of room.
    const Arguments fillet = {{"preparation", "fillet"},
                              {"leg", "8 mm"},
                              {"nozzle", "22 mm"},
                              {"recess", "3 mm"},
                              {"stick-out", "18 mm"}};
    CHECK(number(result_of("nozzle-access", fillet), "clearance_mm") == doctest::Approx(2.0));
    const FigureResult leaning = result_of("nozzle-access", with(fillet, {{"torch", "12 deg"}}));
    CHECK(number(leaning, "clearance_mm") == doctest::Approx(-0.76).epsilon(0.005));
    CHECK(word(leaning, "nearest_wall") == "right plate");
  }

  TEST_CASE("for any V, law: a wider angle never makes access worse") {
    double before_mm = -1e9;
    for (int angle = 20; angle <= 120; angle += 5) {
      INFO(angle);
      const FigureResult result =
          result_of("nozzle-access", vee(std::to_string(angle) + " deg", nozzle({})));
      const double clearance_mm = number(result, "clearance_mm");
      CHECK(clearance_mm >= before_mm);
      before_mm = clearance_mm;
    }
    CHECK(before_mm > 5.0);
  }

  TEST_CASE("given a bevel, nozzle-access leans the torch half way between the walls") {
    const Arguments bevel = nozzle({{"preparation", "single-bevel"},
                                    {"thickness", "20 mm"},
                                    {"gap", "4 mm"},
                                    {"root-face", "0 mm"},
                                    {"angle", "40 deg"}});
    const FigureResult result = result_of("nozzle-access", bevel);
    check_expected("lean", number(result, "torch_deg"), by_hand(20.0, 1e-9));
    check_expected("aim", number(result, "aim_x_mm"), by_hand(2.0, 1e-9));
    // A quarter of the way up the walls are 4 + 5 tan 40 apart.
    const FigureResult higher = result_of("nozzle-access", with(bevel, {{"height", "5 mm"}}));
    check_expected("aim",
                   number(higher, "aim_x_mm"),
                   by_hand(0.5 * (4.0 + 5.0 * std::tan(40.0 * std::numbers::pi / 180.0)), 1e-9));
    // common practice: never beyond 25 deg.
    Arguments wide = bevel;
    for (auto& [key, value] : wide) {
      if (key == "angle") value = "60 deg";
    }
    check_expected(
        "lean", number(result_of("nozzle-access", wide), "torch_deg"), by_hand(25.0, 1e-9));
    // An upright plate, as in a tee, is a wall of its own: beside a torch along it, at any
    // stick-out.
    const Arguments along = with(bevel, {{"torch", "0 deg"}});
    const FigureResult tee = result_of("nozzle-access", with(along, {{"left-rise", "90 deg"}}));
    CHECK(number(tee, "clearance_mm") <= number(result_of("nozzle-access", along), "clearance_mm"));
    CHECK(word(tee, "least_stick_out_mm") == "none");
  }

  TEST_CASE("refuses a nozzle without size, a height above the groove, plugs and a false range") {
    CHECK(
        code_of("nozzle-access",
                vee("60 deg", {{"nozzle", "0 mm"}, {"recess", "3 mm"}, {"stick-out", "18 mm"}})) ==
        "figure.value.out_of_range");
    CHECK(code_of("nozzle-access", vee("60 deg", nozzle({{"height", "40 mm"}}))) ==
          "figure.value.out_of_range");
    CHECK(code_of("nozzle-access", vee("60 deg", nozzle({{"torch", "81 deg"}}))) ==
          "figure.value.out_of_range");
    CHECK(
        code_of("nozzle-access",
                vee("60 deg", nozzle({{"stick-out-min", "20 mm"}, {"stick-out-max", "19 mm"}}))) ==
        "figure.value.out_of_range");
    CHECK(usage_of("nozzle-access",
                   nozzle({{"preparation", "plug"}, {"width", "20 mm"}, {"fill", "8 mm"}}))
              .find("no walls along a seam") != std::string::npos);
    // A row outside the range the nozzle is for is said, but it is not a matter of access.
    const FigureResult outside =
        result_of("nozzle-access", vee("70 deg", nozzle({{"stick-out-min", "19 mm"}})));
    REQUIRE_FALSE(outside.findings.empty());
    CHECK(outside.findings.back().code == "pass.nozzle.stick_out");
  }
}

}  // namespace seamturn::tests
