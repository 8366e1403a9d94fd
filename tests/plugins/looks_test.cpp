// SPDX-License-Identifier: MIT
// What is seen of solids, against looks taken step by step and what everybody knows of a cube.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "seamturn/base/random.hpp"
#include "stance_drawing/panel.hpp"

namespace seamturn::stance_drawing {

namespace {

Block box(double x, double y, double z) {
  return {{{0.0, 0.0}, {x, 0.0}, {x, y}, {0.0, y}}, z};
}

Turned cylinder(double radius, double bore, double length) {
  return {{{0.0, length, radius, radius}}, bore};
}

Solid placed(std::variant<Block, Turned> shape, const Vec3& at = Vec3::Zero()) {
  return {"s", std::move(shape), Pose(Eigen::Translation3d(at))};
}

Vec3 direction(base::Random& random) {
  Vec3 v;
  do {
    v = Vec3(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1));
  } while (v.norm() < 0.1 || v.norm() > 1.0);
  return v.normalized();
}

/// How deep a place is inside a solid; below 0 outside, never more than the true distance. Own
/// arithmetic: of each face by itself, nothing of looks.
double depth(const Solid& solid, const Vec3& p_W) {
  const Vec3 p = solid.X_WS.inverse() * p_W;
  if (const auto* block = std::get_if<Block>(&solid.shape)) {
    double deep = std::min(p.z(), block->length_mm - p.z());
    for (std::size_t i = 0; i < block->outline.size(); ++i) {
      const Eigen::Vector2d a = block->outline[i];
      const Eigen::Vector2d b = block->outline[(i + 1) % block->outline.size()];
      const Eigen::Vector2d ab = b - a;
      const Eigen::Vector2d ap = p.head<2>() - a;
      deep = std::min(deep, (ab.x() * ap.y() - ab.y() * ap.x()) / ab.norm());
    }
    return deep;
  }
  const auto& turned = std::get<Turned>(solid.shape);
  double best = -1e9;
  for (const Step& step : turned.steps) {
    const double share = (p.z() - step.from_mm) / (step.to_mm - step.from_mm);
    const double radius = step.from_radius_mm + share * (step.to_radius_mm - step.from_radius_mm);
    const double slant =
        std::atan2(std::abs(step.to_radius_mm - step.from_radius_mm), step.to_mm - step.from_mm);
    const double off = p.head<2>().norm();
    double deep = std::min(p.z() - step.from_mm, step.to_mm - p.z());
    deep = std::min(deep, (radius - off) * std::cos(slant));
    if (turned.bore_radius_mm > 0.0) deep = std::min(deep, off - turned.bore_radius_mm);
    best = std::max(best, deep);
  }
  return best;
}

enum class Verdict { hidden, free, unclear };

/// Walks from the place to the viewer and looks round at every step.
Verdict walked(const Solid& solid, const Vec3& from, const Vec3& towards) {
  constexpr double step_mm = 0.25;
  constexpr double margin_mm = 0.3;
  Verdict verdict = Verdict::free;
  for (double t = 0.0; t < 250.0; t += step_mm) {
    const double deep = depth(solid, from + t * towards);
    if (deep > margin_mm) return Verdict::hidden;
    if (deep > -margin_mm) verdict = Verdict::unclear;
  }
  return verdict;
}

std::variant<Block, Turned> any_shape(base::Random& random) {
  const double kind = random.unit();
  if (kind < 0.3) {
    return box(random.between(10, 80), random.between(10, 80), random.between(5, 60));
  }
  if (kind < 0.4) {
    Block six{{}, random.between(20, 60)};
    for (int i = 0; i < 6; ++i) {
      six.outline.emplace_back(30.0 * std::cos(i * std::numbers::pi / 3.0),
                               30.0 * std::sin(i * std::numbers::pi / 3.0));
    }
    return six;
  }
  if (kind < 0.7) {
    const double radius = random.between(15, 50);
    return cylinder(radius, random.between(-5, radius - 4.0), random.between(5, 60));
  }
  Turned turned{{}, random.between(-2, 8)};
  double from = 0.0;
  for (int i = 0; i < 3; ++i) {
    const double to = from + random.between(8, 30);
    turned.steps.push_back({from, to, random.between(10, 50), random.between(10, 50)});
    from = to;
  }
  return turned;
}

Solid any_solid(base::Random& random) {
  Solid solid = placed(any_shape(random));
  if (auto* turned = std::get_if<Turned>(&solid.shape)) {
    turned->bore_radius_mm = std::max(0.0, turned->bore_radius_mm);
  }
  solid.X_WS = Eigen::Translation3d(40.0 * direction(random)) *
               Eigen::AngleAxisd(random.between(-3, 3), direction(random));
  return solid;
}

int count_seen(const std::vector<Solid>& solids, const Vec3& towards, bool seen) {
  const View view = view_from(towards);
  const Sight sight(solids, view, 1.0);
  int count = 0;
  for (const Solid& solid : solids) {
    for (const Edge& edge : edges(solid, view.towards_viewer)) {
      const std::vector<Piece> pieces = sight.pieces(edge);
      if (std::all_of(pieces.begin(), pieces.end(), [&](const Piece& piece) {
            return piece.is_seen == seen || length_of(piece.line) < 0.1;
          })) {
        ++count;
      }
    }
  }
  return count;
}

}  // namespace

