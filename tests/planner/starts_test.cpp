// SPDX-License-Identifier: MIT
// Plans that follow the rule a seam states for its starts and stops, its end returns and what it
// lays beyond the drawing.
#include <algorithm>
#include <cmath>
#include <map>

#include "planned_demos.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_order_job.hpp"
#include "planner/detail_stances.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

const plan::PlannedSeam& first_seam(const Plan& plan, const std::string& joint) {
  for (const plan::PlannedJoint& planned : plan.joints) {
    if (planned.id == joint) return planned.seams.front();
  }
  FAIL("no joint ", joint);
  return plan.joints.front().seams.front();
}

/// The hub with its first rolled ring asking for stops so far apart.
/// The hub with rings of one turn each.
planner::Inputs staggered_hub(double stagger_mm) {
  planner::Inputs inputs = io::read_inputs(repository() / "joints/grab_hub.xml");
  for (joint::Joint& joint : inputs.weldment.joints) {
    for (joint::Seam& seam : joint.seams) {
      if (!seam.path || !geom::is_closed(*seam.path)) continue;
      seam.asked.overlap_mm = 0.0;
      seam.welded = {};
    }
  }
  joint_of(inputs, "R1").seams.front().asked.stop_stagger_mm = stagger_mm;
  return inputs;
}

/// Where the arc of a pass is struck as seen from the ring's axis, in the cell: a unit vector.
Vec3 struck_at_W(const Plan& plan, const geom::CirclePath& ring, const plan::PlannedPass& pass) {
  std::vector<base::Angle> axes = plan.stances[static_cast<std::size_t>(pass.stance)].stance.axes;
  axes.back() = pass.roll_from.value();
  const geom::Pose X_WJ =
      turn::pose_WD(plan.cell->positioner, axes) *
      plan::setup_of(plan, plan.stances[static_cast<std::size_t>(pass.stance)]).X_DJ;
  const Vec3 out = pass.points.front().point - ring.centre;
  return X_WJ.direction((out - out.dot(ring.axis) * ring.axis).normalized());
}

double apart_mm(double a_mm, double b_mm, double length_mm) {
  const double off_mm = std::abs(a_mm - b_mm);
  return std::min(off_mm, length_mm - off_mm);
}

std::size_t count_code(const Plan& plan, const std::string& code) {
  return static_cast<std::size_t>(std::count_if(
      plan.findings.begin(), plan.findings.end(), [&](const auto& f) { return f.code == code; }));
}

}  // namespace

