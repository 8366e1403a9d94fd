// SPDX-License-Identifier: MIT
// How passes lie, as explain tells it: every pass once, and held to the row that is its own.
#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>

#include "planner/planned_demos.hpp"
#include "seamturn/figures/explain.hpp"
#include "seamturn/plan/lie.hpp"

namespace seamturn::tests {

using base::Angle;
using figures::ExplainStep;

namespace {

std::vector<ExplainStep> positions_of(const planner::Inputs& inputs,
                                      const Plan& plan,
                                      const std::string& joint) {
  const auto steps = figures::explain(inputs, plan, joint, "position");
  REQUIRE(steps.has_value());
  return *steps;
}

double number_in(const std::vector<figures::Given>& list, const std::string& name) {
  for (const figures::Given& one : list) {
    if (one.name == name) return std::get<double>(one.value);
  }
  FAIL("no ", name);
  return 0.0;
}

/// "seam J1.a, passes 1, 4-6, in S02" taken apart.
struct Subject {
  std::string seam, stance;
  std::vector<int> passes;
};
Subject read_subject(const std::string& text) {
  Subject subject;
  const std::size_t comma = text.find(", pass");
  const std::size_t in = text.rfind(", in ");
  REQUIRE((comma != std::string::npos && in != std::string::npos));
  subject.seam = text.substr(5, comma - 5);
  subject.stance = text.substr(in + 5);
  std::string numbers = text.substr(comma + 2, in - comma - 2);
  numbers = numbers.substr(numbers.find(' ') + 1);
  std::istringstream parts(numbers);
  for (std::string part; std::getline(parts, part, ',');) {
    const std::size_t dash = part.find('-');
    const int from = std::stoi(part.substr(0, dash));
    const int to = dash == std::string::npos ? from : std::stoi(part.substr(dash + 1));
    for (int number = from; number <= to; ++number) subject.passes.push_back(number);
  }
  return subject;
}

const joint::Seam& drawn_of(const Plan& plan, const plan::PlannedSeam& seam) {
  for (const joint::Seam& drawn : joint::find_joint(plan.weldment, seam.joint)->seams) {
    if (drawn.id == seam.id) return drawn;
  }
  FAIL("no seam ", seam.id);
  return plan.weldment.joints.front().seams.front();
}

/// How many passes explain names of a plan; each once, where and as it lies.
std::size_t check_told(const planner::Inputs& inputs, const Plan& plan) {
  std::map<std::pair<std::string, int>, int> told;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const ExplainStep& step : positions_of(inputs, plan, joint.id)) {
      INFO(step.subject);
      const Subject subject = read_subject(step.subject);
      CHECK(std::is_sorted(subject.passes.begin(), subject.passes.end()));
      for (const int number : subject.passes) {
        ++told[{subject.seam, number}];
        const plan::PlannedSeam& seam = seam_of(plan, subject.seam);
        const plan::PlannedPass& pass = seam.passes.at(static_cast<std::size_t>(number) - 1);
        CHECK(plan.stances.at(static_cast<std::size_t>(pass.stance)).id == subject.stance);
        const auto lies = plan::lie_at_start(
            plan, *joint::find_joint(plan.weldment, joint.id), drawn_of(plan, seam), pass);
        REQUIRE(lies);
        CHECK(std::abs(number_in(step.results, "slope") - lies->slope.deg()) < 0.05);
        CHECK(std::abs(number_in(step.results, "bank") - lies->bank.deg()) < 0.05);
        // law: the slope is what the travel rises by.
        CHECK(number_in(step.results, "travel rises by") ==
              doctest::Approx(std::sin(Angle::deg(number_in(step.results, "slope")).rad())));
        if (number != subject.passes.front() || !pass.roll_from) continue;
        CHECK(number_in(step.inputs, plan.cell->positioner.axes.back().name) ==
              doctest::Approx(pass.roll_from->deg()));
      }
    }
  }
  std::size_t held = 0;
  for (const Arc& arc : arcs_of(plan)) {
    if (arc.pass->stance < 0) continue;
    ++held;
    INFO(arc.seam->id, " pass ", arc.pass->pass.number);
    CHECK(told[{arc.seam->id, arc.pass->pass.number}] == 1);
  }
  CHECK(told.size() == held);
  return held;
}

/// The bracket, its table leaned over by a little more than planned.
struct Leaned {
  planner::Inputs inputs = planned_demo("bracket.xml").inputs;
  Plan plan = planned_demo("bracket.xml").plan;
  explicit Leaned(double tilt_deg, double rotate_deg = 0.0) {
    for (plan::PlannedStance& stance : plan.stances) {
      stance.stance.axes[0] = stance.stance.axes[0] + Angle::deg(tilt_deg);
      stance.stance.axes[1] = stance.stance.axes[1] + Angle::deg(rotate_deg);
    }
  }
};

position::WorkingTolerance row_of(process::WeldPosition position, double bank_deg) {
  position::WorkingTolerance row;
  row.position = position;
  row.uphill = Angle::deg(4.0);
  row.downhill = Angle::deg(1.0);
  row.bank = Angle::deg(bank_deg);
  return row;
}

}  // namespace

