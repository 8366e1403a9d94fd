// SPDX-License-Identifier: MIT
// Joints in the heated zone of others. Distances are by hand; the rule is our own
// (docs/methods/preheat-choice.md), the width of the zone AWS D1.1 from memory.
#include <deque>

#include "oracle.hpp"
#include "planner/joint_work.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

/// Lines along x on one plate; every joint asks for its own preheat.
struct Part {
  std::deque<HandJoint> hands;
  planner::Inputs inputs;

  HandJoint& add(double preheat_c, const Vec3& from, const Vec3& to, double zone_mm = 75.0) {
    HandJoint& hand = hands.emplace_back();
    hand.joint.id = "J" + std::to_string(hands.size());
    hand.joint.member_1 = "base";
    hand.joint.member_2 = "web" + std::to_string(hands.size());
    hand.add_line(from, to);
    hand.work.heat.preheat_c = hand.work.heat.own_preheat_c = preheat_c;
    hand.work.heat.needs_heating = preheat_c > inputs.weldment.ambient_c;
    hand.work.heat.zone_width_mm = zone_mm;
    hand.work.heat.preheat_basis = "its own";
    return hand;
  }
  std::vector<procedure::HeatLimits> share() const {
    std::vector<planner::detail::JointWork> joints;
    for (const HandJoint& hand : hands) joints.push_back(hand.work);
    planner::detail::share_zones(inputs, joints);
    std::vector<procedure::HeatLimits> limits;
    for (const auto& work : joints) limits.push_back(work.heat);
    return limits;
  }
};

}  // namespace

