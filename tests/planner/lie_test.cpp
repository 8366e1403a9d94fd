// SPDX-License-Identifier: MIT
#include "seamturn/plan/lie.hpp"

#include <cmath>

#include "planned_demos.hpp"
#include "seamturn/joint/joint.hpp"

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
      const geom::Vec3 travel_W =
          plan::rotation_WJ(held.planned->plan, *held.pass) * held.pass->points.front().travel;
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
      const base::Angle level =
          position::pb_bank_near(geom::angle_between(held.drawn->face, held.drawn->wall_1));
      const auto& rows = held.planned->inputs.library.tolerances;
      CHECK(std::any_of(rows.begin(), rows.end(), [&](const position::WorkingTolerance& row) {
        return row.position == held.seam->position && position::is_within(row, *lies, level);
      }));
    }
    CHECK(rolled > 10);
  }

  TEST_CASE("given a pass without a stance, nothing is said") {
    const Held held = held_passes().front();
    plan::PlannedPass pass = *held.pass;
    pass.stance = -1;
    CHECK_FALSE(plan::lie_at_start(held.planned->plan, *held.joint, *held.drawn, pass));
  }
}

}  // namespace seamturn::tests
