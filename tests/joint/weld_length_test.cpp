// SPDX-License-Identifier: MIT
#include "seamturn/joint/weld_length.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using joint::LengthForm;
using joint::LengthPattern;
using joint::SeamCourse;
using joint::Stretch;
using joint::welded_length;
using joint::WeldedLength;
using joint::WeldLength;

namespace {

WeldLength elements(int count, double each_mm, double gap_mm) {
  WeldLength asked;
  asked.form = LengthForm::intermittent;
  asked.count = count;
  asked.each_mm = each_mm;
  asked.gap_mm = gap_mm;
  return asked;
}

SeamCourse open_course(double length_mm) {
  return SeamCourse{length_mm, false, false, false};
}
SeamCourse ring(double length_mm) {
  return SeamCourse{length_mm, true, false, false};
}

std::string code_of(const base::Outcome<WeldedLength>& got) {
  return got.has_value() ? std::string("accepted") : got.error().code;
}

void check_stretches(const base::Outcome<WeldedLength>& got, const std::vector<Stretch>& expected) {
  REQUIRE_MESSAGE(got.has_value(), got.error().text);
  REQUIRE(got->stretches.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    CHECK(got->stretches[i].from_mm == doctest::Approx(expected[i].from_mm));
    CHECK(got->stretches[i].to_mm == doctest::Approx(expected[i].to_mm));
  }
}

}  // namespace

