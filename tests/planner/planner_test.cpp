// SPDX-License-Identifier: MIT
// Laws of order, clock and documents that hold for the plan of every weldment in joints/.
#include <map>

#include "planned_demos.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::tests {

namespace {

/// Total of one kind as the timeline shows it.
double counted_s(const Plan& plan, timeline::SecondKind kind) {
  double total = 0.0;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind == kind) total += event.end_s - event.start_s;
  }
  return total;
}

}  // namespace

TEST_SUITE("planner/planner") {
  TEST_CASE("for every demo weldment, law: the seconds of the seven kinds add up to the cycle") {
    for (const Planned& planned : plans()) {
      double total = 0.0;
      for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
        total += planned.plan.seconds[kind];
        CHECK(planned.plan.seconds[kind] ==
              doctest::Approx(counted_s(planned.plan, static_cast<timeline::SecondKind>(kind))));
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

  TEST_CASE("given a member no joint holds, the plan says so, and of the demos nothing") {
    for (const Planned& planned : plans())
      CHECK(text_told(planned.plan, "plan.member.loose") == "");
    planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
    joint::Member loose = inputs.weldment.members.front();
    loose.id = "forgotten";
    inputs.weldment.members.push_back(loose);
    CHECK(text_told(quick_plan(inputs), "plan.member.loose").find("no joint holds forgotten") == 0);
  }

  TEST_CASE(
      "given closed seams without an overlap, the plan notes them in one line, and of the demos "
      "nothing") {
    for (const Planned& planned : plans())
      CHECK(text_told(planned.plan, "plan.stops.no_overlap") == "");
    planner::Inputs inputs = io::read_inputs(repository() / "joints/turnover_frame.xml");
    for (joint::Joint& joint : inputs.weldment.joints) {
      if (joint.id != "TR_h" && joint.id != "TR_t") continue;
      for (joint::Seam& seam : joint.seams) seam.asked.overlap_mm = 0.0;
    }
    CHECK(text_told(quick_plan(inputs), "plan.stops.no_overlap")
              .find("closed seams TR_h, TR_t: no overlap is asked for") == 0);
  }

  TEST_CASE("given a wire weaker than the plates, grooves are warned about and fillets noted") {
    planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
    const Plan strong = quick_plan(inputs);
    CHECK(text_told(strong, "plan.wire.undermatch") == "");  // G 46 on S355
    for (process::Wire& wire : inputs.library.wires) wire.designation = "G 35 2 C1 2Si";
    for (material::Steel& steel : inputs.library.steels) {
      for (material::SteelBand& band : steel.bands) band.yield_mpa = 356.0;
    }
    std::size_t warned = 0;
    std::size_t noted = 0;
    for (const base::Finding& finding : quick_plan(inputs).findings) {
      if (finding.code != "plan.wire.undermatch") continue;
      CHECK(finding.text.find("(356 MPa)") != std::string::npos);
      (finding.severity == base::Severity::warning ? warned : noted) += 1;
    }
    CHECK(warned == 1);
    CHECK(noted == 1);
    for (process::Wire& wire : inputs.library.wires) wire.designation = "of no standard";
    CHECK(text_told(quick_plan(inputs), "plan.wire.undermatch") == "");
  }

  TEST_CASE("for every stance used, law: the positioner carries and holds the load there") {
    for (const Planned& planned : plans()) {
      const Plan& plan = planned.plan;
      for (const plan::PlannedStance& stance : plan.stances) {
        INFO(planned.file, " ", stance.id);
        CHECK(turn::check_load(plan.cell->positioner, stance.load, stance.stance.axes, stance.id)
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
      for (const plan::PlannedStage& stage : planned.plan.stages) {
        if (stage.setup.empty()) continue;
        const joint::Setup& setup = *joint::find_setup(planned.plan.weldment, stage.setup);
        geom::Vec3 moment = stage.part.mass_kg * setup.X_DJ.point(stage.part.centre);
        double mass_kg = stage.part.mass_kg;
        for (const joint::SetupSolid& solid : setup.solids) {
          moment += solid.mass_kg * solid.centre;
          mass_kg += solid.mass_kg;
        }
        INFO(planned.file, " ", stage.id);
        CHECK(std::abs(stage.load.mass_kg - mass_kg) < 1e-9);
        CHECK((stage.load.centre - moment / mass_kg).norm() < 1e-9);
      }
    }
  }

  TEST_CASE(
      "given a tee on a headstock, turned a quarter in its set-up, the quarter is about the "
      "headstock's axis and a quarter back lays the base level, closed-form") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee_headstock.xml");
    // x along the axis stays, y goes to z.
    const geom::Mat3& R_DJ = inputs.weldment.setups.front().X_DJ.rotation;
    CHECK((R_DJ * geom::Vec3::UnitX() - geom::Vec3::UnitX()).norm() < 1e-12);
    CHECK((R_DJ * geom::Vec3::UnitY() - geom::Vec3::UnitZ()).norm() < 1e-12);
    const Plan plan = planner::make_plan(inputs);
    CHECK(plan.not_turned.empty());
    // The base's normal, z, went to -y; a quarter back about x lays the base level, and both
    // fillets on it are PB there: one stance serves both sides.
    REQUIRE(plan.stances.size() == 1);
    REQUIRE(plan.stances.front().stance.axes.size() == 1);
    CHECK(plan.stances.front().stance.axes.front().deg() == doctest::Approx(-90.0));
    for (const plan::PlannedJoint& joint : plan.joints) {
      CHECK(joint.seams.front().position == process::WeldPosition::pb);
    }
  }

  TEST_CASE("refuses a cell without a set-up because nobody knows how the part hangs in it") {
    planner::Inputs inputs = planned_demo("bracket.xml").inputs;
    inputs.weldment.setups.clear();
    CHECK_THROWS_AS((void)planner::make_plan(inputs), base::ContractViolation);
    inputs.cell.reset();
    CHECK(planner::make_plan(inputs).not_turned.size() == 8);  // closed-form: its seams
  }
}

}  // namespace seamturn::tests