TEST_SUITE("figures/explain_position") {
  TEST_CASE("for every pass of the demos, law: explain tells it once, where and as it lies") {
    std::size_t passes = 0;
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      passes += check_told(planned.inputs, planned.plan);
    }
    CHECK(passes > 300);
    const Leaned leaned(2.0, 30.0);
    CHECK(check_told(leaned.inputs, leaned.plan) == 16);
  }

  TEST_CASE("for every pass of the demos, law: it stands inside the limits told") {
    std::size_t rolled = 0, limits = 0;
    for (const Planned& planned : plans()) {
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const ExplainStep& step : positions_of(planned.inputs, planned.plan, joint.id)) {
          INFO(planned.file, " ", step.subject);
          const bool rolls = seam_of(planned.plan, read_subject(step.subject).seam).rolling;
          rolled += rolls ? 1 : 0;
          // The slope of a rolled ring is its lead's affair.
          CHECK(step.how_close.size() == (rolls ? 1 : 2));
          for (const figures::HowClose& limit : step.how_close) {
            ++limits;
            CHECK(limit.distance >= -1e-6);
          }
        }
      }
    }
    CHECK(rolled > 3);
    CHECK(limits > 100);
  }

  TEST_CASE("given passes alike in two stances, or not alike in one, they are told apart") {
    // Passes 1 to 5 of J2 lie alike; the third is moved to a stance of the same axes, the fifth is
    // welded from the other end of a seam that no longer lies level.
    Leaned leaned(0.0, 20.0);
    Plan& plan = leaned.plan;
    const auto subjects = [&] {
      std::string all;
      for (const ExplainStep& step : positions_of(leaned.inputs, plan, "J2")) {
        all += step.subject.substr(9) + "; ";
      }
      return all;
    };
    std::vector<plan::PlannedPass>* passes = nullptr;
    for (plan::PlannedJoint& joint : plan.joints) {
      if (joint.id == "J2") passes = &joint.seams.front().passes;
    }
    REQUIRE((passes != nullptr && passes->size() == 5));
    for (plan::PlannedPass& pass : *passes) {
      pass.points.clear();
      pass.reversed = false;
    }
    REQUIRE(subjects() == "passes 1-5, in S02; ");
    plan.stances.push_back(plan.stances[1]);
    plan.stances.back().id = "S99";
    (*passes)[2].stance = static_cast<int>(plan.stances.size()) - 1;
    (*passes)[4].reversed = true;
    CHECK(subjects() == "passes 1-2, 4, in S02; pass 3, in S99; pass 5, in S02; ");
  }

  TEST_CASE(
      "given a rolled pass struck elsewhere than its stance is named for, that angle is told") {
    Plan plan = hub().plan;
    for (plan::PlannedJoint& joint : plan.joints) {
      if (joint.id == "R4") joint.seams.front().passes.front().roll_from = Angle::deg(137.0);
    }
    const ExplainStep step = positions_of(hub().inputs, plan, "R4").front();
    CHECK(read_subject(step.subject).passes.front() == 1);
    CHECK(number_in(step.inputs, "rotate") == doctest::Approx(137.0));
  }

  TEST_CASE("given rows of several roles and widths, the one of the pass it strains least counts") {
    Leaned leaned(1.0);
    auto& rows = leaned.inputs.library.tolerances;
    const auto position = seam_of(leaned.plan, "J2").position;
    const auto limits = [&] {
      std::vector<double> told;
      for (const ExplainStep& step : positions_of(leaned.inputs, leaned.plan, "J2")) {
        REQUIRE(step.how_close.size() == 2);
        told.push_back(*step.how_close[1].largest);
        CHECK(*step.how_close[1].least == -*step.how_close[1].largest);
      }
      return told;
    };
    rows = {row_of(position, 5.0), row_of(position, 7.0), row_of(position, 6.0)};
    CHECK(limits().front() == doctest::Approx(7.0));
    rows[1].roles = {process::PassRole::tack};
    CHECK(limits().front() == doctest::Approx(6.0));
    const ExplainStep step = positions_of(leaned.inputs, leaned.plan, "J2").front();
    CHECK(*step.how_close[0].least == doctest::Approx(-1.0));  // downhill
    CHECK(*step.how_close[0].largest == doctest::Approx(4.0));
    // closed-form: leaned over by 1 deg about the seam.
    CHECK(std::abs(step.how_close[1].value) == doctest::Approx(1.0));
    rows = {row_of(process::WeldPosition::pe, 5.0)};
    CHECK(positions_of(leaned.inputs, leaned.plan, "J2").front().how_close.empty());
  }

  TEST_CASE("given a seam welded uphill, its slope is held against the plumb line") {
    // closed-form: upright, 2 deg short of it.
    Leaned leaned(0.0);
    leaned.inputs.library.tolerances = {row_of(process::WeldPosition::pf, 8.0)};
    for (plan::PlannedJoint& joint : leaned.plan.joints) {
      for (plan::PlannedSeam& seam : joint.seams) seam.position = process::WeldPosition::pf;
    }
    int upright = 0;
    for (const double rotate_deg : {0.0, 90.0, 180.0, 270.0}) {
      for (plan::PlannedStance& stance : leaned.plan.stances) {
        stance.stance.axes = {Angle::deg(88.0), Angle::deg(rotate_deg)};
      }
      const ExplainStep step = positions_of(leaned.inputs, leaned.plan, "J2").front();
      if (number_in(step.results, "slope") < 80.0) continue;
      ++upright;
      CHECK(number_in(step.results, "slope") == doctest::Approx(88.0));
      CHECK(step.how_close.at(0).value == doctest::Approx(-2.0));
    }
    CHECK(upright == 1);
  }
}

}  // namespace seamturn::tests
