// SPDX-License-Identifier: MIT
#include "seamturn/heat/lamellar_tearing.hpp"

#include <cmath>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using heat::lamellar_tearing;
using heat::Tearing;
using heat::TearingParams;
using heat::TearingShape;
using heat::ZClass;
using joint::Restraint;

namespace {

constexpr TearingParams ordinary = {
    12.0, TearingShape::multi_run_fillet, 25.0, false, Restraint::medium, 20.0};

Tearing with_depth(double mm) {
  TearingParams p = ordinary;
  p.effective_depth_mm = mm;
  return lamellar_tearing(p);
}

Tearing with_through(double mm) {
  TearingParams p = ordinary;
  p.through_thickness_mm = mm;
  return lamellar_tearing(p);
}

}  // namespace

TEST_SUITE("heat/lamellar_tearing") {
  TEST_CASE("given every step of depth and thickness, the remembered points on both sides") {
    // remembered: EN 1993-1-10:2005 table 3.2.
    const double depths[][3] = {
        {7.0, 0.0, 3.0}, {10.0, 3.0, 6.0}, {20.0, 6.0, 9.0}, {30.0, 9.0, 12.0}, {40.0, 12.0, 15.0}};
    for (const auto& [edge, at, above] : depths) {
      CHECK(with_depth(edge).za == at);
      CHECK(with_depth(edge + 0.01).za == above);
    }
    CHECK(with_depth(80.0).za == 15.0);
    const double through[][3] = {{10.0, 2.0, 4.0},
                                 {20.0, 4.0, 6.0},
                                 {30.0, 6.0, 8.0},
                                 {40.0, 8.0, 10.0},
                                 {50.0, 10.0, 12.0},
                                 {60.0, 12.0, 15.0}};
    for (const auto& [edge, at, above] : through) {
      CHECK(with_through(edge).zc == at);
      CHECK(with_through(edge + 0.01).zc == above);
    }
    CHECK(with_through(200.0).zc == 15.0);
  }

  TEST_CASE("given shape, restraint, preheat and compression, the remembered points") {
    const std::pair<TearingShape, double> shapes[] = {
        {TearingShape::not_in_tension, -25.0},
        {TearingShape::bevel_through, -10.0},
        {TearingShape::single_run_fillet, -5.0},
        {TearingShape::multi_run_fillet, 0.0},
        {TearingShape::sequenced_penetration, 3.0},
        {TearingShape::penetration, 5.0},
        {TearingShape::corner, 8.0},
    };
    for (const auto& [shape, points] : shapes) {
      TearingParams p = ordinary;
      p.shape = shape;
      CHECK(lamellar_tearing(p).zb == points);
    }
    CHECK(heat::tearing_shape_name(TearingShape::multi_run_fillet) == "multi-run-fillet");
    TearingParams p = ordinary;
    p.restraint = Restraint::low;
    CHECK(lamellar_tearing(p).zd == 0.0);
    p.restraint = Restraint::high;
    CHECK(lamellar_tearing(p).zd == 5.0);
    p.preheat_c = 99.9;
    CHECK(lamellar_tearing(p).ze == 0.0);
    p.preheat_c = 100.0;
    CHECK(lamellar_tearing(p).ze == -8.0);
    p.compressed_statically = true;
    CHECK(lamellar_tearing(p).zc == 3.0);
  }

  TEST_CASE("given a corner of thick plate, the terms add up to the class by hand") {
    // computed by hand from the remembered points: 9 + 8 + 10 + 5 + 0 = 32, above 30.
    const Tearing got =
        lamellar_tearing({25.0, TearingShape::corner, 50.0, false, Restraint::high, 20.0});
    CHECK(got.total == doctest::Approx(32.0));
    CHECK(got.total == doctest::Approx(got.za + got.zb + got.zc + got.zd + got.ze));
    CHECK(got.required == ZClass::z35);
    REQUIRE(got.findings.size() == 1);
    CHECK(got.findings.front().code == "heat.lamellar.needs_class");
    CHECK(got.findings.front().text.find("Z35") != std::string::npos);
  }

  TEST_CASE("given totals at 10, 20 and 30, the class ends with them") {
    // remembered: EN 1993-1-1:2005 table 3.2. Depth 0 to 15, corner 8 and restraint make the
    // totals.
    const auto required = [](double depth,
                             double through,
                             Restraint restraint,
                             double preheat = 0.0) {
      return lamellar_tearing({depth, TearingShape::corner, through, false, restraint, preheat});
    };
    CHECK(required(5.0, 10.0, Restraint::low).total == 10.0);
    CHECK(required(5.0, 10.0, Restraint::low).required == ZClass::none);
    CHECK(required(5.0, 10.0, Restraint::low).findings.front().code ==
          "heat.lamellar.not_released");
    CHECK(required(5.0, 15.0, Restraint::low).required == ZClass::z15);  // 12
    CHECK(required(15.0, 30.0, Restraint::low).total == 20.0);
    CHECK(required(15.0, 30.0, Restraint::low).required == ZClass::z15);
    CHECK(required(15.0, 35.0, Restraint::low).required == ZClass::z25);  // 22
    CHECK(required(35.0, 45.0, Restraint::low).total == 30.0);
    CHECK(required(35.0, 45.0, Restraint::low).required == ZClass::z25);
    CHECK(required(35.0, 55.0, Restraint::low).required == ZClass::z35);  // 32
    CHECK(required(35.0, 55.0, Restraint::low, 120.0).required == ZClass::z25);
  }

  TEST_CASE("for any joint, law: preheat and compression never ask for more, size never for less") {
    for (double depth = 3.0; depth < 60.0; depth += 4.0) {
      for (double through = 5.0; through < 90.0; through += 6.0) {
        const TearingParams p = {
            depth, TearingShape::penetration, through, false, Restraint::medium, 20.0};
        TearingParams warm = p, pressed = p, deeper = p, thicker = p;
        warm.preheat_c = 150.0;
        pressed.compressed_statically = true;
        deeper.effective_depth_mm += 5.0;
        thicker.through_thickness_mm += 5.0;
        const double here = lamellar_tearing(p).total;
        CHECK(lamellar_tearing(warm).total < here);
        CHECK(lamellar_tearing(pressed).total < here);
        CHECK(lamellar_tearing(deeper).total >= here);
        CHECK(lamellar_tearing(thicker).total >= here);
      }
    }
  }

  TEST_CASE("given classes of plates, each meets those up to its own") {
    const ZClass all[] = {ZClass::none, ZClass::z15, ZClass::z25, ZClass::z35};
    for (std::size_t needed = 1; needed < 4; ++needed) {
      for (std::size_t has = 0; has < 4; ++has) {
        CHECK(heat::compare(all[needed], all[has]) ==
              (has >= needed ? heat::TearingVerdict::met : heat::TearingVerdict::not_met));
      }
    }
    CHECK(heat::compare(ZClass::none, ZClass::none) == heat::TearingVerdict::none_required);
    CHECK(heat::tearing_verdict_name(heat::TearingVerdict::not_met) == "not met");
    for (const ZClass z : all) CHECK(heat::find_z_class(heat::z_class_name(z)) == z);
    CHECK_FALSE(heat::find_z_class("Z20").has_value());
  }

  TEST_CASE("refuses inputs that are no quantities because they are a caller's bug") {
    CHECK_THROWS_AS((void)with_depth(0.0), base::ContractViolation);
    CHECK_THROWS_AS((void)with_through(std::nan("")), base::ContractViolation);
    TearingParams p = ordinary;
    p.preheat_c = std::nan("");
    CHECK_THROWS_AS((void)lamellar_tearing(p), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
