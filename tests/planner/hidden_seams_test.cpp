// SPDX-License-Identifier: MIT
// Seams no torch finds a way to: tubes and covers, bores, boxes bolted on, and who is blamed.
// The widths are those of docs/methods/stages.md: from 30, 80, 160 and 420 mm off the weld a body
// of radius 4, 15, 35 and 110 mm.
#include <doctest/doctest.h>

#include <algorithm>
#include <numbers>

#include "planner/detail_build.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;
using planner::Inputs;
using planner::detail::HiddenSeam;
using planner::detail::StageWork;

joint::Member plate(const std::string& id, const Vec3& corner, const Vec3& size) {
  joint::Member member;
  member.id = id;
  member.shape = joint::Plate{size.x(), size.y(), size.z()};
  member.X_JM.translation = corner;
  return member;
}

joint::Joint joint_with(const std::string& id,
                        const std::string& member_1,
                        const std::string& member_2,
                        const geom::Path& path,
                        const Vec3& face) {
  joint::Joint joint;
  joint.id = id;
  joint.member_1 = member_1;
  joint.member_2 = member_2;
  joint::Seam seam;
  seam.id = id;
  seam.joint = id;
  seam.path = path;
  seam.face = face.normalized();
  seam.length_mm = geom::path_length_mm(path);
  joint.seams = {seam};
  return joint;
}

/// A tube stands on a plate, welded inside and outside round its foot.
Inputs tube_part(double bore_mm, double length_mm) {
  constexpr double wall_mm = 20.0;
  Inputs inputs;
  joint::Member tube;
  tube.id = "tube";
  tube.shape = joint::Tube{bore_mm + 2.0 * wall_mm, wall_mm, length_mm};
  inputs.weldment.members = {plate("bottom", {-500.0, -500.0, -20.0}, {1000.0, 1000.0, 20.0}),
                             tube};
  const auto ring = [](double radius_mm) {
    return geom::CirclePath{Vec3::Zero(), Vec3::UnitZ(), Vec3::UnitX(), radius_mm};
  };
  inputs.weldment.joints = {
      joint_with("in", "bottom", "tube", ring(bore_mm / 2.0), {-1.0, 0.0, 1.0}),
      joint_with("out", "bottom", "tube", ring(bore_mm / 2.0 + wall_mm), {1.0, 0.0, 1.0})};
  return inputs;
}

void cover(Inputs& inputs, const std::string& id, double from_x, double to_x, double z) {
  inputs.weldment.members.push_back(plate(id, {from_x, -500.0, z}, {to_x - from_x, 1000.0, 20.0}));
}

std::vector<HiddenSeam> hidden_in(const Inputs& inputs) {
  std::vector<base::Finding> findings;
  return planner::detail::find_hidden_seams(inputs,
                                            planner::detail::work_stages(inputs, findings).front());
}

/// "in by top, out by top"
std::string told(const std::vector<HiddenSeam>& hidden) {
  std::string text;
  for (const HiddenSeam& one : hidden) {
    text += (text.empty() ? "" : ", ") + one.seam->id + " by " + one.by;
  }
  return text;
}

bool hides(const std::vector<HiddenSeam>& hidden, const std::string& seam) {
  return std::any_of(
      hidden.begin(), hidden.end(), [&](const HiddenSeam& one) { return one.seam->id == seam; });
}

joint::Stage stage_of(const std::string& id, const std::vector<std::string>& members) {
  joint::Stage stage;
  stage.id = id;
  stage.setup = "table";
  joint::Operation fit;
  fit.id = "fit " + id;
  fit.kind = joint::OperationKind::fit;
  fit.members = members;
  stage.operations = {fit};
  return stage;
}

/// Plan with its stages and the findings of hidden seams, no clock.
plan::Plan checked(const Inputs& inputs) {
  plan::Plan plan;
  const auto stages = planner::detail::work_stages(inputs, plan.findings);
  planner::detail::list_build(stages, plan);
  planner::detail::check_hidden(inputs, stages, plan);
  return plan;
}

