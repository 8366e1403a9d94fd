// SPDX-License-Identifier: MIT
// Turns of the loaded positioner as the plan judges them.
#include <algorithm>
#include <cmath>
#include <functional>

#include "oracle.hpp"
#include "planner/detail_tacking.hpp"
#include "repository.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

using base::Angle;
using plan::Plan;

namespace {

using Change = std::function<void(planner::Inputs&)>;

planner::Inputs inputs_of(const char* file, const Change& change) {
  planner::Inputs inputs = io::read_inputs(repository() / file);
  change(inputs);
  return inputs;
}

Plan planned(
    const char* file, const Change& change = [](planner::Inputs&) {}) {
  planner::PlanParams params;
  params.search.effort = 20000;  // the order's worth is not looked at here
  return planner::make_plan(inputs_of(file, change), params);
}

/// Codes of the errors that stop the plan; empty: it is made.
std::string refusal(const char* file, const Change& change) {
  try {
    (void)planned(file, change);
    return "";
  } catch (const base::InputError& error) {
    std::string codes;
    for (const base::Finding& finding : error.findings()) {
      if (finding.severity == base::Severity::error) codes += finding.code + ' ';
    }
    return codes;
  }
}

std::string text_of_code(const Plan& plan, const std::string& code) {
  for (const base::Finding& finding : plan.findings) {
    if (finding.code == code) return finding.text;
  }
  return "";
}

int count_of_code(const Plan& plan, const std::string& code) {
  return static_cast<int>(
      std::count_if(plan.findings.begin(), plan.findings.end(), [&](const base::Finding& finding) {
        return finding.code == code;
      }));
}

const char* const bracket = "joints/bracket.xml";
const char* const tee = "tests/good/tee.xml";

cell::Positioner& positioner_of(planner::Inputs& inputs) {
  return inputs.cell->positioner;
}

/// The tee's seams run along a headstock's axis.
void as_station_changer(planner::Inputs& inputs) {
  cell::Positioner& positioner = positioner_of(inputs);
  positioner.kind = cell::PositionerKind::station_changer;
  positioner.exchange_centre = geom::Vec3(-2500.0, 0.0, 0.0);
  positioner.axes[0].name = "exchange";
  positioner.axes[0].min = Angle();
  positioner.axes[0].max = Angle::deg(180.0);
  positioner.axes[1].name = "turn";
}

}  // namespace

