// SPDX-License-Identifier: MIT
#include "seamturn/joint/imperfection_limits.hpp"

#include <cmath>
#include <span>

#include "oracles/weld_size.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using joint::ImperfectionLimit;
using joint::QualityLevel;

namespace {

constexpr QualityLevel levels[] = {QualityLevel::b, QualityLevel::c, QualityLevel::d};

template <class Limit>
void check_rows(std::span<const LevelRow> rows, const Limit& limit_of) {
  for (const LevelRow& row : rows) {
    for (int i = 0; i < 3; ++i) {
      const base::Outcome<ImperfectionLimit> got = limit_of(levels[i], row.size_mm);
      REQUIRE(got.has_value());
      check_expected(std::string(joint::quality_name(levels[i])) + " at " +
                         std::to_string(row.size_mm) + " mm",
                     got->limit_mm,
                     row.limit_mm[i]);
      CHECK(got->citation.status == base::Status::verified);
    }
  }
}

}  // namespace

TEST_SUITE("joint/imperfection_limits") {
  TEST_CASE("given SEAM-DATA rows of ISO 5817:2023, misalignment and gap limits are the printed") {
    check_rows(plate_misalignment_rows, joint::plate_misalignment_limit);
    check_rows(tube_misalignment_rows, joint::tube_misalignment_limit);
    check_rows(fillet_gap_rows, [](QualityLevel level, double throat_mm) {
      return joint::fillet_gap_limit(level, 10.0, throat_mm);
    });
    check_rows(fillet_gap_sheet_rows, [](QualityLevel level, double throat_mm) {
      return joint::fillet_gap_limit(level, 3.0, throat_mm);
    });
  }

  TEST_CASE("given excess and convexity from memory, the limits rise to their cap and say so") {
    // remembered: ISO 5817 no. 502 and 503.
    const double excess_at_20[] = {3.0, 4.0, 6.0};
    const double excess_cap[] = {5.0, 7.0, 10.0};
    const double convex_at_10[] = {2.0, 2.5, 3.5};
    const double convex_cap[] = {3.0, 4.0, 5.0};
    for (int i = 0; i < 3; ++i) {
      INFO(i);
      CHECK(joint::excess_metal_limit(levels[i], 20.0).limit_mm ==
            doctest::Approx(excess_at_20[i]));
      CHECK(joint::excess_metal_limit(levels[i], 100.0).limit_mm == excess_cap[i]);
      CHECK(joint::convexity_limit(levels[i], 10.0).limit_mm == doctest::Approx(convex_at_10[i]));
      CHECK(joint::convexity_limit(levels[i], 40.0).limit_mm == convex_cap[i]);
      CHECK(joint::excess_metal_limit(levels[i], 20.0).citation.status ==
            base::Status::from_memory);
      CHECK(joint::convexity_limit(levels[i], 20.0).citation.status == base::Status::from_memory);
    }
    CHECK(joint::convexity_limit_aws(8.0).limit_mm == 2.0);
    CHECK(joint::convexity_limit_aws(8.1).limit_mm == 3.0);
    CHECK(joint::convexity_limit_aws(24.9).limit_mm == 3.0);
    CHECK(joint::convexity_limit_aws(25.0).limit_mm == 5.0);
    CHECK_THROWS_AS((void)joint::convexity_limit_aws(0.0), base::ContractViolation);
    CHECK_THROWS_AS((void)joint::excess_metal_limit(QualityLevel::b, std::nan("")),
                    base::ContractViolation);
  }

  TEST_CASE("for any size, law: B allows no more than C and C no more than D") {
    for (double size_mm = 0.5; size_mm < 60.0; size_mm += 0.25) {
      INFO(size_mm);
      double before = 0.0;
      double gap_before = 0.0;
      for (const QualityLevel level : levels) {
        const double plate_mm = joint::plate_misalignment_limit(level, size_mm)->limit_mm;
        const double gap_mm = joint::fillet_gap_limit(level, size_mm, 0.5 * size_mm)->limit_mm;
        CHECK(plate_mm >= before);
        CHECK(gap_mm >= gap_before);
        before = plate_mm;
        gap_before = gap_mm;
      }
    }
  }

  TEST_CASE("given GB/T 10854, legs may be 3 or 4 mm over and caps 3 or 4 mm high") {
    const char* source = "GB/T 10854 clauses 4.3 to 4.7";
    check_expected("leg 11.9",
                   joint::leg_excess_limit(11.9).limit_mm,
                   {3.0, 1e-12, Origin::published, source});
    check_expected(
        "leg 12", joint::leg_excess_limit(12.0).limit_mm, {4.0, 1e-12, Origin::published, source});
    check_expected("cap flat",
                   joint::cap_height_limit(true).limit_mm,
                   {3.0, 1e-12, Origin::published, source});
    check_expected("cap elsewhere",
                   joint::cap_height_limit(false).limit_mm,
                   {4.0, 1e-12, Origin::published, source});
    check_expected("least lap",
                   joint::cap_lap_over_opening().least_mm,
                   {4.0, 1e-12, Origin::published, source});
    check_expected("largest lap",
                   joint::cap_lap_over_opening().largest_mm,
                   {8.0, 1e-12, Origin::published, source});
  }

  TEST_CASE("refuses thin sheet and no throat because the standard gives no limit there") {
    const auto code = [](const base::Outcome<ImperfectionLimit>& limit) {
      return limit ? std::string("none") : limit.error().code;
    };
    CHECK(code(joint::plate_misalignment_limit(QualityLevel::b, 0.49)) ==
          "joint.quality.thickness");
    CHECK(code(joint::plate_misalignment_limit(QualityLevel::b, 0.5)) == "none");
    CHECK(code(joint::tube_misalignment_limit(QualityLevel::b, 0.49)) == "joint.quality.thickness");
    CHECK(code(joint::fillet_gap_limit(QualityLevel::b, 0.49, 1.0)) == "joint.quality.thickness");
    CHECK(code(joint::fillet_gap_limit(QualityLevel::b, 5.0, 0.0)) == "joint.quality.value");
    CHECK_FALSE(joint::find_quality("A").has_value());
    CHECK(joint::find_quality("C") == QualityLevel::c);
  }
}

}  // namespace seamturn::tests
