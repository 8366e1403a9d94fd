// SPDX-License-Identifier: MIT
// The section lies on its members, whichever way a path is drawn; and what is gouged out reaches
// the metal behind it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "planned_demos.hpp"
#include "scratch.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

/// A V with unequal faces between two plates beside each other along x, its path drawn either way.
std::string butt_xml(const std::filesystem::path& folder,
                     bool drawn_forward,
                     bool members_swapped) {
  const auto used = [&](const char* file) {
    return std::filesystem::relative(repository() / "joints" / file, folder).string();
  };
  const std::string path = drawn_forward ? R"(<line from="101 0 30 mm" to="101 400 30 mm"/>)"
                                         : R"(<line from="101 400 30 mm" to="101 0 30 mm"/>)";
  return R"(<weldment xmlns="urn:seamturn:weldment:1" schema="1.0" title="Butt" revision="A"
          author="test" date="2026-11-25" invented="yes" wire="G3Si1-1.2">
  <use library=")" +
         used("library/standards.xml") + R"("/>
  <use library=")" +
         used("library/shop.xml") + R"("/>
  <use cell=")" +
         used("cells/tilt_table.xml") + R"("/>
  <plate id="one" steel="S355J2" thickness="30 mm" size="100 x 400 mm" at="0 0 0 mm"/>
  <plate id="two" steel="S355J2" thickness="30 mm" size="100 x 400 mm" at="102 0 0 mm"/>
  <setup id="table" part-at="-100 -200 100 mm"><fixture mass="50 kg" centre="0 0 50 mm"/></setup>
  <joint id="X" type="butt" members=")" +
         (members_swapped ? "two one" : "one two") + R"(" root="ceramic-backing">
    <single-v gap="2 mm" root-face="1 mm" angle="50 deg" first-face="10 deg"/>)" +
         path + R"(
  </joint>
</weldment>)";
}

/// x of the arc's start of every pass, on the straight path along y.
std::vector<double> struck_x(bool drawn_forward, bool members_swapped) {
  const auto folder = scratch_folder("orientation");
  const auto file = folder / "butt.xml";
  write_bytes(file, butt_xml(folder, drawn_forward, members_swapped));
  const Plan plan = planner::make_plan(io::read_inputs(file));
  std::vector<double> xs;
  for (const Arc& arc : arcs_of(plan)) xs.push_back(arc.pass->points.front().point.x());
  return xs;
}

std::size_t short_gouges(double depth_mm) {
  planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
  inputs.weldment.joints.front().gouge.depth_mm = depth_mm;
  const Plan plan = planner::make_plan(inputs);
  return static_cast<std::size_t>(
      std::count_if(plan.findings.begin(), plan.findings.end(), [](const auto& finding) {
        return finding.code == "joint.gouge.short";
      }));
}

/// Findings of one code that name the joint.
std::size_t told(const Plan& plan, const std::string& code, const std::string& joint) {
  return static_cast<std::size_t>(
      std::count_if(plan.findings.begin(), plan.findings.end(), [&](const auto& finding) {
        return finding.code == code && finding.text.find("joint " + joint + ":") == 0;
      }));
}

}  // namespace

TEST_SUITE("planner/orientation") {
  TEST_CASE("for a V with unequal faces, law: the passes lie where the metal is, however drawn") {
    // The second member's face leans 40 deg, the first one's 10: the groove lies over plate "two".
    const std::vector<double> forward = struck_x(true, false);
    const std::vector<double> backward = struck_x(false, false);
    REQUIRE(forward.size() == backward.size());
    for (std::size_t k = 0; k < forward.size(); ++k) {
      CHECK(forward[k] == doctest::Approx(backward[k]));
      // closed-form: plate "one" ends 1 mm off the path and its face leans 10 deg over 29 mm
      CHECK(forward[k] > 101.0 - 1.0 - 29.0 * std::tan(10.0 * std::numbers::pi / 180.0) - 1e-6);
    }
    CHECK(*std::max_element(forward.begin(), forward.end()) > 110.0);
    // Named the other way round, it is the mirror image about the path.
    const std::vector<double> swapped = struck_x(true, true);
    for (std::size_t k = 0; k < forward.size(); ++k) {
      CHECK(swapped[k] - 101.0 == doctest::Approx(101.0 - forward[k]));
    }
  }

  TEST_CASE("given gouging short of the first side's metal, the plan says by how much") {
    // closed-form: 40 mm, root face 2 mm, equal cuts of 19 mm: 21 mm reach the first side
    CHECK(short_gouges(21.0) == 0);
    CHECK(short_gouges(20.9) == 1);
  }

  TEST_CASE("in a tee the gouge lays the through plate bare and does not cut into it") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/preparations.xml");
    std::erase_if(inputs.weldment.joints,
                  [](const joint::Joint& joint) { return joint.id != "k-in-tee"; });
    const Plan plan = planner::make_plan(inputs);
    const section::WeldSection& gouged = plan.joints.front().seams.back().section;
    REQUIRE(plan.joints.front().seams.back().side == 2);
    for (const auto& corner : gouged.outline) CHECK(corner.x_mm >= -1e-9);
  }

  TEST_CASE("given a cover below a quarter of the thickness, the plan says what is asked for") {
    // published: AWS D1.1 2015 clause 3: t/4, need not exceed 10 mm; 30 mm ask for 7.5 mm
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    const auto cover = [&](double leg_mm) {
      inputs.weldment.joints.back().cap.leg_mm = leg_mm;
      return told(planner::make_plan(inputs), "joint.size.rule_broken", "K");
    };
    CHECK(cover(7.4) == 1);
    CHECK(cover(7.5) == 0);
  }

  TEST_CASE("given unequal legs, the throat that counts is the shortest way from root to face") {
    // closed-form: legs 10 and 6 mm at right angles: 60 / sqrt(136) = 5.145 mm
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee.xml");
    auto& fillet = std::get<joint::Fillet>(inputs.weldment.joints.front().preparation);
    fillet.leg_1_mm = 10.0;
    fillet.leg_2_mm = 6.0;
    const Plan plan = planner::make_plan(inputs);
    const plan::PlannedSeam& seam = plan.joints.front().seams.front();
    REQUIRE(seam.counted);
    CHECK(seam.counted->throat_mm == doctest::Approx(60.0 / std::sqrt(136.0)));
    CHECK(seam.counted->throat_mm == doctest::Approx(seam.section.throat_mm));
  }

  TEST_CASE("given a plug deeper than its plate, the plan says that nobody can judge its size") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/preparations.xml");
    for (joint::Joint& joint : inputs.weldment.joints) {
      if (auto* plug = std::get_if<joint::Plug>(&joint.preparation)) plug->fill_mm = 200.0;
    }
    const Plan plan = planner::make_plan(inputs);
    CHECK(std::any_of(plan.findings.begin(), plan.findings.end(), [](const auto& finding) {
      return finding.code == "joint.size.value";
    }));
  }
}

}  // namespace seamturn::tests
