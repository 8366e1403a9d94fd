// SPDX-License-Identifier: MIT
// Tacks, hook, duties and return path on the plan of the demo hub and of a small staged part.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "planned_demos.hpp"
#include "planner/detail_tacking.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

/// Its seams are short: tacks of 20 mm find room on them.
planner::Inputs tee_in_stages() {
  planner::Inputs inputs = io::read_inputs(repository() / "tests/good/stages.xml");
  inputs.library.tack_rules.length_min_mm = {20.0, base::Status::proposed, "a test"};
  inputs.library.tack_rules.long_factor.value = 1.0;
  return inputs;
}

std::vector<const base::Finding*> findings_of(const Plan& plan, const std::string& code) {
  std::vector<const base::Finding*> found;
  for (const base::Finding& finding : plan.findings) {
    if (finding.code == code) found.push_back(&finding);
  }
  return found;
}

const plan::PlannedTacks& tacks_of(const Plan& plan, const std::string& seam) {
  for (const plan::PlannedTacks& tacks : plan.tacks) {
    if (tacks.seam == seam) return tacks;
  }
  FAIL("no tacks on ", seam);
  return plan.tacks.front();
}

bool says(const std::vector<std::string>& lines, const std::string& words) {
  return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
    return line.find(words) != std::string::npos;
  });
}

const procedure::Procedure& procedure_of(const Plan& plan, const std::string& joint) {
  for (const procedure::Procedure& procedure : plan.procedures) {
    const auto& joints = procedure.joints;
    if (std::find(joints.begin(), joints.end(), joint) != joints.end()) return procedure;
  }
  FAIL("no procedure of ", joint);
  return plan.procedures.front();
}

}  // namespace

