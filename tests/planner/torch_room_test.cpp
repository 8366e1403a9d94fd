// SPDX-License-Identifier: MIT
// Headings of the torch's body against walks through the members, by hand and over the demos.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "planned_demos.hpp"
#include "seamturn/joint/inside.hpp"
#include "seamturn/plan/lie.hpp"

namespace seamturn::tests {

namespace {

using base::Angle;
using geom::Vec3;
using plan::PlannedPass;

constexpr const char* no_room = "plan.torch.no_room";

planner::Inputs with_body(planner::Inputs inputs, double diameter_mm = 40.0) {
  inputs.cell->torch.body = cell::TorchBody{100.0, Angle::deg(35.0), 200.0, diameter_mm};
  return inputs;
}

void add_plate(planner::Inputs& inputs, const std::string& id, const Vec3& low, const Vec3& high) {
  joint::Member wall = inputs.weldment.members.front();
  wall.id = id;
  const Vec3 size = high - low;
  wall.shape = joint::Plate{size.x(), size.y(), size.z()};
  wall.X_JM = {geom::Mat3::Identity(), low};
  inputs.weldment.members.push_back(wall);
}

/// What is there when a seam is welded.
struct There {
  std::vector<const joint::Member*> members;
  const joint::Setup* setup = nullptr;
  Vec3 normal_D = Vec3::UnitZ();
};

There present(const plan::Plan& plan, const std::string& stage) {
  There there;
  there.normal_D = cell::faceplate_normal_D(plan.cell->positioner.kind);
  for (const plan::PlannedStage& one : plan.stages) {
    if (one.id != stage) continue;
    for (const std::string& id : one.present) {
      there.members.push_back(joint::find_member(plan.weldment, id));
    }
    for (const joint::Setup& setup : plan.weldment.setups) {
      if (setup.id == one.setup) there.setup = &setup;
    }
  }
  REQUIRE(there.setup != nullptr);
  return there;
}

/// A ball against members, faceplate and boxes of the set-up.
bool touched(const There& there, const Vec3& p, double radius_mm) {
  const double radius = std::max(0.0, radius_mm);
  const Vec3 p_D = there.setup->X_DJ.point(p);
  if (p_D.dot(there.normal_D) < radius) return true;
  for (const joint::SetupSolid& solid : there.setup->solids) {
    if (!solid.size_mm) continue;
    if (((p_D - solid.centre).cwiseAbs() - 0.5 * *solid.size_mm).maxCoeff() < radius) return true;
  }
  return std::any_of(there.members.begin(), there.members.end(), [&](const joint::Member* member) {
    return joint::is_inside(*member, p, radius);
  });
}

/// Own arithmetic: walks out along wire and body and asks every member. `grown_mm` makes the torch
/// that much fatter.
bool meets(const There& there,
           const cell::Torch& torch,
           const reach::TorchPose& pose,
           Angle heading,
           double grown_mm,
           double from_mm = 60.0) {
  const Vec3 back = geom::unit(pose.travel.dot(pose.torch) * pose.torch - pose.travel);
  const Vec3 out = geom::rotation_about(pose.torch, heading) * back;
  const Vec3 bend = pose.point - torch.body->tip_to_bend_mm * pose.torch;
  const Vec3 away =
      std::sin(torch.body->bend.rad()) * out - std::cos(torch.body->bend.rad()) * pose.torch;
  const double nozzle = 0.5 * torch.nozzle_diameter_mm + grown_mm;
  const double body = 0.5 * torch.body->diameter_mm;
  for (double s = torch.body->length_mm; s >= body; s -= 5.0) {
    if (touched(there, bend + s * away, body + grown_mm)) return true;
  }
  // About the bend it is no wider than the nozzle.
  for (double s = 0.0; s <= body; s += 5.0) {
    if (touched(there, bend + s * away, nozzle)) return true;
  }
  for (double s = torch.body->tip_to_bend_mm; s >= from_mm; s -= 2.5) {
    if (touched(there, pose.point - s * pose.torch, nozzle)) return true;
  }
  return false;
}

/// Whether a torch 1 mm fatter meets something along a straight pass, asked every 16th of it.
bool meets_along(const plan::Plan& plan, const Arc& arc, Angle heading) {
  const There there = present(plan, arc.seam->stage);
  const reach::TorchPose& first = arc.pass->points.front();
  const reach::TorchPose& last = arc.pass->points.back();
  for (int i = 0; i <= 16; ++i) {
    reach::TorchPose pose = first;
    pose.point = first.point + (last.point - first.point) * i / 16.0;
    if (meets(there, plan.cell->torch, pose, heading, 1.0, 30.0)) return true;
  }
  return false;
}

/// The number a finding tells after a word: "push -5 deg"; 0 when it tells none.
double told_deg(const std::string& text, const std::string& word) {
  const std::size_t at = text.find("there is room");
  if (at == std::string::npos) return 0.0;
  const std::size_t from = text.find(word, at);
  return from == std::string::npos ? 0.0 : std::stod(text.substr(from + word.size()));
}

/// Whether some heading is free all along a straight seam with the torch leant so.
bool has_room(
    const plan::Plan& plan, const Arc& arc, double work_deg, double push_deg, double grown_mm) {
  const joint::Joint& joint = *joint::find_joint(plan.weldment, arc.seam->joint);
  const joint::Seam& described = described_seam(plan, arc.seam->id);
  const There there = present(plan, arc.seam->stage);
  pass::Pass pass = arc.pass->pass;
  pass.work_angle = pass.work_angle + Angle::deg(work_deg);
  pass.push = pass.push + Angle::deg(push_deg);
  // From where the arc is struck to where it goes out, tabs counted.
  const geom::Station start = geom::path_station(*described.path, 0.0);
  const double from = (arc.pass->points.front().point - start.point).dot(start.tangent);
  const double to = (arc.pass->points.back().point - start.point).dot(start.tangent);
  for (int heading = 0; heading < 24; ++heading) {
    bool is_free = true;
    for (int i = 0; i <= 32 && is_free; ++i) {
      const auto pose = reach::torch_pose(joint,
                                          described,
                                          arc.seam->section,
                                          pass,
                                          from + (to - from) * i / 32.0,
                                          arc.pass->reversed);
      // As planned from nearer to the weld, so that what blocks there is met.
      const double out_mm = arc.seam->section.height_mm;
      const double from_mm = grown_mm > 0.0 ? 30.0 : std::max(60.0, out_mm + 12.0);
      is_free =
          !meets(there, plan.cell->torch, pose, Angle::deg(15.0 * heading), grown_mm, from_mm);
    }
    if (is_free) return true;
  }
  return false;
}

const PlannedPass& pass_of(const plan::Plan& plan, const std::string& seam, int number) {
  return seam_of(plan, seam).passes.at(static_cast<std::size_t>(number - 1));
}

}  // namespace

TEST_SUITE("planner/torch_room") {
  TEST_CASE("given a tee with nothing about it, the body follows straight behind the travel") {
    const plan::Plan plan = quick_plan(with_body(tee_inputs()));
    int passes = 0;
    for (const Arc& arc : arcs_of(plan)) {
      if (arc.pass->stance < 0) continue;
      INFO(arc.seam->id);
      REQUIRE(arc.pass->headings.has_value());
      CHECK(arc.pass->headings->from == Angle());
      CHECK(arc.pass->headings->to == Angle());
      CHECK(arc.pass->torch_meets == "");
      ++passes;
    }
    CHECK(passes >= 2);
    CHECK(text_told(plan, no_room) == "");
  }

  TEST_CASE("given no body in the cell, or a joint whose reach is proved, nothing is asked") {
    const plan::Plan without = quick_plan(tee_inputs());
    for (const Arc& arc : arcs_of(without)) CHECK(!arc.pass->headings);
    planner::Inputs proved = with_body(tee_inputs());
    for (joint::Joint& joint : proved.weldment.joints) joint.reach_proved = true;
    const plan::Plan unasked = quick_plan(proved);
    for (const Arc& arc : arcs_of(unasked)) {
      CHECK(!arc.pass->headings);
      CHECK(arc.pass->torch_meets == "");
    }
  }

  TEST_CASE("given a wall behind the start, the body turns aside by no more than it must") {
    planner::Inputs inputs = with_body(tee_inputs());
    const std::string id = inputs.weldment.joints.front().seams.front().id;
    const PlannedPass free = pass_of(quick_plan(inputs), id, 1);
    const Vec3 start = free.points.front().point;
    const Vec3 behind = -free.points.front().travel;
    // 60 mm behind the start, across the travel, far above the weld.
    const Vec3 middle = start + 60.0 * behind + Vec3(0, 0, 160);
    const Vec3 half = Vec3(500, 500, 100) - 495.0 * behind.cwiseAbs();
    add_plate(inputs, "wall", middle - half, middle + half);
    const plan::Plan plan = quick_plan(inputs);
    const PlannedPass& pass = pass_of(plan, id, 1);
    REQUIRE(pass.headings.has_value());
    CHECK(pass.headings->from == pass.headings->to);
    const There there = present(plan, seam_of(plan, id).stage);
    REQUIRE(there.members.size() == plan.weldment.members.size());
    const cell::Torch& torch = plan.cell->torch;
    const double found_deg = std::abs(pass.headings->from.deg());
    CHECK(found_deg > 10.0);
    for (double deg = 0.0; deg < 181.0; deg += 15.0) {
      for (const double side : {1.0, -1.0}) {
        INFO("heading ", side * deg);
        const bool blocked =
            meets(there, torch, pass.points.front(), Angle::deg(side * deg), 0.5) ||
            meets(there, torch, pass.points.back(), Angle::deg(side * deg), 0.5);
        if (deg < found_deg - 1.0) CHECK(blocked);
      }
    }
    for (const reach::TorchPose& pose : pass.points) {
      CHECK_FALSE(meets(there, torch, pose, pass.headings->from, -0.5));
    }
  }

  TEST_CASE("given a wall behind the start of an arc held still, the body swings back on its way") {
    planner::Inputs inputs = with_body(tee_inputs());
    joint::Seam& seam = inputs.weldment.joints.front().seams.front();
    // Half round, the second wall beyond it: the torch leans outwards over a free plate.
    const geom::ArcPath arc{
        Vec3(0, 0, 400), Vec3::UnitZ(), Vec3::UnitX(), 150.0, Angle::deg(180.0)};
    seam.path = arc;
    seam.length_mm = geom::path_length_mm(*seam.path);
    seam.wall_1 = Vec3::UnitZ();
    seam.wall_2 = Vec3::UnitX();
    seam.face = Vec3(1, 0, 1).normalized();
    const std::string id = seam.id;
    const PlannedPass free = pass_of(quick_plan(inputs), id, 1);
    REQUIRE(free.headings.has_value());
    CHECK(free.headings->from == Angle());
    CHECK(free.headings->to == Angle());
    const reach::TorchPose& start = free.points.front();
    const Vec3 middle = start.point - 70.0 * start.travel + Vec3(0, 0, 160);
    const Vec3 half = Vec3(300, 300, 120) - 290.0 * start.travel.cwiseAbs();
    add_plate(inputs, "wall", middle - half, middle + half);
    const plan::Plan plan = quick_plan(inputs);
    const PlannedPass& pass = pass_of(plan, id, 1);
    REQUIRE(pass.headings.has_value());
    const There there = present(plan, seam_of(plan, id).stage);
    CHECK(meets(there, plan.cell->torch, pass.points.front(), Angle(), 0.6));
    CHECK(std::abs(pass.headings->from.deg()) > 10.0);
    CHECK(pass.headings->to == Angle());
    CHECK_FALSE(meets(there, plan.cell->torch, pass.points.front(), pass.headings->from, -0.6));
    CHECK_FALSE(meets(there, plan.cell->torch, pass.points.back(), pass.headings->to, -0.6));
  }

  TEST_CASE("given a seam roofed over, it is told what the torch meets, and no lean is made up") {
    planner::Inputs inputs = with_body(tee_inputs());
    const joint::Seam& seam = inputs.weldment.joints.front().seams.front();
    const Vec3 middle = geom::path_middle(*seam.path).point;
    add_plate(inputs, "roof", middle + Vec3(-600, -600, 32), middle + Vec3(600, 600, 60));
    const plan::Plan plan = quick_plan(inputs);
    const PlannedPass& pass = pass_of(plan, seam.id, 1);
    CHECK(!pass.headings);
    CHECK(pass.torch_meets == "roof");
    const std::string told = text_told(plan, no_room);
    CHECK(told.find(seam.id + " pass 1 (roof)") != std::string::npos);
    CHECK(told.find("make no room") != std::string::npos);
  }

  TEST_CASE("for leans told, law: they make room where none was, seen by walks") {
    int works = 0;
    int pushes = 0;
    for (const char* file : {"bracket.xml", "boom_foot.xml"}) {
      const plan::Plan plan = quick_plan(with_body(planned_demo(file).inputs, 50.0));
      for (const base::Finding& finding : plan.findings) {
        if (finding.code != no_room) continue;
        const double work_deg = told_deg(finding.text, "work angle ");
        const double push_deg = told_deg(finding.text, "push ");
        if (work_deg == 0.0 && push_deg == 0.0) continue;
        for (const Arc& arc : arcs_of(plan)) {
          const std::string named =
              arc.seam->id + " pass " + std::to_string(arc.pass->pass.number) + " (";
          if (finding.text.find(named) == std::string::npos) continue;
          INFO(named, ": ", finding.text);
          CHECK_FALSE(has_room(plan, arc, 0.0, 0.0, 0.6));
          CHECK(has_room(plan, arc, work_deg, push_deg, -0.6));
          works += work_deg != 0.0 ? 1 : 0;
          pushes += push_deg != 0.0 ? 1 : 0;
        }
      }
    }
    CHECK(works >= 1);
    CHECK(pushes >= 2);
  }

  TEST_CASE("for any demo, law: headings told are free at both ends, and stay where they must") {
    int free = 0;
    for (const Planned& demo : plans()) {
      const plan::Plan plan = quick_plan(with_body(demo.inputs));
      int all_here = 0;
      const int free_before = free;
      for (const Arc& arc : arcs_of(plan)) {
        if (arc.pass->stance < 0) continue;
        ++all_here;
        INFO(demo.file, " ", arc.seam->id, " pass ", arc.pass->pass.number);
        CHECK(arc.pass->headings.has_value() == arc.pass->torch_meets.empty());
        if (!arc.pass->headings) {
          CHECK(text_told(plan, no_room) != "");
          continue;
        }
        ++free;
        const There there = present(plan, arc.seam->stage);
        const cell::Torch& torch = plan.cell->torch;
        // Out of the groove: the nozzle's room between the walls is asked elsewhere.
        const double out_mm = std::max(60.0, arc.seam->section.height_mm + 12.0);
        const reach::Headings& headings = *arc.pass->headings;
        CHECK(std::abs(headings.from.deg()) < 180.1);
        const reach::TorchPose& first = arc.pass->points.front();
        const reach::TorchPose& last = arc.pass->points.back();
        CHECK_FALSE(meets(there, torch, first, headings.from, -0.6, out_mm));
        CHECK_FALSE(meets(there, torch, last, headings.to, -0.6, out_mm));
        const bool is_line =
            std::holds_alternative<geom::LinePath>(*described_seam(plan, arc.seam->id).path);
        if (is_line || arc.seam->rolling) CHECK(headings.from == headings.to);
        for (int i = 1; is_line && i < 8; ++i) {
          reach::TorchPose between = first;
          between.point = first.point + (last.point - first.point) * i / 8.0;
          CHECK_FALSE(meets(there, torch, between, headings.from, -0.6, out_mm));
        }
      }
      INFO(demo.file);
      CHECK(3 * (free - free_before) > all_here);  // against its own stage, most have room
    }
    CHECK(free > 200);
  }

  TEST_CASE("for straight passes, law: headings nearer to straight behind meet something") {
    int turned = 0;
    for (const char* file : {"bracket.xml", "boom_foot.xml"}) {
      const plan::Plan plan = quick_plan(with_body(planned_demo(file).inputs));
      for (const Arc& arc : arcs_of(plan)) {
        if (!arc.pass->headings || arc.pass->headings->from == Angle()) continue;
        if (!std::holds_alternative<geom::LinePath>(*described_seam(plan, arc.seam->id).path)) {
          continue;
        }
        ++turned;
        INFO(file, " ", arc.seam->id, " pass ", arc.pass->pass.number);
        const double told_deg = std::abs(arc.pass->headings->from.deg());
        for (double deg = 0.0; deg < told_deg - 1.0; deg += 15.0) {
          for (const double side : {1.0, -1.0}) {
            INFO("heading ", side * deg);
            CHECK(meets_along(plan, arc, Angle::deg(side * deg)));
          }
        }
      }
    }
    CHECK(turned > 10);
  }

  TEST_CASE("given a part behind the faceplate, the torch meets the faceplate") {
    planner::Inputs inputs = with_body(tee_inputs());
    for (joint::Setup& setup : inputs.weldment.setups) setup.X_DJ.translation.z() -= 2000.0;
    inputs.cell->positioner.tilt_centre.z() += 2000.0;
    const plan::Plan plan = quick_plan(inputs);
    int met = 0;
    for (const Arc& arc : arcs_of(plan)) {
      if (arc.pass->stance < 0) continue;
      CHECK(arc.pass->torch_meets == "faceplate");
      ++met;
    }
    CHECK(met >= 2);
  }

  TEST_CASE("for any pass, law: a fatter torch finds no room where a thinner one found none") {
    const planner::Inputs& inputs = planned_demo("boom_foot.xml").inputs;
    const plan::Plan thin = quick_plan(with_body(inputs, 30.0));
    const plan::Plan fat = quick_plan(with_body(inputs, 70.0));
    int blocked = 0;
    for (const Arc& arc : arcs_of(thin)) {
      if (arc.pass->torch_meets.empty()) continue;
      INFO(arc.seam->id, " pass ", arc.pass->pass.number);
      CHECK(pass_of(fat, arc.seam->id, arc.pass->pass.number).torch_meets != "");
      ++blocked;
    }
    CHECK(blocked > 0);
  }
}

}  // namespace seamturn::tests