TEST_SUITE("plugins/looks") {
  TEST_CASE("given a cube seen over a corner, nine edges are seen and three are hidden") {
    // closed-form: three faces meet at the corner nearest to the viewer, and at the far one three.
    const std::vector<Solid> cube = {placed(box(100, 100, 100))};
    for (const Vec3& towards : {Vec3(1, 1, 1), Vec3(-1, 2, 0.7), Vec3(0.3, -0.5, -1)}) {
      CHECK(count_seen(cube, towards, true) == 9);
      CHECK(count_seen(cube, towards, false) == 3);
    }
  }

  TEST_CASE("given a line behind a plate, it is hidden from edge to edge of it") {
    // closed-form: looking along x, the plate from y 20 to 60 covers the line there.
    const std::vector<Solid> plate = {placed(box(10, 40, 100), Vec3(50, 20, -50))};
    const Sight sight(plate, view_from(Vec3::UnitX()), 2.0);
    const std::vector<Piece> pieces = sight.pieces({{Vec3(0, 0, 0), Vec3(0, 100, 0)}});
    REQUIRE(pieces.size() == 3);
    CHECK(pieces[0].is_seen);
    CHECK_FALSE(pieces[1].is_seen);
    CHECK(pieces[2].is_seen);
    CHECK(pieces[1].line.front().y() == doctest::Approx(20.0).epsilon(0.002));
    CHECK(pieces[1].line.back().y() == doctest::Approx(60.0).epsilon(0.002));
    CHECK(sight.sees(Vec3(61, 40, 0)));        // before it
    CHECK(sight.sees(Vec3(60, 40, 0)));        // on its face
    CHECK_FALSE(sight.sees(Vec3(59, 40, 0)));  // in it
  }

  TEST_CASE("given a tube, a look goes through its bore and not through its wall") {
    const std::vector<Solid> tube = {placed(cylinder(50, 40, 200))};
    const Sight along(tube, view_from(Vec3::UnitZ()), 1.0);
    CHECK(along.sees(Vec3(0, 0, -10)));
    CHECK(along.sees(Vec3(39.9, 0, -10)));
    CHECK_FALSE(along.sees(Vec3(45, 0, -10)));
    CHECK(along.sees(Vec3(50.1, 0, -10)));
    const Sight across(tube, view_from(Vec3::UnitX()), 1.0);
    CHECK_FALSE(across.sees(Vec3(0, 0, 100)));
    CHECK(across.sees(Vec3(0, 0, 201)));
    // Aslant, from a place on the bore over the rim on the other side: up by 100 over 80 and more.
    const Sight steep(tube, view_from(Vec3(80, 0, 101)), 1.0);
    CHECK(steep.sees(Vec3(-40, 0, 100)));
    const Sight flat(tube, view_from(Vec3(80, 0, 99)), 1.0);
    CHECK_FALSE(flat.sees(Vec3(-40, 0, 100)));
  }

  TEST_CASE("given a tube seen from the side, its rims and outlines stand a radius off the axis") {
    // closed-form: outside and bore have two rims and two outlines each.
    const Solid tube = placed(cylinder(50, 40, 200));
    int rims = 0;
    std::vector<double> off;
    for (const Edge& edge : edges(tube, Vec3::UnitX())) {
      if (edge.is_curve) {
        ++rims;
        continue;
      }
      CHECK(edge.line.front().y() == doctest::Approx(edge.line.back().y()));
      CHECK(length_of(edge.line) == doctest::Approx(200.0));
      off.push_back(edge.line.front().y());
    }
    CHECK(rims == 4);
    std::sort(off.begin(), off.end());
    REQUIRE(off.size() == 4);
    const std::vector<double> wanted = {-50.0, -40.0, 40.0, 50.0};
    for (std::size_t i = 0; i < 4; ++i) CHECK(off[i] == doctest::Approx(wanted[i]));
    // From its end no outline is left.
    for (const Edge& edge : edges(tube, Vec3::UnitZ())) CHECK(edge.is_curve);
  }

  TEST_CASE("given a shaft of three steps, each shoulder has its rims") {
    // closed-form: 0 r 20, 30 r 20 and r 40, 50 r 40 and then down to r 10 at 80.
    const Solid shaft = placed(Turned{{{0, 30, 20, 20}, {30, 50, 40, 40}, {50, 80, 40, 10}}, 0.0});
    std::vector<std::pair<double, double>> rims;
    for (const Edge& edge : edges(shaft, Vec3::UnitX())) {
      if (!edge.is_curve) continue;
      rims.emplace_back(edge.line[0].z(), edge.line[0].head<2>().norm());
    }
    std::sort(rims.begin(), rims.end());
    const std::vector<std::pair<double, double>> wanted = {
        {0, 20}, {30, 20}, {30, 40}, {50, 40}, {80, 10}};
    REQUIRE(rims.size() == wanted.size());
    for (std::size_t i = 0; i < rims.size(); ++i) {
      CHECK(rims[i].first == doctest::Approx(wanted[i].first));
      CHECK(rims[i].second == doctest::Approx(wanted[i].second));
    }
  }

  TEST_CASE("given a drum seen from above its end, the near rim is seen in one piece") {
    const std::vector<Solid> drum = {placed(cylinder(600, 0, 100))};
    const View view = view_from(Vec3(1, 0.2, 1));
    const Sight sight(drum, view, 3.0);
    for (const Edge& edge : edges(drum[0], view.towards_viewer)) {
      if (!edge.is_curve) continue;
      const std::vector<Piece> pieces = sight.pieces(edge);
      const bool is_near = edge.line[0].z() > 50.0;
      CHECK(pieces.size() == (is_near ? 1 : 3));  // of the far one half is hidden
      if (is_near) CHECK(pieces[0].is_seen);
    }
  }

  TEST_CASE("for any solid and look, cross: hides what a walk to the viewer runs into") {
    base::Random random(20261127);
    int hidden = 0;
    int free = 0;
    for (int i = 0; i < 150; ++i) {
      const Solid solid = any_solid(random);
      const Vec3 towards = direction(random);
      const Screen screen(solid, towards);
      for (int k = 0; k < 8; ++k) {
        const Vec3 from = 80.0 * random.between(0, 1) * direction(random);
        const Verdict verdict = walked(solid, from, towards);
        if (verdict == Verdict::unclear) continue;
        INFO("solid ", i, " look ", k);
        CHECK(screen.hides(from) == (verdict == Verdict::hidden));
        ++(verdict == Verdict::hidden ? hidden : free);
      }
    }
    CHECK(hidden > 150);
    CHECK(free > 150);
  }

  TEST_CASE("for any solid and look, law: its box holds all its edges, its outline is tangent") {
    base::Random random(7);
    for (int i = 0; i < 200; ++i) {
      const Solid solid = any_solid(random);
      const View view = view_from(direction(random));
      const Line corners = corners_of_box(solid);
      svg::Box bounds{view.at(corners[0]), view.at(corners[0])};
      for (const Vec3& corner : corners) bounds.include(view.at(corner));
      for (const Edge& edge : edges(solid, view.towards_viewer)) {
        for (const Vec3& point : edge.line) {
          const svg::Point at = view.at(point);
          CHECK(bounds.low.x <= at.x + 1e-6);
          CHECK(at.x <= bounds.high.x + 1e-6);
          CHECK(bounds.low.y <= at.y + 1e-6);
          CHECK(at.y <= bounds.high.y + 1e-6);
        }
        if (edge.is_curve || !std::holds_alternative<Turned>(solid.shape)) continue;
        // closed-form: along the outline of a cone the normal is square to the look.
        const Vec3 a = solid.X_WS.inverse() * edge.line.front();
        const Vec3 b = solid.X_WS.inverse() * edge.line.back();
        const Vec3 out = Vec3(a.x(), a.y(), 0.0).normalized();
        const double rise = (b.head<2>().norm() - a.head<2>().norm()) / (b.z() - a.z());
        const Vec3 normal_W = solid.X_WS.linear() * (out - rise * Vec3::UnitZ());
        CHECK(std::abs(normal_W.dot(view.towards_viewer)) < 1e-9);
      }
    }
  }

  TEST_CASE("given straight lines, a panel holds what lies in its field") {
    // closed-form: looking along -x with 2 px to the mm, y to the right and z up.
    Panel panel{
        view_from(Vec3::UnitX()), {{0, 0}, {300, 200}}, {{50, 0}, {250, 200}}, {10, 20}, 2.0};
    const svg::Point middle = panel.page(Vec3(7, 10, 20));
    CHECK(middle.x == doctest::Approx(150.0));
    CHECK(middle.y == doctest::Approx(100.0));
    const Line level = panel.in_field(Vec3(0, 0, 40), Vec3::UnitY());
    REQUIRE(level.size() == 2);
    CHECK(panel.page(level[0]).x == doctest::Approx(50.0));
    CHECK(panel.page(level[1]).x == doctest::Approx(250.0));
    CHECK(panel.page(level[1]).y == doctest::Approx(60.0));
    CHECK(panel.in_field(Vec3(0, 0, 71), Vec3::UnitY()).empty());    // above it
    CHECK(panel.in_field(Vec3(0, 10, -31), Vec3::UnitY()).empty());  // below it
    CHECK(panel.in_field(Vec3(0, 61, 20), Vec3::UnitZ()).empty());   // beside it
    CHECK(panel.in_field(Vec3(0, 10, 20), Vec3::UnitX()).empty());   // end on
    const Line slope = panel.in_field(Vec3(0, 10, 20), Vec3(0, 1, 1).normalized());
    REQUIRE(slope.size() == 2);
    CHECK(panel.page(slope[0]).y == doctest::Approx(200.0));
    CHECK(panel.page(slope[1]).y == doctest::Approx(0.0).scale(1.0));
    CHECK(fitting_scale({{0, 0}, {100, 10}}, {{0, 0}, {268, 200}}) == doctest::Approx(2.0));
  }

  TEST_CASE("for any look, law: right, up and towards are a right-handed frame, up is never down") {
    base::Random random(3);
    for (int i = 0; i < 100; ++i) {
      const View view = view_from(direction(random));
      CHECK((view.right.cross(view.up) - view.towards_viewer).norm() < 1e-9);
      CHECK(view.right.norm() == doctest::Approx(1.0));
      CHECK(std::abs(view.right.z()) < 1e-9);  // level stays level
      CHECK(view.up.z() > 0.0);
    }
    const View plan = view_from(Vec3::UnitZ(), Vec3::UnitY());
    CHECK(plan.up.isApprox(Vec3::UnitY()));
    CHECK(plan.right.isApprox(Vec3::UnitX()));
  }
}

}  // namespace seamturn::stance_drawing
