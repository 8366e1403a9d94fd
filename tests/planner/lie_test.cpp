// SPDX-License-Identifier: MIT
#include "seamturn/plan/lie.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "planned_demos.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/joint/joint.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

namespace {

struct Held {
  const Planned* planned;
  const plan::PlannedSeam* seam;
  const plan::PlannedPass* pass;
  const joint::Joint* joint;
  const joint::Seam* drawn;
};

/// Every pass of the demos that has a stance.
std::vector<Held> held_passes() {
  std::vector<Held> all;
  for (const Planned& planned : plans()) {
    for (const Arc& arc : arcs_of(planned.plan)) {
      if (arc.pass->stance < 0) continue;
      const joint::Joint* joint = joint::find_joint(planned.plan.weldment, arc.seam->joint);
      for (const joint::Seam& seam : joint->seams) {
        if (seam.id == arc.seam->id) all.push_back({&planned, arc.seam, arc.pass, joint, &seam});
      }
    }
  }
  return all;
}

/// How the part is turned as the pass is struck, put together here from stance and set-up.
geom::Mat3 turned(const Held& held) {
  const Plan& plan = held.planned->plan;
  const plan::PlannedStance& stance = plan.stances.at(static_cast<std::size_t>(held.pass->stance));
  std::vector<base::Angle> axes = stance.stance.axes;
  if (held.pass->roll_from) axes.back() = *held.pass->roll_from;
  return turn::rotation_WD(plan.cell->positioner, axes) *
         plan::setup_of(plan, stance).X_DJ.rotation;
}

bool is_within_tolerance(const planner::Inputs& inputs,
                         const plan::PlannedSeam& seam,
                         const joint::Seam& drawn,
                         const position::Attitude& lies) {
  const base::Angle level = position::pb_bank_near(geom::angle_between(drawn.face, drawn.wall_1));
  const auto& rows = inputs.library.tolerances;
  return std::any_of(rows.begin(), rows.end(), [&](const position::WorkingTolerance& row) {
    return row.position == seam.position && position::is_within(row, lies, level);
  });
}

/// A pass that starts at some point.
plan::PlannedPass starting_at(const geom::Vec3& point) {
  plan::PlannedPass pass;
  pass.points.emplace_back();
  pass.points.front().point = point;
  return pass;
}

}  // namespace

