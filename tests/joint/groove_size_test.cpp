// SPDX-License-Identifier: MIT
#include "seamturn/joint/groove_size.hpp"

#include <cmath>

#include "oracles/weld_size.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using joint::PartialGroove;
using joint::PartialShape;
using process::WeldPosition;

namespace {

PartialGroove groove(PartialShape shape, double deg, const char* process, WeldPosition position) {
  PartialGroove made;
  made.shape = shape;
  made.depth_mm = 10.0;
  made.angle = Angle::deg(deg);
  made.process = process;
  made.position = position;
  return made;
}

std::string refusal_code(const PartialGroove& made) {
  const auto counted = joint::counted_groove_throat(made);
  return counted ? std::string("none") : counted.error().code;
}

bool plug_rule_holds(const joint::PlugSize& size, const std::string& rule) {
  const auto checks = joint::check_plug_size(size);
  REQUIRE(checks.has_value());
  for (const joint::SizeCheck& check : *checks) {
    if (check.rule == rule) return check.holds;
  }
  FAIL("no rule ", rule);
  return false;
}

/// Nearest distance from the root to the face of groove and fillet, by walking along the face.
double walked_throat_mm(double groove_mm, double leg_mm) {
  double nearest_mm = 1e9;
  constexpr int steps = 200000;
  for (int i = 0; i <= steps; ++i) {
    const double s = static_cast<double>(i) / steps;
    // Fillet face from its toe on the flange to its toe on the web, then the flush groove above.
    nearest_mm = std::min(nearest_mm, std::hypot(groove_mm + s * leg_mm, (1.0 - s) * leg_mm));
    nearest_mm = std::min(nearest_mm, std::hypot(groove_mm, leg_mm + s * groove_mm));
  }
  return nearest_mm;
}

}  // namespace

