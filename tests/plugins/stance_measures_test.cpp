// SPDX-License-Identifier: MIT
// Pictures of stances measured with a ruler against the core's own positioner.
#include <doctest/doctest.h>

#include "outer_places.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/reach/torch_body.hpp"
#include "stance_ruler.hpp"

namespace seamturn {

namespace {

using plan::Plan;
using tests::DrawnStance;
using tests::Px;
using tests::Redrawn;
using tests::Ruler;

constexpr const char* metal = "#222222";
constexpr const char* fixture = "#8a8a8a";
constexpr const char* torch_blue = "#1f5fa8";
constexpr const char* weld_red = "#b3421a";

/// Ends of what is drawn: left, right, top, bottom.
struct Ends {
  double left = 1e9;
  double right = -1e9;
  double top = 1e9;
  double bottom = -1e9;
  void include(const Px& p) {
    left = std::min(left, p[0]);
    right = std::max(right, p[0]);
    top = std::min(top, p[1]);
    bottom = std::max(bottom, p[1]);
  }
};

void check_same(const Ends& drawn, const Ends& wanted, double slack_px) {
  CHECK(std::abs(drawn.left - wanted.left) < slack_px);
  CHECK(std::abs(drawn.right - wanted.right) < slack_px);
  CHECK(std::abs(drawn.top - wanted.top) < slack_px);
  CHECK(std::abs(drawn.bottom - wanted.bottom) < slack_px);
}

Ends ends_of(const std::vector<std::vector<Px>>& lines) {
  Ends ends;
  for (const std::vector<Px>& line : lines) {
    for (const Px& point : line) ends.include(point);
  }
  return ends;
}

std::string seam_group(const std::string& view, const std::string& seam) {
  return tests::between(view, "<g class=\"seam\" id=\"seam-" + seam + "\">", "</g>");
}

/// Places along a seam, frame J.
std::vector<geom::Vec3> along(const joint::Seam& seam) {
  REQUIRE(seam.path.has_value());
  constexpr int steps = 720;
  std::vector<geom::Vec3> places;
  const double length = geom::path_length_mm(*seam.path);
  for (int i = 0; i <= steps; ++i) {
    places.push_back(geom::path_station(*seam.path, length * i / steps).point);
  }
  return places;
}

void check_seam(const Ruler& ruler, const DrawnStance& drawn, const std::string& seam) {
  const geom::Pose X_WJ = tests::pose_WJ(*drawn.plan, *drawn.stance, drawn.stance->stance.axes);
  Ends wanted;
  double length = 0.0;
  geom::Vec3 before = geom::Vec3::Zero();
  const std::vector<geom::Vec3> places = along(tests::described_seam(*drawn.plan, seam));
  for (const geom::Vec3& place : places) {
    const geom::Vec3 here = X_WJ.point(place);
    wanted.include(ruler.page(here));
    if (&place != &places.front()) length += ruler.px(here - before);
    before = here;
  }
  const std::string group = seam_group(ruler.view(), seam);
  if (group.find("<circle") != std::string::npos) {  // seen end on
    CHECK(wanted.right - wanted.left + wanted.bottom - wanted.top < 3.1);
    CHECK(std::abs(tests::number_of(group, "cx") - 0.5 * (wanted.left + wanted.right)) < 0.1);
    CHECK(std::abs(tests::number_of(group, "cy") - 0.5 * (wanted.top + wanted.bottom)) < 0.1);
    return;
  }
  const auto lines = tests::lines_of(group);
  check_same(ends_of(lines), wanted, 0.1);
  CHECK(tests::drawn_length(lines) == doctest::Approx(length).epsilon(0.01));
}

/// The arrow heads of one colour in a group: their tips.
std::vector<Px> tips_of(const std::string& group, const std::string& colour) {
  std::vector<Px> tips;
  for (std::size_t at = group.find("<path"); at != std::string::npos;
       at = group.find("<path", at + 1)) {
    const std::string head = group.substr(at, group.find("/>", at) - at);
    if (head.find("fill=\"" + colour + "\"") == std::string::npos) continue;
    tips.push_back(tests::lines_of(head).at(0).at(0));
  }
  return tips;
}

/// The first pass of a seam that is laid in the stance.
const plan::PlannedPass& first_pass(const DrawnStance& drawn, const std::string& id) {
  const auto stance = static_cast<int>(drawn.stance - drawn.plan->stances.data());
  for (const plan::PlannedPass& pass : tests::seam_of(*drawn.plan, id).passes) {
    if (pass.stance == stance) return pass;
  }
  FAIL("no pass of ", id);
  return tests::seam_of(*drawn.plan, id).passes.front();
}

/// Some arrow head of travel lies from the tip of a torch the way the pass goes.
void check_travel(const std::string& group, const Px& tip, const Px& ahead) {
  const std::vector<Px> heads = tips_of(group, weld_red);
  CHECK(std::any_of(heads.begin(), heads.end(), [&](const Px& head) {
    const Px run = {head[0] - tip[0], head[1] - tip[1]};
    const Px way = {ahead[0] - tip[0], ahead[1] - tip[1]};
    const double along = run[0] * way[0] + run[1] * way[1];
    const double across = run[0] * way[1] - run[1] * way[0];
    return along > 0.0 && std::abs(across) < 0.05 * along + 0.1;
  }));
}

void check_torches(const DrawnStance& one) {
  const Ruler ruler(one);
  const std::string group = tests::between(ruler.view(), "<g class=\"torches\">", "</g>");
  const std::vector<Px> torches = tips_of(group, torch_blue);
  REQUIRE(torches.size() == one.stance->seams.size());
  for (std::size_t i = 0; i < torches.size(); ++i) {
    const plan::PlannedPass& pass = first_pass(one, one.stance->seams[i]);
    INFO(one.plan->weldment.title, " ", one.stance->id, " ", one.stance->seams[i]);
    std::vector<base::Angle> axes = one.stance->stance.axes;
    if (pass.roll_from) axes.back() = *pass.roll_from;
    const geom::Pose X_WJ = tests::pose_WJ(*one.plan, *one.stance, axes);
    const geom::Vec3 start = X_WJ.point(pass.points.front().point);
    const Px tip = ruler.page(start);
    CHECK(std::abs(torches[i][0] - tip[0]) < 0.1);
    CHECK(std::abs(torches[i][1] - tip[1]) < 0.1);
    const geom::Vec3 travel = X_WJ.direction(pass.points.front().travel);
    if (std::hypot(travel.x(), travel.z()) < 0.05) continue;  // seen end on
    check_travel(group, tip, ruler.page(start + 10.0 * travel));
  }
}

Ends wanted_ends(const Ruler& ruler,
                 const DrawnStance& drawn,
                 const std::vector<std::string>& present) {
  const geom::Pose X_WJ = tests::pose_WJ(*drawn.plan, *drawn.stance, drawn.stance->stance.axes);
  Ends ends;
  for (const joint::Member& member : drawn.plan->weldment.members) {
    if (std::find(present.begin(), present.end(), member.id) == present.end()) continue;
    tests::OuterPlaces outer;
    std::visit(outer, member.shape);
    for (const geom::Vec3& place : outer.places) {
      ends.include(ruler.page(X_WJ.point(member.X_JM.point(place))));
    }
  }
  return ends;
}

Ends metal_ends(const Ruler& ruler, const std::string& colour) {
  const std::string solids = tests::between(ruler.view(), "<g class=\"solids\">", "</g>");
  Ends ends;
  for (std::size_t at = solids.find("<path"); at != std::string::npos;
       at = solids.find("<path", at + 1)) {
    const std::string path = solids.substr(at, solids.find("/>", at) - at);
    if (path.find("stroke=\"" + colour + "\"") == std::string::npos) continue;
    ends = ends_of(tests::lines_of(path));
  }
  return ends;
}

}  // namespace

TEST_SUITE("plugins/stance_measures") {
  TEST_CASE("for any seam, cross: drawn where the core's positioner has it, all along") {
    int looked_at = 0;
    for (const DrawnStance& one : tests::drawn_stances()) {
      if (!tests::is_tilting(one)) continue;
      const Ruler ruler(one);
      for (const std::string& seam : one.stance->seams) {
        INFO(one.plan->weldment.title, " ", one.stance->id, " ", seam);
        check_seam(ruler, one, seam);
        ++looked_at;
      }
    }
    CHECK(looked_at > 50);
  }

  TEST_CASE("for any seam, cross: torch and travel stand where the first pass there begins") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      if (tests::is_tilting(one)) check_torches(one);
    }
  }

  TEST_CASE(
      "given a rolled ring wound on before its first pass, the torch stands where it is struck") {
    Plan plan = tests::hub().plan;
    for (plan::PlannedJoint& joint : plan.joints) {
      for (plan::PlannedSeam& seam : joint.seams) {
        if (seam.id != "R1") continue;
        seam.passes.front().roll_from = *seam.passes.front().roll_from - base::Angle::deg(40.0);
      }
    }
    const Redrawn redrawn(plan, "S03");
    check_torches(redrawn.drawn);
  }

  TEST_CASE("given the body of the torch, it is drawn to scale as it points") {
    Plan plan = tests::planned_demo("bracket.xml").plan;
    plan.cell->torch.body = cell::TorchBody{120.0, base::Angle::deg(40.0), 260.0, 50.0};
    for (plan::PlannedJoint& joint : plan.joints) {
      for (plan::PlannedSeam& seam : joint.seams) {
        seam.passes.front().headings = reach::Headings{base::Angle::deg(-105.0), base::Angle()};
      }
    }
    const Redrawn redrawn(plan, "S02");
    const Ruler ruler(redrawn.drawn);
    const plan::PlannedPass& pass = first_pass(redrawn.drawn, "J2");
    const geom::Pose X_WJ =
        tests::pose_WJ(plan, *redrawn.drawn.stance, redrawn.drawn.stance->stance.axes);
    const reach::TorchPose& start = pass.points.front();
    const geom::Vec3 bend = start.point - 120.0 * start.torch;
    const geom::Vec3 flange =
        bend +
        260.0 * reach::body_direction(start, base::Angle::deg(40.0), base::Angle::deg(-105.0));
    const std::string group = tests::between(ruler.view(), "<g class=\"torches\">", "</g>");
    const std::size_t at = group.find("stroke-width=\"3.5\"");
    REQUIRE(at != std::string::npos);
    const std::string line = group.substr(group.rfind("<line", at), at - group.rfind("<line", at));
    const Px from = ruler.page(X_WJ.point(bend));
    const Px to = ruler.page(X_WJ.point(flange));
    const std::array<double, 4> wanted = {from[0], from[1], to[0], to[1]};
    const std::array<const char*, 4> names = {"x1", "y1", "x2", "y2"};
    for (std::size_t i = 0; i < 4; ++i) {
      CHECK(std::abs(tests::number_of(line, names[i]) - wanted[i]) < 0.1);
    }
  }

  TEST_CASE("for any stance, cross: the members present are drawn as large as they are") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      if (!tests::is_tilting(one)) continue;
      INFO(one.plan->weldment.title, " ", one.stance->id);
      // Without fixtures, which hide what lies in their recesses.
      Plan bare = *one.plan;
      for (joint::Setup& setup : bare.weldment.setups) {
        for (joint::SetupSolid& solid : setup.solids) solid.size_mm.reset();
      }
      const Redrawn redrawn(bare, one.stance->id);
      const Ruler ruler(redrawn.drawn);
      // Of the last stage in which something is welded here.
      const plan::PlannedStage* last = nullptr;
      for (const plan::PlannedStage& stage : one.plan->stages) {
        for (const std::string& seam : one.stance->seams) {
          if (tests::seam_of(*one.plan, seam).stage == stage.id) last = &stage;
        }
      }
      REQUIRE(last != nullptr);
      check_same(metal_ends(ruler, metal), wanted_ends(ruler, one, last->present), 0.15);
    }
  }

  TEST_CASE("for any fixture with a size, cross: it hangs on the faceplate where the file says") {
    int looked_at = 0;
    for (const DrawnStance& one : tests::drawn_stances()) {
      if (!tests::is_tilting(one) || one.plan != &tests::hub().plan) continue;
      const Ruler ruler(one);
      const geom::Pose X_WD = turn::pose_WD(one.plan->cell->positioner, one.stance->stance.axes);
      const joint::SetupSolid& solid = tests::setup_of(*one.plan, one.stance->setup).solids.front();
      REQUIRE(solid.size_mm.has_value());
      Ends wanted;
      for (const geom::Vec3& corner :
           tests::box(solid.centre - 0.5 * *solid.size_mm, solid.centre + 0.5 * *solid.size_mm)) {
        wanted.include(ruler.page(X_WD.point(corner)));
      }
      INFO(one.stance->id);
      const Ends drawn = metal_ends(ruler, fixture);
      // The part may hide one end of it, never the lowest corner of a tilted one.
      CHECK(std::abs(drawn.bottom - wanted.bottom) < 0.15);
      CHECK(drawn.top > wanted.top - 0.15);
      CHECK(drawn.left > wanted.left - 0.15);
      CHECK(drawn.right < wanted.right + 0.15);
      ++looked_at;
    }
    CHECK(looked_at > 15);
  }

  TEST_CASE("given members of every shape, they are drawn as large as they are") {
    Plan plan = tests::planned_demo("bracket.xml").plan;
    plan.weldment.members[0].shape = joint::Bar{joint::BarShape::hexagon, 120.0, 120.0, 300.0};
    plan.weldment.members[1].shape =
        joint::Forging{{{80.0, 200.0, 200.0}, {60.0, 140.0, 90.0}, {70.0, 260.0, 260.0}}, 40.0};
    plan.weldment.members[2].shape = joint::Tube{180.0, 20.0, 150.0};
    plan.weldment.members[3].shape = joint::Bar{joint::BarShape::flat, 80.0, 30.0, 200.0};
    std::vector<std::string> all;
    for (const joint::Member& member : plan.weldment.members) all.push_back(member.id);
    for (const std::string stance : {"S01", "S02", "S03"}) {
      // Each by itself, so that none hides the ends of another.
      for (const std::string& id : all) {
        Plan one = plan;
        one.stages.front().present = {id};
        const Redrawn redrawn(one, stance);
        INFO(stance, " ", id);
        const Ruler ruler(redrawn.drawn);
        check_same(metal_ends(ruler, metal), wanted_ends(ruler, redrawn.drawn, {id}), 0.15);
      }
    }
  }

  TEST_CASE("given a tube seen from its end, outside and bore are drawn") {
    Plan plan = tests::planned_demo("bracket.xml").plan;
    // The gusset's own z lies along y: from the robot's right hand it is looked at from its end.
    plan.weldment.members[3].shape = joint::Tube{180.0, 20.0, 150.0};
    plan.stages.front().present = {plan.weldment.members[3].id};
    const Redrawn redrawn(plan, "S01");
    const Ruler ruler(redrawn.drawn);
    std::vector<double> widths_mm;
    for (const std::vector<Px>& line :
         tests::lines_of(tests::between(ruler.view(), "<g class=\"solids\">", "</g>"))) {
      const Ends ends = ends_of({line});
      widths_mm.push_back((ends.right - ends.left) / ruler.px_per_mm());
    }
    for (const double wanted : {180.0, 140.0}) {
      CHECK(std::any_of(widths_mm.begin(), widths_mm.end(), [&](double width) {
        return std::abs(width - wanted) < 0.5;
      }));
    }
  }

  TEST_CASE("given a closed seam of straight legs, it is drawn to its end") {
    Plan plan = tests::planned_demo("bracket.xml").plan;
    for (joint::Joint& joint : plan.weldment.joints) {
      for (joint::Seam& seam : joint.seams) {
        if (seam.id != "J2") continue;
        seam.path = geom::PolylinePath{{{20, 30, 15}, {140, 30, 60}, {90, 150, 15}}, true};
      }
    }
    const Redrawn redrawn(plan, "S02");
    check_seam(Ruler(redrawn.drawn), redrawn.drawn, "J2");
  }

  TEST_CASE("for any stance, cross: the axes stand where the core carries them") {
    Plan plan = tests::planned_demo("bracket.xml").plan;
    // A second axis beside the first: its line is carried along.
    plan.cell->positioner.axes[1].line =
        cell::AxisLine{geom::Vec3(0.28, 0.0, 0.96), geom::Vec3(180.0, 0.0, 1300.0)};
    for (const std::string stance : {"S01", "S02", "S03"}) {
      const Redrawn redrawn(plan, stance);
      const Ruler ruler(redrawn.drawn);
      const cell::AxisLine axis =
          turn::axis_lines_W(plan.cell->positioner, redrawn.drawn.stance->stance.axes)[1];
      const std::string group = tests::between(ruler.view(), "<g class=\"axes\">", "</g>");
      const std::string line = tests::between(group, "<line", "/>");
      const Px from = {tests::number_of(line, "x1"), tests::number_of(line, "y1")};
      const Px to = {tests::number_of(line, "x2"), tests::number_of(line, "y2")};
      const double length = std::hypot(to[0] - from[0], to[1] - from[1]);
      for (const double mm : {-200.0, 0.0, 300.0}) {
        const Px on = ruler.page(axis.at + mm * axis.along);
        const double off =
            ((to[0] - from[0]) * (on[1] - from[1]) - (to[1] - from[1]) * (on[0] - from[0])) /
            length;
        INFO(stance, " at ", mm);
        CHECK(std::abs(off) < 0.1);
      }
      CHECK(length > 100.0);
    }
  }

  TEST_CASE("for any stance, cross: the centre of gravity is that of part and fixture") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      if (!tests::is_tilting(one)) continue;
      const Ruler ruler(one);
      const std::string circle =
          tests::between(ruler.view().substr(ruler.view().find("<g class=\"centre-of-gravity\">")),
                         "<circle",
                         "/>");
      const geom::Pose X_WD = turn::pose_WD(one.plan->cell->positioner, one.stance->stance.axes);
      const Px wanted = ruler.page(X_WD.point(one.stance->load.centre));
      INFO(one.plan->weldment.title, " ", one.stance->id);
      CHECK(std::abs(tests::number_of(circle, "cx") - wanted[0]) < 0.1);
      CHECK(std::abs(tests::number_of(circle, "cy") - wanted[1]) < 0.1);
    }
  }

  TEST_CASE("for any side view, law: the floor lies inside it, below all that hangs there") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      for (const int number : {0, 1}) {
        const std::string view = tests::side_view(one.svg, number);
        const std::string paper = tests::between(view, "<rect", "/>");
        const double bottom = tests::number_of(paper, "y") + tests::number_of(paper, "height");
        const double floor_px =
            tests::number_of(tests::between(view, "<g class=\"floor\">", "/>"), "y1");
        INFO(one.plan->weldment.title, " ", one.stance->id, " view ", number);
        CHECK(floor_px < bottom);
        const auto metal_lines =
            tests::lines_of(tests::between(view, "<g class=\"solids\">", "</g>"));
        CHECK(ends_of(metal_lines).bottom < floor_px);
        CHECK(ends_of(metal_lines).top > tests::number_of(paper, "y"));
      }
    }
  }
}

}  // namespace seamturn
