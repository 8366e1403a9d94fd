// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_tables.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "oracles/heat_tables.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/heat/preheat_cet.hpp"

namespace seamturn::tests {

using heat::aws_category_preheat;
using heat::aws_hydrogen_preheat;
using heat::AwsHydrogenPreheat;
using heat::table_c1;
using joint::Restraint;

namespace {

AwsHydrogenPreheat annex(double pcm, double hydrogen, Restraint restraint, double thickness_mm) {
  const auto got = aws_hydrogen_preheat({pcm, hydrogen, restraint, thickness_mm});
  REQUIRE(got.has_value());
  return *got;
}

double cell_mm(double cev, double heat_input, double hydrogen) {
  const auto got = table_c1({cev, heat_input, hydrogen});
  REQUIRE(got.has_value());
  return got->largest_combined_mm;
}

}  // namespace

TEST_SUITE("heat/preheat_tables") {
  TEST_CASE("given table C.1, all 20 cells are those printed") {
    constexpr const char* source = "EN-C1, table C.1 p. 17";
    for (const TableC1Row& row : table_c1_rows) {
      const double h = row.hydrogen_ml_100g;
      const auto is = [](double value) { return Expected{value, 0.0, Origin::published, source}; };
      check_expected(row.band, cell_mm(0.49, 1.0, h), is(row.ce_49_q_1_mm));
      check_expected(row.band, cell_mm(0.49, 2.0, h), is(row.ce_49_q_2_mm));
      check_expected(row.band, cell_mm(0.43, 1.0, h), is(row.ce_43_q_1_mm));
      check_expected(row.band, cell_mm(0.43, 2.0, h), is(row.ce_43_q_2_mm));
      CHECK(table_c1({0.4, 1.5, h})->hydrogen_band == row.band);
    }
  }

  TEST_CASE("given values between the cells, law: higher CE, lower heat, the band of hydrogen") {
    const auto between = table_c1({0.431, 1.99, 10.0});
    REQUIRE(between.has_value());
    CHECK(between->listed_cev == 0.49);
    CHECK(between->listed_heat_input_kj_mm == 1.0);
    CHECK(between->hydrogen_letter == 'C');  // 10 still belongs to "> 5 to 10"
    CHECK(table_c1({0.3, 5.0, 10.01})->hydrogen_letter == 'B');
    CHECK(table_c1({0.3, 5.0, 10.01})->listed_cev == 0.43);
    CHECK(table_c1({0.3, 5.0, 10.01})->listed_heat_input_kj_mm == 2.0);
    CHECK(table_c1({0.3, 5.0, 3.0})->hydrogen_letter == 'E');
    CHECK(table_c1({0.3, 5.0, 15.01})->hydrogen_letter == 'A');
  }

  TEST_CASE("for any input, law: more CE or hydrogen or less heat never permits more") {
    const double cevs[] = {0.2, 0.43, 0.44, 0.49};
    const double heats[] = {1.0, 1.9, 2.0, 4.0};
    const double hydrogens[] = {1.0, 3.0, 4.0, 6.0, 12.0, 20.0};
    for (std::size_t i = 0; i + 1 < std::size(cevs); ++i) {
      for (const double q : heats) {
        for (std::size_t k = 0; k + 1 < std::size(hydrogens); ++k) {
          CHECK(cell_mm(cevs[i + 1], q, hydrogens[k]) <= cell_mm(cevs[i], q, hydrogens[k]));
          CHECK(cell_mm(cevs[i], q, hydrogens[k + 1]) <= cell_mm(cevs[i], q, hydrogens[k]));
        }
      }
    }
    for (const double cev : cevs) {
      for (std::size_t i = 0; i + 1 < std::size(heats); ++i) {
        CHECK(cell_mm(cev, heats[i], 7.0) <= cell_mm(cev, heats[i + 1], 7.0));
      }
    }
  }

  TEST_CASE("given the cell's own thickness there is no preheat, above it the table is silent") {
    const auto cell = table_c1({0.482, 1.0, 7.5});
    REQUIRE(cell.has_value());
    CHECK(cell->no_preheat(35.0));
    CHECK_FALSE(cell->no_preheat(35.001));
    CHECK_THROWS_AS((void)cell->no_preheat(0.0), base::ContractViolation);
  }

  TEST_CASE(
      "given two joints, cross: the table asks for nothing where the CET method asks for heat") {
    // cross, computed: C .22 Mn 1.5 and residuals, two plates of 17.5 mm; C .17 Mn 1.45, two of 50.
    CHECK(table_c1({0.482, 1.0, 7.5})->no_preheat(2 * 17.5));
    CHECK(heat::preheat_cet({0.375, 17.5, 7.5, 1.0})->preheat_c ==
          doctest::Approx(121).epsilon(.01));
    CHECK(table_c1({0.426, 2.0, 7.5})->no_preheat(2 * 50.0));
    CHECK(heat::preheat_cet({0.320, 50.0, 7.5, 2.0})->preheat_c ==
          doctest::Approx(133).epsilon(.01));
  }

  TEST_CASE("refuses CE above 0.49 and heat input below 1 because the table lists neither") {
    CHECK(table_c1({0.49, 1.0, 5.0}).has_value());
    for (const auto& refused : {table_c1({0.491, 1.0, 5.0}), table_c1({0.40, 0.99, 5.0})}) {
      REQUIRE_FALSE(refused.has_value());
      CHECK(refused.error().code == "heat.table_c1.not_listed");
      CHECK(refused.error().text.find("consult figure C.2") != std::string::npos);
    }
    CHECK_THROWS_AS((void)table_c1({0.4, 0.0, 5.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)table_c1({-0.1, 1.0, 5.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)table_c1({0.4, 1.0, std::nan("")}), base::ContractViolation);
  }

  TEST_CASE("given the category table, all 16 cells in degF and the metric ones of A and B") {
    const auto got_f = [](char category, double mm) {
      const auto got = aws_category_preheat({category, mm, 4.0});
      REQUIRE(got.has_value());
      return got->preheat_f;
    };
    const auto ab = [](double v) {
      return Expected{v, 0.0, Origin::published, "D11-33, AWS D1.1:2015 table 3.3"};
    };
    const auto cd = [](double v) {
      return Expected{v, 0.0, Origin::published, "D11-CD, older edition of the same table"};
    };
    for (const CategoryRow& row : category_rows) {
      const double mm = row.thickness_mm;
      check_expected("A", got_f('A', mm), ab(row.a_f));
      check_expected("B", got_f('B', mm), ab(row.b_f));
      check_expected("C", got_f('C', mm), cd(row.c_f));
      check_expected("D", got_f('D', mm), cd(row.d_f));
      check_expected("A", aws_category_preheat({'A', mm, {}})->preheat_c, ab(row.a_c));
      check_expected("B", aws_category_preheat({'B', mm, {}})->preheat_c, ab(row.b_c));
    }
    // published: AWSF-2, a practitioner's answer by the 2008 edition: 2 1/2 in, A36, GMAW: 150
    // degF.
    CHECK(got_f('B', 63.5) == 150.0);
    // computed, by analogy: the same degF as in A and B.
    CHECK(aws_category_preheat({'C', 12.0, {}})->preheat_c == 10.0);
    CHECK(aws_category_preheat({'C', 50.0, {}})->preheat_c == 110.0);
    CHECK(aws_category_preheat({'C', 50.0, {}})->status_c == base::Status::computed);
    CHECK(aws_category_preheat({'A', 50.0, {}})->status_c == base::Status::verified);
  }

  TEST_CASE("given the edges 20, 38 and 65 mm, the band ends with them") {
    // published: D11-33, metric edges of the code (an army manual prints 19, 38.1 and 63.5 mm).
    const auto f = [](double mm) { return aws_category_preheat({'A', mm, {}})->preheat_f; };
    CHECK(f(20.0) == 32.0);
    CHECK(f(20.01) == 150.0);
    CHECK(f(38.0) == 150.0);
    CHECK(f(38.01) == 225.0);
    CHECK(f(65.0) == 225.0);
    CHECK(f(65.01) == 300.0);
    CHECK(aws_category_preheat({'A', 20.0, {}})->heats_cold_plate);
    CHECK_FALSE(aws_category_preheat({'A', 21.0, {}})->heats_cold_plate);
  }

  TEST_CASE("refuses other letters, sheet, and D without a filler of H8 or less") {
    const auto code = [](char category, double mm, std::optional<double> hydrogen) {
      const auto got = aws_category_preheat({category, mm, hydrogen});
      return got ? std::string("none") : got.error().code;
    };
    CHECK(code('E', 12.0, {}) == "heat.aws_category.unknown");
    CHECK(code('b', 12.0, {}) == "heat.aws_category.unknown");
    CHECK(code('B', 2.99, {}) == "heat.aws_category.thickness");
    CHECK(code('B', 3.0, {}) == "none");
    CHECK(code('D', 12.0, {}) == "heat.aws_category.hydrogen");
    CHECK(code('D', 12.0, 8.01) == "heat.aws_category.hydrogen");
    CHECK(code('D', 12.0, 8.0) == "none");  // published: FUND-H, H8
    CHECK(code('B', 12.0, 20.0) == "none");
    CHECK_THROWS_AS((void)aws_category_preheat({'B', 0.0, {}}), base::ContractViolation);
    CHECK_THROWS_AS((void)aws_category_preheat({'B', 12.0, -1.0}), base::ContractViolation);
  }

  TEST_CASE("given one reading of the annex, D and 300 degF, never confirmed") {
    // published: AWSF-1, a practitioner's reading of the 2004 annex: Pcm below 0.28, H2, 2 in,
    // high.
    const AwsHydrogenPreheat got = annex(0.27, 8.0, Restraint::high, 50.8);
    CHECK(got.letter == 'D');
    CHECK(got.preheat_f == 300.0);
    CHECK(got.preheat_c == 150.0);  // computed: nearest 5
    CHECK(got.hydrogen_level == 2);
    CHECK_FALSE(got.confirmed);
    CHECK(got.status == base::Status::from_memory);
    REQUIRE(got.findings.size() == 1);
    CHECK(got.findings.front().code == "heat.aws_hydrogen.unconfirmed");
    CHECK(got.findings.front().text.find("shown, never governing") != std::string::npos);
  }

  TEST_CASE("given the remembered letters, the worse of table and index is taken") {
    for (const LetterRow& row : letter_rows) {
      INFO("Pcm ", row.pcm, ", H ", row.hydrogen_ml_100g);
      const AwsHydrogenPreheat got = annex(row.pcm, row.hydrogen_ml_100g, Restraint::low, 12.0);
      CHECK(got.table_letter == row.table);  // remembered
      CHECK(got.letter == row.worse);
      CHECK(std::abs(got.susceptibility - row.susceptibility) <= 0.005);  // computed by hand
    }
    // A level begins with its number: 5 is H2, 10 is H3. A column ends below its own.
    CHECK(annex(0.17, 5.0, Restraint::low, 12.0).hydrogen_level == 2);
    CHECK(annex(0.17, 10.0, Restraint::low, 12.0).hydrogen_level == 3);
    CHECK(annex(0.18, 4.0, Restraint::low, 12.0).table_letter == 'B');
  }

  TEST_CASE("given remembered cells, the preheat is theirs in both units") {
    // remembered: AWS D1.1 annex, three of 105 cells and the one that asks for less than 65 degF.
    CHECK(annex(0.32, 8.0, Restraint::medium, 15.0).preheat_f == 240.0);  // E
    CHECK(annex(0.32, 8.0, Restraint::medium, 15.0).preheat_c == 115.0);
    CHECK(annex(0.22, 8.0, Restraint::medium, 60.0).preheat_f == 230.0);  // C
    CHECK(annex(0.37, 20.0, Restraint::low, 5.0).preheat_f == 300.0);     // G
    const AwsHydrogenPreheat cold = annex(0.17, 4.0, Restraint::low, 12.0);
    CHECK(cold.below_room);
    CHECK(cold.preheat_f == 65.0);
    CHECK(cold.preheat_c == 20.0);
    CHECK_FALSE(annex(0.17, 4.0, Restraint::low, 50.0).below_room);
    // remembered: the first band ends below 10 mm, the others with 20, 38 and 75 mm.
    const auto band = [](double mm) { return annex(0.2, 4.0, Restraint::low, mm).band; };
    CHECK(band(9.99) == "below 10 mm");
    CHECK(band(10.0) == "10 to 20 mm");
    CHECK(band(20.0) == "10 to 20 mm");
    CHECK(band(38.0) == "> 20 to 38 mm");
    CHECK(band(75.0) == "> 38 to 75 mm");
    CHECK(band(75.01) == "> 75 mm");
  }

  TEST_CASE("for every cell, law: preheat rises with letter, thickness and restraint") {
    const double thicknesses[] = {5.0, 15.0, 30.0, 60.0, 90.0};
    const Restraint restraints[] = {Restraint::low, Restraint::medium, Restraint::high};
    // below 65 degF counts as the least
    const auto f = [](const AwsHydrogenPreheat& got) {
      return got.below_room ? 0.0 : got.preheat_f;
    };
    std::size_t seen = 0;
    for (const LetterRow& row : letter_rows) {
      for (std::size_t r = 0; r < 3; ++r) {
        for (std::size_t t = 0; t < 5; ++t) {
          const double h = row.hydrogen_ml_100g;
          const double here = f(annex(row.pcm, h, restraints[r], thicknesses[t]));
          if (t < 4) CHECK(f(annex(row.pcm, h, restraints[r], thicknesses[t + 1])) >= here);
          if (r < 2) CHECK(f(annex(row.pcm, h, restraints[r + 1], thicknesses[t])) >= here);
          if (row.pcm < 0.37) {
            CHECK(f(annex(row.pcm + 0.05, h, restraints[r], thicknesses[t])) >= here);
          }
          ++seen;
        }
      }
    }
    CHECK(seen == 225);
  }

  TEST_CASE("refuses Pcm of 0.38 and above, warns of hydrogen above 30") {
    CHECK(aws_hydrogen_preheat({0.3799, 4.0, Restraint::low, 12.0}).has_value());
    const auto refused = aws_hydrogen_preheat({0.38, 4.0, Restraint::low, 12.0});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "heat.aws_hydrogen.pcm");
    CHECK(annex(0.2, 30.0, Restraint::low, 12.0).findings.size() == 1);
    const AwsHydrogenPreheat wet = annex(0.2, 30.1, Restraint::low, 12.0);
    REQUIRE(wet.findings.size() == 2);
    CHECK(wet.findings.back().code == "heat.aws_hydrogen.out_of_range");
    CHECK_THROWS_AS((void)aws_hydrogen_preheat({0.2, 4.0, Restraint::low, 0.0}),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)aws_hydrogen_preheat({-0.2, 4.0, Restraint::low, 9.0}),
                    base::ContractViolation);
    CHECK(joint::restraint_name(Restraint::medium) == "medium");
  }
}

}  // namespace seamturn::tests
