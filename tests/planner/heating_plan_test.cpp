// SPDX-License-Identifier: MIT
// How a heating row of the library comes onto the clock of a plan.
#include <algorithm>

#include "planned_demos.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_preheating.hpp"
#include "seamturn/cooling/warm_strip.hpp"
#include "seamturn/heat/preheat_zone.hpp"

namespace seamturn::tests {

using timeline::SecondKind;

namespace {

planner::Inputs bracket_with_torch(double power_w) {
  planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
  process::Heating torch;
  torch.id = "torch";
  torch.method = "gas torch";
  torch.power_w = power_w;
  torch.useful_ratio = 0.25;
  torch.entry_s = 120.0;
  inputs.library.heating = torch;
  return inputs;
}

std::vector<plan::PlannedEvent> heatings(const Plan& plan) {
  std::vector<plan::PlannedEvent> found;
  std::copy_if(plan.timeline.begin(),
               plan.timeline.end(),
               std::back_inserter(found),
               [](const plan::PlannedEvent& event) { return event.kind == SecondKind::heat; });
  return found;
}

double first_heating_s(const Plan& plan, const std::string& seam) {
  for (const plan::PlannedEvent& event : heatings(plan)) {
    if (event.seam == seam) return event.end_s - event.start_s;
  }
  FAIL("no heating of ", seam);
  return 0.0;
}

bool tells_no_rate(const Plan& plan) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [](const base::Finding& f) {
    return f.code == "plan.heating.no_rate" && f.severity == base::Severity::warning &&
           f.text.find("joints J1, J2") == 0;
  });
}

}  // namespace

TEST_SUITE("planner/heating") {
  TEST_CASE("given a torch, the strips of a butt and a tee take the heat of their own volume") {
    const Plan weak = planner::make_plan(bracket_with_torch(20000.0));
    const Plan strong = planner::make_plan(bracket_with_torch(40000.0));
    // Butt of two 15 mm plates; tee of a 15 mm plate both ways and a 12 mm web, 280 mm both.
    const double across_15_mm2 = 15.0 * heat::zone_width_mm(15.0);
    const double across_12_mm2 = 12.0 * heat::zone_width_mm(12.0);
    const auto check = [&](const std::string& id, double across_mm2) {
      const double rise_k = joint_of(weak, id).heat.preheat_c + 25.0 -
                            io::read_inputs(repository() / "joints/bracket.xml").weldment.ambient_c;
      const double heat_j = across_mm2 * 280.0 * 0.003925 * rise_k;
      check_expected(id,
                     first_heating_s(weak, id) - first_heating_s(strong, id),
                     {heat_j / 0.25 * (1.0 / 20000.0 - 1.0 / 40000.0),
                      1e-6,
                      Origin::closed_form,
                      "volume x rho c x rise / useful power"});
    };
    check("J1", 2.0 * across_15_mm2);
    check("J2", 2.0 * across_15_mm2 + across_12_mm2);
    CHECK(first_heating_s(weak, "J1") > 120.0);
  }

  TEST_CASE("given a torch, law: every seam that needs it is heated before its first arc") {
    const Plan plan = planner::make_plan(bracket_with_torch(20000.0));
    REQUIRE(plan.heating.has_value());
    CHECK(plan.heating->id == "torch");
    int seams = 0;
    for (const plan::PlannedJoint& joint : plan.joints) {
      if (!joint.heat.needs_heating) continue;
      for (const plan::PlannedSeam& seam : joint.seams) {
        const auto arc = std::find_if(
            plan.timeline.begin(), plan.timeline.end(), [&](const plan::PlannedEvent& event) {
              return event.kind == SecondKind::arc && event.seam == seam.id;
            });
        REQUIRE(arc != plan.timeline.end());
        const std::vector<plan::PlannedEvent> all = heatings(plan);
        CHECK(std::any_of(all.begin(), all.end(), [&](const plan::PlannedEvent& event) {
          return event.seam == seam.id && event.end_s <= arc->start_s;
        }));
        ++seams;
      }
    }
    CHECK(seams == 8);
    CHECK_FALSE(tells_no_rate(plan));
  }

  TEST_CASE("given mats that stay on, law: one heating, and it lasts no longer than all torches") {
    planner::Inputs inputs = bracket_with_torch(20000.0);
    const Plan torch = planner::make_plan(inputs);
    inputs.library.heating->holds = true;
    const Plan mats = planner::make_plan(inputs);
    CHECK(heatings(mats).size() == 1);
    CHECK(heatings(torch).size() >= 8);
    const auto heat = static_cast<std::size_t>(SecondKind::heat);
    CHECK(mats.seconds[heat] < torch.seconds[heat]);
    double sum_s = 0.0;
    for (const plan::PlannedEvent& event : heatings(torch)) sum_s += event.end_s - event.start_s;
    CHECK(torch.seconds[heat] == doctest::Approx(sum_s).epsilon(1e-9));
  }

  TEST_CASE("given no heating row, the plan says which joints' heating is missing") {
    planner::Inputs inputs = bracket_with_torch(20000.0);
    inputs.library.heating.reset();
    const Plan plan = planner::make_plan(inputs);
    CHECK(tells_no_rate(plan));
    CHECK(heatings(plan).empty());
    CHECK_FALSE(plan.heating.has_value());
  }

  TEST_CASE("given heaters that stay on, a light part takes no more heat than its steel holds") {
    // closed-form: 10 kg x 500 J/(kg K) x (preheat + 25 K - ambient); strips of the hub hold more
    const planner::Inputs inputs = io::read_inputs(repository() / "joints/grab_hub.xml");
    std::vector<base::Finding> findings;
    const auto joints = planner::detail::work_joints(inputs, findings);
    const auto seams = planner::detail::all_seams(joints);
    double warmest_c = 0.0;
    double soak_s = 0.0;
    for (const planner::detail::JointWork& joint : joints) {
      warmest_c = std::max(warmest_c, joint.heat.preheat_c);
      soak_s = std::max(soak_s, joint.heat.soak_s);
    }
    REQUIRE(inputs.library.heating);
    const double heat_j = 10.0 * 500.0 * (warmest_c + 25.0 - 20.0);
    CHECK(planner::detail::heating_time_at_once_s(inputs, 10.0, seams) ==
          doctest::Approx(process::heating_time_s(*inputs.library.heating, heat_j, soak_s)));
    CHECK(planner::detail::heating_time_at_once_s(inputs, 20.0, seams) >
          planner::detail::heating_time_at_once_s(inputs, 10.0, seams));
  }
}

}  // namespace seamturn::tests