/// "stage: member closes seams" of all stages.
std::string closes(const plan::Plan& plan) {
  std::string text;
  for (const plan::PlannedStage& stage : plan.stages) {
    for (const plan::ClosedOff& closed : stage.closes) {
      text += (text.empty() ? "" : "; ") + stage.id + ": " + closed.member;
      for (const std::string& seam : closed.seams) text += " " + seam;
    }
  }
  return text;
}

/// A seam on the underside of two plates side by side, over a table 300 mm below.
Inputs underside() {
  Inputs inputs;
  inputs.weldment.members = {plate("one", {0.0, -200.0, 0.0}, {200.0, 400.0, 20.0}),
                             plate("two", {200.0, -200.0, 0.0}, {200.0, 400.0, 20.0})};
  inputs.weldment.joints = {joint_with("butt",
                                       "one",
                                       "two",
                                       geom::LinePath{{200.0, -150.0, 0.0}, {200.0, 150.0, 0.0}},
                                       {0.0, 0.0, -1.0})};
  joint::Setup setup;
  setup.id = "table";
  setup.X_DJ.rotation = geom::rotation_about(Vec3::UnitZ(), base::Angle::deg(90.0));
  setup.X_DJ.translation = {0.0, 0.0, 300.0};
  inputs.weldment.setups = {setup};
  return inputs;
}

Inputs moved(Inputs inputs, const geom::Pose& X) {
  for (joint::Member& member : inputs.weldment.members) member.X_JM = X * member.X_JM;
  for (joint::Joint& joint : inputs.weldment.joints) {
    joint::Seam& seam = joint.seams.front();
    auto& line = std::get<geom::LinePath>(*seam.path);
    line = {X.point(line.from), X.point(line.to)};
    seam.face = X.direction(seam.face);
  }
  return inputs;
}

/// Of plates along the axes: the same part seen in a mirror across x.
Inputs mirrored(Inputs inputs) {
  for (joint::Member& member : inputs.weldment.members) {
    Vec3& corner = member.X_JM.translation;
    corner.x() = -corner.x() - std::get<joint::Plate>(member.shape).length_mm;
  }
  for (joint::Joint& joint : inputs.weldment.joints) {
    joint::Seam& seam = joint.seams.front();
    auto& line = std::get<geom::LinePath>(*seam.path);
    line.from.x() = -line.from.x();
    line.to.x() = -line.to.x();
    seam.face.x() = -seam.face.x();
  }
  return inputs;
}

/// A tee among boxes thrown about it.
Inputs random_part(std::uint64_t seed) {
  base::Random random(seed);
  Inputs inputs;
  inputs.weldment.members = {plate("base", {-200.0, -200.0, -20.0}, {400.0, 400.0, 20.0}),
                             plate("web", {-200.0, -20.0, 0.0}, {400.0, 20.0, 200.0})};
  inputs.weldment.joints = {joint_with(
      "tee", "base", "web", geom::LinePath{{-60.0, 0.0, 0.0}, {60.0, 0.0, 0.0}}, {0.0, 1.0, 1.0})};
  for (int i = 0; i < 4; ++i) {
    const Vec3 size(
        random.between(100.0, 500.0), random.between(10.0, 200.0), random.between(10.0, 200.0));
    const Vec3 corner(
        random.between(-350.0, 100.0), random.between(30.0, 300.0), random.between(10.0, 300.0));
    inputs.weldment.members.push_back(plate("box" + std::to_string(i), corner, size));
  }
  return inputs;
}

}  // namespace