TEST_SUITE("planner/part_zones") {
  TEST_CASE("given a seam within another's heated zone, the higher preheat governs both") {
    for (const double apart_mm : {10.0, 74.9, 75.1, 200.0}) {
      INFO("apart ", apart_mm);
      Part part;
      part.add(120, Vec3(0, 0, 0), Vec3(300, 0, 0));
      part.add(20, Vec3(0, apart_mm, 0), Vec3(300, apart_mm, 0));
      const auto limits = part.share();
      const bool inside = apart_mm < 75.0;
      CHECK(limits[0].preheat_c == 120.0);
      CHECK(limits[0].neighbour.empty());
      CHECK(limits[1].preheat_c == (inside ? 120.0 : 20.0));
      CHECK(limits[1].own_preheat_c == 20.0);
      CHECK(limits[1].needs_heating == inside);
      CHECK(limits[1].neighbour == (inside ? "J1" : ""));
      CHECK((limits[1].preheat_basis == "its own") == !inside);
    }
  }

  TEST_CASE("given seams of other lengths, the distance is still that between the courses") {
    // Stations of the two courses never face each other: 300 mm and 310 mm, moved by 7 mm.
    for (const double apart_mm : {74.9, 75.1}) {
      Part part;
      part.add(120, Vec3(0, 0, 0), Vec3(300, 0, 0));
      part.add(20, Vec3(7, apart_mm, 0), Vec3(317, apart_mm, 0));
      CHECK((part.share()[1].preheat_c == 120.0) == (apart_mm < 75.0));
      Part end_to_side;
      end_to_side.add(120, Vec3(0, 0, 0), Vec3(8000, 0, 0));  // stations 40 mm apart
      end_to_side.add(20, Vec3(3020, apart_mm, 0), Vec3(3020, 500, 0));
      CHECK((end_to_side.share()[1].preheat_c == 120.0) == (apart_mm < 75.0));
      Part side_to_start;
      side_to_start.add(120, Vec3(3020, apart_mm, 0), Vec3(3020, 500, 0));
      side_to_start.add(20, Vec3(0, 0, 0), Vec3(8000, 0, 0));
      CHECK((side_to_start.share()[1].preheat_c == 120.0) == (apart_mm < 75.0));
      const Vec3 along(std::sqrt(0.75), 0.5, 0);
      const Vec3 across(-0.5, std::sqrt(0.75), 0);
      Part oblique;
      oblique.add(120, Vec3(0, 0, 0), 300 * along);
      oblique.add(20, apart_mm * across, 300 * along + apart_mm * across);
      CHECK((oblique.share()[1].preheat_c == 120.0) == (apart_mm < 75.0));
    }
  }

  TEST_CASE("given zones of two widths, that of the joint which asks for more counts") {
    Part part;
    part.add(120, Vec3(0, 0, 0), Vec3(300, 0, 0), 75.0);
    part.add(20, Vec3(0, 90, 0), Vec3(300, 90, 0), 100.0);
    CHECK(part.share()[1].preheat_c == 20.0);
    part.hands[0].work.heat.zone_width_mm = 100.0;
    part.hands[1].work.heat.zone_width_mm = 75.0;
    CHECK(part.share()[1].preheat_c == 120.0);
  }

  TEST_CASE("given a chain of zones, a preheat is not handed on") {
    Part part;
    part.add(150, Vec3(0, 0, 0), Vec3(300, 0, 0));
    part.add(100, Vec3(0, 60, 0), Vec3(300, 60, 0));
    part.add(20, Vec3(0, 120, 0), Vec3(300, 120, 0));
    const auto limits = part.share();
    CHECK(limits[1].preheat_c == 150.0);
    CHECK(limits[2].preheat_c == 100.0);
    CHECK(limits[2].neighbour == "J2");
  }

  TEST_CASE("given parts that touch in no member, the zone of one says nothing of the other") {
    Part part;
    part.add(150, Vec3(0, 0, 0), Vec3(300, 0, 0));
    HandJoint& other = part.add(20, Vec3(0, 10, 0), Vec3(300, 10, 0));
    other.joint.member_1 = "another base";
    CHECK(part.share()[1].preheat_c == 20.0);
    other.joint.member_2 = "base";
    CHECK(part.share()[1].preheat_c == 150.0);
    other.joint.member_2 = "web1";
    CHECK(part.share()[1].preheat_c == 150.0);
  }

  TEST_CASE("given a seam without a place, nobody knows what lies beside it") {
    Part part;
    part.add(150, Vec3(0, 0, 0), Vec3(300, 0, 0));
    part.add(20, Vec3(0, 10, 0), Vec3(300, 10, 0)).joint.seams.front().path.reset();
    CHECK(part.share()[1].preheat_c == 20.0);
  }

  TEST_CASE("for random parts, law: one joint more never lowers a preheat, order changes none") {
    base::Random random(base::named_seed(3, "zones"));
    int raised = 0;
    for (int trial = 0; trial < 200; ++trial) {
      Part part;
      for (int i = 0; i < 5; ++i) {
        const Vec3 from(random.between(0, 300), random.between(0, 300), 0);
        const Vec3 to = from + Vec3(random.between(20, 200), random.between(-50, 50), 0);
        part.add(random.between(20, 200), from, to, random.between(75, 120));
      }
      const auto before = part.share();
      Part turned;
      for (auto it = part.hands.rbegin(); it != part.hands.rend(); ++it) {
        const auto& line = std::get<geom::LinePath>(*it->joint.seams.front().path);
        turned.add(it->work.heat.own_preheat_c, line.from, line.to, it->work.heat.zone_width_mm);
      }
      const auto other_way = turned.share();
      part.add(random.between(20, 200), Vec3(0, 150, 0), Vec3(300, 150, 0));
      const auto after = part.share();
      INFO("seed 3, trial ", trial);
      for (std::size_t i = 0; i < before.size(); ++i) {
        CHECK(after[i].preheat_c >= before[i].preheat_c);
        CHECK(after[i].preheat_c >= after[i].own_preheat_c);
        CHECK(other_way[before.size() - 1 - i].preheat_c == before[i].preheat_c);
        raised += after[i].preheat_c > before[i].preheat_c ? 1 : 0;
      }
    }
    CHECK(raised > 50);
  }
}

}  // namespace seamturn::tests