TEST_SUITE("joint/weld_length") {
  TEST_CASE("given nothing special, the whole course is welded in one go") {
    const auto got = welded_length(WeldLength{}, open_course(380.0));
    check_stretches(got, {{0.0, 380.0}});
    CHECK(joint::welded_mm(*got) == 380.0);
    CHECK(got->arc_starts() == 1);
    CHECK(joint::length_notation(WeldLength{}).empty());
  }

  TEST_CASE("given 5 x 40 (60) on 460 mm, the leftover of 20 mm lies evenly at both ends") {
    // closed-form: 5 * 40 + 4 * 60 = 440.
    const auto got = welded_length(elements(5, 40.0, 60.0), open_course(460.0));
    check_stretches(got, {{10, 50}, {110, 150}, {210, 250}, {310, 350}, {410, 450}});
    CHECK(joint::welded_mm(*got) == doctest::Approx(200.0));
    CHECK(got->arc_starts() == 5);
    CHECK(joint::length_notation(elements(5, 40.0, 60.0)) == "5 x 40 (60)");
  }

  TEST_CASE("given 5 x 40 (60), 440 mm just hold it and 439 mm refuse it by 1 mm") {
    CHECK(welded_length(elements(5, 40.0, 60.0), open_course(440.0)).has_value());
    const auto got = welded_length(elements(5, 40.0, 60.0), open_course(439.0));
    REQUIRE(code_of(got) == "joint.length.too_long");
    CHECK(got.error().text.find("440 mm") != std::string::npos);
    CHECK(got.error().text.find("1 mm too much") != std::string::npos);
  }

  TEST_CASE("given a staggered pair, the second side's elements face the middles of the gaps") {
    WeldLength asked = elements(3, 40.0, 60.0);
    asked.pattern = LengthPattern::staggered;
    // closed-form: both sides reach 3 * 40 + 2 * 60 + 50 = 290, of 300 mm 5 mm stay at each end.
    SeamCourse second{300.0, false, true, false};
    check_stretches(welded_length(asked, open_course(300.0)), {{5, 45}, {105, 145}, {205, 245}});
    check_stretches(welded_length(asked, second), {{55, 95}, {155, 195}, {255, 295}});
    second.opposed = true;  // the same places, counted from the other end
    check_stretches(welded_length(asked, second), {{5, 45}, {105, 145}, {205, 245}});
    CHECK(code_of(welded_length(asked, open_course(289.0))) == "joint.length.too_long");
    CHECK(joint::length_notation(asked) == "3 x 40 (60) staggered");
    asked.pattern = LengthPattern::chain;
    check_stretches(welded_length(asked, second), {{30, 70}, {130, 170}, {230, 270}});
  }

  TEST_CASE("given elements round a ring, the gap over the start is no smaller than the others") {
    // closed-form: 4 x 50 (50) on 400 mm: all gaps 50, half of one before the first element.
    check_stretches(welded_length(elements(4, 50.0, 50.0), ring(400.0)),
                    {{25, 75}, {125, 175}, {225, 275}, {325, 375}});
    CHECK(code_of(welded_length(elements(4, 50.0, 50.0), ring(399.0))) == "joint.length.too_long");
    WeldLength staggered = elements(4, 50.0, 50.0);
    staggered.pattern = LengthPattern::staggered;
    check_stretches(welded_length(staggered, SeamCourse{400.0, true, true, true}),
                    {{75, 125}, {175, 225}, {275, 325}, {375, 425}});
  }

  TEST_CASE("given tabs, overlap or end returns, they are added to metal and arc") {
    WeldLength asked;
    asked.run_on_mm = 30.0;
    asked.run_off_mm = 40.0;
    auto got = welded_length(asked, open_course(500.0));
    check_stretches(got, {{-30, 540}});
    CHECK(got->tabs_mm == 70.0);
    CHECK(joint::welded_mm(*got) == 570.0);

    asked = WeldLength{};
    asked.end_return_mm = 12.0;
    got = welded_length(asked, open_course(500.0));
    check_stretches(got, {{0, 500}});
    CHECK(joint::welded_mm(*got) == 524.0);

    asked = WeldLength{};
    asked.form = LengthForm::all_round;
    asked.overlap_mm = 15.0;
    got = welded_length(asked, ring(628.0));
    check_stretches(got, {{0, 643}});
    CHECK(got->overlap_mm == 15.0);
    CHECK(joint::length_notation(asked) == "all round");
  }

  TEST_CASE("for any elements that fit, law: lengths and gaps are kept and both ends are equal") {
    base::Random random(base::named_seed(31, "elements"));
    for (int i = 0; i < 500; ++i) {
      WeldLength asked = elements(1 + static_cast<int>(random.between(0.0, 9.0)),
                                  random.between(5.0, 80.0),
                                  random.between(5.0, 200.0));
      const double length = random.between(50.0, 1500.0);
      const auto got = welded_length(asked, open_course(length));
      INFO("seed 31, case " << i);
      const double needed = asked.count * asked.each_mm + (asked.count - 1) * asked.gap_mm;
      CHECK(got.has_value() == (needed <= length));
      if (!got) continue;
      CHECK(joint::welded_mm(*got) == doctest::Approx(asked.count * asked.each_mm));
      CHECK(got->stretches.front().from_mm ==
            doctest::Approx(length - got->stretches.back().to_mm).epsilon(1e-9));
      for (std::size_t k = 1; k < got->stretches.size(); ++k) {
        CHECK(got->stretches[k].from_mm - got->stretches[k - 1].to_mm ==
              doctest::Approx(asked.gap_mm));
      }
    }
  }

  TEST_CASE("refuses what the course has no ends, or no way round, for") {
    WeldLength asked;
    asked.form = LengthForm::all_round;
    CHECK(code_of(welded_length(asked, open_course(100.0))) == "joint.length.not_closed");
    asked = WeldLength{};
    asked.overlap_mm = 10.0;
    CHECK(code_of(welded_length(asked, open_course(100.0))) == "joint.length.not_closed");
    CHECK(code_of(welded_length(asked, ring(9.0))) == "joint.length.overlap");
    CHECK(code_of(welded_length(asked, ring(10.0))) == "accepted");
    asked = WeldLength{};
    asked.run_off_mm = 30.0;
    CHECK(code_of(welded_length(asked, ring(100.0))) == "joint.length.closed");
    asked.end_return_mm = 10.0;
    CHECK(code_of(welded_length(asked, open_course(100.0))) == "joint.length.additions");
    asked = elements(2, 20.0, 20.0);
    asked.run_on_mm = 30.0;
    CHECK(code_of(welded_length(asked, open_course(100.0))) == "joint.length.additions");
  }

  TEST_CASE("refuses a length or elements that cannot be because that is a caller's bug") {
    CHECK_THROWS_AS((void)welded_length({}, open_course(0.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)welded_length(elements(0, 40.0, 60.0), open_course(100.0)),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)welded_length(elements(2, 40.0, 0.0), open_course(500.0)),
                    base::ContractViolation);
    WeldLength asked;
    asked.overlap_mm = -1.0;
    CHECK_THROWS_AS((void)welded_length(asked, ring(100.0)), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
