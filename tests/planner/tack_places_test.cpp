// SPDX-License-Identifier: MIT
// Where the tacks of tests/good/tack_places.xml lie, worked out by hand: 50 mm long, 20 mm clear of
// ends and corners, at most 250 mm apart.
#include <algorithm>
#include <cmath>

#include "seamturn/joint/segments.hpp"
#include "split_part.hpp"
#include "staged_findings.hpp"

namespace seamturn::tests {

namespace {

const Plan& places() {
  static const Plan plan = quick_plan(io::read_inputs(repository() / "tests/good/tack_places.xml"));
  return plan;
}

const plan::PlannedTacks& tacks_on(const Plan& plan, const std::string& seam) {
  for (const plan::PlannedTacks& tacks : plan.tacks) {
    if (tacks.seam == seam) return tacks;
  }
  FAIL("no tacks on ", seam);
  return plan.tacks.front();
}

std::vector<double> centres_on(const Plan& plan, const std::string& seam) {
  std::vector<double> centres;
  for (const tack::Tack& tack : tacks_on(plan, seam).plan.tacks) {
    centres.push_back(0.5 * (tack.from_mm + tack.to_mm));
  }
  return centres;
}

void check_near(const std::vector<double>& got, const std::vector<double>& expected) {
  REQUIRE(got.size() == expected.size());
  for (std::size_t i = 0; i < got.size(); ++i) CHECK(got[i] == doctest::Approx(expected[i]));
}

}  // namespace

TEST_SUITE("planner/tack_places") {
  TEST_CASE("given 5 x 50 (100) staggered on 800 mm, each element has its tack, on either side") {
    // computed: the pair takes 5 x 150 - 100 + 75 = 725 of 800 mm, so each begins 37.5 mm on.
    for (const char* seam : {"A.a", "A.b"}) {
      check_near(centres_on(places(), seam), {62.5, 212.5, 362.5, 512.5, 662.5});
      for (const joint::Stretch& one : joint::stretches_of(described_seam(places(), seam))) {
        const auto& tacks = tacks_on(places(), seam).plan.tacks;
        CHECK(std::any_of(tacks.begin(), tacks.end(), [&](const tack::Tack& tack) {
          return tack.from_mm >= one.from_mm - 1e-9 && tack.to_mm <= one.to_mm + 1e-9;
        }));
      }
    }
  }

  TEST_CASE("given an intermittent ring, its tacks lie where its pass lays metal") {
    planner::Inputs inputs = part_of({"R1"});
    joint::Seam& ring = joint_in(inputs, "R1").seams.front();
    ring.asked.form = joint::LengthForm::intermittent;
    ring.asked.count = 5;
    ring.asked.each_mm = 60.0;
    ring.asked.gap_mm = 80.0;
    ring.asked.overlap_mm = 0.0;
    ring.asked.segments = 1;
    ring.welded = *joint::welded_length(ring.asked, {ring.length_mm, true, false, false});
    const Plan plan = quick_plan(inputs);
    const plan::PlannedPass& pass = seam_of(plan, "R1").passes.front();
    REQUIRE_FALSE(pass.points.empty());
    const auto& tacks = tacks_on(plan, "R1").plan.tacks;
    CHECK(tacks.size() >= 4);
    for (const tack::Tack& tack : tacks) {
      // law: a tack of 50 mm in an element of 60 lies at most 35 mm from where its arc begins and
      // ends, and from the middle of a gap it is 40 mm to one and 100 to the other.
      double furthest_mm = 1e9;
      for (std::size_t i = 0; i < pass.points.size(); ++i) {
        if (pass.points[i].arc != reach::Arc::on) continue;
        std::size_t end = i;
        while (pass.points[end].arc != reach::Arc::off) ++end;
        const double begun_mm = (pass.points[i].point - tack.centre).norm();
        const double ended_mm = (pass.points[end].point - tack.centre).norm();
        furthest_mm = std::min(furthest_mm, std::max(begun_mm, ended_mm));
      }
      CHECK(furthest_mm < 37.0);
    }
  }

  TEST_CASE("given a seam closed in the middle of a leg, its tacks come in order from its start") {
    // computed: legs of 100, 300, 100 and 300 mm, corners at 150, 250, 550, 650; the last leg goes
    // on over the start at 800 mm, its second tack lies at 905 - 800.
    check_near(centres_on(places(), "C"), {105.0, 200.0, 295.0, 505.0, 600.0, 695.0});
  }

  TEST_CASE("given each tack's seam, its stage is the one that fits both members") {
    for (const char* seam : {"A.a", "D.a", "D.b"}) CHECK(tacks_on(places(), seam).stage == "one");
    for (const char* seam : {"B/1", "B/2", "C", "E.a"}) {
      CHECK(tacks_on(places(), seam).stage == "two");
    }
  }

  TEST_CASE("given a seam of 200 mm in two segments, each has the tack its room lets it") {
    CHECK(findings_of(places(), "tack.seam.too_short").empty());
    // computed: they meet at 100 mm, 40 mm are shared; 20 to 80 and 120 to 180 mm are left, and
    // the second segment's path begins at 80 mm.
    check_near(centres_on(places(), "B/1"), {50.0});
    check_near(centres_on(places(), "B/2"), {150.0 - 80.0});
  }

  TEST_CASE("given segments too short for a tack between their stops, those of the seam drawn") {
    planner::Inputs inputs = part_of({"J1"});  // 280 mm
    ask(inputs, "J1", 3, 10.0);
    inputs.library.tack_rules.length_min_mm = {70.0, base::Status::proposed, "a test"};
    inputs.library.tack_rules.long_factor.value = 1.0;
    const Plan plan = quick_plan(inputs);
    CHECK(findings_of(plan, "tack.seam.too_short").empty());
    std::vector<double> along_mm;
    for (const plan::PlannedTacks& tacks : plan.tacks) {
      CHECK(tacks.refused == "");
      for (const tack::Tack& tack : tacks.plan.tacks) along_mm.push_back(tack.centre.x() - 40.0);
    }
    std::sort(along_mm.begin(), along_mm.end());
    check_near(along_mm, {55.0, 225.0});  // 70 mm long, 20 mm clear of both ends
  }

  TEST_CASE("for rings beside each other in arcs, law: a segment begins where the plan says") {
    planner::Inputs inputs = ordered_part();
    joint::Joint& pair = joint_in(inputs, "R1");
    joint::Seam inner = joint_in(inputs, "R2").seams.front();
    auto& circle = std::get<geom::CirclePath>(*inner.path);
    circle.start = geom::Vec3::UnitY();  // a quarter on from the outer one's
    pair.seams.push_back(inner);
    for (const joint::Seam& seam : joint::split_joint(pair, {4}).seams) {
      const geom::Vec3 drawn =
          geom::path_station(seam.segment->course, seam.segment->begins_mm).point;
      CHECK((drawn - geom::path_station(*seam.path, 0.0).point).norm() < 1e-9);
    }
  }
}

}  // namespace seamturn::tests