TEST_SUITE("joint/groove_size") {
  TEST_CASE("given AISC-PJP joints 10 mm deep, what is taken off is the printed amount") {
    for (const DeductionRow& row : deduction_rows) {
      const bool is_v = row.groove == OracleGroove::v60;
      const auto counted =
          joint::counted_groove_throat(groove(is_v ? PartialShape::v : PartialShape::bevel,
                                              is_v ? 60.0 : 45.0,
                                              row.process,
                                              row.position));
      REQUIRE(counted.has_value());
      const std::string item =
          std::string(row.process) + " in " + std::string(process::position_name(row.position));
      check_expected(item, counted->deduction_mm, row.deduction_mm);
      CHECK(counted->throat_mm == doctest::Approx(10.0 - row.deduction_mm.value));
      CHECK(counted->citation.status == base::Status::verified);
    }
  }

  TEST_CASE("given rows nobody has read, the throat says so") {
    const auto covered_v =
        joint::counted_groove_throat(groove(PartialShape::v, 60.0, "111", WeldPosition::pa));
    CHECK(covered_v->citation.status == base::Status::from_memory);
    const auto wide =
        joint::counted_groove_throat(groove(PartialShape::bevel, 60.0, "135", WeldPosition::pf));
    CHECK(wide->citation.status == base::Status::from_memory);
    CHECK(wide->deduction_mm == 0.0);
    const auto sharp =
        joint::counted_groove_throat(groove(PartialShape::bevel, 59.9, "135", WeldPosition::pf));
    CHECK(sharp->deduction_mm == 3.0);
  }

  TEST_CASE("refuses grooves no row covers because their penetration is not known") {
    const WeldPosition pa = WeldPosition::pa;
    CHECK(refusal_code(groove(PartialShape::bevel, 44.9, "135", pa)) == "joint.size.groove_angle");
    CHECK(refusal_code(groove(PartialShape::bevel, 45.0, "135", pa)) == "none");
    CHECK(refusal_code(groove(PartialShape::v, 59.9, "135", pa)) == "joint.size.groove_angle");
    CHECK(refusal_code(groove(PartialShape::u_or_j, 19.9, "135", pa)) == "joint.size.groove_angle");
    CHECK(refusal_code(groove(PartialShape::u_or_j, 20.0, "135", pa)) == "none");
    CHECK(refusal_code(groove(PartialShape::square, 0.0, "135", pa)) == "joint.size.groove_angle");
    CHECK(refusal_code(groove(PartialShape::bevel, 45.0, "121", pa)) == "joint.size.process");
    PartialGroove thin = groove(PartialShape::bevel, 45.0, "135", WeldPosition::pf);
    thin.depth_mm = 3.0;
    CHECK(refusal_code(thin) == "joint.size.groove_depth");
    thin.depth_mm = 3.1;
    CHECK(refusal_code(thin) == "none");
    thin.depth_mm = 0.0;
    CHECK(refusal_code(thin) == "joint.size.value");
  }

  TEST_CASE("given a groove of 8 mm under a fillet of 8 mm, root to face is 11.31 mm") {
    check_expected("8 + 8",
                   joint::combined_throat_mm(8.0, 8.0),
                   {11.31, 0.005, Origin::computed, "(S + z)/sqrt 2"});
    check_expected("8 + 0", joint::combined_throat_mm(8.0, 0.0), {8.0, 1e-12, Origin::closed_form});
  }

  TEST_CASE("for any groove and fillet, law: the throat is the shortest way from root to face") {
    base::Random random(base::named_seed(20261125, "groove_size/combined"));
    for (int i = 0; i < 20; ++i) {
      const double groove_mm = random.between(2.0, 30.0);
      const double leg_mm = random.between(0.5, 40.0);
      INFO("case ", i, " groove ", groove_mm, " leg ", leg_mm);
      CHECK(joint::combined_throat_mm(groove_mm, leg_mm) ==
            doctest::Approx(walked_throat_mm(groove_mm, leg_mm)).epsilon(1e-6));
    }
  }

  TEST_CASE("given STEEL-HANDBOOK table 5.4, the least partial throat is the printed one") {
    for (const PartialThroatRow& row : partial_throat_rows) {
      const std::string item = std::to_string(row.thinner_mm) + " mm";
      check_expected(item, joint::least_partial_throat_mm(row.thinner_mm), row.throat_mm);
      const auto held = joint::check_partial_size({row.throat_mm.value, row.thinner_mm});
      const auto broken = joint::check_partial_size({row.throat_mm.value - 0.01, row.thinner_mm});
      CHECK(joint::size_verdict(*held) == joint::SizeVerdict::holds);
      CHECK(joint::size_verdict(*broken) == joint::SizeVerdict::fails);
    }
    CHECK(joint::check_partial_size({0.0, 10.0}).error().code == "joint.size.value");
  }

  TEST_CASE("given T and corner grooves, the reinforcing fillet is t/4 up to 10 mm") {
    const char* source = "AWS D1.1:2015 clause 3 notes, 2020 pp. 87-88";
    check_expected(
        "t 20", joint::reinforcing_leg_mm(20.0), {5.0, 1e-12, Origin::published, source});
    check_expected(
        "t 60", joint::reinforcing_leg_mm(60.0), {10.0, 1e-12, Origin::published, source});
    CHECK(joint::reinforcing_leg_mm(39.9) < 10.0);
  }

  TEST_CASE("given plugs of AWS D1.1 2000 3.10, holes run from t + 8 to the printed largest") {
    for (const PlugRow& row : plug_rows) {
      const std::string item = std::to_string(row.plate_mm) + " mm plate";
      check_expected(item, joint::least_plug_width_mm(row.plate_mm), row.least_mm);
      check_expected(item, joint::largest_plug_width_mm(row.plate_mm), row.largest_mm);
    }
    // published: slot length up to 10 t. remembered: full to 16 mm, then half and 16 mm.
    joint::PlugSize slot{12.0, 20.0, 120.0, 12.0};
    CHECK(plug_rule_holds(slot, "largest-slot-length"));
    CHECK(plug_rule_holds(slot, "least-plug-width"));
    CHECK(plug_rule_holds(slot, "least-plug-fill"));
    slot = {12.0, 19.9, 120.1, 11.9};
    CHECK_FALSE(plug_rule_holds(slot, "largest-slot-length"));
    CHECK_FALSE(plug_rule_holds(slot, "least-plug-width"));
    CHECK_FALSE(plug_rule_holds(slot, "least-plug-fill"));
    slot.width_mm = 27.1;
    CHECK_FALSE(plug_rule_holds(slot, "largest-plug-width"));
    CHECK(joint::least_plug_fill_mm(16.0) == 16.0);
    CHECK(joint::least_plug_fill_mm(20.0) == 16.0);
    CHECK(joint::least_plug_fill_mm(40.0) == 20.0);
  }

  TEST_CASE("refuses plugs that cannot be because no rule could judge them") {
    const auto code = [](const joint::PlugSize& size) {
      const auto checks = joint::check_plug_size(size);
      return checks ? std::string("none") : checks.error().code;
    };
    CHECK(code({12.0, 20.0, 19.0, 12.0}) == "joint.size.value");
    CHECK(code({12.0, 20.0, std::nullopt, 12.1}) == "joint.size.value");
    CHECK(code({0.0, 20.0, std::nullopt, 12.0}) == "joint.size.value");
    CHECK(code({12.0, 20.0, std::nullopt, 12.0}) == "none");
  }

  TEST_CASE("given EN 1011-2 clause 13 as quoted, tacks are 4 t long below 12 mm and 50 mm above") {
    for (const TackRow& row : tack_rows) {
      check_expected(std::to_string(row.thicker_mm) + " mm",
                     joint::least_tack_length_mm(row.thicker_mm),
                     row.length_mm);
    }
    CHECK_FALSE(joint::needs_two_run_tacks(50.0, 500.0));
    CHECK(joint::needs_two_run_tacks(50.1, 355.0));
    CHECK(joint::needs_two_run_tacks(20.0, 500.1));
    CHECK_THROWS_AS((void)joint::least_tack_length_mm(0.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
