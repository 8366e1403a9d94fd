// SPDX-License-Identifier: MIT
// Tacks and duties on the plan of the demo hub and of a small staged part.
#include <algorithm>
#include <cmath>
#include <map>

#include "planner/detail_tacking.hpp"
#include "staged_findings.hpp"

namespace seamturn::tests {

namespace {

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
      const geom::Mat3 R_WJ = turn::rotation_WD(plan.cell->positioner, stance.stance.axes) *
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
    CHECK(findings_of(quick_plan(inputs), "plan.tacks.carry").empty());
    planner::Inputs shop = hub().inputs;
    shop.library.tack_rules.stress_mpa = tack::RuleValue{1.3, base::Status::proposed, "a test"};
    const Plan weak = quick_plan(shop);
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
    CHECK(findings_of(quick_plan(inputs), "plan.tacks.carry").empty());
  }

  TEST_CASE("given a gap wider than may be tacked, the seam is named") {
    planner::Inputs inputs = tee_in_stages();
    for (const auto& [gap_mm, wide] : {std::pair(2.0, false), std::pair(2.1, true)}) {
      std::get<joint::Fillet>(inputs.weldment.joints.front().preparation).gap_mm = gap_mm;
      const Plan plan = quick_plan(inputs);
      const auto told = findings_of(plan, "tack.gap.too_wide");
      CHECK(told.empty() == !wide);
      if (wide) CHECK(told.front()->text.find("J1") != std::string::npos);
    }
  }

  TEST_CASE("for every part, law: what its tack plans tell stands once among the plan's findings") {
    // A lone tack is told where no other side of the joint is tacked.
    std::map<std::string, int> told_of;
    for (const char* file : {"joints/bracket.xml",
                             "joints/boom_foot.xml",
                             "tests/good/heat_stated.xml",
                             "tests/good/lengths.xml",
                             "tests/good/stages.xml",
                             "tests/good/by_hand.xml"}) {
      const Plan plan = quick_plan(io::read_inputs(repository() / file));
      for (const plan::PlannedTacks& tacks : plan.tacks) {
        std::vector<std::pair<std::string, std::string>> wanted;  // code and text
        for (const base::Finding& one : tacks.plan.findings)
          wanted.emplace_back(one.code, one.text);
        if (!tacks.refused.empty()) wanted.emplace_back("", tacks.refused);
        const std::string joint = tacks.seam.substr(0, tacks.seam.find('.'));
        const auto sides =
            std::count_if(plan.tacks.begin(), plan.tacks.end(), [&](const auto& one) {
              return one.seam.substr(0, one.seam.find('.')) == joint && !one.plan.tacks.empty();
            });
        for (const auto& [code, text] : wanted) {
          INFO(file, " ", tacks.seam, ": ", text);
          const auto count =
              std::count_if(plan.findings.begin(), plan.findings.end(), [&](const auto& finding) {
                const std::size_t names = finding.text.find(": " + text);
                const std::string head = ' ' + finding.text.substr(0, names) + ',';
                return names != std::string::npos && finding.text.ends_with(text) &&
                       head.find(' ' + tacks.seam + ',') != std::string::npos;
              });
          const bool is_lone = code == "tack.count.few";
          CHECK(count == (is_lone && sides > 1 ? 0 : 1));
          told_of[code] += static_cast<int>(count);
        }
      }
      for (std::size_t i = 0; i < plan.findings.size(); ++i) {
        const base::Finding& one = plan.findings[i];
        if (!one.code.starts_with("tack.")) continue;
        CHECK(one.place.line > 0);
        CHECK(std::count_if(plan.findings.begin(), plan.findings.end(), [&](const auto& other) {
                return other.code == one.code && other.text == one.text;
              }) == 1);
      }
    }
    CHECK(told_of["tack.count.few"] >= 4);
    CHECK(told_of["tack.length.short"] == 2);
    CHECK(told_of["tack.throat.thin"] == 2);
    CHECK(told_of[""] >= 5);
  }

  TEST_CASE("given stated tacks, their number is taken, and none where none are wanted") {
    planner::Inputs inputs = tee_in_stages();
    CHECK(tacks_of(quick_plan(inputs), "J2").plan.tacks.size() == 3);
    inputs.weldment.joints[1].tacks = 0;
    for (const plan::PlannedTacks& tacks : quick_plan(inputs).tacks) {
      CHECK(tacks.seam != "J2");
    }
  }

