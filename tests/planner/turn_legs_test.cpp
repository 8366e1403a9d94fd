// SPDX-License-Identifier: MIT
// Turns that go round: every leg counts, in the table of turns, in what is judged, and for tacks.
#include <algorithm>
#include <cmath>

#include "planned_demos.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_order_job.hpp"
#include "planner/detail_stances.hpp"
#include "planner/detail_tacking.hpp"
#include "planner/detail_turns.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::tests {

namespace detail = planner::detail;
using base::Angle;

namespace {

/// The bracket on a table so low that turns go round the floor.
planner::Inputs low_bracket() {
  planner::Inputs inputs = planned_demo("bracket.xml").inputs;
  double lowest_mm = 1e9;
  for (const plan::PlannedTurn& turn : planned_demo("bracket.xml").plan.turns) {
    lowest_mm = std::min(lowest_mm, turn.lowest_mm);
  }
  inputs.cell->positioner.tilt_centre.z() -= lowest_mm - 99.0;
  return inputs;
}

std::vector<Angle> axes_of(const Plan& plan, const std::string& id) {
  for (const plan::PlannedStance& stance : plan.stances) {
    if (stance.id == id) return stance.stance.axes;
  }
  return std::vector<Angle>(plan.cell->positioner.axes.size());
}

/// Settings along all legs of a turn, 400 of each.
std::vector<std::vector<Angle>> settings_of(const Plan& plan, const plan::PlannedTurn& turn) {
  std::vector<std::vector<Angle>> all;
  std::vector<std::vector<Angle>> ends = turn.halts;
  ends.push_back(axes_of(plan, turn.to));
  std::vector<Angle> begin = axes_of(plan, turn.from);
  for (const std::vector<Angle>& end : ends) {
    for (int k = 0; k <= 400; ++k) {
      std::vector<Angle> here = begin;
      for (std::size_t i = 0; i < here.size(); ++i) {
        here[i] = begin[i] +
                  k / 400.0 * turn::axis_travel(plan.cell->positioner.axes[i], begin[i], end[i]);
      }
      all.push_back(std::move(here));
    }
    begin = end;
  }
  return all;
}

}  // namespace

TEST_SUITE("planner/turn_legs") {
  TEST_CASE("for turns that go round, law: the worst of all legs is told, each from its halt on") {
    const planner::Inputs inputs = low_bracket();
    Plan plan = quick_plan(inputs);
    std::vector<base::Finding> findings;
    const auto stages = detail::work_stages(inputs, findings);
    int round = 0;
    const auto check_legs = [&] {
      for (const plan::PlannedTurn& turn : plan.turns) {
        if (turn.halts.empty()) continue;
        ++round;
        INFO(turn.from, " to ", turn.to);
        double lowest_mm = 1e9;
        std::vector<double> most_nm(2, 0.0);
        for (const auto& here : settings_of(plan, turn)) {
          const turn::SwingBody body = detail::swing_body(stages.at(turn.stage));
          lowest_mm =
              std::min(lowest_mm, turn::lowest_at(plan.cell->positioner, body, here).height_mm);
          const auto torques =
              turn::safe_torques_nm(plan.cell->positioner, plan.stages[turn.stage].load, here);
          for (std::size_t i = 0; i < 2; ++i) {
            most_nm[i] = std::max(most_nm[i], std::abs(torques[i]));
          }
        }
        CHECK(turn.lowest_mm == doctest::Approx(lowest_mm).epsilon(1e-3));
        for (std::size_t i = 0; i < 2; ++i) {
          CHECK(std::abs(turn.torque_nm[i]) == doctest::Approx(most_nm[i]).epsilon(1e-3));
        }
      }
    };
    check_legs();
    // The same turns the other way: what was worst on the last leg is on the first.
    REQUIRE(round > 0);
    std::reverse(plan.timeline.begin(), plan.timeline.end());
    plan.turns.clear();
    detail::check_turns(inputs, stages, plan);
    const int before = round;
    check_legs();
    CHECK(round > before);
  }

  TEST_CASE("given turns no way is clear for, law: the table bars them and no other") {
    planner::Inputs inputs = planned_demo("bracket.xml").inputs;
    inputs.weldment.setups.front().X_DJ.translation.x() += 300.0;
    // Level the rotate axis would be free, but the tilt ends at 40 deg.
    std::erase_if(inputs.weldment.joints,
                  [](const joint::Joint& one) { return one.id != "J2" && one.id != "J6"; });
    for (joint::Joint& joint : inputs.weldment.joints) joint.after.clear();
    inputs.cell->positioner.axes[0].min = Angle::deg(40.0);
    inputs.cell->positioner.axes[1].torque_peak_nm.reset();
    std::vector<base::Finding> findings;
    int barred = 0, clear = 0;
    for (const double share :
         {10.0, 8.0, 6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.0, 0.8, 0.6, 0.4, 0.2}) {
      planner::Inputs weak = inputs;
      weak.cell->positioner.axes[1].torque_max_nm = share * 100.0;
      const auto joints = detail::work_joints(weak, findings);
      const auto seams = detail::all_seams(joints);
      const auto stages = detail::work_stages(weak, findings);
      const auto pool = detail::find_stance_pool(weak, stages.front(), seams, findings);
      if (std::any_of(pool.placements.begin(), pool.placements.end(), [](const auto& one) {
            return one.empty();
          })) {
        continue;
      }
      const auto placements = detail::choose_placements(weak, seams, pool);
      const auto job = detail::make_order_job(weak, stages.front(), seams, pool, placements, true);
      const auto ways = detail::clear_ways(weak.cell->positioner, stages.front());
      for (std::size_t a = 0; a < job.pool_stance.size(); ++a) {
        for (std::size_t b = 0; b < job.pool_stance.size(); ++b) {
          if (a == b || job.pool_stance[a] < 0 || job.pool_stance[b] < 0) continue;
          const auto& from = pool.stances[static_cast<std::size_t>(job.pool_stance[a])];
          const auto& to = pool.stances[static_cast<std::size_t>(job.pool_stance[b])];
          const bool is_clear = ways.find(from.axes, to.axes).clear;
          CHECK((job.job.turn_s[a][b] > 3600.0) != is_clear);
          ++(is_clear ? clear : barred);
        }
      }
    }
    CHECK(clear > 0);
    CHECK(barred > 0);
  }

  TEST_CASE("for tacks, law: halts of another turn to a stance are no attitude of this one") {
    Plan plan = quick_plan(low_bracket());
    const auto count = [&] { return detail::attitudes_of(plan, 0).size(); };
    const std::size_t before = count();
    plan::PlannedTurn other = plan.turns.front();
    for (const plan::PlannedTurn& turn : plan.turns) {
      other.from = "S99";
      other.to = turn.to;
      other.halts = {{Angle::deg(-11.0), Angle::deg(77.0)}};
      Plan more = plan;
      more.turns.insert(more.turns.begin(), other);
      CHECK(detail::attitudes_of(more, 0).size() == before);
    }
  }
}

}  // namespace seamturn::tests
