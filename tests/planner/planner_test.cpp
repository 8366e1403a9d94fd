// SPDX-License-Identifier: MIT
// Laws that hold for the plan of every weldment in joints/.
#include "seamturn/planner/planner.hpp"

#include <map>

#include "oracle.hpp"
#include "repository.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/position/classify.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::tests {

namespace {

using plan::Plan;

struct Planned {
  std::string file;
  planner::Inputs inputs;
  Plan plan;
};

/// Each demo file is planned once for all laws.
const std::vector<Planned>& plans() {
  static const std::vector<Planned> all = [] {
    std::vector<Planned> made;
    for (const auto& entry : std::filesystem::directory_iterator(repository() / "joints")) {
      if (entry.path().extension() != ".xml") continue;
      Planned one;
      one.file = entry.path().filename().string();
      one.inputs = io::read_inputs(entry.path());
      one.plan = planner::make_plan(one.inputs);
      made.push_back(std::move(one));
    }
    return made;
  }();
  return all;
}

struct Arc {
  const plan::PlannedSeam* seam;
  const plan::PlannedPass* pass;
};

std::vector<Arc> arcs_of(const Plan& plan) {
  std::vector<Arc> arcs;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes) arcs.push_back(Arc{&seam, &pass});
    }
  }
  return arcs;
}

const joint::Seam& described_seam(const Plan& plan, const std::string& id) {
  for (const joint::Joint& joint : plan.weldment.joints) {
    for (const joint::Seam& seam : joint.seams) {
      if (seam.id == id) return seam;
    }
  }
  FAIL("no seam ", id);
  return plan.weldment.joints.front().seams.front();
}

/// Total of one kind as the timeline shows it.
double seconds_of(const Plan& plan, timeline::SecondKind kind) {
  double total = 0.0;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind == kind) total += event.end_s - event.start_s;
  }
  return total;
}

}  // namespace

