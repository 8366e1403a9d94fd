// SPDX-License-Identifier: MIT
// Which seams are cut into segments. Expected counts follow from the lengths written in
// tests/good/ordered.xml by the rules of docs/methods/order.md, worked out by hand (computed).
#include "planner/detail_segments.hpp"

#include <numbers>
#include <set>

#include "split_part.hpp"

namespace seamturn::tests {

TEST_SUITE("planner/segments") {
  TEST_CASE("by rule long lines are split, short ones and those the file holds whole are not") {
    const auto count_of = [](const planner::Inputs& inputs) {
      std::vector<base::Finding> findings;
      planner::Inputs split = planner::detail::in_segments(inputs, findings);
      return joint_in(split, "J1").seams.size();
    };
    planner::Inputs inputs = part_of({"J1"});
    CHECK(count_of(inputs) == 1);  // 280 mm
    inputs.library.long_seams->over_mm = 279.0;
    CHECK(count_of(inputs) == 2);
    inputs.library.long_seams->over_mm = 280.0;
    CHECK(count_of(inputs) == 1);
    inputs.library.long_seams->over_mm = 200.0;
    planner::Inputs whole = inputs;
    joint_in(whole, "J1").seams.front().asked.segments = 1;
    CHECK(count_of(whole) == 1);
    planner::Inputs off = inputs;
    joint_in(off, "J1").balance_off = "a trial";
    CHECK(count_of(off) == 1);
    planner::Inputs all_off = inputs;
    all_off.weldment.balance_off = "a trial";
    CHECK(count_of(all_off) == 1);
    planner::Inputs bent = inputs;
    joint_in(bent, "J1").seams.front().path = geom::PolylinePath{
        {geom::Vec3(40, 120, 30), geom::Vec3(320, 120, 30), geom::Vec3(320, 120, 130)}, false};
    CHECK(count_of(bent) == 1);  // only a file splits what has corners
    joint_in(bent, "J1").seams.front().asked.segments = 2;
    CHECK(count_of(bent) == 2);
  }

  TEST_CASE("by rule a long ring is split where the positioner cannot roll it, or a datum asks") {
    const auto count_of = [](const planner::Inputs& inputs) {
      std::vector<base::Finding> findings;
      planner::Inputs split = planner::detail::in_segments(inputs, findings);
      return joint_in(split, "R1").seams.size();
    };
    planner::Inputs inputs = part_of({"R1"});
    inputs.library.long_seams->over_mm = 700.0;  // the ring is 754 mm round
    CHECK(count_of(inputs) == 1);                // about the faceplate's axis: it rolls
    planner::Inputs tipped = inputs;
    tipped.weldment.setups.front().X_DJ.rotation =
        geom::rotation_about(geom::Vec3::UnitX(), base::Angle::deg(90.0));
    CHECK(count_of(tipped) == 4);
    tipped.library.long_seams->over_mm = 800.0;
    CHECK(count_of(tipped) == 1);
    joint::Datum datum;
    datum.id = "D";
    datum.member = "base";
    datum.arcs = 6;
    inputs.weldment.datums.push_back(datum);
    CHECK(count_of(inputs) == 6);
    inputs.weldment.datums.front().member = "web_1";  // not one of its members
    CHECK(count_of(inputs) == 1);
  }

  TEST_CASE(
      "what keeps step with a seam in segments is cut alike, unless the file says otherwise") {
    const auto counts = [](const planner::Inputs& inputs) {
      std::vector<base::Finding> findings;
      planner::Inputs split = planner::detail::in_segments(inputs, findings);
      return std::pair(joint_in(split, "J1").seams.size(), joint_in(split, "J2").seams.size());
    };
    planner::Inputs inputs = part_of({"J1", "J2"});  // two sides of one web
    joint_in(inputs, "J1").seams.front().asked.segments = 2;
    CHECK(counts(inputs) == std::pair<std::size_t, std::size_t>(2, 2));
    joint_in(inputs, "J2").seams.front().asked.segments = 1;
    CHECK(counts(inputs) == std::pair<std::size_t, std::size_t>(2, 1));
    joint_in(inputs, "J2").seams.front().asked.segments.reset();
    joint_in(inputs, "J2").balance_off = "a trial";
    CHECK(counts(inputs) == std::pair<std::size_t, std::size_t>(2, 1));
    joint_in(inputs, "J2").balance_off.clear();
    std::set<std::string> pairs;
    for (const plan::PlannedTwins& twins : quick_plan(inputs).twins) {
      pairs.insert(twins.first + " " + twins.second);
    }
    // J2 is drawn the other way, so its first segment lies behind the second of J1.
    CHECK(pairs == std::set<std::string>{"J1/1 J2/2", "J1/2 J2/1"});
    joint_in(inputs, "J1").balance_with = "J2";
    pairs.clear();
    for (const plan::PlannedTwins& twins : quick_plan(inputs).twins) {
      pairs.insert(twins.first + " " + twins.second);
    }
    CHECK(pairs == std::set<std::string>{"J1/1 J2/2", "J1/2 J2/1"});
  }

  TEST_CASE("a ring drawn in long arcs, a small ring under a datum, are left as they are") {
    std::vector<base::Finding> findings;
    planner::Inputs arcs = part_of({"A1", "A2", "A3", "A4"});
    arcs.library.long_seams->over_mm = 150.0;  // each is 188 mm
    planner::Inputs kept = planner::detail::in_segments(arcs, findings);
    CHECK(joint_in(kept, "A1").seams.size() == 1);
    std::erase_if(arcs.weldment.joints, [](const joint::Joint& one) { return one.id != "A1"; });
    kept = planner::detail::in_segments(arcs, findings);
    CHECK(joint_in(kept, "A1").seams.size() == 2);  // one arc alone is no ring
    planner::Inputs small = part_of({"R1"});
    std::get<geom::CirclePath>(*joint_in(small, "R1").seams.front().path).radius_mm = 40.0;
    joint_in(small, "R1").seams.front().length_mm = 80.0 * std::numbers::pi;  // 251 mm
    joint::Datum datum;
    datum.member = "base";
    datum.arcs = 4;
    small.weldment.datums.push_back(datum);
    findings.clear();
    kept = planner::detail::in_segments(small, findings);
    CHECK(joint_in(kept, "R1").seams.size() == 3);  // 84 mm each, 80 mm are needed
    CHECK(findings.size() == 1);
    joint_in(small, "R1").seams.front().length_mm = 100.0;
    kept = planner::detail::in_segments(small, findings);
    CHECK(joint_in(kept, "R1").seams.size() == 1);
  }

  TEST_CASE("segments too short, or meeting at a corner, are told") {
    planner::Inputs inputs = part_of({"J1"});
    ask(inputs, "J1", 5, 10.0);  // 56 mm each, 80 mm asked for
    CHECK(errors_of(inputs).find("plan.segments.short: joint J1: its 5 segments are 56 mm long") !=
          std::string::npos);
    joint::Seam& seam = joint_in(inputs, "J1").seams.front();
    seam.path = geom::PolylinePath{
        {geom::Vec3(40, 120, 30), geom::Vec3(180, 120, 30), geom::Vec3(320, 120.5, 30)}, false};
    seam.length_mm = geom::path_length_mm(*seam.path);
    seam.asked.corner_clear_mm = 20.0;
    ask(inputs, "J1", 2);
    std::vector<base::Finding> findings;
    (void)planner::detail::in_segments(inputs, findings);
    REQUIRE(findings.size() == 2);
    CHECK(findings.front().code == "plan.segments.corner");
    ask(inputs, "J1", 3);
    findings.clear();
    (void)planner::detail::in_segments(inputs, findings);
    CHECK(findings.size() == 1);
    // Stops reach half of stagger and overlap past the mark: 25 mm of the 30 to the corner.
    seam.path = geom::PolylinePath{
        {geom::Vec3(40, 120, 30), geom::Vec3(150, 120, 30), geom::Vec3(320, 120.1, 30)}, false};
    seam.length_mm = geom::path_length_mm(*seam.path);
    ask(inputs, "J1", 2, 20.0);
    for (const auto& [clear_mm, expected] : {std::pair(4.0, 1), std::pair(6.0, 2)}) {
      seam.asked.corner_clear_mm = clear_mm;
      findings.clear();
      (void)planner::detail::in_segments(inputs, findings);
      CHECK(findings.size() == std::size_t(expected));
    }
  }
}

}  // namespace seamturn::tests
