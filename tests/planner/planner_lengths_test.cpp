// SPDX-License-Identifier: MIT
// Plans of seams that are not simply welded from end to end: stretches, corners, arcs, returns.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "planned_demos.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/plan_xml.hpp"

namespace seamturn::tests {

namespace {

using base::Angle;
using geom::Vec3;

constexpr double steel_kg_mm3 = 7.85e-6;

const Plan& lengths_plan() {
  static const Plan plan =
      planner::make_plan(io::read_inputs(repository() / "tests/good/lengths.xml"));
  return plan;
}

const plan::PlannedSeam& seam(const std::string& id) {
  for (const plan::PlannedJoint& joint : lengths_plan().joints) {
    for (const plan::PlannedSeam& candidate : joint.seams) {
      if (candidate.id == id) return candidate;
    }
  }
  FAIL("no seam ", id);
  return lengths_plan().joints.front().seams.front();
}

/// x of the places where an element begins and ends, rising.
std::vector<double> element_ends_x(const plan::PlannedSeam& seam) {
  std::vector<double> xs;
  for (const reach::TorchPose& pose : seam.passes.front().points) xs.push_back(pose.point.x());
  std::sort(xs.begin(), xs.end());
  return xs;
}

/// The tee on a headstock, its second seam an arc about the headstock's axis with that much sweep.
planner::Inputs arc_about_headstock(Angle sweep) {
  planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee_headstock.xml");
  joint::Seam& seam = inputs.weldment.joints.back().seams.front();
  seam.path = geom::ArcPath{Vec3(200, 100, 50), Vec3::UnitX(), Vec3::UnitY(), 30.0, sweep};
  seam.length_mm = geom::path_length_mm(*seam.path);
  seam.welded = {};
  seam.wall_1 = Vec3::UnitX();
  seam.wall_2 = Vec3::UnitY();
  seam.face = (seam.wall_1 + seam.wall_2).normalized();
  return inputs;
}

}  // namespace

TEST_SUITE("planner/lengths") {
  TEST_CASE("given 3 x 40 (80) staggered, metal, arc and arc starts count the elements only") {
    for (const char* id : {"J1.a", "J1.b"}) {
      const plan::PlannedSeam& side = seam(id);
      CHECK(side.length_mm == doctest::Approx(380.0));
      CHECK(side.welded_mm == doctest::Approx(120.0));
      CHECK(side.arc_starts == 3);
      CHECK(side.metal_kg == doctest::Approx(18.0 * 120.0 * steel_kg_mm3));
      const pass::Pass& pass = side.passes.front().pass;
      CHECK(pass.arc_time_s == doctest::Approx(120.0 / pass.travel_mm_s));
    }
  }

  TEST_CASE("given 3 x 40 (80) staggered, the elements of one side face the gaps of the other") {
    // closed-form: both sides reach 280 + 60 = 340 of 380 mm; 20 mm stay at each end.
    const double first[] = {30, 70, 150, 190, 270, 310};
    const auto a = element_ends_x(seam("J1.a"));
    const auto b = element_ends_x(seam("J1.b"));
    REQUIRE(a.size() == 6);
    REQUIRE(b.size() == 6);
    for (std::size_t i = 0; i < 6; ++i) {
      CHECK(a[i] == doctest::Approx(first[i]));
      CHECK(b[i] == doctest::Approx(first[i] + 60.0));
    }
  }

  TEST_CASE("given an intermittent pass, each element strikes the arc and puts it out") {
    const auto& points = seam("J1.a").passes.front().points;
    for (std::size_t i = 0; i < points.size(); ++i) {
      CHECK(points[i].arc == (i % 2 == 0 ? reach::Arc::on : reach::Arc::off));
    }
  }

  TEST_CASE("given an intermittent seam, the clock holds its arc starts and the ways between") {
    // closed-form: 3 x (0.8 + 0.7) s, and twice up 80 mm, on 80 mm and down 80 mm at 0.8 m/s and
    // 2.5 m/s2: shorter than the 256 mm of a full trapezoid, so 2 sqrt(80 / 2500) s each.
    const double hop_s = 3.0 * 2.0 * std::sqrt(80.0 / 2500.0);
    const double once_s = 3.0 * 1.5 + 2.0 * hop_s;
    double other_s = 0.0;
    for (const plan::PlannedEvent& event : lengths_plan().timeline) {
      if (event.kind == timeline::SecondKind::other && event.seam == "J1.a") {
        other_s += event.end_s - event.start_s;
      }
    }
    const double passes = static_cast<double>(seam("J1.a").passes.size());
    CHECK(other_s == doctest::Approx(passes * once_s));
  }

  TEST_CASE("given a post welded all round with an overlap, every leg lies in PB and is listed") {
    const plan::PlannedSeam& round = seam("J2");
    CHECK(round.position == process::WeldPosition::pb);
    CHECK(round.turned);
    CHECK(round.welded_mm == doctest::Approx(150.0 + 10.0));
    CHECK(round.metal_kg == doctest::Approx(18.0 * 160.0 * steel_kg_mm3));
    const auto& points = round.passes.front().points;
    REQUIRE(points.size() == 10);  // start, four corners twice, end past the start
    CHECK((points.front().point - Vec3(470, 142.5, 25)).head<2>().norm() < 10.0);
    CHECK((points.back().point - points.front().point).norm() == doctest::Approx(10.0));
  }

  TEST_CASE("given a half circle, its metal is that of the centroid's half circle") {
    // closed-form, Pappus: 12.5 mm2, centroid a third of 5 mm out from the pipe of 30 mm radius.
    const plan::PlannedSeam& half = seam("J3");
    CHECK(half.length_mm == doctest::Approx(30.0 * std::numbers::pi));
    CHECK(half.metal_kg ==
          doctest::Approx(12.5 * (30.0 + 5.0 / 3.0) * std::numbers::pi * steel_kg_mm3));
    CHECK(half.passes.front().points.size() == 7);
  }

  TEST_CASE("given end returns of 12 mm, both are welded and the path is as long as before") {
    CHECK(seam("J4").length_mm == doctest::Approx(100.0));
    CHECK(seam("J4").welded_mm == doctest::Approx(124.0));
  }

  TEST_CASE("given the plan, its totals tell paths and what is welded of them") {
    const double round = (30.0 + 70.0) * std::numbers::pi;  // half circle, and ring of the boss
    const double paths = 380.0 * 2 + 150.0 + round + 100.0 + 16.0;
    const double welded = 120.0 * 2 + 160.0 + round + 124.0 + 16.0;
    CHECK(lengths_plan().totals.length_mm == doctest::Approx(paths));
    CHECK(lengths_plan().totals.welded_mm == doctest::Approx(welded));
    const std::string xml = io::plan_xml(lengths_plan());
    CHECK(xml.find("notation=\"3 x 40 (80) staggered\"") != std::string::npos);
    CHECK(xml.find("<stretch from_mm=\"20\" to_mm=\"60\"") != std::string::npos);
  }

  TEST_CASE("given a weld a headstock cannot lay level, the refusal says how near it comes") {
    // closed-form: a fillet in PA whose travel stands 25 deg off the axis. Its face leans sin 25 /
    // sqrt 2 along the axis, so that its travel rises by asin(sin 25 cos 25 / sqrt(2 - sin2 25)),
    // 16.5 deg; 3 deg of slope are allowed.
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee_headstock.xml");
    std::erase_if(inputs.library.tolerances, [](const position::WorkingTolerance& row) {
      return row.position != process::WeldPosition::pa;
    });
    geom::Mat3& R_DJ = inputs.weldment.setups.front().X_DJ.rotation;
    R_DJ = geom::rotation_about(Vec3::UnitZ(), Angle::deg(25.0)) * R_DJ;
    try {
      (void)planner::make_plan(inputs);
      FAIL("a weld 16 deg off level was placed");
    } catch (const base::InputError& error) {
      REQUIRE_FALSE(error.findings().empty());
      const base::Finding& refused = error.findings().front();
      CHECK(refused.code == "turn.seam.no_stance");
      CAPTURE(refused.text);
      CHECK(refused.text.find("16.5 deg and bank") != std::string::npos);
      CHECK(refused.text.find("(3F), 13.5 deg beyond the working tolerance of PA") !=
            std::string::npos);
    }
  }

  TEST_CASE("given a weld that hangs upside down, the nearest is where the tilt ends") {
    // closed-form: a face that looks down comes up by the tilt; the table tilts 135 deg, so 45 are
    // lacking, of which the tolerance of PA takes 8.
    planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "J1"; });
    geom::Mat3& R_DJ = inputs.weldment.setups.front().X_DJ.rotation;
    R_DJ = geom::rotation_about(Vec3::UnitX(), Angle::deg(180.0)) * R_DJ;
    try {
      (void)planner::make_plan(inputs);
      FAIL("a weld upside down was placed");
    } catch (const base::InputError& error) {
      REQUIRE_FALSE(error.findings().empty());
      const base::Finding& refused = error.findings().front();
      CAPTURE(refused.text);
      CHECK(refused.code == "turn.seam.no_stance");
      CHECK(refused.text.find("permitted position (PA)") != std::string::npos);
      CHECK(refused.text.find("the nearest is tilt 135.0 deg") != std::string::npos);
      CHECK(refused.text.find("bank 45.0 deg, PC (2G), 37.0 deg beyond") != std::string::npos);
    }
  }

  TEST_CASE("for an arc that cannot be laid level, law: the worst station decides") {
    // Tolerances of the library: 2 deg downhill, 3 deg uphill; half the sweep is the worst slope.
    CHECK(planner::make_plan(arc_about_headstock(Angle::deg(3.9))).not_turned.empty());
    try {
      (void)planner::make_plan(arc_about_headstock(Angle::deg(8.0)));
      FAIL("an arc of 8 deg was placed");
    } catch (const base::InputError& error) {
      REQUIRE_FALSE(error.findings().empty());
      CHECK(error.findings().front().code == "turn.seam.no_stance");
    }
  }
}

}  // namespace seamturn::tests