TEST_SUITE("planner/tacks") {
  TEST_CASE(
      "for every tack of the hub, law: it lies on its seam clear of the ends, preheated as the "
      "weld") {
    const Plan& plan = hub().plan;
    std::size_t laid = 0;
    for (const plan::PlannedTacks& tacks : plan.tacks) {
      INFO(tacks.seam);
      CHECK(tacks.refused.empty());
      const std::string joint = tacks.seam.substr(0, tacks.seam.find('.'));
      for (const plan::PlannedJoint& planned : plan.joints) {
        if (planned.id == joint) CHECK(tacks.preheat_c == planned.heat.preheat_c);
      }
      for (const joint::Seam& seam : joint::find_joint(plan.weldment, joint)->seams) {
        if (seam.id != tacks.seam || geom::is_closed(*seam.path)) continue;
        for (const tack::Tack& tack : tacks.plan.tacks) {
          CHECK(tack.from_mm >= tacks.clear_of_ends_mm - 1e-9);
          CHECK(tack.to_mm <= seam.length_mm - tacks.clear_of_ends_mm + 1e-9);
        }
      }
      laid += tacks.plan.tacks.size();
    }
    CHECK(laid > 100);
    for (const plan::PlannedTacks& tacks : plan.tacks) CHECK(tacks.seam.rfind("GF", 0) != 0);
  }

  TEST_CASE("given the stage that fits both members, the tacks are made in it") {
    CHECK(tacks_of(hub().plan, "C1").stage == "centring_ring");
    CHECK(tacks_of(hub().plan, "R1").stage == "core");
    CHECK(tacks_of(hub().plan, "LO_90l").stage == "lugs");
    CHECK(tacks_of(hub().plan, "B_90l").stage == "lugs");
    CHECK(tacks_of(hub().plan, "R5").stage == "closing");
  }

  TEST_CASE(
      "for every member on its tacks, law: their forces hold its weight times the site factor") {
    const Plan& plan = hub().plan;
    CHECK(plan.carried.size() == 24);  // all but the heaviest of the first stage
    for (const plan::CarriedMember& carried : plan.carried) {
      INFO(carried.member);
      REQUIRE(carried.carry);
      geom::Vec3 sum = geom::Vec3::Zero();
      for (const tack::TackLoad& load : carried.carry->loads) sum += load.force_n;
      const double weight_n = carried.mass_kg * 9.80665 * 3.0;
      CHECK(sum.norm() == doctest::Approx(weight_n).epsilon(1e-9));
      CHECK(carried.carry->stress_mpa <= carried.carry->any_attitude_stress_mpa * (1.0 + 1e-9));
      CHECK(carried.carry->loads.size() == carried.tacks);
    }
  }

  TEST_CASE("given a lug with its boss, both hang on the lug's tacks and the boss on its own") {
    for (const plan::CarriedMember& carried : hub().plan.carried) {
      const auto mass = [&](const char* id) {
        return joint::mass_kg(*joint::find_member(hub().plan.weldment, id));
      };
      if (carried.member == "lug_90r") {
        CHECK(carried.with == std::vector<std::string>{"boss_90r"});
        CHECK(carried.mass_kg == doctest::Approx(mass("lug_90r") + mass("boss_90r")));
      }
      if (carried.member == "boss_90r") {
        CHECK(carried.with.empty());
        CHECK(carried.tacks == tacks_of(hub().plan, "B_90r").plan.tacks.size());
      }
    }
  }

  TEST_CASE(
      "for every attitude of a stage, law: gravity is a unit vector, at rest that of the set-up") {
    const Plan& plan = hub().plan;
    for (std::size_t k = 0; k < plan.stages.size(); ++k) {
      const auto attitudes = planner::detail::attitudes_of(plan, k);
      if (plan.stages[k].setup.empty()) {
        CHECK(attitudes.empty());
        continue;
      }
      REQUIRE(attitudes.size() > 3);
      // Bearing face up: the part's z points down, so gravity pulls along +z.
      const double z = plan.stages[k].setup == "bearing_up" ? 1.0 : -1.0;
      CHECK(attitudes.front().name == "rest");
      CHECK((attitudes.front().down_J - geom::Vec3(0, 0, z)).norm() < 1e-12);
      for (const auto& attitude : attitudes) {
        CHECK(std::abs(attitude.down_J.norm() - 1.0) < 1e-12);
      }
    }
    // Every stance of a stage is among its attitudes.
    for (const plan::PlannedStance& stance : plan.stances) {
      const geom::Mat3 R_WJ = turn::rotation_WD(plan.cell->positioner.kind, stance.stance.axes) *
                              plan::setup_of(plan, stance).X_DJ.rotation;
      const geom::Vec3 down_J = -(R_WJ.transpose() * geom::Vec3::UnitZ());
      bool met = false;
      for (std::size_t k = 0; k < plan.stages.size(); ++k) {
        if (plan.stages[k].setup != stance.setup) continue;
        for (const auto& attitude : planner::detail::attitudes_of(plan, k)) {
          met = met || (attitude.name == stance.id && (attitude.down_J - down_J).norm() < 1e-9);
        }
      }
      INFO(stance.id);
      CHECK(met);
    }
  }

  TEST_CASE(
      "given a shop that permits little, tacks that do not carry are told with how many more") {
    planner::Inputs inputs = tee_in_stages();
    CHECK(findings_of(planner::make_plan(inputs), "plan.tacks.carry").empty());
    planner::Inputs shop = hub().inputs;
    shop.library.tack_rules.stress_mpa = tack::RuleValue{1.3, base::Status::proposed, "a test"};
    const Plan weak = planner::make_plan(shop);
    int held = 0;
    int with_more = 0;
    int beyond_help = 0;
    for (const plan::CarriedMember& carried : weak.carried) {
      REQUIRE(carried.carry);
      held += carried.carry->utilisation_ratio <= 1.0 ? 1 : 0;
      with_more += carried.more_needed.value_or(0) > 0 ? 1 : 0;
      beyond_help += carried.no_more.empty() ? 0 : 1;
    }
    CHECK(held > 0);
    CHECK(with_more > 0);
    CHECK(held + with_more + beyond_help == 24);
    const auto told = findings_of(weak, "plan.tacks.carry");
    CHECK(static_cast<int>(told.size()) == with_more + beyond_help);
    CHECK(std::any_of(told.begin(), told.end(), [](const base::Finding* finding) {
      return finding->text.find("member tube") != std::string::npos &&
             finding->text.find("more are needed") != std::string::npos;
    }));
    inputs.weldment.tacking.reset();  // nobody asked
    CHECK(findings_of(planner::make_plan(inputs), "plan.tacks.carry").empty());
  }

  TEST_CASE("given a gap wider than may be tacked, the seam is named") {
    planner::Inputs inputs = tee_in_stages();
    for (const auto& [gap_mm, wide] : {std::pair(2.0, false), std::pair(2.1, true)}) {
      std::get<joint::Fillet>(inputs.weldment.joints.front().preparation).gap_mm = gap_mm;
      const Plan plan = planner::make_plan(inputs);
      const auto told = findings_of(plan, "tack.gap.too_wide");
      CHECK(told.empty() == !wide);
      if (wide) CHECK(told.front()->text.find("J1") != std::string::npos);
    }
  }

  TEST_CASE("given stated tacks, their number is taken, and none where none are wanted") {
    planner::Inputs inputs = tee_in_stages();
    CHECK(tacks_of(planner::make_plan(inputs), "J2").plan.tacks.size() == 3);
    inputs.weldment.joints[1].tacks = 0;
    for (const plan::PlannedTacks& tacks : planner::make_plan(inputs).tacks) {
      CHECK(tacks.seam != "J2");
    }
  }

  TEST_CASE(
      "given a tight weld, it is laid in two passes at least, sheets say what each duty adds") {
    planner::Inputs inputs = tee_in_stages();
    const Plan plan = planner::make_plan(inputs);
    const auto passes = [](const Plan& of, const std::string& id) {
      for (const plan::PlannedJoint& joint : of.joints) {
        if (joint.id == id) return joint.seams.front().passes.size();
      }
      return std::size_t{0};
    };
    // The library of this part has settings for single passes only: the plan says so.
    CHECK(passes(plan, "J1") == 1);
    CHECK(passes(plan, "J2") == 1);
    CHECK(findings_of(plan, "plan.duty.one_pass").size() == 1);
    planner::Inputs shop = hub().inputs;
    for (joint::Joint& joint : shop.weldment.joints) {
      if (joint.id == "LI_0r") joint.duty = joint::Duty::tight;
    }
    const Plan tight = planner::make_plan(shop);
    CHECK(passes(hub().plan, "LI_0r") == 1);
    CHECK(passes(tight, "LI_0r") >= 2);
    CHECK(findings_of(tight, "plan.duty.one_pass").empty());
    CHECK(says(procedure_of(plan, "J2").inspection, "leak test"));
    CHECK(says(procedure_of(plan, "J3").inspection, "seal weld"));
    CHECK(says(procedure_of(plan, "J4").inspection, "build-up"));
    CHECK(says(procedure_of(plan, "J5").inspection, "buttering"));
    CHECK_FALSE(says(procedure_of(plan, "J1").inspection, "leak test"));
    CHECK(says(procedure_of(plan, "J1").inspection, "a certificate"));
    CHECK(says(procedure_of(plan, "J1").inspection, "residual field"));
    CHECK(says(procedure_of(plan, "J1").inspection, "face foot: no arc struck on it"));
    CHECK_FALSE(says(procedure_of(plan, "J4").inspection, "face foot"));
    CHECK(plan.cautions.size() > 0);
    const auto has = [&](const char* code) {
      return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](const auto& caution) {
        return caution.code == code;
      });
    };
    CHECK(has("caution.arc_blow"));
    CHECK(has("caution.on_tacks"));
    CHECK(has("caution.re_hung"));
  }

  TEST_CASE("given a return path, one on the fixed side and one too weak are told") {
    planner::Inputs inputs = hub().inputs;
    inputs.weldment.joints.resize(1);  // C1
    inputs.weldment.stages.resize(1);
    std::erase_if(inputs.weldment.members, [](const joint::Member& member) {
      return member.id != "flange" && member.id != "centring";
    });
    const Plan right = planner::make_plan(inputs);
    CHECK(findings_of(right, "cell.return.fixed").empty());
    CHECK(findings_of(right, "cell.return.overload").empty());
    double most_a = 0.0;
    for (const plan::PlannedPass& pass : right.joints.front().seams.front().passes) {
      most_a = std::max(most_a, pass.pass.current_a);
    }
    inputs.cell->return_path->on_rotating_side = false;
    inputs.cell->return_path->current_max_a = most_a;
    const Plan fixed = planner::make_plan(inputs);
    CHECK(findings_of(fixed, "cell.return.fixed").size() == 1);
    CHECK(findings_of(fixed, "cell.return.overload").empty());
    inputs.cell->return_path->current_max_a = most_a - 1.0;
    CHECK(findings_of(planner::make_plan(inputs), "cell.return.overload").size() == 1);
  }

  TEST_CASE(
      "given three eyes round the axis, closed-form: a third each at the angle of the slings") {
    const Plan& plan = hub().plan;
    REQUIRE(plan.hangs.size() == 1);
    const plan::PlannedHang& lifted = plan.hangs.front();
    CHECK(lifted.stage == "core");
    CHECK(lifted.mass_kg == doctest::Approx(plan.stages.front().part.mass_kg));
    REQUIRE(lifted.hang);
    CHECK(lifted.hang->lean.deg() < 0.01);
    const double angle = std::atan2(480.0, 1240.0);
    for (const turn::SlingLoad& sling : lifted.hang->slings) {
      check_expected("share",
                     sling.share_ratio,
                     {1.0 / 3.0, 1e-4, Origin::closed_form, "threefold about the axis"});
      check_expected("force",
                     sling.force_n,
                     {lifted.mass_kg * 9.80665 / 3.0 / std::cos(angle),
                      1.0,
                      Origin::closed_form,
                      "a third of the weight over the cosine"});
    }
  }

  TEST_CASE("given eyes on one side only, the hook tells that the part tips") {
    planner::Inputs inputs = hub().inputs;
    for (joint::LiftPoint& point : inputs.weldment.liftings.front().points) {
      point.at.x() += 1000.0;
    }
    const Plan plan = planner::make_plan(inputs);
    CHECK_FALSE(plan.hangs.front().hang.has_value());
    CHECK(findings_of(plan, "turn.hang.tips").size() == 1);
  }
}

}  // namespace seamturn::tests
