// SPDX-License-Identifier: MIT
#include "seamturn/io/read.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "oracle.hpp"
#include "process.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

const planner::Inputs& bracket() {
  static const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/bracket.xml");
  return inputs;
}

const joint::Member& member(const char* id) {
  const joint::Member* found = joint::find_member(bracket().weldment, id);
  REQUIRE(found != nullptr);
  return *found;
}

const joint::Joint& joint_of(const char* id) {
  const joint::Joint* found = joint::find_joint(bracket().weldment, id);
  REQUIRE(found != nullptr);
  return *found;
}

void check_point(const char* what, const Vec3& got_point, const Vec3& expected) {
  CAPTURE(what);
  CAPTURE(got_point.transpose());
  CHECK((got_point - expected).norm() < 1e-9);
}

void check_number(const char* what, double got_value, double expected) {
  check_expected(what, got_value, {expected, 1e-9, Origin::closed_form, "definition of the unit"});
}

}  // namespace

TEST_SUITE("io/read") {
  TEST_CASE("given a weldment of every kind of element, its head is read") {
    const joint::Weldment& weldment = bracket().weldment;
    CHECK(weldment.title == "All kinds & spellings");
    CHECK(weldment.revision == "B");
    CHECK(weldment.author == "test");
    CHECK(weldment.date == "2024-02-29");
    CHECK(weldment.wire == "W12");
    CHECK(weldment.invented);
    check_number("ambient", weldment.ambient_c, 10.0);
    CHECK(weldment.libraries == std::vector<std::string>{"library/standards.xml"});
    CHECK(weldment.cell == "cells/table.xml");
    CHECK(weldment.batch.parts == 12);
    CHECK(weldment.members.size() == 7);
    CHECK(weldment.joints.size() == 5);
    CHECK(bracket().findings.empty());
  }

  TEST_CASE("given plates lying and standing, sizes and corners are where the file says") {
    const auto corners = [](const joint::Member& m) {
      const auto& plate = std::get<joint::Plate>(m.shape);
      return std::pair(m.X_JM.point(Vec3::Zero()),
                       m.X_JM.point(Vec3(plate.length_mm, plate.width_mm, plate.thickness_mm)));
    };
    const auto& base_plate = std::get<joint::Plate>(member("base").shape);
    check_number("length", base_plate.length_mm, 400.0);
    check_number("width", base_plate.width_mm, 300.0);
    check_number("thickness", base_plate.thickness_mm, 25.0);
    check_point("base", corners(member("base")).first, Vec3(0, 0, 0));
    check_point("base", corners(member("base")).second, Vec3(400, 300, 25));
    // stand="y": the box is 400 along x, 15 along y, 120 along z from "at" on.
    const auto web = corners(member("web_y"));
    check_point("web least", web.first.cwiseMin(web.second), Vec3(0, 142.5, 25));
    check_point("web most", web.first.cwiseMax(web.second), Vec3(400, 157.5, 145));
    // stand="x", then half a turn about z: x 400..410 becomes -410..-400, y 0..300 becomes -300..0.
    const auto side = corners(member("side"));
    check_point("side least", side.first.cwiseMin(side.second), Vec3(-410, -300, 25));
    check_point("side most", side.first.cwiseMax(side.second), Vec3(-400, 0, 105));
    for (const joint::Member& m : bracket().weldment.members) {
      CAPTURE(m.id);
      CHECK(m.steel == "S355J2");
      CHECK(std::abs(m.X_JM.rotation.determinant() - 1.0) < 1e-12);
    }
  }

  TEST_CASE(
      "given a tube along y swung by 90 deg and a disc in inches, they are where the file says") {
    const auto& tube = std::get<joint::Tube>(member("post").shape);
    check_number("outer", tube.outer_diameter_mm, 100.0);
    check_number("wall", tube.wall_mm, 8.0);
    check_number("length", tube.length_mm, 200.0);
    check_point("first end", member("post").X_JM.point(Vec3::Zero()), Vec3(0, 0, 1000));
    check_point("axis", member("post").X_JM.direction(Vec3::UnitZ()), Vec3(-1, 0, 0));
    const auto& ring = std::get<joint::Ring>(member("cap").shape);
    check_number("outer", ring.outer_diameter_mm, 101.6);
    check_number("inner", ring.inner_diameter_mm, 0.0);
    check_number("thickness", ring.thickness_mm, 7.9375);
    check_point("centre", member("cap").X_JM.translation, Vec3(700, 700, 0));
  }

  TEST_CASE("given an analysis, all fifteen elements are read") {
    REQUIRE(member("base").analysis.has_value());
    const material::Composition expected{0.16,
                                         0.35,
                                         1.45,
                                         0.014,
                                         0.004,
                                         0.05,
                                         0.01,
                                         0.005,
                                         0.06,
                                         0.04,
                                         0.02,
                                         0.003,
                                         0.03,
                                         0.0002,
                                         0.007};
    CHECK(*member("base").analysis == expected);
    CHECK_FALSE(member("web_y").analysis.has_value());
  }

  TEST_CASE("given roll, pitch and turn of 90 deg each, the part's axes point where they must") {
    // Roll about x takes z to -y; pitch about the part's own y leaves that y where roll put it (z);
    // the turn about the faceplate's normal comes last.
    const joint::Setup& setup = bracket().weldment.setups.front();
    CHECK(setup.id == "table");
    check_point("part-at", setup.X_DJ.translation, Vec3(-200, -150, 60));
    check_point("y", setup.X_DJ.direction(Vec3::UnitY()), Vec3(0, 0, 1));
    check_point("x", setup.X_DJ.direction(Vec3::UnitX()), Vec3(-1, 0, 0));
    check_point("z", setup.X_DJ.direction(Vec3::UnitZ()), Vec3(0, 1, 0));
    const joint::SetupWeight fixture = joint::fixture_weight(setup);
    check_number("fixture", fixture.mass_kg, 85.0);
    check_point("fixture", fixture.centre, Vec3(1, 2, 30));
  }

  TEST_CASE("given a fillet by throat on both sides of a tee, legs, walls and faces follow") {
    const joint::Joint& joint = joint_of("J1");
    CHECK(joint.type == joint::JointType::tee);
    CHECK(joint.member_1 == "base");
    CHECK(joint.member_2 == "web_y");
    CHECK(joint.quality == "B");
    CHECK(joint.purpose == "holds");
    CHECK(joint.wire == "W12");
    check_number("preheat", joint.heat.preheat_c.value_or(0.0), 100.0);
    CHECK(joint.heat.preheat_reason == "the coordinator wants it");
    check_number("interpass", joint.heat.interpass_max_c.value_or(0.0), 220.0);
    const auto& fillet = std::get<joint::Fillet>(joint.preparation);
    check_number("leg 1", fillet.leg_1_mm, 6.0 * std::sqrt(2.0));
    check_number("leg 2", fillet.leg_2_mm, 6.0 * std::sqrt(2.0));
    check_number("thinner member", joint.thickness_mm, 15.0);
    REQUIRE(joint.seams.size() == 2);
    CHECK(joint.seams[0].id == "J1.a");
    CHECK(joint.seams[1].id == "J1.b");
    CHECK(joint.seams[1].joint == "J1");
    check_number("length", joint.seams[0].length_mm, 380.0);
    check_point("wall 1", joint.seams[0].wall_1, Vec3(0, 0, 1));
    check_point("wall 2", joint.seams[0].wall_2, Vec3(0, 1, 0));
    check_point("wall 2 of the other side", joint.seams[1].wall_2, Vec3(0, -1, 0));
    check_point("face", joint.seams[0].face, Vec3(0, std::sqrt(0.5), std::sqrt(0.5)));
    check_number("between walls", joint.seams[0].between_walls.deg(), 90.0);
  }

  TEST_CASE("given a butt of 12 and 10 mm, the thinner one is prepared and welded through") {
    const joint::Joint& joint = joint_of("J2");
    CHECK(joint.type == joint::JointType::butt);
    CHECK(joint.quality == "C");
    CHECK(joint.after == std::vector<std::string>{"J1"});
    CHECK(joint.root == joint::RootDecision::ceramic_backing);
    const auto& v = std::get<joint::Groove>(joint.preparation);
    check_number("gap", v.gap_mm, 2.0);
    check_number("root face", v.root_face_mm, 1.0);
    check_number("angle", v.side_1.angle.deg(), 60.0);
    check_number("cap", joint.cap.height_mm, 2.0);
    check_number("toe lap", joint.cap.toe_lap_mm, 1.0);
    check_number("thickness", joint.thickness_mm, 10.0);
    check_number("depth", joint.depth_mm, 10.0);
    REQUIRE(joint.seams.size() == 1);
    CHECK(joint.seams[0].id == "J2");
    check_point("face", joint.seams[0].face, Vec3(0, 0, 1));
    check_number("between walls", joint.seams[0].between_walls.deg(), 180.0);
  }

  TEST_CASE(
      "given runs without a place, sizes follow from the stated angle, 90 deg when unstated") {
    const joint::Joint& bevel = joint_of("J3");
    CHECK(bevel.after == std::vector<std::string>{"J1", "J2"});
    check_number("thickness of the second member", bevel.thickness_mm, 15.0);
    check_number("penetration", bevel.depth_mm, 10.0);
    check_number("length", bevel.seams.at(0).length_mm, 500.0);
    CHECK_FALSE(bevel.seams.at(0).path.has_value());
    check_number("unstated", bevel.seams.at(0).between_walls.deg(), 90.0);
    const auto& legs = std::get<joint::Fillet>(joint_of("J4").preparation);
    check_number("leg 1", legs.leg_1_mm, 5.0);
    check_number("leg 2", legs.leg_2_mm, 7.0);
    check_number("stated", joint_of("J4").seams.at(0).between_walls.deg(), 100.0);
    CHECK(joint_of("J4").quality == "D");
    // throat / cos(30 deg)
    const auto& acute = std::get<joint::Fillet>(joint_of("J5").preparation);
    check_number("leg at 60 deg", acute.leg_1_mm, 5.0 / (std::sqrt(3.0) / 2.0));
  }

  TEST_CASE("given the library, every value stands in the internal unit") {
    const planner::Library& library = bracket().library;
    REQUIRE(library.steels.size() == 1);
    const material::Steel& steel = library.steels[0];
    CHECK(steel.designation == "S355J2");
    CHECK(steel.standard == "EN 10025-2:2019");
    CHECK(steel.group == "1.2");
    check_number("interpass", steel.interpass_max_c.value_or(0.0), 250.0);
    CHECK(steel.interpass_status == base::Status::common_practice);
    REQUIRE(steel.t85.has_value());
    check_number("least t8/5", steel.t85->least_s, 10.0);
    check_number("greatest t8/5", steel.t85->most_s, 25.0);
    CHECK(steel.t85->source == "test");
    CHECK(steel.t85->status == base::Status::from_memory);
    REQUIRE(steel.later_heating_max.has_value());
    check_number("later heating", steel.later_heating_max->value_c, 580.0);
    CHECK(steel.later_heating_max->status == base::Status::proposed);
    REQUIRE(steel.aws_category.has_value());
    CHECK(steel.aws_category->name == "B");
    CHECK(steel.aws_category->status == base::Status::from_memory);
    REQUIRE(steel.bands.size() == 2);
    check_number("band", steel.bands[1].up_to_mm, 40.0);
    check_number("yield", steel.bands[1].yield_mpa.value_or(0.0), 345.0);
    check_number("manganese", steel.bands[1].maxima.mn, 1.60);
    CHECK(steel.bands[1].status == base::Status::verified);
    REQUIRE(library.wires.size() == 1);
    check_number("diameter", library.wires[0].diameter_mm, 1.2);
    check_number("efficiency", library.wires[0].efficiency_ratio, 0.95);
    check_number("price", library.wires[0].price_per_kg, 1.9);
    REQUIRE(library.settings.size() == 1);
    const process::LinkedSettings& row = library.settings[0];
    check_number("feed", row.feed_mm_s, 150.0);
    check_number("slowest", row.travel_min_mm_s, 20.0 / 6.0);
    check_number("fastest", row.travel_max_mm_s, 15.0);
    check_number("preferred", row.travel_preferred_mm_s, 40.0 / 6.0);
    check_number("push", row.push.deg(), 10.0);
    check_number("weave", row.weave_width_mm, 0.0);
    CHECK(row.role == process::PassRole::single);
    CHECK(row.positions == std::vector{process::WeldPosition::pa, process::WeldPosition::pb});
    CHECK(row.transfer == "spray");
    REQUIRE(library.bead_limits.size() == 1);
    CHECK(library.bead_limits[0].family == process::WeldFamily::fillet);
    CHECK(library.bead_limits[0].roles.empty());
    check_number("leg", library.bead_limits[0].leg_max_mm.value_or(0.0), 10.0);
    REQUIRE(library.tolerances.size() == 2);
    check_number("uphill", library.tolerances[0].uphill.deg(), 3.0);
    CHECK(library.tolerances[0].bead_at_edge_ratio == 1.0);
    check_number("bead at the edge", library.tolerances[1].bead_at_edge_ratio, 0.9);
    REQUIRE(library.rolling_leads.size() == 2);
    check_number("lead", library.rolling_leads[0].lead.value_or(base::Angle()).deg(), 4.0);
    check_number("up to", library.rolling_leads[0].up_to_mm.value_or(0.0), 300.0);
    CHECK_FALSE(library.rolling_leads[0].lead_mm.has_value());
    check_number("lead length", library.rolling_leads[1].lead_mm.value_or(0.0), 20.0);
    check_number("over", library.rolling_leads[1].over_mm, 300.0);
    CHECK(library.rolling_leads[1].roles ==
          std::vector{process::PassRole::root, process::PassRole::cap});
    REQUIRE(library.rates.has_value());
    check_number("set-up", library.rates->setup_per_batch_h, 2.0);
    check_number("band", library.rates->time_band_ratio, 0.10);
    check_number("loss", library.rates->gas_loss_ratio, 1.1);
    CHECK(library.rates->currency == "EUR");
  }

  TEST_CASE("given the cell, every value stands in the internal unit") {
    REQUIRE(bracket().cell.has_value());
    const cell::Cell& table = *bracket().cell;
    CHECK(table.positioner.kind == cell::PositionerKind::tilt_rotate);
    check_point("tilt centre", table.positioner.tilt_centre, Vec3(0, 0, 900));
    check_number("overhang", table.positioner.overhang_mm, 150.0);
    check_number("load", table.positioner.load_max_kg, 2000.0);
    REQUIRE(table.positioner.axes.size() == 2);
    CHECK(table.positioner.axes[0].name == "tilt");
    CHECK(table.positioner.axes[1].name == "rotate");
    check_number("min", table.positioner.axes[0].min.deg(), -15.0);
    check_number("max", table.positioner.axes[0].max.deg(), 135.0);
    check_number("speed", table.positioner.axes[0].speed_rad_s * 180.0 / std::numbers::pi, 12.0);
    check_number("torque", table.positioner.axes[1].torque_max_nm, 2500.0);
    check_number("air speed", table.robot.air_speed_mm_s, 800.0);
    check_number("air acceleration", table.robot.air_acceleration_mm_s2, 2500.0);
    check_number("nozzle", table.torch.nozzle_diameter_mm, 16.0);
    check_number("clean every", table.times.clean_every_s, 600.0);
    CHECK(table.times.touches_per_seam == 3);
    check_number("loading", table.times.load_unload_s, 600.0);
  }

  TEST_CASE("given what was read, its places in the files are known") {
    const auto& places = bracket().weldment.places;
    const std::string file = (repository() / "tests/good/bracket.xml").string();
    CHECK(places.at("weldment") == base::Place{file, 3, 2});
    CHECK(places.at("joint/J1") == base::Place{file, 20, 4});
    CHECK(places.at("joint/J1@throat") == base::Place{file, 22, 21});
    CHECK(places.at("seam/J1.b@from") == base::Place{file, 24, 17});
    CHECK(places.at("member/web_y@thickness") == base::Place{file, 11, 47});
    CHECK(places.at("setup/table") == base::Place{file, 17, 4});
    const std::string library = (repository() / "tests/good/library/standards.xml").string();
    CHECK(bracket().library.places.at("steel/S355J2") == base::Place{library, 2, 4});
  }
}

}  // namespace seamturn::tests
