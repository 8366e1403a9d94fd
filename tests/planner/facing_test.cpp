// SPDX-License-Identifier: MIT
// A table that turns the part's back to the robot, by hand.
#include <doctest/doctest.h>

#include "planned_demos.hpp"

namespace seamturn::tests {

namespace {

/// The bracket is welded level, tilted by 45 and by 90 deg; a positive tilt leans it towards +x.
std::string told_with_home(const geom::Vec3& home) {
  planner::Inputs inputs = planned_demo("bracket.xml").inputs;
  inputs.cell->robot.home = home;
  return text_told(quick_plan(inputs), "cell.robot.behind");
}

}  // namespace

TEST_SUITE("planner/facing") {
  TEST_CASE("given a robot on the side to which the table tilts, nothing is told") {
    CHECK(told_with_home(geom::Vec3(1700, 0, 2100)) == "");
    // Aside, by less than 120 deg from where the face looks.
    CHECK(told_with_home(geom::Vec3(0, 1700, 2100)) == "");
    CHECK(told_with_home(geom::Vec3(-500, -1700, 2100)) == "");
  }

  TEST_CASE("given a robot behind the table, it is told how many stances and the worst") {
    const std::string told = told_with_home(geom::Vec3(-1700, 0, 2100));
    CHECK(told.find("in 2 of 3 stances") != std::string::npos);
    CHECK(told.find("by 90 deg") != std::string::npos);
    CHECK(told_with_home(geom::Vec3(-1200, 1700, 2100)) != "");
  }

  TEST_CASE("given a headstock, nothing is told wherever the robot stands") {
    for (const double x : {-2000.0, 0.0, 2000.0}) {
      planner::Inputs frame = planned_demo("turnover_frame.xml").inputs;
      frame.cell->robot.home = geom::Vec3(x, -1900, 2600);
      CHECK(text_told(quick_plan(frame), "cell.robot.behind") == "");
    }
  }
}

}  // namespace seamturn::tests
