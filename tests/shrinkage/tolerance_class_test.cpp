// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/tolerance_class.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "oracles/shrinkage.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Status;
using shrinkage::angular_tolerance;
using shrinkage::form_tolerance;
using shrinkage::FormClass;
using shrinkage::linear_tolerance;
using shrinkage::SizeClass;

TEST_SUITE("shrinkage/tolerance_class") {
  TEST_CASE("given table 1 of ISO 13920, each cell is held with its status") {
    for (const ToleranceRow& row : linear_rows) {
      const SizeClass name = *shrinkage::find_size_class(std::string(1, row.name));
      for (std::size_t i = 0; i < std::size(column_sizes_mm); ++i) {
        const auto cell = linear_tolerance(name, column_sizes_mm[i]);
        REQUIRE(cell.has_value());
        const bool seen = i < row.seen;
        check_expected(std::string(1, row.name) + " " + cell->row,
                       cell->mm,
                       {row.mm[i],
                        0.0,
                        seen ? Origin::published : Origin::remembered,
                        "ISO 13920:1996 table 1"});
        CHECK((cell->citation.status == Status::verified) == seen);
      }
    }
  }

  TEST_CASE("given table 3 of ISO 13920, each cell is held with its status") {
    for (const ToleranceRow& row : form_rows) {
      const FormClass name = *shrinkage::find_form_class(std::string(1, row.name));
      for (std::size_t i = 1; i < std::size(column_sizes_mm); ++i) {
        const auto cell = form_tolerance(name, column_sizes_mm[i]);
        REQUIRE(cell.has_value());
        const bool seen = i <= row.seen;
        check_expected(std::string(1, row.name) + " " + cell->row,
                       cell->mm,
                       {row.mm[i],
                        0.0,
                        seen ? Origin::published : Origin::remembered,
                        "ISO 13920:1996 table 3"});
        CHECK((cell->citation.status == Status::verified) == seen);
      }
    }
  }

  TEST_CASE("given table 2 of ISO 13920, angles are held and their mm/m is the rounded tangent") {
    for (const AngleRow& row : angle_rows) {
      const SizeClass name = *shrinkage::find_size_class(std::string(1, row.name));
      for (std::size_t i = 0; i < std::size(leg_sizes_mm); ++i) {
        const auto cell = angular_tolerance(name, leg_sizes_mm[i]);
        const std::string what = std::string(1, row.name) + " " + cell.row;
        constexpr const char* source = "ISO 13920:1996 table 2";
        check_expected(what, cell.minutes, {row.minutes[i], 0.0, Origin::published, source});
        check_expected(what, cell.mm_per_m, {row.mm_per_m[i], 0.0, Origin::published, source});
        const double tangent = 1000.0 * std::tan(cell.minutes / 60.0 * std::numbers::pi / 180.0);
        check_expected(what,
                       tangent,
                       {row.mm_per_m[i],
                        0.55,
                        Origin::cross,
                        source,
                        "printed to whole mm, 4.5 apart; 17.46 is printed 18"});
        CHECK(cell.citation.status == Status::verified);
      }
    }
  }

  TEST_CASE("given the edges of the tables, a column ends with its size and below there is none") {
    CHECK(linear_tolerance(SizeClass::b, 30.0)->mm == 1.0);
    CHECK(linear_tolerance(SizeClass::b, 30.01)->mm == 2.0);
    CHECK(linear_tolerance(SizeClass::b, 2.0).has_value());
    const auto small = linear_tolerance(SizeClass::b, 1.99);
    REQUIRE_FALSE(small.has_value());
    CHECK(small.error().code == "shrinkage.tolerance.size");
    CHECK(linear_tolerance(SizeClass::b, 20000.0)->mm == 14.0);
    CHECK(linear_tolerance(SizeClass::b, 20000.1)->mm == 16.0);
    CHECK(form_tolerance(FormClass::e, 30.01).has_value());
    const auto short_side = form_tolerance(FormClass::e, 30.0);
    REQUIRE_FALSE(short_side.has_value());
    CHECK(short_side.error().code == "shrinkage.tolerance.size");
    CHECK(form_tolerance(FormClass::f, 400.0)->mm == 1.5);
    CHECK(form_tolerance(FormClass::f, 400.1)->mm == 3.0);
    CHECK(angular_tolerance(SizeClass::a, 400.1).minutes == 15.0);
    CHECK(linear_tolerance(SizeClass::a, 20.0)->row == "2 to 30 mm");
    CHECK(linear_tolerance(SizeClass::a, 200.0)->row == "above 120 to 400 mm");
    CHECK(linear_tolerance(SizeClass::a, 3.0e4)->row == "above 20000 mm");
    CHECK(angular_tolerance(SizeClass::a, 10.0).row == "up to 400 mm");
  }

  TEST_CASE("for every size and class, law: longer or coarser never permits less") {
    double last[4] = {};
    for (const double size_mm : column_sizes_mm) {
      double finer = 0.0;
      for (int i = 0; i < 4; ++i) {
        const double mm = linear_tolerance(static_cast<SizeClass>(i), size_mm)->mm;
        CHECK(mm >= finer);
        CHECK(mm >= last[i]);
        finer = last[i] = mm;
      }
    }
  }

  TEST_CASE("given names, classes are found by them and by no others") {
    CHECK(shrinkage::size_class_name(SizeClass::c) == "C");
    CHECK(shrinkage::form_class_name(FormClass::h) == "H");
    CHECK(shrinkage::find_size_class("D") == SizeClass::d);
    CHECK(shrinkage::find_form_class("F") == FormClass::f);
    CHECK_FALSE(shrinkage::find_size_class("E").has_value());
    CHECK_FALSE(shrinkage::find_form_class("A").has_value());
  }

  TEST_CASE("refuses sizes that are no quantities because they are a caller's bug") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)linear_tolerance(SizeClass::a, nan), base::ContractViolation);
    CHECK_THROWS_AS((void)angular_tolerance(SizeClass::a, 0.0), base::ContractViolation);
    CHECK_THROWS_AS((void)form_tolerance(FormClass::e, -1.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
