// SPDX-License-Identifier: MIT
// What the arcs of a seam lay is the metal it is priced with: on rings the way round of each bead's
// centre counts (Pappus), whichever plate the beads are begun from.
#include <map>

#include "planned_demos.hpp"

namespace seamturn::tests {

namespace {

double laid_kg(const plan::PlannedSeam& seam) {
  double volume_mm3 = 0.0;
  for (const plan::PlannedPass& pass : seam.passes) {
    volume_mm3 += pass.pass.area_mm2 * pass.pass.travel_mm_s * pass.pass.arc_time_s;
  }
  return volume_mm3 * 7.85e-6;
}

double radius_mm(const geom::CirclePath& circle, const plan::PlannedPass& pass) {
  return (pass.points.front().point - circle.centre).cross(circle.axis).norm();
}

}  // namespace

TEST_SUITE("planner/ring_metal") {
  TEST_CASE("for every seam of the demos, law: arc time by laid metal a second is its metal") {
    std::size_t rings = 0;
    for (const Planned& planned : plans()) {
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) {
          INFO(planned.file, " ", seam.id);
          // Layers of segments differ in length; their metal is that of their mean.
          const bool is_segment = seam.id != seam.drawn;
          CHECK(laid_kg(seam) == doctest::Approx(seam.metal_kg).epsilon(is_segment ? 2e-3 : 1e-9));
          rings += seam.passes.front().tip_mm_s ? 1 : 0;
        }
      }
    }
    CHECK(rings > 5);
  }

  TEST_CASE("for beads side by side on a ring, law: the one further out takes longer") {
    std::size_t pairs = 0;
    for (const Planned& planned : plans()) {
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) {
          const joint::Seam& described = described_seam(planned.plan, seam.id);
          const auto* circle = std::get_if<geom::CirclePath>(&*described.path);
          if (circle == nullptr || !seam.section.is_fillet || !seam.turned) continue;
          INFO(planned.file, " ", seam.id);
          for (std::size_t k = 1; k < seam.passes.size(); ++k) {
            const plan::PlannedPass& one = seam.passes[k - 1];
            const plan::PlannedPass& two = seam.passes[k];
            if (one.pass.layer != two.pass.layer) continue;
            const double way = radius_mm(*circle, two) - radius_mm(*circle, one);
            CHECK((two.pass.arc_time_s - one.pass.arc_time_s) * way > 0.0);
            ++pairs;
          }
        }
      }
    }
    CHECK(pairs > 2);
  }
}

}  // namespace seamturn::tests
