// SPDX-License-Identifier: MIT
// Which seams pull the part opposite ways. Expected pairs were read off the drawings (files) by
// hand.
#include <set>

#include "ordered_part.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_twins.hpp"

namespace seamturn::tests {

namespace {

using planner::detail::Run;
using planner::detail::SeamRef;
using planner::detail::Twins;

struct Found {
  std::vector<planner::detail::JointWork> joints;
  std::vector<SeamRef> seams;
  std::vector<Twins> twins;
  std::vector<Run> rings;

  [[nodiscard]] std::string id(std::size_t seam) const { return seams[seam].work->seam->id; }
  [[nodiscard]] std::set<std::string> pairs() const {
    std::set<std::string> pairs;
    for (const Twins& one : twins) {
      pairs.insert(id(one.first) + " " + id(one.second) + ": " +
                   std::string(plan::twin_kind_name(one.kind)));
    }
    return pairs;
  }
};

Found found_in(const planner::Inputs& inputs) {
  Found found;
  std::vector<base::Finding> findings;
  found.joints = planner::detail::work_joints(inputs, findings);
  found.seams = planner::detail::all_seams(found.joints);
  found.twins = planner::detail::find_twins(inputs, found.seams);
  found.rings = planner::detail::find_runs(found.seams);
  return found;
}

using Pairs = std::set<std::string>;

}  // namespace

TEST_SUITE("planner/twins") {
  TEST_CASE("given plates, tubes and a groove, sides of a plate, rings and stated ones are twins") {
    planner::Inputs inputs = ordered_part();
    CHECK(found_in(inputs).pairs() ==
          Pairs{"J1 J2: sides of one plate", "J3.a J3.b: sides of one plate", "R1 R2: twin rings"});
    joint_in(inputs, "A1").balance_with = "J1";
    joint_in(inputs, "J2").balance_with = "J3";
    joint_in(inputs, "R2").balance_with = "R1";
    CHECK(found_in(inputs).pairs() == Pairs{"J1 J2: sides of one plate",
                                            "J1 A1: stated",
                                            "J2 J3.a: stated",
                                            "J2 J3.b: stated",
                                            "J3.a J3.b: sides of one plate",
                                            "R1 R2: stated"});
    const planner::Inputs grooves = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    CHECK(found_in(grooves).pairs() ==
          Pairs{"X.a X.b: sides of one groove", "K.a K.b: sides of one groove"});
  }

  TEST_CASE("given seams on one side, apart, or beside each other's end, they are no twins") {
    const auto without = [](const char* from, const char* to) {
      planner::Inputs inputs = ordered_part();
      joint::Seam& seam = joint_in(inputs, "J2").seams.front();
      const auto point = [](const char* text) {
        geom::Vec3 value;
        std::istringstream(text) >> value.x() >> value.y() >> value.z();
        return value;
      };
      seam.path = geom::LinePath{point(from), point(to)};
      return found_in(inputs).pairs().count("J1 J2: sides of one plate") == 0;
    };
    CHECK_FALSE(without("320 100 30", "40 100 30"));   // as drawn
    CHECK_FALSE(without("40 100 30", "320 100 30"));   // welded the other way
    CHECK_FALSE(without("250 100 30", "100 100 30"));  // shorter, about one middle
    CHECK(without("110 100 30", "40 100 30"));         // at the end of the other
    CHECK(without("320 60 30", "40 60 30"));           // farther than one and a half plates
    planner::Inputs one_side = ordered_part();
    joint::Seam& seam = joint_in(one_side, "J2").seams.front();
    seam.wall_2 = joint_in(one_side, "J1").seams.front().wall_2;
    CHECK(found_in(one_side).pairs().count("J1 J2: sides of one plate") == 0);
    // Other members: a plate more between them.
    planner::Inputs others = ordered_part();
    joint_in(others, "J2").member_2 = "web_2";
    CHECK(found_in(others).pairs().count("J1 J2: sides of one plate") == 0);
    // Rings about two axes.
    planner::Inputs rings = ordered_part();
    std::get<geom::CirclePath>(*joint_in(rings, "R2").seams.front().path).centre.x() += 5.0;
    CHECK(found_in(rings).pairs().count("R1 R2: twin rings") == 0);
  }

  TEST_CASE("given members in the other order, law: the pairs stay") {
    planner::Inputs inputs = ordered_part();
    joint::Joint& joint = joint_in(inputs, "J2");
    std::swap(joint.member_1, joint.member_2);
    std::swap(joint.seams.front().wall_1, joint.seams.front().wall_2);
    CHECK(found_in(inputs).pairs().count("J1 J2: sides of one plate") == 1);
  }

  TEST_CASE("given the hub, every ring, lug and gusset has its twin and nothing else has one") {
    // Read off joints/grab_hub.xml: R1 R2 and R3 R4; LO LI and LF.a LF.b of eight lugs; GT and GF,
    // a and b, of four gussets; C1, R5 and the bosses stand alone.
    const Found found = found_in(hub().inputs);
    const Pairs pairs = found.pairs();
    CHECK(pairs.size() == 2 + 8 + 8 + 4 + 4);
    CHECK(pairs.count("R1 R2: twin rings") == 1);
    CHECK(pairs.count("R3 R4: twin rings") == 1);
    for (const char* lug : {"0r", "0l", "90r", "90l", "180r", "180l", "270r", "270l"}) {
      INFO(lug);
      const std::string id = lug;
      CHECK(pairs.count("LO_" + id + " LI_" + id + ": sides of one plate") == 1);
      CHECK(pairs.count("LF_" + id + ".a LF_" + id + ".b: sides of one plate") == 1);
    }
    for (const char* gusset : {"45", "135", "225", "315"}) {
      INFO(gusset);
      const std::string id = gusset;
      CHECK(pairs.count("GT_" + id + ".a GT_" + id + ".b: sides of one plate") == 1);
      CHECK(pairs.count("GF_" + id + ".a GF_" + id + ".b: sides of one plate") == 1);
    }
  }

  TEST_CASE("given a ring in arcs, opposite ones follow each other, 1 3 2 4") {
    const auto order_of = [](const planner::Inputs& inputs) {
      const Found found = found_in(inputs);
      std::string order;
      REQUIRE(found.rings.size() <= 1);
      for (const Run& ring : found.rings) {
        CHECK(ring.ring);
        for (const auto& rank : ring.ranks) {
          REQUIRE(rank.size() == 1);
          order += found.id(rank.front()) + " ";
        }
      }
      return order;
    };
    planner::Inputs inputs = ordered_part();
    CHECK(order_of(inputs) == "A1 A3 A2 A4 ");
    // drawn in another order: the way round counts
    std::swap(joint_in(inputs, "A2").seams.front().path, joint_in(inputs, "A3").seams.front().path);
    CHECK(order_of(inputs) == "A1 A2 A3 A4 ");
    std::erase_if(inputs.weldment.joints,
                  [](const joint::Joint& joint) { return joint.id == "A3" || joint.id == "A4"; });
    CHECK(order_of(inputs).empty());  // two arcs make no ring
  }

  TEST_CASE("given a reason in joint or weldment, the pair is there and off") {
    planner::Inputs inputs = ordered_part();
    joint_in(inputs, "J2").balance_off = "the back is free";
    for (const Twins& twins : found_in(inputs).twins) {
      CHECK(twins.off == (twins.first == 0 ? "the back is free" : ""));
    }
    inputs.weldment.balance_off = "a trial";
    joint_in(inputs, "R2").balance_with = "R1";
    const Found found = found_in(inputs);
    for (const Twins& twins : found.twins) {
      const bool stated = twins.kind == plan::TwinKind::stated;  // what is stated stays
      CHECK(stated == (found.id(twins.first) == "R1"));
      CHECK(twins.off == (stated ? "" : twins.first == 0 ? "the back is free" : "a trial"));
    }
  }
}

}  // namespace seamturn::tests