TEST_SUITE("planner/lie") {
  TEST_CASE(
      "for every pass of the demos, law: its slope is that of the travel of its first point") {
    const std::vector<Held> all = held_passes();
    REQUIRE(all.size() > 300);
    for (const Held& held : all) {
      INFO(held.planned->file, " ", held.seam->id, " pass ", held.pass->pass.number);
      const auto lies =
          plan::lie_at_start(held.planned->plan, *held.joint, *held.drawn, *held.pass);
      REQUIRE(lies);
      const geom::Vec3 travel_W = turned(held) * held.pass->points.front().travel;
      CHECK(std::sin(lies->slope.rad()) == doctest::Approx(travel_W.z()).epsilon(1e-6));
    }
  }

  TEST_CASE(
      "for every pass of the demos, law: it lies within the working tolerance of its position") {
    int rolled = 0;
    for (const Held& held : held_passes()) {
      INFO(held.planned->file, " ", held.seam->id, " pass ", held.pass->pass.number);
      auto lies = plan::lie_at_start(held.planned->plan, *held.joint, *held.drawn, *held.pass);
      REQUIRE(lies);
      if (held.seam->rolling) {
        ++rolled;
        lies->slope = base::Angle();  // the lead's affair
      }
      CHECK(is_within_tolerance(held.planned->inputs, *held.seam, *held.drawn, *lies));
    }
    CHECK(rolled > 10);
  }

  TEST_CASE("given a part turned on the faceplate, law: its passes lie within the tolerances") {
    planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
    geom::Mat3& R_DJ = inputs.weldment.setups.front().X_DJ.rotation;
    R_DJ = geom::rotation_about(geom::Vec3::UnitZ(), base::Angle::deg(25.0)) * R_DJ;
    const Plan plan = quick_plan(inputs);
    int banked = 0;
    for (const Arc& arc : arcs_of(plan)) {
      INFO(arc.seam->id, " pass ", arc.pass->pass.number);
      const joint::Joint* joint = joint::find_joint(plan.weldment, arc.seam->joint);
      for (const joint::Seam& drawn : joint->seams) {
        if (drawn.id != arc.seam->id) continue;
        const auto lies = plan::lie_at_start(plan, *joint, drawn, *arc.pass);
        REQUIRE(lies);
        CHECK(is_within_tolerance(inputs, *arc.seam, drawn, *lies));
        banked += std::abs(lies->bank.deg()) > 10.0 ? 1 : 0;
      }
    }
    CHECK(banked > 0);
  }

  TEST_CASE("given a frame started on another leg, law: its slope is that of its first travel") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/lengths.xml");
    int on_legs = 0;
    for (joint::Joint& joint : inputs.weldment.joints) {
      if (joint.id != "J2") continue;
      auto& points = std::get<geom::PolylinePath>(*joint.seams.front().path).points;
      points.front().x() = 498.0;
      joint.seams.front().asked.corner_clear_mm = 5.0;
    }
    // Level no leg has a slope: the faceplate is leaned over, as no plan would hold it.
    Plan plan = quick_plan(inputs);
    for (plan::PlannedStance& stance : plan.stances) {
      stance.stance.axes.front() = base::Angle::deg(20.0);
    }
    for (const Arc& arc : arcs_of(plan)) {
      if (arc.pass->stance < 0 || arc.seam->joint != "J2") continue;
      INFO(arc.seam->id, " pass ", arc.pass->pass.number);
      const joint::Joint* joint = joint::find_joint(plan.weldment, arc.seam->joint);
      const joint::Seam& drawn = joint->seams.front();
      const geom::Vec3 travel_J = arc.pass->points.front().travel;
      const auto lies = plan::lie_at_start(plan, *joint, drawn, *arc.pass);
      REQUIRE(lies);
      const geom::Vec3 travel_W = plan::rotation_WJ(plan, *arc.pass) * travel_J;
      CHECK(std::sin(lies->slope.rad()) == doctest::Approx(travel_W.z()).epsilon(1e-6));
      CHECK(joint::section_frame(*joint, drawn, plan::start_station_mm(drawn, *arc.pass))
                .tangent.dot(travel_J) == doctest::Approx(1.0));
      ++on_legs;
    }
    CHECK(on_legs > 0);
  }

  // closed-form: lengths and arcs.
  TEST_CASE("given an open seam, a pass starts at the end it is travelled from") {
    joint::Seam seam;
    seam.path = geom::PolylinePath{{{0, 0, 0}, {300, 0, 0}, {300, 400, 0}}, false};
    const auto station_mm = [&](const geom::Vec3& point, const geom::Vec3& travel, bool reversed) {
      plan::PlannedPass pass = starting_at(point);
      pass.points.front().travel = travel;
      pass.reversed = reversed;
      return plan::start_station_mm(seam, pass);
    };
    const geom::Vec3 x = geom::Vec3::UnitX(), y = geom::Vec3::UnitY();
    CHECK(station_mm({0, 3, 2}, x, false) == doctest::Approx(0.0));
    CHECK(station_mm({297, 400, 2}, -y, true) == doctest::Approx(700.0));
    // Beside the corner the travel tells the leg.
    CHECK(station_mm({297, 3, 2}, x, false) == doctest::Approx(297.0));
    CHECK(station_mm({297, 3, 2}, y, false) == doctest::Approx(303.0));
    CHECK(station_mm({298, 4, 2}, -x, true) == doctest::Approx(298.0));
    seam.path = geom::LinePath{{0, 0, 0}, {300, 0, 0}};
    CHECK(station_mm({0, 3, 2}, x, false) == 0.0);
    CHECK(station_mm({300, 3, 2}, -x, true) == doctest::Approx(300.0));
    // A quarter of a circle: where its first element begins, and beyond its ends the ends.
    geom::ArcPath arc;
    arc.radius_mm = 100.0;
    arc.sweep = base::Angle::deg(90.0);
    seam.path = arc;
    const double quarter_mm = 50.0 * std::numbers::pi;
    CHECK(station_mm({70, 70, 1}, x, false) == doctest::Approx(0.5 * quarter_mm));
    CHECK(station_mm({100, -9, 1}, x, false) == doctest::Approx(0.0));
    CHECK(station_mm({-9, 100, 1}, x, true) == doctest::Approx(quarter_mm));
    CHECK(plan::start_station_mm(seam, plan::PlannedPass{}) == 0.0);
    CHECK_THROWS_AS((void)plan::start_station_mm(joint::Seam{}, plan::PlannedPass{}),
                    base::ContractViolation);
  }

  TEST_CASE("given a ring, a pass starts where its first point stands, beside it or before it") {
    geom::CirclePath circle;
    circle.centre = {10, 20, 30};
    circle.axis = geom::Vec3::UnitZ();
    circle.start = geom::Vec3::UnitX();
    circle.radius_mm = 200.0;
    joint::Seam seam;
    seam.path = circle;
    const double quarter_mm = 50.0 * std::numbers::pi * 2.0;
    // A little outside the ring and off its plane: where the torch tip stands.
    CHECK(plan::start_station_mm(seam, starting_at({10, 225, 33})) == doctest::Approx(quarter_mm));
    CHECK(plan::start_station_mm(seam, starting_at({10, -185, 33})) ==
          doctest::Approx(3.0 * quarter_mm));
    CHECK(plan::start_station_mm(seam, plan::PlannedPass{}) == 0.0);
  }

  TEST_CASE("given a pass without a stance, nothing is said") {
    const Held held = held_passes().front();
    plan::PlannedPass pass = *held.pass;
    pass.stance = -1;
    CHECK_FALSE(plan::lie_at_start(held.planned->plan, *held.joint, *held.drawn, pass));
  }
}

}  // namespace seamturn::tests
