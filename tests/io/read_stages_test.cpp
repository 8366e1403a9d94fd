// SPDX-License-Identifier: MIT
// Set-ups, stages, operations, lifting points, datums and tacking of tests/good/stages.xml, read.
// Expected values: closed-form, definitions of the units.
#include <doctest/doctest.h>

#include "repository.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

const joint::Weldment& staged() {
  static const joint::Weldment weldment =
      io::read_inputs(repository() / "tests/good/stages.xml").weldment;
  return weldment;
}

const joint::Operation& operation(const std::string& id) {
  for (const joint::Stage& stage : staged().stages) {
    for (const joint::Operation& one : stage.operations) {
      if (one.id == id) return one;
    }
  }
  FAIL("no operation ", id);
  return staged().stages.front().operations.front();
}

using Ids = std::vector<std::string>;

}  // namespace

TEST_SUITE("io/read_stages") {
  TEST_CASE("given set-ups, how the part hangs, what is bolted on and what it hides is read") {
    REQUIRE(staged().setups.size() == 2);
    const joint::Setup& flat = staged().setups[0];
    CHECK(flat.id == "flat");
    CHECK_FALSE(flat.hang_s);
    CHECK(flat.hang_people == 1);
    CHECK(flat.hides.empty());
    REQUIRE(flat.solids.size() == 2);
    CHECK(flat.solids[0].kind == "fixture");
    CHECK(flat.solids[0].mass_kg == 85.0);
    CHECK((flat.solids[0].size_mm.value() - Vec3(450, 350, 60)).norm() < 1e-9);
    CHECK(flat.solids[1].kind == "riser");
    CHECK_FALSE(flat.solids[1].size_mm);
    CHECK((flat.solids[1].centre - Vec3(0, 0, -5)).norm() < 1e-9);
    CHECK(joint::fixture_weight(flat).mass_kg == 97.0);
    CHECK(joint::fixture_weight(flat).centre.z() ==
          doctest::Approx((85.0 * 30.0 - 12.0 * 5.0) / 97.0));
    const joint::Setup& quarter = staged().setups[1];
    CHECK(quarter.hang_s == 1200.0);
    CHECK(quarter.hang_people == 3);
    CHECK(quarter.lifting == "eyes");
    CHECK(quarter.hides == Ids{"J1", "J2"});
    REQUIRE(quarter.clamps.size() == 1);
    CHECK(quarter.clamps[0].id == "K1");
    CHECK(quarter.clamps[0].radius_mm == 25.0);
    CHECK((quarter.clamps[0].at - Vec3(30, 30, 25)).norm() < 1e-9);
    // a quarter about the faceplate's normal, z of a tilting table: x goes to y
    CHECK((quarter.X_DJ.direction(Vec3::UnitX()) - Vec3::UnitY()).norm() < 1e-12);
    CHECK((flat.X_DJ.direction(Vec3::UnitX()) - Vec3::UnitX()).norm() < 1e-12);
  }

  TEST_CASE("given stages, their fits and operations are read in the order of the file") {
    REQUIRE(staged().stages.size() == 3);
    CHECK(staged().stages[0].id == "tee");
    CHECK(staged().stages[0].setup == "flat");
    CHECK(staged().stages[2].id == "furnace");
    CHECK(staged().stages[2].setup.empty());
    Ids ids;
    for (const joint::Operation& one : staged().stages[1].operations) ids.push_back(one.id);
    CHECK(ids == Ids{"fit ribs", "fit ribs 2", "grind", "MT", "sweep"});
    CHECK(joint::fitted_members(staged().stages[1]) == Ids{"rib_1", "rib_2"});
    const joint::Operation& fit = operation("fit tee");
    CHECK(fit.kind == joint::OperationKind::fit);
    CHECK(fit.place == joint::OperationPlace::start);
    CHECK(fit.members == Ids{"base", "web"});
    CHECK(fit.time_s == 600.0);
    CHECK(fit.people == 1);
    CHECK(fit.level);
    CHECK(fit.note == "against the stops");
    const joint::Operation& turned = operation("fit ribs 2");
    CHECK_FALSE(turned.level);
    CHECK(turned.people == 3);
    REQUIRE(turned.axes.size() == 1);
    CHECK(turned.axes[0].axis == "tilt");
    CHECK(turned.axes[0].value.deg() == doctest::Approx(90.0));
    const joint::Operation& between = operation("VT_back");
    CHECK(between.kind == joint::OperationKind::visual_test);
    CHECK(between.place == joint::OperationPlace::between);
    CHECK(between.after == Ids{"J1"});
    CHECK(between.before == Ids{"J2"});
    CHECK(between.joints == Ids{"J1"});
    CHECK(between.time_s == 90.0);
    CHECK_FALSE(between.level);
    CHECK(operation("grind").place == joint::OperationPlace::start);
    CHECK(operation("grind").members == Ids{"web"});
    CHECK(operation("MT").place == joint::OperationPlace::end);
    REQUIRE(operation("MT").axes.size() == 2);
    CHECK(operation("MT").axes[1].axis == "rotate");
    CHECK(operation("MT").axes[1].value.deg() == doctest::Approx(-30.0));
    CHECK(operation("sweep").place == joint::OperationPlace::end);  // not said
    CHECK(operation("sweep").level);
    CHECK(operation("relief").time_s == 3600.0);
  }

  TEST_CASE("given datums, kind, extent, direction, class and what must not be done are read") {
    REQUIRE(staged().datums.size() == 4);
    const joint::Datum& foot = staged().datums[0];
    CHECK(foot.kind == joint::DatumKind::face);
    CHECK(foot.member == "base");
    CHECK((foot.axis + Vec3::UnitZ()).norm() < 1e-12);
    CHECK((foot.along - Vec3::UnitY()).norm() < 1e-12);  // 0 1 1 laid into the face
    CHECK(foot.length_mm == doctest::Approx(300.0));
    CHECK(foot.width_mm == doctest::Approx(200.0));
    CHECK(foot.flatness == "F");
    CHECK(foot.allowance_mm == 3.0);
    CHECK(foot.temperature_max_c == 250.0);
    CHECK(foot.guard.strike);
    CHECK(foot.guard.earth);
    CHECK_FALSE(foot.guard.spatter);
    const joint::Datum& spot = staged().datums[1];
    CHECK(spot.length_mm == 80.0);
    CHECK(spot.width_mm == 80.0);
    CHECK(std::abs(spot.along.dot(spot.axis)) < 1e-12);
    CHECK_FALSE(spot.guard.strike);
    CHECK_FALSE(spot.guard.earth);
    CHECK(spot.guard.spatter);
    CHECK(spot.flatness.empty());
    CHECK_FALSE(spot.allowance_mm);
    CHECK_FALSE(spot.temperature_max_c);
    const joint::Datum& pin = staged().datums[2];
    CHECK(pin.kind == joint::DatumKind::bore);
    CHECK(pin.length_mm == 24.0);
    CHECK(staged().datums[3].kind == joint::DatumKind::thread);
    CHECK(staged().datums[3].guard.earth);
  }

  TEST_CASE("given lifting points, tacking, duties and tacks of joints, they are read") {
    REQUIRE(staged().liftings.size() == 1);
    const joint::Lifting& eyes = staged().liftings[0];
    CHECK((eyes.hook - Vec3(200, 150, 1025)).norm() < 1e-9);
    REQUIRE(eyes.points.size() == 2);
    CHECK(eyes.points[1].id == "E2");
    CHECK((eyes.points[1].at - Vec3(380, 150, 145)).norm() < 1e-9);
    REQUIRE(staged().tacking);
    CHECK(staged().tacking->site_factor_ratio == 2.5);
    CHECK(staged().tacking->certificate == "a certificate");
    CHECK(staged().magnet_handled);
    using joint::Duty;
    const std::vector<Duty> duties = {
        Duty::strength, Duty::tight, Duty::seal, Duty::build_up, Duty::buttering, Duty::strength};
    for (std::size_t i = 0; i < duties.size(); ++i) CHECK(staged().joints[i].duty == duties[i]);
    CHECK(staged().joints[1].tacks == 3);
    CHECK_FALSE(staged().joints[0].tacks);
    CHECK(staged().joints[2].stage == "ribs");
    CHECK(staged().joints[0].stage.empty());
  }

  TEST_CASE("what stages say is known by its place in the file") {
    const joint::Places& places = staged().places;
    CHECK(places.at("stage/ribs").line == 33);
    CHECK(places.at("operation/VT_back@time").line == 31);
    CHECK(places.at("setup/quarter@hang").line == 24);
    CHECK(places.at("clamp/quarter/K1").line == 26);
    CHECK(places.at("datum/pin").line == 14);
    CHECK(places.at("lifting/eyes").line == 16);
  }
}

}  // namespace seamturn::tests
