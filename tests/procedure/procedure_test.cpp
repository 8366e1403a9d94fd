// SPDX-License-Identifier: MIT
#include "seamturn/procedure/procedure.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <list>

#include "seamturn/base/random.hpp"

namespace seamturn::tests {
namespace {

using procedure::Procedure;
using procedure::SeamWork;

/// All that one seam's work points at; kept in a list, so that addresses stay.
struct Owner {
  joint::Joint joint;
  joint::Seam seam;
  section::WeldSection section;
  pass::PassStack stack;
  procedure::HeatLimits heat;
  heat::HoldTime hold;
  process::Wire wire;
  process::Gas gas;
  SeamWork work;

  void point() {
    work.joint = &joint;
    work.seam = &seam;
    work.section = &section;
    work.stack = &stack;
    work.heat = &heat;
    work.hold = &hold;
    work.wire = &wire;
    work.gas = &gas;
  }
};

Owner fillet_owner(const std::string& id) {
  Owner made;
  made.joint.id = id;
  made.joint.preparation = joint::Fillet{8.0, 8.0};
  made.joint.thickness_mm = 12.0;
  made.joint.depth_mm = 12.0;
  made.seam.id = id + ".a";
  made.seam.between_walls = base::Angle::deg(90.0);
  made.section.is_fillet = true;
  made.section.area_mm2 = 32.0;
  made.section.throat_mm = 5.657;
  pass::Pass pass;
  pass.settings = "single";
  pass.area_mm2 = 32.0;
  pass.travel_mm_s = 5.6;
  pass.arc_time_s = 90.0;
  made.stack.passes = {pass};
  made.stack.heat_input_max_kj_mm = 1.16;
  made.heat.preheat_c = 20.0;
  made.hold = heat::hold_time({5.657, 1.16, 355.0});
  made.wire.id = "wire";
  made.gas.id = "gas";
  made.work.steel_1 = made.work.steel_2 = "S355J2";
  made.work.thickness_1_mm = made.work.thickness_2_mm = 12.0;
  return made;
}

std::vector<SeamWork> work_of(std::list<Owner>& owners) {
  std::vector<SeamWork> work;
  for (Owner& owner : owners) {
    owner.point();
    work.push_back(owner.work);
  }
  return work;
}

using Change = std::function<void(Owner&)>;

const std::vector<Change>& changes() {
  static const std::vector<Change> list = {
      [](Owner& o) { o.joint.type = joint::JointType::corner; },
      [](Owner& o) {
        o.joint.preparation = joint::Fillet{8.0, 8.1};
      },
      [](Owner& o) { o.joint.preparation = joint::square_butt(1.0); },
      [](Owner& o) { o.joint.root = joint::RootDecision::steel_backing; },
      [](Owner& o) { o.joint.quality = "B"; },
      [](Owner& o) { o.joint.cap.height_mm = 1.0; },
      [](Owner& o) { o.joint.thickness_mm = 15.0; },
      [](Owner& o) { o.joint.depth_mm = 8.0; },
      [](Owner& o) { o.seam.between_walls = base::Angle::deg(80.0); },
      [](Owner& o) { o.work.steel_2 = "S460N"; },
      [](Owner& o) { o.work.group_1 = "1.3"; },
      [](Owner& o) { o.work.thickness_2_mm = 15.0; },
      [](Owner& o) { o.work.closed = true; },
      [](Owner& o) { o.work.diameter_mm = 300.0; },
      [](Owner& o) { o.wire.id = "other"; },
      [](Owner& o) { o.gas.id = "other"; },
      [](Owner& o) { o.heat.preheat_c = 75.0; },
      [](Owner& o) { o.heat.interpass_max_c = 200.0; },
      [](Owner& o) { o.hold.hours = 40.0; },
      [](Owner& o) { o.stack.position = process::WeldPosition::pb; },
      [](Owner& o) { o.stack.passes[0].travel_mm_s = 5.7; },
      [](Owner& o) { o.stack.passes[0].settings = "other"; },
      [](Owner& o) { o.stack.passes.push_back(o.stack.passes[0]); }};
  return list;
}

bool any_line_holds(const Procedure& procedure, const std::string& part) {
  return std::any_of(procedure.inspection.begin(),
                     procedure.inspection.end(),
                     [&](const std::string& line) { return line.find(part) != line.npos; });
}

}  // namespace

TEST_SUITE("procedure/procedure") {
  TEST_CASE("given two seams that differ in length only, they share one procedure") {
    std::list<Owner> owners = {fillet_owner("J1"), fillet_owner("J1"), fillet_owner("J2")};
    std::next(owners.begin())->seam.id = "J1.b";
    owners.back().stack.passes[0].arc_time_s = 30.0;
    owners.back().stack.passes[0].travel_mm_s *= 1.0 + 1e-12;
    const auto procedures = procedure::group_procedures(work_of(owners));
    REQUIRE(procedures.size() == 1);
    CHECK(procedures[0].id == "P01");
    CHECK(procedures[0].seams == std::vector<std::string>{"J1.a", "J1.b", "J2.a"});
    CHECK(procedures[0].joints == std::vector<std::string>{"J1", "J2"});
  }

  TEST_CASE("for any one thing that makes a procedure, law: a change of it makes another one") {
    for (std::size_t i = 0; i < changes().size(); ++i) {
      INFO("change " << i);
      std::list<Owner> owners = {fillet_owner("J1"), fillet_owner("J2")};
      changes()[i](owners.back());
      CHECK(procedure::group_procedures(work_of(owners)).size() == 2);
    }
  }

  TEST_CASE("for any mixture of seams, law: every seam is in exactly one procedure") {
    base::Random random(base::named_seed(7, "procedure/law"));
    std::list<Owner> owners;
    for (int i = 0; i < 60; ++i) {
      owners.push_back(fillet_owner("J" + std::to_string(i)));
      if (random.unit() < 0.8) {
        changes()[random.below(changes().size())](owners.back());
      }
    }
    const auto procedures = procedure::group_procedures(work_of(owners));
    std::vector<std::string> seams;
    for (std::size_t i = 0; i < procedures.size(); ++i) {
      CHECK(procedures[i].id.size() == 3);
      seams.insert(seams.end(), procedures[i].seams.begin(), procedures[i].seams.end());
    }
    CHECK(seams.size() == 60);
    std::sort(seams.begin(), seams.end());
    CHECK(std::adjacent_find(seams.begin(), seams.end()) == seams.end());
    CHECK(procedures.size() > 1);
    CHECK(procedures.size() <= changes().size() + 1);
  }

  TEST_CASE("given a joint that must wait, its hours stand on the sheet") {
    // published: EN 1090-2:2008 table 23, up to 6 mm, any heat input, S460 and above: 24 h
    std::list<Owner> owners = {fillet_owner("J1")};
    owners.front().hold = heat::hold_time({5.657, 1.16, 460.0});
    const auto made = procedure::group_procedures(work_of(owners)).front();
    CHECK(any_line_holds(made, "at least 24 h after the last pass"));
  }

  TEST_CASE("given a fillet, the sheet asks for visual, gauge and hold time and claims no record") {
    std::list<Owner> owners = {fillet_owner("J1")};
    const auto made = procedure::group_procedures(work_of(owners)).front();
    CHECK(made.inspection.front() == "quality level ISO 5817-C");
    CHECK(any_line_holds(made, "visual: the whole length"));
    CHECK(any_line_holds(made, "both legs at least 8.0 mm"));  // z8: its throat is 5.657
    // published: EN 1090-2:2008 table 23, up to 6 mm, S235 to S420: cooling only
    CHECK(any_line_holds(made, "when the weld is cold"));
    CHECK(any_line_holds(made, "EN 1090-2:2008 table 23"));
    CHECK_FALSE(any_line_holds(made, "root:"));
    CHECK(made.qualification.rfind("preliminary: ", 0) == 0);
    CHECK(made.cautions.empty());
  }

  TEST_CASE("given a fillet, the least size is the one drawn, in its words, never rounded above") {
    const auto line_of = [](const joint::Fillet& fillet) {
      std::list<Owner> owners = {fillet_owner("J1")};
      owners.front().joint.preparation = fillet;
      const auto lines = procedure::group_procedures(work_of(owners)).front().inspection;
      const auto found = std::find_if(lines.begin(), lines.end(), [](const std::string& line) {
        return line.rfind("size: ", 0) == 0;
      });
      return found == lines.end() ? std::string() : found->substr(6);
    };
    joint::Fillet stated{5.657, 5.657};
    stated.stated_throat_mm = 4.0;
    stated.over_weld_ratio = 1.15;  // laid, not asked for
    CHECK(line_of(stated) == "throat at least 4.0 mm, by gauge, both legs");
    stated.stated_throat_mm = 4.7625;  // 3/16 in
    CHECK(line_of(stated) == "throat at least 4.76 mm, by gauge, both legs");
    CHECK(line_of({12.0, 12.0}) == "both legs at least 12.0 mm, by gauge");
    CHECK(line_of({9.525, 9.525}) == "both legs at least 9.52 mm, by gauge");  // 3/8 in
    CHECK(line_of({7.999, 7.999}) == "both legs at least 7.99 mm, by gauge");
    CHECK(line_of({8.0, 12.0}) ==
          "leg at least 8.0 mm along the first member, 12.0 mm along the second, by gauge");
  }

  TEST_CASE("given grooves, the root line follows the root decision and partial depth is named") {
    std::list<Owner> owners = {fillet_owner("J1"), fillet_owner("J2"), fillet_owner("J3")};
    for (Owner& owner : owners) {
      owner.section.is_fillet = false;
      owner.joint.preparation = joint::single_v({2.0, 1.0}, base::Angle::deg(60.0));
    }
    std::next(owners.begin())->joint.root = joint::RootDecision::ceramic_backing;
    owners.back().joint.root = joint::RootDecision::steel_backing;
    owners.back().joint.depth_mm = 8.0;
    const auto made = procedure::group_procedures(work_of(owners));
    REQUIRE(made.size() == 3);
    CHECK(any_line_holds(made[0], "from the far side"));
    CHECK(any_line_holds(made[1], "ceramic"));
    CHECK(any_line_holds(made[2], "backing stays"));
    CHECK(any_line_holds(made[2], "penetration 8.0 mm"));
  }
}

}  // namespace seamturn::tests
