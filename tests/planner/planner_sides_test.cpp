// SPDX-License-Identifier: MIT
// Plans in which a side, or the plate below, decides: sides of one groove wait for each other, and
// all layers of a fillet are laid from one plate.
#include <algorithm>
#include <set>

#include "planned_demos.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

namespace {

double begins_s(const plan::PlannedSeam& seam) {
  return *seam.passes.front().start_s;
}
double ends_s(const plan::PlannedSeam& seam) {
  return *seam.passes.back().end_s;
}

/// A weldment of tests/good, worked in one position only.
planner::Inputs read_for(const char* file, process::WeldPosition only) {
  planner::Inputs inputs = io::read_inputs(repository() / "tests/good" / file);
  std::erase_if(inputs.library.tolerances,
                [&](const position::WorkingTolerance& row) { return row.position != only; });
  return inputs;
}

/// The weldment whose fillet "either" is level on either plate, its ribs welded one after the
/// other.
planner::Inputs two_levels(bool web_first) {
  planner::Inputs inputs = read_for("two_levels.xml", process::WeldPosition::pb);
  if (!web_first) return inputs;
  const auto joint = [&](const char* id) {
    return std::find_if(inputs.weldment.joints.begin(),
                        inputs.weldment.joints.end(),
                        [&](const joint::Joint& one) { return one.id == id; });
  };
  joint("base-first")->after = {"web-first"};
  joint("web-first")->after.clear();
  joint("either")->after = {"base-first"};
  return inputs;
}

/// Height in the cell of where a pass begins, in its own stance.
double height_mm(const Plan& plan, const plan::PlannedPass& pass) {
  const plan::PlannedStance& stance = plan.stances[static_cast<std::size_t>(pass.stance)];
  const geom::Pose X_WJ =
      turn::pose_WD(plan.cell->positioner, stance.stance.axes) * plan::setup_of(plan, stance).X_DJ;
  return X_WJ.point(pass.points.front().point).z();
}

}  // namespace

TEST_SUITE("planner/sides") {
  TEST_CASE(
      "given a K groove in a cell, side 2 waits for side 1 though the other way saves a turn") {
    // law: the root of side 2 is gouged down to what side 1 has laid.
    const Plan plan = planner::make_plan(read_for("two_sides.xml", process::WeldPosition::pa));
    CHECK(plan.not_turned.empty());
    const plan::PlannedSeam& first = seam_of(plan, "K.a");
    const plan::PlannedSeam& second = seam_of(plan, "K.b");
    CHECK(begins_s(second) >= ends_s(first));
    // "back" lies as K's second side does, "front" as its first; "front" waits for "back".
    CHECK(begins_s(seam_of(plan, "front")) >= ends_s(seam_of(plan, "back")));
    CHECK(first.passes.front().stance == seam_of(plan, "front").passes.front().stance);
    CHECK(second.passes.front().stance == seam_of(plan, "back").passes.front().stance);
    CHECK(first.passes.front().stance != second.passes.front().stance);
  }

  TEST_CASE("for any order of the others, law: a fillet level on either plate keeps one of them") {
    std::set<double> up_z;  // of the base's normal in the stances of "either"
    for (const bool web_first : {false, true}) {
      const Plan plan = planner::make_plan(two_levels(web_first));
      CHECK(plan.not_turned.empty());
      // Both ribs are welded, so that both stances are open.
      CHECK(plan.stances.size() == 2);
      const plan::PlannedSeam& either = seam_of(plan, "either");
      REQUIRE(either.position == process::WeldPosition::pb);
      std::size_t beads = 0;
      for (std::size_t k = 0; k < either.passes.size(); ++k) {
        const plan::PlannedPass& pass = either.passes[k];
        const auto& axes = plan.stances[static_cast<std::size_t>(pass.stance)].stance.axes;
        const geom::Mat3 R_WJ = turn::rotation_WD(plan.cell->positioner, axes) *
                                plan.weldment.setups.front().X_DJ.rotation;
        up_z.insert(std::round((R_WJ * geom::Vec3::UnitZ()).z()));
        if (pass.pass.bead < 2) continue;
        ++beads;
        INFO("web first ", web_first, " pass ", k + 1);
        CHECK(height_mm(plan, pass) > height_mm(plan, either.passes[k - 1]));
      }
      CHECK(beads > 0);
    }
    CHECK(up_z.size() == 1);
  }
}

}  // namespace seamturn::tests
