// SPDX-License-Identifier: MIT
#include "seamturn/pass/nozzle_access.hpp"

#include "oracle.hpp"
#include "pass/pass_fixture.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {
namespace {

using base::Angle;
using base::Random;
using pass::NozzleWall;

/// A section, one hand-made pass at the root, a nozzle 22 mm wide, its tip 3 mm inside.
struct Setup {
  section::WeldSection section;
  std::vector<pass::Pass> passes;
  process::Nozzle nozzle{22.0, 3.0, 15.0, 25.0};
  double due_mm = 0.0;
  Angle left_rise;
  Angle right_rise;

  [[nodiscard]] pass::NozzleAccess look() const {
    pass::NozzleAccessRequest request;
    request.section = &section;
    request.passes = passes;
    request.nozzle = nozzle;
    request.clearance_mm = due_mm;
    request.left_rise = left_rise;
    request.right_rise = right_rise;
    return pass::find_nozzle_access(request);
  }
};

pass::Pass pass_at(section::Point aim, Angle work_angle, double tip_distance_mm) {
  pass::Pass pass;
  pass.number = 1;
  pass.aim = aim;
  pass.work_angle = work_angle;
  pass.tip_distance_mm = tip_distance_mm;
  pass.settings = "row";
  return pass;
}

Setup fillet_setup(Angle work_angle) {
  Setup setup;
  setup.section = fillet_section(8.0, 8.0);
  setup.passes = {pass_at({}, work_angle, 18.0)};
  return setup;
}

/// Plate 40, gap 3, root face 2, 60 deg; nozzle of 20 mm.
Setup vee_setup(double half_deg = 30.0) {
  Setup setup;
  setup.section = groove_section({40.0, 3.0, 2.0, half_deg, half_deg, 2.0, 1.0});
  setup.passes = {pass_at({}, Angle(), 18.0)};
  setup.nozzle.outer_diameter_mm = 20.0;
  return setup;
}

Expected by_hand(double value, double tolerance) {
  return {value, tolerance, Origin::closed_form, "plane geometry, by hand"};
}

Setup random_setup(Random& random) {
  Setup setup;
  const double lean_deg = random.between(-25.0, 25.0);
  if (random.unit() < 0.4) {
    setup.section = fillet_section(8.0, 8.0, random.between(60.0, 135.0));
    setup.passes = {pass_at({}, Angle::deg(lean_deg), random.between(12.0, 25.0))};
  } else {
    const double thickness_mm = random.between(5.0, 60.0);
    const double left_deg = random.unit() < 0.3 ? 0.0 : random.between(2.0, 35.0);
    setup.section = groove_section({thickness_mm,
                                    random.between(0.5, 8.0),
                                    random.between(0.0, 2.0),
                                    left_deg,
                                    random.between(2.0, 45.0),
                                    0.0,
                                    0.0});
    const double aim_y_mm = random.between(0.0, 0.9) * thickness_mm;
    setup.passes = {pass_at({0.0, aim_y_mm}, Angle::deg(lean_deg), random.between(12.0, 25.0))};
    if (random.unit() < 0.3) setup.left_rise = Angle::deg(90.0);
  }
  setup.nozzle.outer_diameter_mm = random.between(10.0, 26.0);
  setup.nozzle.recess_mm = random.between(-2.0, 6.0);
  setup.due_mm = random.between(0.0, 2.0);
  return setup;
}

/// The least of the greater distance over points 0.005 mm apart on one wall.
double sampled_mm(const Setup& setup, section::Point from, section::Point to, double side) {
  const pass::Pass& pass = setup.passes.front();
  const double sine = std::sin(pass.work_angle.rad());
  const double cosine = std::cos(pass.work_angle.rad());
  const double mouth_mm = pass.tip_distance_mm - setup.nozzle.recess_mm;
  const double length_mm = std::hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
  const int steps = static_cast<int>(length_mm / 0.005) + 1;
  double least_mm = 1e9;
  for (int i = 0; i <= steps; ++i) {
    const double t = static_cast<double>(i) / steps;
    const double x_mm = from.x_mm + t * (to.x_mm - from.x_mm) - pass.aim.x_mm;
    const double y_mm = from.y_mm + t * (to.y_mm - from.y_mm) - pass.aim.y_mm;
    const double beside_mm =
        side * (x_mm * cosine - y_mm * sine) - 0.5 * setup.nozzle.outer_diameter_mm;
    const double below_mm = mouth_mm - (x_mm * sine + y_mm * cosine);
    least_mm = std::min(least_mm, std::max(beside_mm, below_mm));
  }
  return least_mm;
}

double sampled_mm(const Setup& setup) {
  const auto& profile = setup.section.profile;
  double least_mm = 1e9;
  for (const double side : {-1.0, 1.0}) {
    const auto at = [&](std::size_t i) {
      return section::Point{side > 0.0 ? profile[i].right_mm : profile[i].left_mm, profile[i].y_mm};
    };
    if (setup.section.is_fillet) {
      const section::Point toe = at(1);
      least_mm =
          std::min(least_mm, sampled_mm(setup, {}, {20.0 * toe.x_mm, 20.0 * toe.y_mm}, side));
      continue;
    }
    for (std::size_t i = 1; i < profile.size(); ++i) {
      least_mm = std::min(least_mm, sampled_mm(setup, at(i - 1), at(i), side));
    }
    const double rise = side > 0.0 ? setup.right_rise.rad() : setup.left_rise.rad();
    const section::Point edge = at(profile.size() - 1);
    least_mm = std::min(
        least_mm,
        sampled_mm(setup,
                   edge,
                   {edge.x_mm + side * 150.0 * std::cos(rise), edge.y_mm + 150.0 * std::sin(rise)},
                   side));
  }
  return least_mm;
}

}  // namespace