TEST_SUITE("planner/planner") {
  TEST_CASE("for every demo weldment, law: pass sections add up to the section of the joint") {
    REQUIRE(plans().size() >= 2);
    for (const Planned& planned : plans()) {
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) {
          double area = 0.0;
          for (const plan::PlannedPass& pass : seam.passes) area += pass.pass.area_mm2;
          INFO(planned.file, " ", seam.id);
          CHECK(area == doctest::Approx(joint.section.area_mm2).epsilon(1e-9).scale(0.0));
        }
      }
    }
  }

  TEST_CASE("for every demo weldment, law: metal is section times length times density on a line") {
    for (const Planned& planned : plans()) {
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) {
          const joint::Seam& described = described_seam(planned.plan, seam.id);
          if (!described.path || geom::is_closed(*described.path)) continue;
          INFO(planned.file, " ", seam.id);
          CHECK(seam.metal_kg == doctest::Approx(joint.section.area_mm2 * seam.length_mm * 7.85e-6)
                                     .epsilon(1e-12)
                                     .scale(0.0));
        }
      }
    }
  }

  TEST_CASE("for every demo weldment, law: the seconds of the seven kinds add up to the cycle") {
    for (const Planned& planned : plans()) {
      double total = 0.0;
      for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
        total += planned.plan.seconds[kind];
        CHECK(planned.plan.seconds[kind] ==
              doctest::Approx(seconds_of(planned.plan, static_cast<timeline::SecondKind>(kind))));
      }
      INFO(planned.file);
      CHECK(total == doctest::Approx(planned.plan.cycle_s).epsilon(1e-9).scale(0.0));
      CHECK(planned.plan.lower_bound_s <= planned.plan.cycle_s * (1.0 + 1e-12));
      CHECK(planned.plan.lower_bound_s >= planned.plan.totals.arc_time_s);
    }
  }

  TEST_CASE("for every demo weldment, law: events follow one another without gap or overlap") {
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      double now = 0.0;
      for (const plan::PlannedEvent& event : planned.plan.timeline) {
        REQUIRE(event.start_s == doctest::Approx(now));
        REQUIRE(event.end_s >= event.start_s);
        now = event.end_s;
      }
      CHECK(now == doctest::Approx(planned.plan.cycle_s));
    }
  }

  TEST_CASE("for every demo weldment, law: passes keep their order and joints wait for theirs") {
    for (const Planned& planned : plans()) {
      std::map<std::string, std::pair<double, double>> span;  // joint -> first start, last end
      for (const Arc& arc : arcs_of(planned.plan)) {
        if (!arc.pass->start_s) continue;
        auto [it, fresh] =
            span.emplace(arc.seam->joint, std::pair{*arc.pass->start_s, *arc.pass->end_s});
        if (!fresh) {
          it->second.first = std::min(it->second.first, *arc.pass->start_s);
          it->second.second = std::max(it->second.second, *arc.pass->end_s);
        }
      }
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) {
          for (std::size_t k = 1; k < seam.passes.size(); ++k) {
            if (!seam.turned) continue;
            INFO(planned.file, " ", seam.id, " pass ", k + 1);
            CHECK(*seam.passes[k].start_s >= *seam.passes[k - 1].end_s);
          }
        }
      }
      for (const joint::Joint& joint : planned.plan.weldment.joints) {
        for (const std::string& before : joint.after) {
          if (span.count(joint.id) == 0 || span.count(before) == 0) continue;
          INFO(planned.file, " ", joint.id, " after ", before);
          CHECK(span.at(joint.id).first >= span.at(before).second);
        }
      }
    }
  }

  TEST_CASE("for every pass, law: the stance holds the seam in the position the plan names") {
    for (const Planned& planned : plans()) {
      const Plan& plan = planned.plan;
      if (!plan.cell) continue;
      for (const Arc& arc : arcs_of(plan)) {
        if (arc.pass->stance < 0) continue;
        const plan::PlannedStance& stance =
            plan.stances.at(static_cast<std::size_t>(arc.pass->stance));
        const geom::Mat3 R_WJ = turn::rotation_WD(plan.cell->positioner.kind, stance.stance.axes) *
                                plan.weldment.setup.X_DJ.rotation;
        const joint::Joint& joint = *joint::find_joint(plan.weldment, arc.seam->joint);
        const joint::Seam& seam = described_seam(plan, arc.seam->id);
        // The face where the first torch pose stands; on a ring found by its travel direction.
        const geom::Vec3 travel_J = arc.pass->points.front().travel;
        geom::Vec3 face_J = seam.face;
        if (geom::is_closed(*seam.path)) {
          const geom::CirclePath& circle = std::get<geom::CirclePath>(*seam.path);
          const geom::Vec3 first = geom::path_station(*seam.path, 0.0).tangent;
          const geom::Angle turned = geom::signed_angle(circle.axis, first, travel_J);
          face_J = geom::rotation_about(circle.axis, turned) * seam.face;
        }
        const auto found = position::classify(
            joint::position_family(joint), R_WJ * travel_J, R_WJ * face_J, geom::Vec3::UnitZ());
        INFO(planned.file, " ", seam.id, " pass ", arc.pass->pass.number, " at ", stance.id);
        REQUIRE(found.has_value());
        CHECK(process::position_name(found->iso) == process::position_name(arc.seam->position));
      }
    }
  }

  TEST_CASE(
      "for every pass, law: the bead its settings lay is its section, at the heat they give") {
    for (const Planned& planned : plans()) {
      for (const Arc& arc : arcs_of(planned.plan)) {
        const pass::Pass& pass = arc.pass->pass;
        const joint::Joint& joint = *joint::find_joint(planned.plan.weldment, arc.seam->joint);
        const std::string& id = joint.wire.empty() ? planned.plan.weldment.wire : joint.wire;
        for (const process::Wire& wire : planned.plan.wires) {
          if (wire.id != id) continue;
          INFO(planned.file, " ", arc.seam->id, " pass ", pass.number);
          CHECK(process::bead_area_mm2(wire, pass.feed_mm_s, pass.travel_mm_s) ==
                doctest::Approx(pass.area_mm2).epsilon(1e-9).scale(0.0));
          // k = 0.8 for process 135 (EN 1011-1 as quoted by TWI), checked here without our
          // function.
          CHECK(0.8 * pass.voltage_v * pass.current_a / pass.travel_mm_s / 1000.0 ==
                doctest::Approx(pass.heat_input_kj_mm).epsilon(1e-9).scale(0.0));
        }
      }
    }
  }

  TEST_CASE("for every rolled pass of a true ring, law: torch and point stand still in the cell") {
    int seen = 0;
    for (const Planned& planned : plans()) {
      for (const Arc& arc : arcs_of(planned.plan)) {
        if (!arc.pass->roll) continue;
        const geom::Pose& X_DJ = planned.plan.weldment.setup.X_DJ;
        const auto& path = *described_seam(planned.plan, arc.seam->id).path;
        const geom::Vec3 centre_D = X_DJ.point(std::get<geom::CirclePath>(path).centre);
        // A ring beside the table's axis moves round it, and the torch goes along.
        if (centre_D.head<2>().norm() > 1e-6) continue;
        const turn::Stance& stance =
            planned.plan.stances[static_cast<std::size_t>(arc.pass->stance)].stance;
        const auto& points = arc.pass->points;
        const auto in_cell = [&](std::size_t k) {
          std::vector<base::Angle> axes = stance.axes;
          const double share = static_cast<double>(k) / static_cast<double>(points.size() - 1);
          axes.back() = axes.back() + share * *arc.pass->roll;
          return turn::pose_WD(planned.plan.cell->positioner, axes) * X_DJ;
        };
        for (std::size_t k = 1; k < points.size(); ++k) {
          INFO(planned.file, " ", arc.seam->id, " point ", k);
          CHECK((in_cell(k).point(points[k].point) - in_cell(0).point(points[0].point)).norm() <
                1e-6);
          CHECK((in_cell(k).direction(points[k].torch) - in_cell(0).direction(points[0].torch))
                    .norm() < 1e-9);
        }
        ++seen;
      }
    }
    CHECK(seen > 0);
  }

  TEST_CASE("for every stance used, law: the positioner carries and holds the load there") {
    for (const Planned& planned : plans()) {
      const Plan& plan = planned.plan;
      for (const plan::PlannedStance& stance : plan.stances) {
        INFO(planned.file, " ", stance.id);
        CHECK(turn::check_load(plan.cell->positioner, plan.load, stance.stance.axes, stance.id)
                  .empty());
        CHECK(stance.torque_nm.size() == plan.cell->positioner.axes.size());
        CHECK_FALSE(stance.seams.empty());
      }
    }
  }

  TEST_CASE("for every demo weldment, law: every seam stands in one procedure, all preliminary") {
    for (const Planned& planned : plans()) {
      std::map<std::string, int> seen;
      for (const procedure::Procedure& procedure : planned.plan.procedures) {
        CHECK(procedure.qualification.find("preliminary") != std::string::npos);
        CHECK_FALSE(procedure.cautions.empty());
        for (const std::string& seam : procedure.seams) ++seen[seam];
      }
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) CHECK(seen[seam.id] == 1);
      }
    }
  }

  TEST_CASE("for every demo weldment, law: planned twice gives the same bytes") {
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      CHECK(io::plan_xml(planner::make_plan(planned.inputs)) == io::plan_xml(planned.plan));
    }
  }

  TEST_CASE(
      "for every demo weldment, law: part and fixture weigh together about their common centre") {
    for (const Planned& planned : plans()) {
      const joint::Weight load = planned.plan.load;
      const joint::Setup& setup = planned.plan.weldment.setup;
      const joint::Weight part = planned.plan.part;
      const geom::Vec3 in_D = setup.X_DJ.point(part.centre);
      const geom::Vec3 expected =
          (part.mass_kg * in_D + setup.fixture_mass_kg * setup.fixture_centre) /
          (part.mass_kg + setup.fixture_mass_kg);
      INFO(planned.file);
      CHECK((load.centre - expected).norm() < 1e-9);
    }
  }
}

}  // namespace seamturn::tests
