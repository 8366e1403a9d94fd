// SPDX-License-Identifier: MIT
// Work of people on the clock: at its place among the welds, in its stance, robot home.
#include <cmath>
#include <map>

#include "planner/detail_joints.hpp"
#include "planner/detail_order_job.hpp"
#include "planner/detail_stances.hpp"
#include "staged_part.hpp"

namespace seamturn::tests {

namespace {

using timeline::SecondKind;

double seconds_of(const Plan& plan, SecondKind kind) {
  return plan.seconds[static_cast<std::size_t>(kind)];
}

const plan::PlannedStance& stance_in(const Plan& plan, const std::string& id) {
  for (const plan::PlannedStance& stance : plan.stances) {
    if (stance.id == id) return stance;
  }
  FAIL("no stance ", id);
  return plan.stances.front();
}

/// First arc of a stage and its last.
Span arcs_in(const Plan& plan, const std::string& stage) {
  Span span{1e12, -1.0};
  for (const Arc& arc : arcs_of(plan)) {
    if (arc.seam->stage != stage || !arc.pass->start_s) continue;
    span.from_s = std::min(span.from_s, *arc.pass->start_s);
    span.to_s = std::max(span.to_s, *arc.pass->end_s);
  }
  return span;
}

/// The ribs alone, with one operation of 100 s more in their stage.
Plan ribs_with(const std::optional<joint::Operation>& operation) {
  planner::Inputs inputs = staged_part();
  drop_operations(inputs);
  inputs.weldment.stages.pop_back();
  if (operation) inputs.weldment.stages.back().operations.push_back(*operation);
  return planner::make_plan(inputs);
}

/// No seam lies level with the table at rest.
void slant(joint::Setup& setup) {
  setup.X_DJ.rotation =
      geom::rotation_about(geom::Vec3::UnitX(), base::Angle::deg(-70.0)) * setup.X_DJ.rotation;
  setup.X_DJ.translation.z() += 450.0;                                  // clear of the faceplate
  for (joint::SetupSolid& solid : setup.solids) solid.size_mm.reset();  // stands in no way
}

joint::Operation hold(joint::OperationPlace place) {
  joint::Operation operation;
  operation.id = "hold";
  operation.place = place;
  operation.time_s = 100.0;
  return operation;
}

/// J1 alone on a slanted table, with level work of 100 s after it.
Plan slanted_tee(bool with_work) {
  planner::Inputs inputs = staged_part();
  drop_operations(inputs);
  keep_stage(inputs, "tee");
  inputs.weldment.setups.resize(1);
  slant(inputs.weldment.setups.front());
  inputs.weldment.joints.resize(1);
  inputs.weldment.members.resize(2);
  if (with_work) {
    joint::Operation work = hold(joint::OperationPlace::end);
    work.level = true;
    inputs.weldment.stages.front().operations.push_back(work);
  }
  return planner::make_plan(inputs);
}

}  // namespace

TEST_SUITE("planner/operations_plan") {
  TEST_CASE("for every plan, law: work stands where its place, after and before say") {
    std::vector<std::pair<const planner::Inputs*, const Plan*>> all;
    const planner::Inputs inputs = staged_part();
    const Plan plan = planner::make_plan(inputs);
    all.push_back({&inputs, &plan});
    for (const Planned& planned : plans()) all.push_back({&planned.inputs, &planned.plan});
    int tied = 0;
    for (const auto& [in, out] : all) {
      for (const joint::Stage& stage : in->weldment.stages) {
        const Span arcs = arcs_in(*out, stage.id);
        double start_ends_s = 0.0;  // operations of one place keep the order of the file
        double end_ends_s = 0.0;
        for (const joint::Operation& operation : stage.operations) {
          INFO(out->weldment.title, " ", operation.id);
          const plan::PlannedOperation& planned = planned_in(*out, operation.id);
          CHECK(planned.stage == stage.id);
          CHECK(planned.start_s.has_value() == !stage.setup.empty());
          if (!planned.start_s) continue;
          const double from_s = *planned.start_s;
          const double to_s = from_s + operation.time_s;
          CHECK(from_s >= *stage_in(*out, stage.id).start_s);
          CHECK(to_s <= stage_in(*out, stage.id).end_s + 1e-6);
          if (operation.place == joint::OperationPlace::start) {
            CHECK(to_s <= arcs.from_s);
            CHECK(from_s >= start_ends_s);
            start_ends_s = to_s;
          } else if (operation.place == joint::OperationPlace::end) {
            CHECK(from_s >= arcs.to_s);
            CHECK(from_s >= end_ends_s);
            end_ends_s = to_s;
          }
          for (const std::string& joint : operation.after) {
            CHECK(from_s >= span_of(*out, joint).to_s);
            ++tied;
          }
          for (const std::string& joint : operation.before) {
            CHECK(to_s <= span_of(*out, joint).from_s);
            ++tied;
          }
        }
      }
    }
    CHECK(tied >= 3);
  }

  TEST_CASE("for every plan, law: each operation is one event of its time, nothing else overlaps") {
    const Plan plan = planner::make_plan(staged_part());
    std::vector<const Plan*> all = {&plan};
    for (const Planned& planned : plans()) all.push_back(&planned.plan);
    for (const Plan* one : all) {
      double work_s = 0.0;
      std::size_t in_cell = 0;
      for (const plan::PlannedOperation& operation : one->operations) {
        if (!operation.start_s) continue;
        ++in_cell;
        work_s += operation.time_s;
        std::size_t seen = 0;
        for (const plan::PlannedEvent& event : one->timeline) {
          if (event.kind != SecondKind::work || event.operation != operation.id) continue;
          ++seen;
          CHECK(event.start_s == *operation.start_s);
          CHECK(event.end_s - event.start_s == doctest::Approx(operation.time_s));
          CHECK(event.stance == operation.stance);
        }
        CHECK(seen == 1);
      }
      CHECK(seconds_of(*one, SecondKind::work) == doctest::Approx(work_s));
      CHECK(in_cell == static_cast<std::size_t>(std::count_if(
                           one->timeline.begin(), one->timeline.end(), [](const auto& event) {
                             return event.kind == SecondKind::work;
                           })));
    }
  }

  TEST_CASE("given axes, the work is done there, level and fits at rest, unless axes are named") {
    const Plan plan = planner::make_plan(staged_part());
    const auto axes = [&](const char* id) {
      return stance_in(plan, planned_in(plan, id).stance).stance.axes;
    };
    CHECK(axes("MT")[0].deg() == doctest::Approx(45.0));
    CHECK(axes("MT")[1].deg() == doctest::Approx(-30.0));
    CHECK(axes("fit ribs 2")[0].deg() == doctest::Approx(90.0));
    CHECK(axes("fit ribs 2")[1].deg() == doctest::Approx(0.0));  // not named: at rest
    CHECK(planned_in(plan, "fit ribs").stance.empty());
    CHECK(planned_in(plan, "sweep").stance.empty());
    CHECK(stance_in(plan, planned_in(plan, "MT").stance).setup == "quarter");
  }

  TEST_CASE("given work as the part hangs at the end of a stage, it adds its time, closed-form") {
    // The robot goes home and the table to rest all the same.
    const Plan without = ribs_with(std::nullopt);
    REQUIRE(without.proved_best);
    const Plan with = ribs_with(hold(joint::OperationPlace::end));
    REQUIRE(with.proved_best);
    CHECK(with.cycle_s - without.cycle_s == doctest::Approx(100.0));
    // At its start too: after the fits people are in the cell and the table is where they left it.
    const Plan before = ribs_with(hold(joint::OperationPlace::start));
    CHECK(before.cycle_s - without.cycle_s == doctest::Approx(100.0));
  }

  TEST_CASE("given level work after the last weld, the table's way to rest is added, closed-form") {
    const Plan without = slanted_tee(false);
    const Plan with = slanted_tee(true);
    REQUIRE(without.stances.size() == 1);
    REQUIRE(with.stances.size() == 1);
    // Each axis ramps up and down (tests/good: 12 deg/s, 10 deg/s2; 25 deg/s, 20 deg/s2), the
    // slower one decides; then 0.4 s to settle.
    const auto axis_s = [](double deg, double speed, double ramp) {
      const bool travels = deg > speed * speed / ramp;
      return travels ? deg / speed + speed / ramp : 2.0 * std::sqrt(deg / ramp);
    };
    const auto& axes = with.stances.front().stance.axes;
    const double turn_s = 0.4 + std::max(axis_s(std::abs(axes[0].deg()), 12.0, 10.0),
                                         axis_s(std::abs(axes[1].deg()), 25.0, 20.0));
    REQUIRE(turn_s > 1.0);
    CHECK(with.cycle_s - without.cycle_s == doctest::Approx(100.0 + turn_s));
    CHECK(planned_in(with, "hold").stance.empty());
    CHECK(with.timeline.back().kind == SecondKind::work);
  }

  TEST_CASE("between two stages the table is at rest, after the last it stays where it is") {
    planner::Inputs inputs = staged_part();
    drop_operations(inputs);
    for (joint::Setup& setup : inputs.weldment.setups) slant(setup);
    const Plan plan = planner::make_plan(inputs);
    std::string stance;
    std::size_t hangs = 0;
    for (const plan::PlannedEvent& event : plan.timeline) {
      if (event.kind == SecondKind::hang) {
        CHECK(stance.empty());
        ++hangs;
      }
      stance = event.stance;
    }
    CHECK(hangs == 1);
    inputs.weldment.stages.pop_back();  // what is away comes after the cell's last stage
    CHECK_FALSE(planner::make_plan(inputs).timeline.back().stance.empty());
  }

  TEST_CASE(
      "for every plan, law: a visit begins with each arrival, its way there is turning time") {
    // Also where people's work elsewhere lies between two visits of one stance.
    planner::Inputs inputs = staged_part();
    inputs.weldment.setups.front().X_DJ.rotation =
        geom::rotation_about(geom::Vec3::UnitX(), base::Angle::deg(40.0));
    operation_in(inputs, "VT_back").level = true;
    operation_in(inputs, "VT_back").after.clear();
    operation_in(inputs, "VT_back").after = {"J1"};
    const Plan slanted = planner::make_plan(inputs);
    const Plan as_is = planner::make_plan(staged_part());
    std::vector<const Plan*> all = {&slanted, &as_is};
    for (const Planned& planned : plans()) all.push_back(&planned.plan);
    for (const Plan* plan : all) {
      std::map<std::string, int> visits;
      std::map<std::string, double> turning_s;
      std::string held;
      for (const plan::PlannedEvent& event : plan->timeline) {
        if (event.stance != held && !event.stance.empty()) {
          ++visits[event.stance];
          if (event.kind == SecondKind::turn) {
            turning_s[event.stance] += event.end_s - event.start_s;
          }
        }
        held = event.stance;
      }
      for (const plan::PlannedStance& stance : plan->stances) {
        INFO(plan->weldment.title, " ", stance.id);
        CHECK(stance.visits == visits[stance.id]);
        CHECK(stance.turn_time_s == doctest::Approx(turning_s[stance.id]));
      }
    }
  }

  TEST_CASE("the nozzle comes into a stage as dirty as the stages before left it") {
    // law: from one cleaning to the next never more arc than the interval, whatever lies between;
    // passes here are all shorter than it.
    planner::Inputs inputs = staged_part();
    for (const double every_s : {30.0, 45.0, 60.0, 90.0}) {
      inputs.cell->times.clean_every_s = every_s;
      const Plan plan = planner::make_plan(inputs);
      double arc_s = 0.0;
      double most_s = 0.0;
      for (const plan::PlannedEvent& event : plan.timeline) {
        if (event.kind == SecondKind::clean) arc_s = 0.0;
        if (event.kind != SecondKind::arc) continue;
        most_s = std::max(most_s, event.end_s - event.start_s);
        arc_s += event.end_s - event.start_s;
        INFO("every ", every_s, " s, at ", event.start_s);
        CHECK(arc_s <= std::max(every_s, event.end_s - event.start_s) + 1e-6);
      }
      CHECK(most_s < 90.0);
      CHECK(plan.lower_bound_s <= plan.cycle_s * (1.0 + 1e-12));
    }
  }

  TEST_CASE(
      "given work after a weld of several blocks, its last one counts, before, its first one") {
    // law: else the wait between two passes would be filled with a test of what is not there yet.
    namespace detail = planner::detail;
    planner::Inputs inputs = io::read_inputs(repository() / "joints/grab_hub.xml");
    operation_in(inputs, "PT_R2").before = {"R1"};
    std::vector<base::Finding> findings;
    const auto joints = detail::work_joints(inputs, findings);
    const auto seams = detail::all_seams(joints);
    const auto stages = detail::work_stages(inputs, findings);
    const detail::StageWork& core = stages.at(1);
    const auto pool = detail::find_stance_pool(inputs, core, seams, findings);
    const auto placements = detail::choose_placements(inputs, seams, pool);
    const auto job = detail::make_order_job(inputs, core, seams, pool, placements, false);
    const auto blocks_of = [&](const char* joint) {
      std::vector<int> blocks;
      for (std::size_t b = 0; b < job.origins.size(); ++b) {
        const int seam = job.origins[b].seam;
        if (seam < 0) continue;
        if (seams[static_cast<std::size_t>(seam)].joint->joint->id == joint) {
          blocks.push_back(static_cast<int>(b));
        }
      }
      return blocks;
    };
    const std::vector<int> r2 = blocks_of("R2");
    const std::vector<int> r1 = blocks_of("R1");
    REQUIRE(r2.size() > 1);
    REQUIRE(r1.size() > 1);
    for (std::size_t b = 0; b < job.job.blocks.size(); ++b) {
      const order::Block& block = job.job.blocks[b];
      if (block.name != "PT_R2") continue;
      CHECK(std::count(block.after.begin(), block.after.end(), r2.back()) == 1);
      const auto& first = job.job.blocks[static_cast<std::size_t>(r1.front())].after;
      CHECK(std::count(first.begin(), first.end(), static_cast<int>(b)) == 1);
      CHECK(block.work_s == 20.0 * 60.0);
    }
  }

  TEST_CASE("given a test that must lie between two welds that wait the other way, it is refused") {
    planner::Inputs inputs = staged_part();
    joint_in(inputs, "J1").after = {"J2"};  // and VT_back is after J1 and before J2
    CHECK(refused_with(inputs) == "order.cycle");
  }

  TEST_CASE(
      "given a load too heavy for a stage, or for the stance of its work, the stage says so") {
    planner::Inputs heavy = staged_part();
    heavy.cell->positioner.load_max_kg = 100.0;  // 126 kg in the first stage, 91 kg in the second
    CHECK(refused_with(heavy) == "turn.load.too_heavy");
    // law: a fixture as light as told is carried; where the part alone is too heavy, none is.
    const auto told = [](const planner::Inputs& inputs) {
      try {
        (void)planner::make_plan(inputs);
      } catch (const base::InputError& refused) {
        return refused.findings().front().text;
      }
      return std::string();
    };
    const std::string words = "take a fixture of no more than ";
    const std::string text = told(heavy);
    REQUIRE(text.find(words) != std::string::npos);
    const double fixture_kg = std::stod(text.substr(text.find(words) + words.size()));
    const auto is_carried = [&](double mass_kg) {
      planner::Inputs inputs = heavy;
      joint::SetupSolid fixture;
      fixture.mass_kg = mass_kg;
      inputs.weldment.setups.front().solids = {fixture};
      return told(inputs).find("part and fixture weigh") == std::string::npos;
    };
    CHECK(is_carried(fixture_kg));
    CHECK_FALSE(is_carried(fixture_kg + 1.0));
    heavy.cell->positioner.load_max_kg = 10.0;
    CHECK(told(heavy).find("; the part alone weighs ") != std::string::npos);
    planner::Inputs weak = staged_part();
    drop_operations(weak);
    joint::Operation steep = hold(joint::OperationPlace::end);
    steep.axes = {{"tilt", base::Angle::deg(90.0)}};
    weak.weldment.stages[1].operations.push_back(steep);
    CHECK(refused_with(weak).empty());
    weak.cell->positioner.axes.front().torque_max_nm = 20.0;
    CHECK(refused_with(weak).find("turn.load.torque") != std::string::npos);
  }
}

}  // namespace seamturn::tests