TEST_SUITE("pass/nozzle_access") {
  TEST_CASE(
      "given a fillet at 90 deg and the torch on its bisector, half of mouth less radius is "
      "clear") {
    Setup setup = fillet_setup(Angle());
    setup.due_mm = 1.0;
    const auto access = setup.look();
    // Mouth 15 mm above the root. A plate point as far along as beside: (15 + 11) / 2 = 13 mm,
    // 2 mm from the side and from the mouth alike.
    check_expected("clearance", access.clearance_mm, by_hand(2.0, 1e-9));
    // Plates at 45 deg: 14 mm up, 1 mm below the mouth, they are 14 mm off: (14 - 1) x 2.
    check_expected("slim", access.slim_diameter_mm.value(), by_hand(26.0, 1e-9));
    // 12 mm off, they are 12 mm up: mouth at 13, tip 3 behind it.
    check_expected("stick-out", access.stick_out_mm.value(), by_hand(16.0, 1e-9));
    CHECK(access.is_reached);
    CHECK(access.findings.empty());
  }

  TEST_CASE("given a torch 12 deg off the bisector of a fillet, it runs into the nearer plate") {
    Setup setup = fillet_setup(Angle::deg(-12.0));
    const auto access = setup.look();
    // Nearer plate 33 deg off the torch: (15 + 11) sin 33 / (sin 33 + cos 33) - 11 = -0.763.
    check_expected("clearance", access.clearance_mm, by_hand(-0.763, 5e-4));
    CHECK(access.passes[0].wall == NozzleWall::left_plate);
    CHECK_FALSE(access.is_reached);
    REQUIRE(access.findings.size() == 1);
    CHECK(access.findings[0].code == "pass.nozzle.no_access");
    CHECK(access.findings[0].text.find("runs 0.8 mm into the left plate") != std::string::npos);
    CHECK_FALSE(access.included.has_value());  // a fillet's plates stand where they stand
  }

  TEST_CASE(
      "given a V of 60 deg, ways out are the depth by tangent, the slim nozzle and the angle") {
    const auto access = vee_setup().look();
    // Faces: x = 1.5 + (y - 2) tan 30. Mouth at 15, radius 10.
    // As far beside as below: y = (15 + 10 - 1.5 + 2 tan 30) / (1 + tan 30) = 15.6305.
    check_expected("clearance", access.clearance_mm, by_hand(-0.6305, 5e-5));
    // 10 mm wide at y = 2 + 8.5 / tan 30 = 16.722, tip 3 behind.
    check_expected("stick-out", access.stick_out_mm.value(), by_hand(19.722, 5e-4));
    // Width at y = 15: 2 (1.5 + 13 tan 30) = 18.011.
    check_expected("slim", access.slim_diameter_mm.value(), by_hand(18.011, 5e-4));
    // tan = 8.5 / 13: 33.179 deg each.
    check_expected("included", access.included.value().deg(), by_hand(66.358, 5e-3));
    REQUIRE(access.findings.size() == 1);
    const std::string& text = access.findings[0].text;
    CHECK(text.find("a slim nozzle of at most 18.0 mm") != std::string::npos);
    CHECK(text.find("an included angle of at least 66.4 deg") != std::string::npos);
    CHECK(text.find("a stick-out of at least 19.7 mm with settings of its own") !=
          std::string::npos);
  }

  TEST_CASE(
      "given a stick-out just at and just below the least, the V is reached and not reached") {
    Setup setup = vee_setup();
    setup.passes[0].tip_distance_mm = 19.723;
    CHECK(setup.look().is_reached);
    setup.passes[0].tip_distance_mm = 19.721;
    CHECK_FALSE(setup.look().is_reached);
  }

  TEST_CASE("given a thin plate, the mouth stays above it and the height over the edge is clear") {
    Setup setup = vee_setup();
    setup.section = groove_section({10.0, 3.0, 2.0, 30.0, 30.0, 2.0, 1.0});
    check_expected("clearance", setup.look().clearance_mm, by_hand(5.0, 1e-9));
  }

  TEST_CASE("given a narrow gap of upright faces, no angle and no stick-out within 100 mm helps") {
    Setup setup;
    setup.section = groove_section({600.0, 14.0, 0.0, 0.0, 0.0, 0.0, 0.0});
    setup.passes = {pass_at({}, Angle(), 18.0)};
    const auto access = setup.look();
    check_expected("clearance", access.clearance_mm, by_hand(-4.0, 1e-9));
    check_expected("slim", access.slim_diameter_mm.value(), by_hand(14.0, 1e-9));
    CHECK_FALSE(access.stick_out_mm.has_value());
    CHECK_FALSE(access.included.has_value());
    CHECK(access.findings[0].text.find("no wider angle helps, no stick-out helps") !=
          std::string::npos);
  }

  TEST_CASE("given a bevel in a tee, the upright member is in the way where a level plate is not") {
    Setup setup;
    setup.section = groove_section({12.0, 3.0, 0.0, 0.0, 45.0, 0.0, 0.0});
    setup.passes = {pass_at({0.0, 10.0}, Angle(), 18.0)};
    CHECK(setup.look().is_reached);
    setup.left_rise = Angle::deg(90.0);
    const auto access = setup.look();
    CHECK_FALSE(access.is_reached);
    CHECK(access.passes[0].wall == NozzleWall::left_plate);
    // 1.5 mm of the gap on this side, radius 11.
    check_expected("clearance", access.clearance_mm, by_hand(-9.5, 1e-9));
  }

  TEST_CASE(
      "given a tip distance outside the nozzle's range, a finding names the row and the range") {
    Setup setup = fillet_setup(Angle());
    setup.passes[0].tip_distance_mm = 25.0;
    CHECK(setup.look().findings.empty());
    setup.passes[0].tip_distance_mm = 25.1;
    const auto access = setup.look();
    REQUIRE(access.findings.size() == 1);
    CHECK(access.findings[0].code == "pass.nozzle.stick_out");
    CHECK(access.findings[0].text.find("25.1 mm off the work, the nozzle is for 15.0 to 25.0 mm") !=
          std::string::npos);
  }

  TEST_CASE("for any groove or fillet, the clearance is that of points sampled along the walls") {
    Random random(base::named_seed(7, "pass/nozzle/sampled"));
    int collides = 0;
    for (int round = 0; round < 150; ++round) {
      INFO("named_seed(7, pass/nozzle/sampled), round " << round);
      const Setup setup = random_setup(random);
      const auto access = setup.look();
      CHECK(access.clearance_mm == doctest::Approx(sampled_mm(setup)).epsilon(0.006));
      CHECK(std::abs(access.clearance_mm - sampled_mm(setup)) <= 0.005);
      collides += access.is_reached ? 0 : 1;
    }
    CHECK(collides > 30);
    CHECK(collides < 120);
  }

  TEST_CASE(
      "for any groove or fillet, law: a smaller nozzle or a longer stick-out never has less room") {
    Random random(base::named_seed(7, "pass/nozzle/laws"));
    for (int round = 0; round < 500; ++round) {
      INFO("named_seed(7, pass/nozzle/laws), round " << round);
      Setup setup = random_setup(random);
      const double clearance_mm = setup.look().clearance_mm;
      setup.nozzle.outer_diameter_mm -= random.between(0.0, 8.0);
      const double slim_mm = setup.look().clearance_mm;
      CHECK(slim_mm >= clearance_mm - 1e-9);
      setup.passes[0].tip_distance_mm += random.between(0.0, 8.0);
      CHECK(setup.look().clearance_mm >= slim_mm - 1e-9);
    }
  }

  TEST_CASE("for any V, law: a wider angle never has less room, and the angle told is the least") {
    Random random(base::named_seed(7, "pass/nozzle/angle"));
    int told = 0;
    for (int round = 0; round < 300; ++round) {
      INFO("named_seed(7, pass/nozzle/angle), round " << round);
      const double half_deg = random.between(5.0, 35.0);
      Setup setup = vee_setup(half_deg);
      setup.due_mm = random.between(0.0, 2.0);
      const auto access = setup.look();
      const double wider_deg = half_deg + random.between(0.0, 10.0);
      Setup wide = vee_setup(wider_deg);
      CHECK(wide.look().clearance_mm >= access.clearance_mm - 1e-9);
      if (!access.included) continue;
      ++told;
      wide = vee_setup(0.5 * access.included->deg() + 0.01);
      wide.due_mm = setup.due_mm;
      CHECK(wide.look().is_reached);
      wide = vee_setup(0.5 * access.included->deg() - 0.01);
      wide.due_mm = setup.due_mm;
      CHECK_FALSE(wide.look().is_reached);
    }
    CHECK(told > 100);
  }

  TEST_CASE("for any collision, law: the slim nozzle and the stick-out told just clear") {
    Random random(base::named_seed(7, "pass/nozzle/ways"));
    int slim = 0;
    int longer = 0;
    for (int round = 0; round < 500; ++round) {
      INFO("named_seed(7, pass/nozzle/ways), round " << round);
      Setup setup = random_setup(random);
      const auto access = setup.look();
      if (access.is_reached) continue;
      if (access.slim_diameter_mm && *access.slim_diameter_mm > 0.1) {
        ++slim;
        Setup other = setup;
        other.nozzle.outer_diameter_mm = *access.slim_diameter_mm - 1e-6;
        CHECK(other.look().is_reached);
        other.nozzle.outer_diameter_mm = *access.slim_diameter_mm + 1e-3;
        CHECK_FALSE(other.look().is_reached);
      }
      if (access.stick_out_mm) {
        ++longer;
        Setup other = setup;
        other.passes[0].tip_distance_mm = *access.stick_out_mm + 1e-6;
        CHECK(other.look().is_reached);
        other.passes[0].tip_distance_mm = *access.stick_out_mm - 1e-3;
        CHECK_FALSE(other.look().is_reached);
      }
    }
    CHECK(slim > 50);
    CHECK(longer > 50);
  }

  TEST_CASE("given a whole stack in thick plate, the tightest pass is told and it is a low one") {
    Bench bench;
    bench.family = process::WeldFamily::groove;
    bench.section = groove_section({40.0, 3.0, 2.0, 20.0, 20.0, 2.0, 1.0});
    bench.settings = shop_travel();
    for (auto& row : bench.settings) row.tip_distance_mm = 18.0;
    process::BeadLimit limit;
    limit.family = process::WeldFamily::groove;
    limit.area_max_mm2 = 40.0;
    limit.thickness_max_mm = 8.0;
    bench.limits = {limit};
    Setup setup;
    setup.section = bench.section;
    setup.passes = bench.lay().value().passes;
    setup.due_mm = 1.0;
    const auto access = setup.look();
    CHECK_FALSE(access.is_reached);
    CHECK(access.passes.size() == setup.passes.size());
    CHECK(access.tightest <= 6);
    CHECK(access.passes.back().clearance_mm > 1.0);  // the cap is welded in the open
    CHECK(access.included.value().deg() > 40.0);
  }
}

}  // namespace seamturn::tests