TEST_SUITE("planner/hidden_seams") {
  TEST_CASE("given a tube closed by plates, its inside weld is hidden, its outside weld is not") {
    // closed-form: a closed space has no way out; the open end of 460 mm lets all widths out
    Inputs inputs = tube_part(460.0, 400.0);
    CHECK(told(hidden_in(inputs)).empty());
    cover(inputs, "top", -500.0, 500.0, 400.0);
    CHECK(told(hidden_in(inputs)) == "in by top");
    // pushed aside, its edge 370 mm beyond the tube's, it closes nothing
    inputs.weldment.members.pop_back();
    cover(inputs, "aside", -900.0, -600.0, 400.0);
    CHECK(told(hidden_in(inputs)) == "");
  }

  TEST_CASE("a bore of 200 mm hides the weld at its bottom, one of 600 mm does not") {
    // closed-form: 420 mm from the weld the arm, 110 mm in radius, is still in a bore 600 mm deep
    // and wider than it; a bore of 100 mm radius has no room. In 300 mm radius a way 65 deg steep
    // is then 420 cos 65 deg = 177 mm off the wall.
    CHECK(hides(hidden_in(tube_part(200.0, 600.0)), "in"));
    CHECK_FALSE(hides(hidden_in(tube_part(200.0, 600.0)), "out"));
    CHECK_FALSE(hides(hidden_in(tube_part(600.0, 600.0)), "in"));
    // a bore shorter than 30 mm has nothing in it but the nozzle's mouth
    CHECK_FALSE(hides(hidden_in(tube_part(200.0, 20.0)), "in"));
  }

  TEST_CASE("given a box of the set-up under a seam, it hides it, beside it or without size not") {
    // In the faceplate's frame, turned a quarter: the seam lies at (0 +- 150, 200, 300).
    const auto with = [](const Vec3& centre, const std::optional<Vec3>& size_mm) {
      Inputs inputs = underside();
      inputs.weldment.setups.front().solids = {{"riser", 10.0, centre, size_mm}};
      return told(hidden_in(inputs));
    };
    const Vec3 box(100.0, 100.0, 200.0);
    CHECK(told(hidden_in(underside())).empty());
    CHECK(with({0.0, 200.0, 190.0}, box) == "butt by riser");  // its top 10 mm below the seam
    CHECK(with({0.0, 200.0, 190.0}, std::nullopt).empty());
    CHECK(with({200.0, 0.0, 190.0}, box) == "");  // where the seam would lie unturned
    CHECK(with({0.0, 800.0, 190.0}, box).empty());
    // A fixture that walls everything off farther out than the part reaches: 2 m wide, 250 mm deep
    CHECK(with({0.0, 200.0, -100.0}, Vec3(4000.0, 4000.0, 100.0)) == "butt by riser");
  }

  TEST_CASE("given a deep slot under a seam, an arm of 110 mm radius needs 110 mm on both sides") {
    // closed-form: straight down the slot is a free way from half its width above the radius on
    const auto slot_of = [](double half_width_mm) {
      Inputs inputs = underside();
      for (const double side : {-1.0, 1.0}) {
        inputs.weldment.setups.front().solids.push_back(
            {"riser",
             10.0,
             Vec3(0.0, 200.0 + side * (half_width_mm + 500.0), -220.0),
             Vec3(4000.0, 1000.0, 1000.0)});
      }
      return told(hidden_in(inputs));
    };
    CHECK(slot_of(109.0) == "butt by riser");
    CHECK(slot_of(111.0) == "");
  }

  TEST_CASE("for random parts, law: moved or mirrored, the same seams are hidden") {
    int closed = 0;
    int open = 0;
    geom::Pose X;
    X.rotation = geom::rotation_about(Vec3(1.0, 2.0, -1.0), base::Angle::deg(77.0));
    X.translation = {100.0, -50.0, 30.0};
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      const Inputs inputs = random_part(seed);
      const std::string as_is = told(hidden_in(inputs));
      INFO("seed ", seed);
      CHECK(told(hidden_in(moved(inputs, X))) == as_is);
      CHECK(told(hidden_in(mirrored(inputs))) == as_is);
      ++(as_is.empty() ? open : closed);
    }
    CHECK(open > 5);
    CHECK(closed > 5);
  }

  TEST_CASE("for random parts, law: a member more frees no seam") {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      Inputs inputs = random_part(seed);
      const bool before = hides(hidden_in(inputs), "tee");
      inputs.weldment.members.push_back(plate("more", {-100.0, 80.0, 150.0}, {300.0, 200.0, 15.0}));
      INFO("seed ", seed);
      CHECK((!before || hides(hidden_in(inputs), "tee")));
    }
  }

  TEST_CASE(
      "a seam welded before is closed off, one welded after is an error, unstaged a warning") {
    Inputs inputs = tube_part(460.0, 400.0);
    cover(inputs, "top", -500.0, 500.0, 400.0);
    joint::Setup table;
    table.id = "table";
    inputs.weldment.setups = {table};
    const plan::Plan without = checked(inputs);
    REQUIRE(without.findings.size() == 1);
    CHECK(without.findings.front().code == "stage.seam.hidden");
    CHECK(without.findings.front().severity == base::Severity::warning);
    inputs.weldment.stages = {stage_of("open", {"bottom", "tube"}), stage_of("shut", {"top"})};
    const plan::Plan right = checked(inputs);
    CHECK(right.findings.empty());
    CHECK(closes(right) == "shut: top in");
    inputs.weldment.joints.front().stage = "shut";
    const plan::Plan late = checked(inputs);
    REQUIRE(late.findings.size() == 1);
    CHECK(late.findings.front().code == "stage.seam.hidden");
    CHECK(late.findings.front().severity == base::Severity::error);
    CHECK(late.findings.front().text.find("member top closes them off") != std::string::npos);
    CHECK(closes(late).empty());
  }

  TEST_CASE("given two covers in two stages, the one that leaves no way is named, once") {
    // A rim leaves a round hole of 360 mm, and a roof high above closes the few ways through it: 65
    // deg steep, the arm comes through the hole 420 mm off the weld with 27 mm to spare beside its
    // axis.
    Inputs inputs = tube_part(460.0, 400.0);
    joint::Member rim;
    rim.id = "rim";
    rim.shape = joint::Ring{1000.0, 360.0, 20.0};
    rim.X_JM.translation = {0.0, 0.0, 400.0};
    inputs.weldment.members.push_back(rim);
    CHECK(told(hidden_in(inputs)) == "");
    inputs.weldment.members.push_back(
        plate("plug", {-1500.0, -1500.0, 1000.0}, {3000.0, 3000.0, 20.0}));
    // within the tube, below both: it stops many ways that are closed already
    inputs.weldment.members.push_back(
        plate("after", {-150.0, -150.0, 200.0}, {300.0, 300.0, 20.0}));
    joint::Setup table;
    table.id = "table";
    inputs.weldment.setups = {table};
    inputs.weldment.stages = {stage_of("a", {"bottom", "tube"}),
                              stage_of("b", {"rim"}),
                              stage_of("c", {"plug"}),
                              stage_of("d", {"after"})};
    CHECK(closes(checked(inputs)) == "c: plug in");
    // Welded last, the one that closed it is still to blame, not what came after.
    inputs.weldment.joints.front().stage = "d";
    const plan::Plan late = checked(inputs);
    REQUIRE(late.findings.size() == 1);
    CHECK(late.findings.front().text.find("member plug closes") != std::string::npos);
  }

  TEST_CASE("a solid of one set-up closes nothing off for good, whatever members are called") {
    Inputs inputs = underside();
    joint::Setup bare = inputs.weldment.setups.front();
    bare.id = "bare";
    inputs.weldment.setups.front().solids = {
        {"riser", 10.0, Vec3(0.0, 200.0, 190.0), Vec3(100.0, 100.0, 200.0)}};
    inputs.weldment.setups.push_back(bare);
    inputs.weldment.stages = {stage_of("first", {"one", "two"}), stage_of("second", {})};
    inputs.weldment.stages.front().setup = "bare";
    CHECK(closes(checked(inputs)).empty());
    CHECK(checked(inputs).findings.empty());
    std::swap(inputs.weldment.stages.front().setup, inputs.weldment.stages.back().setup);
    const plan::Plan plan = checked(inputs);
    REQUIRE(plan.findings.size() == 1);
    CHECK(plan.findings.front().text.find("the riser closes them off") != std::string::npos);
    // A member may be called so, in a part without any set-up.
    Inputs named = tube_part(460.0, 400.0);
    cover(named, "riser", -500.0, 500.0, 400.0);
    const plan::Plan told_plan = checked(named);
    REQUIRE(told_plan.findings.size() == 1);
    CHECK(told_plan.findings.front().text.find("member riser closes them off") !=
          std::string::npos);
  }
}

}  // namespace seamturn::tests
