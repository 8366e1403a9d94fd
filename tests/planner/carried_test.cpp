// SPDX-License-Identifier: MIT
// What hangs on which tacks in tests/good/box_stages.xml: a box is welded, then hung on its head.
#include <algorithm>
#include <map>

#include "staged_findings.hpp"

namespace seamturn::tests {

namespace {

const Plan& box() {
  static const Plan plan = quick_plan(io::read_inputs(repository() / "tests/good/box_stages.xml"));
  return plan;
}

std::vector<const plan::CarriedMember*> carried_in(const Plan& plan, const std::string& stage) {
  std::vector<const plan::CarriedMember*> found;
  for (const plan::CarriedMember& carried : plan.carried) {
    if (carried.stage == stage) found.push_back(&carried);
  }
  return found;
}

double mass_of(const std::vector<const char*>& members) {
  double sum_kg = 0.0;
  for (const char* member : members) {
    sum_kg += joint::mass_kg(*joint::find_member(box().weldment, member));
  }
  return sum_kg;
}

}  // namespace

TEST_SUITE("planner/carried") {
  TEST_CASE("given members welded in the stage before, they hang as one on all tacks of theirs") {
    const auto ends = carried_in(box(), "ends");
    REQUIRE(ends.size() == 1);
    CHECK(ends.front()->member == "bot");
    CHECK(ends.front()->welded == std::vector<std::string>{"web_1", "web_2", "lid"});
    CHECK(ends.front()->with.empty());
    CHECK_FALSE(ends.front()->shared);
    CHECK(ends.front()->mass_kg == doctest::Approx(mass_of({"bot", "web_1", "web_2", "lid"})));
    // Two seams of 160 mm with two tacks each, not in one line: it can be judged.
    CHECK(ends.front()->tacks == 4);
    CHECK(ends.front()->refused == "");
    REQUIRE(ends.front()->carry);
    // law: their forces hold the weight times the site factor of 2.
    geom::Vec3 sum_n = geom::Vec3::Zero();
    for (const tack::TackLoad& load : ends.front()->carry->loads) sum_n += load.force_n;
    CHECK(sum_n.norm() == doctest::Approx(ends.front()->mass_kg * 9.80665 * 2.0));
  }

  TEST_CASE("given a lid that hangs on three, its weight counts on each, and that is said") {
    std::map<std::string, const plan::CarriedMember*> box_stage;
    for (const plan::CarriedMember* one : carried_in(box(), "box")) box_stage[one->member] = one;
    CHECK(box_stage.size() == 4);  // all but the bottom under its clamp
    for (const char* member : {"web_1", "web_2", "head"}) {
      REQUIRE(box_stage.contains(member));
      const plan::CarriedMember& carried = *box_stage[member];
      CHECK(carried.with == std::vector<std::string>{"lid"});
      CHECK(carried.shared);
      CHECK(carried.welded.empty());
      CHECK(carried.mass_kg == doctest::Approx(mass_of({member, "lid"})));
    }
    CHECK_FALSE(box_stage["lid"]->shared);
    CHECK(box_stage["lid"]->tacks == 6);
  }

  TEST_CASE("given tacks in one line, the warning names the stage once for each member") {
    const auto told = findings_of(box(), "plan.tacks.carry");
    REQUIRE(told.size() == 3);
    for (const base::Finding* finding : told) {
      CHECK(finding->text.rfind("stage box: do the tacks of member ", 0) == 0);
    }
  }

  TEST_CASE("given welded members whose tacks do not carry, all of them are named") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/box_stages.xml");
    inputs.library.tack_rules.stress_mpa = tack::RuleValue{0.01, base::Status::proposed, "a test"};
    const Plan plan = quick_plan(inputs);
    const auto told = findings_of(plan, "plan.tacks.carry");
    CHECK(std::any_of(told.begin(), told.end(), [](const base::Finding* finding) {
      return finding->text.rfind(
                 "stage ends: do the tacks of members bot, web_1, web_2, lid, "
                 "welded together before, carry them",
                 0) == 0;
    }));
  }
}

}  // namespace seamturn::tests