TEST_SUITE("planner/turns") {
  TEST_CASE("for every turn of a plan, law: no less than at both its ends, within every plate") {
    const Plan plan = planned(bracket);
    REQUIRE(plan.turns.size() >= 3);
    const auto at = [&](const std::string& id) -> const plan::PlannedStance* {
      for (const plan::PlannedStance& stance : plan.stances) {
        if (stance.id == id) return &stance;
      }
      return nullptr;
    };
    int moving = 0;
    for (const plan::PlannedTurn& turn : plan.turns) {
      INFO(turn.from << " to " << turn.to);
      REQUIRE(turn.torque_nm.size() == 2);
      REQUIRE(turn.stop_nm.size() == 2);  // the demo cell states its stops
      for (std::size_t i = 0; i < 2; ++i) {
        const cell::Axis& axis = plan.cell->positioner.axes[i];
        CHECK(std::abs(turn.torque_nm[i]) <= axis.torque_max_nm);
        for (const std::string& id : {turn.from, turn.to}) {
          if (at(id) == nullptr) continue;
          const auto there = turn::safe_torques_nm(
              plan.cell->positioner, plan.stages[turn.stage].load, at(id)->stance.axes);
          CHECK(std::abs(turn.torque_nm[i]) >= std::abs(there[i]) - 1e-6);
        }
        CHECK(std::abs(turn.moving_nm[i]) >= std::abs(turn.torque_nm[i]));
        CHECK(std::abs(turn.stop_nm[i]) >= std::abs(turn.moving_nm[i]));  // stops harder
        if (std::abs(turn.moving_nm[i]) > std::abs(turn.torque_nm[i])) {
          ++moving;
          CHECK(std::abs(turn.stop_nm[i]) > std::abs(turn.moving_nm[i]));
        }
      }
      CHECK(turn.lowest_mm > 100.0);
      CHECK_FALSE(turn.lowest_of.empty());
    }
    CHECK(moving >= 3);
    CHECK(count_of_code(plan, "turn.load.stop_not_judged") == 0);
  }

  TEST_CASE("given a cell that states no stop, the plan says that it was not judged, once") {
    const Plan plan = planned(bracket, [](planner::Inputs& inputs) {
      positioner_of(inputs).axes[1].stop_rad_s2.reset();
    });
    CHECK(count_of_code(plan, "turn.load.stop_not_judged") == 1);
    CHECK(text_of_code(plan, "turn.load.stop_not_judged").find("axis rotate down") !=
          std::string::npos);
    for (const plan::PlannedTurn& turn : plan.turns) CHECK(turn.stop_nm.empty());
  }

  TEST_CASE("given axes too quick for their plate, a warning a stage with the number") {
    const Plan plan = planned(bracket, [](planner::Inputs& inputs) {
      cell::Axis& tilt = positioner_of(inputs).axes[0];
      tilt.acceleration_rad_s2 = 20000.0;
      tilt.stop_rad_s2 = 40000.0;
    });
    CHECK(count_of_code(plan, "turn.load.speeding_up") == 1);
    CHECK(count_of_code(plan, "turn.load.stop") == 1);
    const std::string text = text_of_code(plan, "turn.load.speeding_up");
    CHECK(text.find("axis tilt needs") != std::string::npos);
    CHECK(text.find("allows 30000 N m") != std::string::npos);
    CHECK(text.find("more of this kind") != std::string::npos);
  }

  TEST_CASE("given a table a little too low, turns go round the floor, much too low: refused") {
    const auto lowered = [](double by_mm) {
      return [by_mm](planner::Inputs& inputs) { positioner_of(inputs).tilt_centre.z() -= by_mm; };
    };
    constexpr double clearance_mm = 100.0;  // the demo cell's
    const auto lowest_mm = [](const Plan& plan) {
      double least_mm = 1e9;
      for (const plan::PlannedTurn& turn : plan.turns)
        least_mm = std::min(least_mm, turn.lowest_mm);
      return least_mm;
    };
    const auto round = [](const Plan& plan) {
      return std::count_if(plan.turns.begin(), plan.turns.end(), [](const plan::PlannedTurn& turn) {
        return !turn.halts.empty();
      });
    };
    const Plan high = planned(bracket);
    CHECK(round(high) == 0);
    const double room_mm = lowest_mm(high) - clearance_mm;
    CHECK(round(planned(bracket, lowered(room_mm - 0.1))) == 0);
    const Plan low = planned(bracket, lowered(room_mm + 0.1));
    CHECK(round(low) > 0);
    CHECK(lowest_mm(low) >= clearance_mm - 1e-6);
    CHECK(low.cycle_s > high.cycle_s);
    CHECK(refusal(bracket, lowered(room_mm + 400.0)).find("turn.seam.no_stance ") == 0);
  }

  TEST_CASE("given a stance barred by the floor, the seam it would hold says which and why") {
    try {
      (void)planned(bracket,
                    [](planner::Inputs& inputs) { positioner_of(inputs).tilt_centre.z() = 220.0; });
      FAIL("a part that strikes the floor is planned");
    } catch (const base::InputError& error) {
      const std::string& text = error.findings().front().text;
      INFO(text);
      CHECK(text.find("; one that would is barred, tilt 90.0 deg") != std::string::npos);
      CHECK(text.find("base_right would strike the floor, ") != std::string::npos);
      CHECK(text.find("do not hold it so") != std::string::npos);
    }
  }

  TEST_CASE("for a turn that goes round, tacks are judged where it halts") {
    const Plan low = planned(
        bracket, [](planner::Inputs& inputs) { positioner_of(inputs).tilt_centre.z() = 290.0; });
    const geom::Pose& X_DJ = low.weldment.setups.front().X_DJ;
    const auto attitudes = planner::detail::attitudes_of(low, 0);
    int halts = 0;
    for (const plan::PlannedTurn& turn : low.turns) {
      for (const std::vector<Angle>& halt : turn.halts) {
        ++halts;
        const geom::Mat3 R_WJ = turn::rotation_WD(low.cell->positioner, halt) * X_DJ.rotation;
        const geom::Vec3 down_J = -(R_WJ.transpose() * geom::Vec3::UnitZ());
        CHECK(std::any_of(attitudes.begin(), attitudes.end(), [&](const auto& attitude) {
          return (attitude.down_J - down_J).norm() < 1e-9;
        }));
      }
    }
    CHECK(halts == 2);
  }

  TEST_CASE("for turns that go round, law: the clock counts every leg and the halt at its end") {
    const Plan high = planned(bracket);
    double lowest_mm = 1e9;
    for (const plan::PlannedTurn& turn : high.turns)
      lowest_mm = std::min(lowest_mm, turn.lowest_mm);
    const Plan low = planned(bracket, [&](planner::Inputs& inputs) {
      positioner_of(inputs).tilt_centre.z() -= lowest_mm - 99.0;
    });
    const cell::Positioner& positioner = low.cell->positioner;
    const auto axes_of = [&](const std::string& id) {
      for (const plan::PlannedStance& stance : low.stances) {
        if (stance.id == id) return stance.stance.axes;
      }
      return std::vector<Angle>(positioner.axes.size());
    };
    int round = 0;
    std::string at;
    for (const plan::PlannedEvent& event : low.timeline) {
      if (event.kind != timeline::SecondKind::turn) continue;
      for (const plan::PlannedTurn& turn : low.turns) {
        if (turn.from != at || turn.to != event.stance || turn.halts.empty()) continue;
        ++round;
        double legs_s = low.cell->times.settle_s;
        std::vector<Angle> from = axes_of(turn.from);
        for (const std::vector<Angle>& halt : turn.halts) {
          legs_s += turn::turn_time_s(positioner, from, halt);
          from = halt;
        }
        legs_s += turn::turn_time_s(positioner, from, axes_of(turn.to));
        CHECK(event.end_s - event.start_s == doctest::Approx(legs_s));
      }
      at = event.stance;
    }
    CHECK(round > 0);
  }

  TEST_CASE("given stances that hold and a way between that does not, the turn goes another way") {
    // The bracket sits 300 mm off in the plane of the tilt: from level to 45 deg and half a turn of
    // rotate nothing turns that axis at either end, but half way the part hangs out sideways.
    const auto aside = [](planner::Inputs& inputs) {
      inputs.weldment.setups.front().X_DJ.translation.x() += 300.0;
    };
    const Plan plan = planned(bracket, aside);
    double at_stances_nm = 0.0, on_way_nm = 0.0;
    for (const plan::PlannedTurn& turn : plan.turns) {
      on_way_nm = std::max(on_way_nm, std::abs(turn.torque_nm[1]));
    }
    for (const plan::PlannedStance& stance : plan.stances) {
      const auto there =
          turn::safe_torques_nm(plan.cell->positioner, stance.load, stance.stance.axes);
      at_stances_nm = std::max(at_stances_nm, std::abs(there[1]));
    }
    REQUIRE(on_way_nm > 1.01 * at_stances_nm);
    const double between_nm = 0.5 * (at_stances_nm + on_way_nm);
    const Plan other = planned(bracket, [&](planner::Inputs& inputs) {
      aside(inputs);
      positioner_of(inputs).axes[1].torque_max_nm = between_nm;
      positioner_of(inputs).axes[1].torque_peak_nm.reset();
    });
    bool round = false;
    for (const plan::PlannedTurn& turn : other.turns) {
      CHECK(std::abs(turn.torque_nm[1]) <= between_nm);
      round = round || !turn.halts.empty();
    }
    CHECK(round);
  }

  TEST_CASE("given a rolled ring on an endless axis, closed-form: its whole turn is judged") {
    const Plan plan = planned("joints/grab_hub.xml", [](planner::Inputs& inputs) {
      positioner_of(inputs).margin.reset();
      positioner_of(inputs).axes[1].endless = true;
      for (joint::Setup& setup : inputs.weldment.setups) setup.X_DJ.translation.x() += 40.0;
    });
    int rolled = 0;
    for (const plan::PlannedTurn& turn : plan.turns) {
      if (turn.from != turn.to || turn.from.empty()) continue;
      ++rolled;
      const joint::Weight& load = plan.stages[turn.stage].load;
      const auto held = std::find_if(plan.stances.begin(), plan.stances.end(), [&](const auto& s) {
        return s.id == turn.from;
      });
      REQUIRE(held != plan.stances.end());
      // m g e sin(tilt), where the part hangs out sideways.
      const double e_m = 1e-3 * std::hypot(load.centre.x(), load.centre.y());
      const double most_nm =
          load.mass_kg * base::gravity_m_s2 * e_m * std::abs(std::sin(held->stance.axes[0].rad()));
      CHECK(std::abs(turn.torque_nm[1]) == doctest::Approx(most_nm).epsilon(1e-5));
      CHECK(most_nm > 50.0);
    }
    CHECK(rolled >= 2);
  }

  TEST_CASE("given a cap on the rim's speed, turns take longer and nothing else changes") {
    const auto capped = [](double mm_s) {
      return planned(bracket, [mm_s](planner::Inputs& inputs) {
        positioner_of(inputs).rim_speed_max_mm_s = mm_s;
      });
    };
    const auto turning_s = [](const Plan& plan) {
      return plan.seconds[static_cast<std::size_t>(timeline::SecondKind::turn)];
    };
    const Plan fast = capped(1e5), slow = capped(20.0);
    CHECK(turning_s(slow) > 1.5 * turning_s(fast));
    CHECK(turning_s(fast) == doctest::Approx(turning_s(planned(bracket))));
  }

  TEST_CASE("given a station changer, the cell is taken for the longer of both and the exchange") {
    const auto with_loading = [](double load_s) {
      return planned(tee, [load_s](planner::Inputs& inputs) {
        as_station_changer(inputs);
        inputs.cell->times.load_unload_s = load_s;
      });
    };
    const Plan brief = with_loading(10.0), lengthy = with_loading(5000.0);
    // closed-form: half a turn at 12 deg/s and 10 deg/s2, 15 + 1.2 s, and settling.
    const double exchange_s = 16.2 + brief.cell->times.settle_s;
    CHECK(brief.estimate.cell_time_s == doctest::Approx(brief.cycle_s + exchange_s));
    CHECK(lengthy.estimate.cell_time_s == doctest::Approx(5000.0 + exchange_s));
    const Plan table = planned(tee);
    CHECK(table.estimate.cell_time_s ==
          doctest::Approx(table.cycle_s + table.cell->times.load_unload_s));
    // Both seams are laid flat, the exchange at zero; the loaded exchange is judged too.
    CHECK(brief.not_turned.empty());
    for (const plan::PlannedStance& stance : brief.stances) {
      CHECK(stance.stance.axes[0] == Angle());
    }
    const bool exchanges =
        std::any_of(brief.turns.begin(), brief.turns.end(), [](const plan::PlannedTurn& turn) {
          return turn.from.empty() && turn.to.empty();
        });
    CHECK(exchanges);
    CHECK_FALSE(std::any_of(table.turns.begin(), table.turns.end(), [](const auto& turn) {
      return turn.from.empty() && turn.to.empty();
    }));
  }

  TEST_CASE("given an inclined positioner or a roll-arm, the tee is planned as well") {
    for (const auto kind : {cell::PositionerKind::inclined, cell::PositionerKind::roll_arm}) {
      CAPTURE(std::string(cell::positioner_kind_name(kind)));
      const Plan plan = planned(tee, [kind](planner::Inputs& inputs) {
        cell::Positioner& positioner = positioner_of(inputs);
        positioner.kind = kind;
        positioner.between = Angle::deg(60.0);
        positioner.axes[0].min = Angle::deg(-180.0);
        positioner.axes[0].max = Angle::deg(180.0);
      });
      CHECK(plan.not_turned.empty());
      CHECK(plan.cycle_s > plan.totals.arc_time_s);
    }
  }
}

}  // namespace seamturn::tests