TEST_SUITE("planner/starts") {
  TEST_CASE(
      "given a rolled ring with staggered stops, law: the table brings each start to the torch") {
    const planner::Inputs inputs = staggered_hub(60.0);
    const Plan plan = quick_plan(inputs);
    const plan::PlannedSeam& seam = first_seam(plan, "R1");
    REQUIRE(seam.rolling);
    REQUIRE(seam.stack.layers >= 3);
    const auto& ring = std::get<geom::CirclePath>(*described_seam(plan, seam.id).path);
    const double length_mm = geom::path_length_mm(ring);
    REQUIRE(seam.starts.size() == static_cast<std::size_t>(seam.stack.layers));
    for (std::size_t k = 1; k < seam.starts.size(); ++k) {
      CHECK(apart_mm(seam.starts[k].stop_mm, seam.starts[k - 1].stop_mm, length_mm) >= 60.0 - 1e-6);
    }
    const Vec3 first_W = struck_at_W(plan, ring, seam.passes.front());
    std::size_t moved = 0;
    for (const plan::PlannedPass& pass : seam.passes) {
      INFO("pass ", pass.pass.number);
      CHECK((struck_at_W(plan, ring, pass) - first_W).norm() < 1e-9);
      if (pass.roll_from != seam.passes.front().roll_from) ++moved;
      const cell::Axis& axis = plan.cell->positioner.axes.back();
      const base::Angle end = *pass.roll_from + *pass.roll;
      CHECK(std::min(*pass.roll_from, end) >= axis.min);
      CHECK(std::max(*pass.roll_from, end) <= axis.max);
    }
    CHECK(moved > 0);
    CHECK(count_code(plan, "plan.starts.no_turn_left") == 0);
    // Turning on to each start takes time that starting in one place does not.
    planner::Inputs unruled = staggered_hub(0.0);
    unruled.library.layer_stops.reset();
    CHECK(first_seam(quick_plan(unruled), "R1").starts.empty());
  }

  TEST_CASE("layers that start elsewhere, and the other side of a ring, run courses of their own") {
    // law: no place is welded again sooner than its gap; between two courses the order waits from
    // the end of the pass before.
    planner::Inputs inputs = staggered_hub(60.0);
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "R1"; });
    joint::Joint& ring = inputs.weldment.joints.front();
    ring.after.clear();
    ring.root = joint::RootDecision::gouge;
    ring.gouge.depth_mm = 8.0;
    ring.gouge.radius_mm = 6.0;
    ring.seams.push_back(ring.seams.front());
    ring.seams.back().id = "R1.b";
    ring.seams.back().side = 2;
    std::vector<base::Finding> findings;
    const auto joints = planner::detail::work_joints(inputs, findings);
    REQUIRE(joints.size() == 1);
    const auto seams = planner::detail::all_seams(joints);
    inputs.weldment.stages.clear();
    const auto stages = planner::detail::work_stages(inputs, findings);
    const planner::detail::StageWork& stage = stages.front();
    const auto pool = planner::detail::find_stance_pool(inputs, stage, seams, findings);
    const auto job = planner::detail::make_order_job(
        inputs, stage, seams, pool, planner::detail::choose_placements(inputs, seams, pool), true);
    REQUIRE(job.job.blocks.size() >= 4);
    std::map<int, std::pair<int, int>> layer_of_course;
    std::map<std::pair<int, int>, int> course_of_layer;
    for (std::size_t b = 0; b < job.job.blocks.size(); ++b) {
      const planner::detail::BlockOrigin& origin = job.origins[b];
      const auto seam = static_cast<std::size_t>(origin.seam);
      const auto chosen = static_cast<std::size_t>(job.placements[seam].front().stack);
      const auto& passes = joints.front().seams[seam].stacks[chosen].stack.passes;
      const std::pair layer{origin.seam,
                            passes[static_cast<std::size_t>(origin.passes.front())].layer};
      CHECK(job.job.blocks[b].zone == job.job.blocks.front().zone);
      for (const order::Option& option : job.job.blocks[b].options) {
        CHECK(layer_of_course.emplace(option.course, layer).first->second == layer);
        CHECK(course_of_layer.emplace(layer, option.course).first->second == option.course);
      }
    }
    CHECK(layer_of_course.size() >= 4);
  }

  TEST_CASE("given an axis with room for one more start, no layer stops above the one before") {
    planner::Inputs inputs = staggered_hub(60.0);
    inputs.library.layer_stops.reset();
    // Far enough for the first start and one 60 mm on; a third of that step would be out of reach.
    const auto& circle =
        std::get<geom::CirclePath>(*joint::find_joint(inputs.weldment, "R1")->seams.front().path);
    const double step_deg = base::Angle::rad(60.0 / circle.radius_mm).deg();
    cell::Axis& last = inputs.cell->positioner.axes.back();
    last.endless = false;
    last.min = base::Angle::deg(-180.0 - 1.2 * step_deg);
    last.max = base::Angle::deg(180.0 + 1.2 * step_deg);
    const Plan plan = quick_plan(inputs);
    const plan::PlannedSeam& seam = first_seam(plan, "R1");
    REQUIRE(seam.rolling);
    REQUIRE(seam.starts.size() >= 3);
    CHECK(count_code(plan, "plan.starts.no_turn_left") == 0);
    for (std::size_t k = 1; k < seam.starts.size(); ++k) {
      const double way_mm = std::abs(seam.starts[k].stop_mm - seam.starts[k - 1].stop_mm);
      CHECK(std::min(way_mm, seam.length_mm - way_mm) > 59.9);
    }
  }

  TEST_CASE("given rings nobody can roll, the finding says what rolling takes and what there is") {
    planner::Inputs inputs = staggered_hub(0.0);
    inputs.cell->positioner.rolling_speed_max_rad_s = 1e-3;
    try {
      (void)quick_plan(inputs);
      FAIL("a plan");
    } catch (const base::InputError& refused) {
      std::size_t told = 0;
      for (const base::Finding& finding : refused.findings()) {
        if (finding.code != "turn.seam.no_stance") continue;
        INFO(finding.text);
        CHECK(finding.text.find("; rolled, it takes 360 deg of axis ") != std::string::npos);
        CHECK(finding.text.find("deg/s, where 0.0573 deg/s are the most") != std::string::npos);
        CHECK(finding.text.find("the nearest is") == std::string::npos);
        ++told;
      }
      CHECK(told > 0);
    }
  }

  TEST_CASE(
      "for rings of about the same size, each welded over its start, law: one stance serves all") {
    const Plan plan = quick_plan(io::read_inputs(repository() / "joints/grab_hub.xml"));
    const auto axes_of = [&](const char* joint) {
      const plan::PlannedPass& pass = first_seam(plan, joint).passes.front();
      return plan.stances.at(static_cast<std::size_t>(pass.stance)).stance.axes;
    };
    REQUIRE(plan.weldment.setups.size() > 1);
    CHECK(axes_of("R1") == axes_of("R2"));  // radii 355.5 and 330.5 mm: 1.21 and 1.30 deg over half
    CHECK(axes_of("R1") == axes_of("R5"));
    CHECK(axes_of("R1").back().deg() == doctest::Approx(181.0));
  }

  TEST_CASE("given many stances beyond the torque, one is told and how many more there are") {
    planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
    for (cell::Axis& axis : inputs.cell->positioner.axes) axis.torque_max_nm = 1e-3;
    try {
      (void)quick_plan(inputs);
      FAIL("a plan");
    } catch (const base::InputError& refused) {
      std::map<std::string, int> of_code;
      bool counted = false;
      for (const base::Finding& finding : refused.findings()) {
        ++of_code[finding.code];
        counted = counted || finding.text.find(" more stances") != std::string::npos;
      }
      CHECK(of_code["turn.load.torque"] == 1);
      CHECK(counted);
    }
  }

  TEST_CASE("given a ring no stance holds for its load, the load is told and no tolerance") {
    planner::Inputs inputs = staggered_hub(0.0);
    for (cell::Axis& axis : inputs.cell->positioner.axes) axis.torque_max_nm = 600.0;
    try {
      (void)quick_plan(inputs);
      FAIL("a plan");
    } catch (const base::InputError& refused) {
      int rings = 0;
      for (const base::Finding& finding : refused.findings()) {
        if (finding.text.find("seam R4: no stance") != 0) continue;
        ++rings;
        CAPTURE(finding.text);
        CHECK(finding.text.find("one that would is barred, tilt 90.0 deg") != std::string::npos);
        CHECK(finding.text.find("set the part up nearer the axis") != std::string::npos);
        CHECK(finding.text.find("working tolerance") == std::string::npos);
      }
      CHECK(rings == 1);
    }
  }

  TEST_CASE(
      "given an axis with no turn to spare, all layers start in one place and the plan says so") {
    planner::Inputs inputs = staggered_hub(60.0);
    inputs.library.layer_stops.reset();
    cell::Axis& last = inputs.cell->positioner.axes.back();
    last.min = base::Angle::deg(-181.0);
    last.max = base::Angle::deg(181.0);
    const Plan plan = quick_plan(inputs);
    const plan::PlannedSeam& seam = first_seam(plan, "R1");
    REQUIRE(seam.rolling);
    CHECK(count_code(plan, "plan.starts.no_turn_left") == 1);
    for (const joint::LayerStops& layer : seam.starts) {
      CHECK(layer.start_mm == doctest::Approx(seam.starts.front().start_mm));
    }
    for (const plan::PlannedPass& pass : seam.passes) {
      CHECK(pass.roll_from == seam.passes.front().roll_from);
    }
  }

  TEST_CASE("given a line with staggered stops, layers are welded from alternate ends") {
    planner::Inputs inputs = io::read_inputs(repository() / "joints/grab_hub.xml");
    for (joint::Joint& joint : inputs.weldment.joints) {
      for (joint::Seam& seam : joint.seams) {
        if (seam.path && !geom::is_closed(*seam.path)) seam.asked.stop_stagger_mm = 30.0;
      }
    }
    const Plan plan = quick_plan(inputs);
    std::size_t in_layers = 0;
    for (const Arc& arc : arcs_of(plan)) {
      const bool round = geom::is_closed(*described_seam(plan, arc.seam->id).path);
      if (arc.seam->starts.empty() || round || arc.seam->stack.layers < 2) continue;
      INFO(arc.seam->id, " pass ", arc.pass->pass.number);
      const bool is_even = arc.pass->pass.layer % 2 == 0;
      CHECK(arc.pass->reversed == is_even);
      const auto layer = static_cast<std::size_t>(arc.pass->pass.layer) - 1;
      CHECK(arc.seam->starts[layer].reversed == is_even);
      ++in_layers;
    }
    CHECK(in_layers > 10);
  }

  TEST_CASE("given a closed polyline to be started clear of corners, the arc is struck there") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/lengths.xml");
    joint::Seam& moved = joint_of(inputs, "J2").seams.front();
    std::get<geom::PolylinePath>(*moved.path).points.front().x() = 445.0;  // 5 mm from a corner
    const Plan plain = quick_plan(inputs);
    moved.asked.corner_clear_mm = 14.0;
    const Plan plan = quick_plan(inputs);
    const plan::PlannedSeam& seam = first_seam(plan, "J2");
    REQUIRE(seam.turned);
    const geom::Path& path = *described_seam(plan, seam.id).path;
    const Vec3 struck = seam.passes.front().points.front().point;
    const Vec3 stopped = seam.passes.front().points.back().point;
    // The torch runs beside the line, so that corners are met along the edge only.
    for (const double corner_mm : geom::corner_stations_mm(path)) {
      const Vec3 corner = geom::path_station(path, corner_mm).point;
      CHECK((struck - corner).norm() >= 14.0 - 1e-6);
      CHECK((stopped - corner).norm() >= 14.0 - 1e-6);
    }
    CHECK((first_seam(plain, "J2").passes.front().points.front().point - struck).norm() > 1.0);
  }

  TEST_CASE("given end returns, the torch is led round both edges") {
    // closed-form: 12 mm behind the ear's face at both ends of a seam of 100 mm
    const Plan plan = quick_plan(io::read_inputs(repository() / "tests/good/lengths.xml"));
    const plan::PlannedSeam& seam = first_seam(plan, "J4");
    REQUIRE(seam.turned);
    for (const plan::PlannedPass& pass : seam.passes) {
      REQUIRE(pass.points.size() == 6);  // ends, and both corners arriving and leaving
      CHECK(std::abs(pass.points.front().point.y() - 212.0) < 1e-9);
      CHECK(std::abs(pass.points.back().point.y() - 212.0) < 1e-9);
      CHECK(pass.points.front().arc == reach::Arc::on);
      CHECK(pass.points.back().arc == reach::Arc::off);
      CHECK(std::abs(pass.points.front().travel.dot(Vec3::UnitY())) > 0.999);
    }
    CHECK(seam.welded_mm == doctest::Approx(124.0));
  }

  TEST_CASE("given over-weld, law: metal grows by it, the drawn size stays drawn") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee.xml");
    const Plan drawn = quick_plan(inputs);
    std::get<joint::Fillet>(joint_of(inputs, "J1").preparation).over_weld_ratio = 1.2;
    const Plan laid = quick_plan(inputs);
    const plan::PlannedSeam& before = first_seam(drawn, "J1");
    const plan::PlannedSeam& after = first_seam(laid, "J1");
    CHECK(after.metal_kg == doctest::Approx(1.2 * before.metal_kg));
    CHECK(after.over_weld_area_ratio == doctest::Approx(1.2));
    CHECK(before.over_weld_area_ratio == 1.0);
    CHECK(after.stack.arc_time_s > before.stack.arc_time_s);
    REQUIRE(after.counted);
    CHECK(after.counted->throat_mm == doctest::Approx(before.counted->throat_mm));
    CHECK(after.section.throat_mm == doctest::Approx(std::sqrt(1.2) * before.section.throat_mm));
  }

  TEST_CASE("a ring is rolled only where the axis has a whole turn and is not too fast for it") {
    // Else the robot goes round it, or no stance is found for it.
    const auto rolls = [](const auto& change) {
      planner::Inputs inputs = staggered_hub(0.0);
      std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "R1"; });
      inputs.weldment.stages.clear();
      inputs.weldment.setups.erase(inputs.weldment.setups.begin());
      inputs.weldment.joints.front().after.clear();
      change(inputs.cell->positioner);
      try {
        return first_seam(quick_plan(inputs), "R1").rolling;
      } catch (const base::InputError& refused) {
        CHECK(refused.findings().front().code == "turn.seam.no_stance");
        return false;
      }
    };
    CHECK(rolls([](cell::Positioner&) {}));
    CHECK_FALSE(rolls([](cell::Positioner& positioner) {
      positioner.axes.back().endless = false;
      positioner.axes.back().min = base::Angle::deg(-179.0);
      positioner.axes.back().max = base::Angle::deg(179.0);
    }));
    CHECK_FALSE(
        rolls([](cell::Positioner& positioner) { positioner.rolling_speed_max_rad_s = 1e-3; }));
  }

  TEST_CASE("for every two arcs in one stance, law: the air between them is the way between them") {
    std::size_t seen = 0;
    std::size_t backwards = 0;
    for (const Planned& planned : plans()) {
      const Plan& plan = planned.plan;
      const auto pass_of = [&](const plan::PlannedEvent& event) -> const plan::PlannedPass& {
        for (const Arc& arc : arcs_of(plan)) {
          if (arc.seam->id == event.seam && arc.pass->pass.number == event.pass) return *arc.pass;
        }
        FAIL("no pass ", event.seam);
        return plan.joints.front().seams.front().passes.front();
      };
      const auto world = [&](const plan::PlannedPass& pass, const Vec3& point) {
        const plan::PlannedStance& held = plan.stances[static_cast<std::size_t>(pass.stance)];
        return (turn::pose_WD(plan.cell->positioner, held.stance.axes) *
                plan::setup_of(plan, held).X_DJ)
            .point(point);
      };
      const plan::PlannedEvent* last = nullptr;
      double air_s = 0.0;
      bool direct = false;
      for (const plan::PlannedEvent& event : plan.timeline) {
        if (event.kind == timeline::SecondKind::air) air_s += event.end_s - event.start_s;
        if (event.kind == timeline::SecondKind::turn) direct = false;
        if (event.kind == timeline::SecondKind::clean) direct = false;
        if (timeline::is_by_people(event.kind)) direct = false;  // the robot waits at home
        if (event.kind != timeline::SecondKind::arc) continue;
        const plan::PlannedPass& now = pass_of(event);
        if (last != nullptr && direct && !now.roll) {
          const plan::PlannedPass& before = pass_of(*last);
          const double way_mm =
              (world(now, now.points.front().point) - world(before, before.points.back().point))
                  .norm();
          INFO(planned.file, " ", event.seam, " pass ", event.pass);
          const cell::Robot& robot = plan.cell->robot;
          CHECK(air_s == doctest::Approx(turn::air_time_s(robot, way_mm) +
                                         2.0 * turn::air_time_s(robot, robot.retract_mm))
                             .epsilon(1e-6));
          ++seen;
          if (now.reversed) ++backwards;
        }
        last = &event;
        air_s = 0.0;
        direct = true;
      }
    }
    CHECK(seen > 50);
    CHECK(backwards > 0);
  }
}

}  // namespace seamturn::tests