  TEST_CASE(
      "given a tight weld, it is laid in two passes at least, sheets say what each duty adds") {
    planner::Inputs inputs = tee_in_stages();
    const Plan plan = quick_plan(inputs);
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
    const Plan tight = quick_plan(shop);
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

  TEST_CASE(
      "given steel beyond the table of the simple rule, the tacks are not judged, without a stop") {
    planner::Inputs inputs = tee_in_stages();
    for (material::Steel& steel : inputs.library.steels) {
      for (material::SteelBand& band : steel.bands) band.yield_mpa = 690.0;
    }
    const Plan plan = quick_plan(inputs);
    REQUIRE(!plan.carried.empty());
    for (const plan::CarriedMember& carried : plan.carried) {
      CHECK_FALSE(carried.carry.has_value());
      CHECK(carried.refused.find("460") != std::string::npos);
    }
    inputs.library.tack_rules.stress_mpa = tack::RuleValue{200.0, base::Status::proposed, "a test"};
    for (const plan::CarriedMember& carried : quick_plan(inputs).carried) {
      CHECK(carried.carry.has_value());
    }
  }

  TEST_CASE(
      "given a steel whose standard states no yield, tacks are long and nobody says they carry") {
    planner::Inputs inputs = tee_in_stages();
    inputs.library.tack_rules.long_factor.value = 1.25;
    const Plan stated = quick_plan(inputs);
    for (material::Steel& steel : inputs.library.steels) {
      for (material::SteelBand& band : steel.bands) band.yield_mpa.reset();
    }
    const Plan plan = quick_plan(inputs);
    const double long_mm = plan.tacks.front().plan.length.length_mm;
    CHECK(long_mm > stated.tacks.front().plan.length.length_mm);
    REQUIRE(!plan.carried.empty());
    for (const plan::CarriedMember& carried : plan.carried) {
      CHECK_FALSE(carried.carry.has_value());
      CHECK(carried.refused.find("states no yield") != std::string::npos);
    }
    inputs.library.tack_rules.stress_mpa = tack::RuleValue{200.0, base::Status::proposed, "a test"};
    for (const plan::CarriedMember& carried : quick_plan(inputs).carried) {
      REQUIRE(carried.carry.has_value());
      CHECK(carried.carry->permitted.stress_mpa == 200.0);
    }
  }

  TEST_CASE("given members not yet welded, they stay on their tacks in the stages that follow") {
    planner::Inputs inputs = hub().inputs;
    const auto judged_in = [](const Plan& plan, const std::string& stage) {
      std::vector<std::string> members;
      for (const plan::CarriedMember& carried : plan.carried) {
        if (carried.stage == stage) members.push_back(carried.member);
      }
      return members;
    };
    const auto has = [](const std::vector<std::string>& list, const char* id) {
      return std::find(list.begin(), list.end(), id) != list.end();
    };
    CHECK_FALSE(has(judged_in(hub().plan, "lugs"), "hose_ring"));
    CHECK(has(judged_in(hub().plan, "core"), "hose_ring"));
    for (joint::Joint& joint : inputs.weldment.joints) {
      if (joint.id == "R3" || joint.id == "R4") joint.stage = "lugs";
    }
    const Plan later = quick_plan(inputs);
    CHECK(has(judged_in(later, "lugs"), "hose_ring"));
    CHECK(has(judged_in(later, "core"), "hose_ring"));
    CHECK_FALSE(has(judged_in(later, "gussets"), "hose_ring"));
  }

  TEST_CASE("given a heavy web on a light base, the base is held and the web is judged") {
    planner::Inputs inputs = tee_in_stages();
    for (joint::Member& member : inputs.weldment.members) {
      if (member.id == "web") std::get<joint::Plate>(member.shape).width_mm = 1200.0;
    }
    const Plan plan = quick_plan(inputs);
    CHECK(plan.stages.front().holds == "base");
    REQUIRE(!plan.carried.empty());
    CHECK(plan.carried.front().member == "web");
  }

  TEST_CASE(
      "where nobody stated a site factor, it is noted that carrying was not asked, the hold "
      "stays") {
    planner::Inputs inputs = tee_in_stages();
    inputs.weldment.tacking.reset();
    const Plan plan = quick_plan(inputs);
    CHECK(plan.carried.empty());
    CHECK(findings_of(plan, "plan.tacks.not_asked").size() == 1);
    const auto holds = std::count_if(
        plan.operations.begin(), plan.operations.end(), [](const plan::PlannedOperation& op) {
          return op.kind == joint::OperationKind::hold;
        });
    CHECK(holds == 3);  // after the fit of the tee, after rib 1 at rest, after rib 2 at its tilt
  }
}

}  // namespace seamturn::tests
