// SPDX-License-Identifier: MIT
// The ways heat leaves a weld, counted by hand on small joints. That each way counts once and is
// averaged over 75 mm is EN 1011-2:2001 C.2, from memory; the sums are closed-form.
#include "oracle.hpp"
#include "planner/joint_work.hpp"
#include "repository.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;
using joint::JointType;
using joint::Plate;
using planner::detail::heat_paths;

void check_paths(const HandJoint& hand, const std::vector<heat::HeatPath>& expected) {
  const auto got = heat_paths(hand.work);
  INFO(heat::combined_thickness_text(got, false));
  REQUIRE(got.size() == expected.size());
  for (std::size_t i = 0; i < got.size(); ++i) {
    CHECK(got[i].member == expected[i].member);
    check_expected(
        "path " + std::to_string(i),
        got[i].average_mm,
        {expected[i].average_mm, 1e-9, Origin::closed_form, "thickness x reach / 75 mm"});
  }
}

void set_tee(HandJoint& hand) {
  hand.joint.type = JointType::tee;
  hand.first.shape = Plate{400, 300, 25};
  hand.second.shape = Plate{400, 120, 15};
  hand.second.X_JM = standing_at(142.5, 15, 25);
}

}  // namespace

TEST_SUITE("planner/heat_paths") {
  TEST_CASE("given a butt, heat goes into each plate once, whatever the gap") {
    for (const double gap_mm : {0.0, 3.0}) {
      HandJoint hand;
      hand.joint.type = JointType::butt;
      hand.first.shape = Plate{400, 100, 20};
      hand.second.shape = Plate{400, 100, 12};
      hand.second.X_JM.translation = Vec3(0, 100 + gap_mm, 0);
      const double y_mm = 100 + gap_mm / 2.0;
      hand.add_line(Vec3(0, y_mm, 20), Vec3(400, y_mm, 20));
      check_paths(hand, {{"first", 20.0}, {"second", 12.0}});
    }
  }

  TEST_CASE("given a tee, heat goes both ways in the through plate and once up the other") {
    HandJoint hand;
    set_tee(hand);
    hand.add_line(Vec3(10, 157.5, 25), Vec3(390, 157.5, 25));
    check_paths(hand, {{"first", 25.0}, {"first", 25.0}, {"second", 15.0}});
  }

  TEST_CASE("given a tee whose standing plate ends a gap above, it still counts once") {
    HandJoint hand;
    set_tee(hand);
    hand.second.X_JM = standing_at(142.5, 15, 28);
    hand.add_line(Vec3(10, 157.5, 25), Vec3(390, 157.5, 25));
    check_paths(hand, {{"first", 25.0}, {"first", 25.0}, {"second", 15.0}});
  }

  TEST_CASE("given a plate that ends 30 mm beside the weld, it counts for 30/75 of its thickness") {
    HandJoint hand;
    set_tee(hand);
    hand.first.shape = Plate{400, 187.5, 25};
    hand.add_line(Vec3(10, 157.5, 25), Vec3(390, 157.5, 25));
    check_paths(hand, {{"first", 10.0}, {"first", 25.0}, {"second", 15.0}});
  }

  TEST_CASE("given a rim of 1 mm beside the weld, it leads nothing away, and one of 2 mm does") {
    // 25 mm x 1 / 75 = 0.33 mm lies below the 0.5 mm of our own choice, 25 x 2 / 75 above.
    for (const double rim_mm : {1.0, 2.0}) {
      HandJoint hand;
      set_tee(hand);
      hand.first.shape = Plate{400, 157.5 + rim_mm, 25};
      hand.add_line(Vec3(10, 157.5, 25), Vec3(390, 157.5, 25));
      CHECK(heat_paths(hand.work).size() == (rim_mm < 1.5 ? 2 : 3));
    }
  }

  TEST_CASE("given a flush corner, heat goes once into each plate") {
    HandJoint hand;
    hand.joint.type = JointType::corner;
    hand.first.shape = Plate{400, 300, 20};
    hand.second.shape = Plate{400, 120, 10};
    hand.second.X_JM = standing_at(290, 10, 20);
    hand.add_line(Vec3(0, 300, 20), Vec3(400, 300, 20));
    check_paths(hand, {{"first", 20.0}, {"second", 10.0}});
  }

  TEST_CASE("given a lap, heat goes both ways below and once into the plate on top") {
    HandJoint hand;
    hand.joint.type = JointType::lap;
    hand.first.shape = Plate{400, 300, 20};
    hand.second.shape = Plate{400, 200, 10};
    hand.second.X_JM.translation = Vec3(0, 0, 20);
    hand.add_line(Vec3(0, 200, 20), Vec3(400, 200, 20));
    check_paths(hand, {{"first", 20.0}, {"first", 20.0}, {"second", 10.0}});
  }

  TEST_CASE("given a tube standing on a ring, heat goes in and out of the ring and up the tube") {
    HandJoint hand;
    hand.joint.type = JointType::tee;
    hand.first.shape = joint::Ring{400, 100, 20};
    hand.second.shape = joint::Tube{200, 10, 300};
    hand.second.X_JM.translation = Vec3(0, 0, 20);
    hand.add_circle(Vec3(0, 0, 20), 100);
    // 100 mm of ring outward, 50 inward: 20 x 50 / 75.
    check_paths(hand, {{"first", 20.0 * 50.0 / 75.0}, {"first", 20.0}, {"second", 10.0}});
  }

  TEST_CASE("given a tube through the hole of a ring, heat goes both ways in the tube") {
    HandJoint hand;
    hand.joint.type = JointType::tee;
    hand.first.shape = joint::Tube{200, 10, 300};
    hand.second.shape = joint::Ring{400, 200, 20};
    hand.second.X_JM.translation = Vec3(0, 0, 100);
    hand.add_circle(Vec3(0, 0, 120), 100);
    check_paths(hand, {{"first", 10.0}, {"first", 10.0}, {"second", 20.0}});
  }

  TEST_CASE("given a seam along a tube, heat goes both ways round it") {
    HandJoint hand;
    hand.joint.type = JointType::tee;
    hand.first.shape = joint::Tube{200, 10, 300};
    hand.second.shape = Plate{300, 80, 12};
    hand.second.X_JM = geom::Pose{
        (geom::Mat3() << Vec3::UnitZ(), Vec3::UnitX(), Vec3::UnitY()).finished(), Vec3(100, 0, 0)};
    hand.add_line(Vec3(100, 0, 0), Vec3(100, 0, 300));
    check_paths(hand, {{"first", 10.0}, {"first", 10.0}, {"second", 12.0}});
  }

  TEST_CASE("given bars, forgings and solid rounds, they count whole as the joint has them") {
    const joint::Shape solids[] = {joint::Bar{joint::BarShape::square, 60, 60, 300},
                                   joint::Forging{{{300, 120, 120}}, 40},
                                   joint::Tube{80, 40, 300}};
    for (const joint::Shape& solid : solids) {
      INFO(joint::shape_name(solid));
      const double wall_mm = joint::wall_thickness_mm(solid);
      HandJoint standing;
      set_tee(standing);
      standing.second.shape = solid;
      standing.second.X_JM = geom::Pose{geom::Mat3::Identity(), Vec3(200, 150, 25)};
      standing.add_line(Vec3(180, 157.5, 25), Vec3(220, 157.5, 25));
      check_paths(standing, {{"first", 25.0}, {"first", 25.0}, {"second", wall_mm}});
      HandJoint through;
      set_tee(through);
      through.first.shape = solid;
      through.add_line(Vec3(10, 157.5, 25), Vec3(390, 157.5, 25));
      check_paths(through, {{"first", wall_mm}, {"first", wall_mm}, {"second", 15.0}});
    }
  }

  TEST_CASE(
      "given a seam through a plate's thickness, the plate counts whole as the joint has it") {
    HandJoint hand;
    set_tee(hand);
    hand.second.X_JM = standing_at(142.5, 15, 25);
    hand.add_line(Vec3(0, 142.5, 25), Vec3(0, 157.5, 25));  // along y, through the standing plate
    const auto paths = heat_paths(hand.work);
    REQUIRE_FALSE(paths.empty());
    CHECK(paths.back().member == "second");
    CHECK(paths.back().average_mm == 15.0);
  }

  TEST_CASE("given a seam without a place, the kind of joint tells the ways") {
    HandJoint hand;
    set_tee(hand);
    hand.joint.seams.emplace_back();
    check_paths(hand, {{"first", 25.0}, {"first", 25.0}, {"second", 15.0}});
    hand.joint.type = JointType::lap;
    check_paths(hand, {{"first", 25.0}, {"first", 25.0}, {"second", 15.0}});
    hand.joint.type = JointType::butt;
    check_paths(hand, {{"first", 25.0}, {"second", 15.0}});
    hand.joint.type = JointType::corner;
    check_paths(hand, {{"first", 25.0}, {"second", 15.0}});
  }

  TEST_CASE("given a course with a corner, the place with most metal around it counts") {
    HandJoint hand;
    set_tee(hand);
    geom::PolylinePath course;
    // A long leg 15 mm from the plate's edge, a short one far from every edge.
    course.points = {Vec3(20, 285, 25), Vec3(380, 285, 25), Vec3(380, 150, 25)};
    hand.joint.seams.emplace_back();
    hand.joint.seams.back().path = course;
    hand.first.shape = Plate{700, 300, 25};
    hand.second.X_JM = standing_at(270, 15, 25);
    const auto paths = heat_paths(hand.work);
    // On the short leg the base gives 25 + 25 and the web, through which it runs, 15.
    CHECK(heat::combined_thickness_mm(paths, false) == doctest::Approx(65.0));
  }

  TEST_CASE("given sums stated or sides laid together, the plan takes the sum and its half") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee.xml");
    inputs.weldment.joints[1].heat.sides_together = true;
    const plan::Plan plan = planner::make_plan(inputs);
    check_expected("J1",
                   plan.joints[0].heat.combined_thickness_mm,
                   {65.0, 1e-9, Origin::closed_form, "25 + 25 + 15"});
    check_expected("J2",
                   plan.joints[1].heat.combined_thickness_mm,
                   {32.5, 1e-9, Origin::closed_form, "(25 + 25 + 15) / 2"});
    CHECK(plan.joints[1].heat.combined_text.find("/ 2") != std::string::npos);
    inputs.weldment.joints[1].heat.combined_thickness_mm = 90.0;
    const plan::Plan stated = planner::make_plan(inputs);
    CHECK(stated.joints[1].heat.combined_thickness_mm == 90.0);
    CHECK(stated.joints[1].heat.combined_text == "stated in the weldment file");
  }
}

}  // namespace seamturn::tests
