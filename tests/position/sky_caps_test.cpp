// SPDX-License-Identifier: MIT
#include "seamturn/position/sky_caps.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using position::SharedSky;
using position::SkyCap;
using position::SkyPatch;

namespace {

const position::Slack working{Angle::deg(2.0), Angle::deg(3.0), Angle::deg(8.0)};

Vec3 random_unit(Random& random) {
  for (;;) {
    const Vec3 v(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1));
    if (v.norm() > 0.1 && v.norm() < 1.0) return geom::unit(v);
  }
}

/// Even all over the sphere: turned by the golden angle from ring to ring.
std::vector<Vec3> fine_grid(int count) {
  std::vector<Vec3> grid;
  const double golden_rad = 2.399963229728653;
  for (int i = 0; i < count; ++i) {
    const double z = 1.0 - (2.0 * i + 1.0) / count;
    const double across = std::sqrt(1.0 - z * z);
    grid.emplace_back(across * std::cos(golden_rad * i), across * std::sin(golden_rad * i), z);
  }
  return grid;
}

struct RandomSeam {
  Vec3 t, n;
};
RandomSeam random_seam(Random& random) {
  const Vec3 t = random_unit(random);
  return {t,
          geom::unit(geom::rotation_about(t, Angle::deg(random.between(-180, 180))) *
                     geom::any_normal_to(t))};
}

SkyPatch face_up(const Vec3& t, const Vec3& n) {
  return position::attitude_patch(t, n, {}, working);
}

/// Patches about one direction, so that many overlap.
std::vector<SkyPatch> crowd(Random& random, int count, double spread) {
  std::vector<SkyPatch> patches;
  for (int i = 0; i < count; ++i) {
    const Vec3 n =
        geom::unit(Vec3(random.between(-spread, spread), random.between(-spread, spread), 1));
    const geom::Mat3 turn = geom::rotation_about(n, Angle::deg(random.between(-180, 180)));
    patches.push_back(face_up(geom::unit(turn * geom::any_normal_to(n)), n));
  }
  return patches;
}

std::vector<int> members_of(const std::vector<SkyPatch>& patches, const Vec3& u) {
  std::vector<int> members;
  for (std::size_t i = 0; i < patches.size(); ++i) {
    if (position::is_in(patches[i], u)) members.push_back(static_cast<int>(i));
  }
  return members;
}

std::size_t most_members(const std::vector<SharedSky>& skies) {
  std::size_t most = 0;
  for (const SharedSky& sky : skies) most = std::max(most, sky.patches.size());
  return most;
}

std::set<std::vector<int>> groups_of(const std::vector<SharedSky>& skies) {
  std::set<std::vector<int>> groups;
  for (const SharedSky& sky : skies) groups.insert(sky.patches);
  return groups;
}

}  // namespace

TEST_SUITE("position/sky_caps") {
  TEST_CASE("given two caps of 90 deg about x and y, closed form: their borders cross at +-z") {
    const auto found = position::border_crossings({Vec3::UnitX(), 0.0}, {Vec3::UnitY(), 0.0});
    REQUIRE(found.size() == 2);
    CHECK((found[0] - Vec3::UnitZ()).norm() < 1e-12);
    CHECK((found[1] + Vec3::UnitZ()).norm() < 1e-12);
  }

  TEST_CASE(
      "given caps whose half-angles add up to the angle between them, they touch in one place") {
    // closed form: 30 deg about x, 60 deg about y, axes 90 deg apart, touch at 30 deg from x.
    const SkyCap a{Vec3::UnitX(), std::cos(Angle::deg(30.0).rad())};
    const SkyCap b{Vec3::UnitY(), std::cos(Angle::deg(60.0).rad())};
    const auto found = position::border_crossings(a, b);
    REQUIRE_FALSE(found.empty());
    const Vec3 expected(std::sqrt(0.75), 0.5, 0.0);
    for (const Vec3& u : found) CHECK((u - expected).norm() < 1e-6);
    const SkyCap smaller{Vec3::UnitY(), std::cos(Angle::deg(59.9).rad())};
    CHECK(position::border_crossings(a, smaller).empty());
    const SkyCap larger{Vec3::UnitY(), std::cos(Angle::deg(60.1).rad())};
    CHECK(position::border_crossings(a, larger).size() == 2);
    CHECK(position::border_crossings(a, a).empty());
  }

  TEST_CASE("for any two caps, law: crossings lie on both borders, none when one holds the other") {
    Random random(base::named_seed(1, "crossings"));
    int crossed = 0;
    for (int i = 0; i < 2000; ++i) {
      const SkyCap a{random_unit(random), random.between(-1, 1)};
      const SkyCap b{random_unit(random), random.between(-1, 1)};
      const auto found = position::border_crossings(a, b);
      const double apart = geom::angle_between(a.axis, b.axis).rad();
      const double ra = std::acos(a.least);
      const double rb = std::acos(b.least);
      const bool cross =
          std::abs(ra - rb) < apart && apart < std::min(ra + rb, 2.0 * std::acos(-1.0) - ra - rb);
      INFO("case " << i);
      CHECK(found.empty() != cross);
      for (const Vec3& u : found) {
        ++crossed;
        CHECK(std::abs(u.norm() - 1.0) < 1e-12);
        CHECK(std::abs(u.dot(a.axis) - a.least) < 1e-9);
        CHECK(std::abs(u.dot(b.axis) - b.least) < 1e-9);
      }
    }
    CHECK(crossed > 500);
  }

  TEST_CASE("given a level seam and 2, 3, 8 deg, closed form: the patch ends at those angles") {
    const SkyPatch patch = face_up(Vec3::UnitX(), Vec3::UnitZ());
    CHECK((patch.centre - Vec3::UnitZ()).norm() < 1e-12);
    check_expected("room at the centre",
                   position::depth(patch, patch.centre).deg(),
                   {2.0, 1e-9, Origin::closed_form, "downhill is the nearest border"});
    const auto leaning = [](double slope_deg, double bank_deg) {
      const double s = Angle::deg(slope_deg).rad();
      const double b = Angle::deg(bank_deg).rad();
      // s = n x t = z x x = y
      return Vec3(std::sin(s), std::cos(s) * std::sin(b), std::cos(s) * std::cos(b));
    };
    CHECK(position::is_in(patch, leaning(3.0, 8.0)));
    CHECK(position::is_in(patch, leaning(-2.0, -8.0)));
    CHECK_FALSE(position::is_in(patch, leaning(3.0001, 0.0)));
    CHECK_FALSE(position::is_in(patch, leaning(-2.0001, 0.0)));
    CHECK_FALSE(position::is_in(patch, leaning(0.0, 8.0001)));
    CHECK_FALSE(position::is_in(patch, leaning(0.0, -8.0001)));
    CHECK_FALSE(position::is_in(patch, -Vec3::UnitZ()));
  }

  TEST_CASE("for any seam and tolerance, law: the patch holds just what slope and bank allow") {
    Random random(base::named_seed(1, "patches"));
    const std::vector<Vec3> grid = fine_grid(4000);
    int inside = 0;
    for (int i = 0; i < 60; ++i) {
      const RandomSeam seam = random_seam(random);
      const position::Slack slack{Angle::deg(random.between(0, 20)),
                                  Angle::deg(random.between(0, 20)),
                                  Angle::deg(random.between(0, 40))};
      const double nominal_deg = random.between(-90, 90);
      const SkyPatch patch =
          position::attitude_patch(seam.t, seam.n, {Angle(), Angle::deg(nominal_deg)}, slack);
      for (const Vec3& u : grid) {
        const auto lie = position::attitude(seam.t, seam.n, u);
        REQUIRE(lie.has_value());
        const double off_deg = std::remainder(lie->bank.deg() - nominal_deg, 360.0);
        const bool allowed = lie->slope <= slack.uphill && lie->slope >= -slack.downhill &&
                             std::abs(off_deg) <= slack.bank.deg();
        if (allowed) ++inside;
        CHECK(position::is_in(patch, u) == allowed);
      }
    }
    CHECK(inside > 1000);
  }

  TEST_CASE(
      "for a seam that turns, law: the inner cap lies in every patch and touches one border") {
    std::vector<SkyPatch> all;
    for (int deg = 0; deg < 360; deg += 10) {
      const double a = Angle::deg(deg).rad();
      all.push_back(face_up(Vec3(-std::sin(a), std::cos(a), 0.0), Vec3::UnitZ()));
    }
    const auto cap = position::inner_cap(Vec3::UnitZ(), all);
    REQUIRE(cap.has_value());
    check_expected("half-angle",
                   position::depth(*cap, Vec3::UnitZ()).deg(),
                   {2.0, 1e-6, Origin::closed_form, "downhill binds somewhere round a ring"});
    for (const Vec3& u : fine_grid(40000)) {
      if (!position::is_in(*cap, u)) continue;
      for (const SkyPatch& patch : all) CHECK(position::is_in(patch, u));
    }
    CHECK_FALSE(position::inner_cap(Vec3::UnitX(), all).has_value());
  }

  TEST_CASE("given faces 16 deg apart across their travel, one sky serves both, 16.1 deg none") {
    const auto pair_at = [](double apart_deg) {
      const double a = Angle::deg(apart_deg).rad();
      return std::vector<SkyPatch>{face_up(Vec3::UnitX(), Vec3::UnitZ()),
                                   face_up(Vec3::UnitX(), Vec3(0.0, std::sin(a), std::cos(a)))};
    };
    for (const double apart_deg : {2.0, 10.0, 15.9}) {
      const auto skies = position::shared_skies(pair_at(apart_deg));
      REQUIRE(skies.size() == 1);
      CHECK(skies[0].patches == std::vector<int>{0, 1});
      // closed form: deepest where both banks are half of it, the slope border allowing.
      const double bank_room_deg = 8.0 - apart_deg / 2.0;
      const double room_deg = std::min(2.5, bank_room_deg);
      for (const SkyPatch& patch : pair_at(apart_deg)) {
        CHECK(position::depth(patch, skies[0].u).deg() > 0.5 * room_deg);
      }
    }
    CHECK(position::shared_skies(pair_at(16.1)).empty());
  }

  TEST_CASE("for crowds of patches, brute force: no place of a fine grid lies in more of them") {
    Random random(base::named_seed(1, "crowds"));
    const std::vector<Vec3> grid = fine_grid(200000);
    for (int i = 0; i < 12; ++i) {
      const std::vector<SkyPatch> patches = crowd(random, 4 + i, 0.12);
      const auto skies = position::shared_skies(patches, {100, 100, std::nullopt});
      const std::set<std::vector<int>> found = groups_of(skies);
      std::size_t most = 0;
      for (const Vec3& u : grid) {
        if (u.z() < 0.95) continue;
        const std::vector<int> members = members_of(patches, u);
        most = std::max(most, members.size());
        if (members.size() < 2) continue;
        // Some sky told serves all of them.
        const bool served = std::any_of(found.begin(), found.end(), [&](const auto& group) {
          return std::includes(group.begin(), group.end(), members.begin(), members.end());
        });
        CHECK(served);
      }
      INFO("crowd " << i << ", " << patches.size() << " patches");
      CHECK(most_members(skies) >= most);
      CHECK(most >= 2);
    }
  }

  TEST_CASE("for any crowd, law: a sky lies in all the patches told and in no other") {
    Random random(base::named_seed(1, "membership"));
    for (int i = 0; i < 20; ++i) {
      std::vector<SkyPatch> patches = crowd(random, 30, 0.3);
      patches.push_back(patches[3]);  // alike: told with the other
      for (const SharedSky& sky : position::shared_skies(patches)) {
        CHECK(std::abs(sky.u.norm() - 1.0) < 1e-9);
        CHECK(sky.patches == members_of(patches, sky.u));
        CHECK(sky.patches.size() >= 2);
        const auto has = [&](int number) {
          return std::find(sky.patches.begin(), sky.patches.end(), number) != sky.patches.end();
        };
        CHECK(has(3) == has(30));
      }
    }
  }

  TEST_CASE("for any crowd, law: a turned scene or another order of the patches finds as many") {
    Random random(base::named_seed(1, "turned scene"));
    for (int i = 0; i < 20; ++i) {
      std::vector<SkyPatch> patches = crowd(random, 12, 0.15);
      const auto before = position::shared_skies(patches, {100, 100, std::nullopt});
      const geom::Mat3 turn =
          geom::rotation_about(random_unit(random), Angle::deg(random.between(-180, 180)));
      std::vector<SkyPatch> turned = patches;
      for (SkyPatch& patch : turned) {
        patch.centre = turn * patch.centre;
        for (SkyCap& cap : patch.caps) cap.axis = turn * cap.axis;
      }
      CHECK(most_members(position::shared_skies(turned, {100, 100, std::nullopt})) ==
            most_members(before));
      std::reverse(patches.begin(), patches.end());
      CHECK(most_members(position::shared_skies(patches, {100, 100, std::nullopt})) ==
            most_members(before));
    }
  }

  TEST_CASE("given one axis, skies stay on its circle and every interval of it has one") {
    // closed form: faces at 0, 10 and 20 deg about x, each allowed 8 deg: 0 and 10 share 2 to 8,
    // 10 and 20 share 12 to 18, all three none.
    std::vector<SkyPatch> patches;
    for (const double deg : {0.0, 10.0, 20.0}) {
      const double a = Angle::deg(deg).rad();
      patches.push_back(face_up(Vec3::UnitX(), Vec3(0.0, std::sin(a), std::cos(a))));
    }
    // Off the circle: never told.
    patches.push_back(face_up(Vec3::UnitY(), Vec3::UnitX()));
    position::SharedSkyParams params;
    params.only_on = SkyCap{Vec3::UnitX(), 0.0};
    const auto skies = position::shared_skies(patches, params);
    std::map<std::vector<int>, double> turn_deg;
    for (const SharedSky& sky : skies) {
      CHECK(std::abs(sky.u.x()) < 1e-9);
      turn_deg[sky.patches] = Angle::rad(std::atan2(sky.u.y(), sky.u.z())).deg();
    }
    CHECK(turn_deg.size() == 4);  // 0 alone from -8 to 2, 20 alone from 18 to 28
    REQUIRE((turn_deg.count({0, 1}) == 1 && turn_deg.count({1, 2}) == 1));
    CHECK((turn_deg.count({0}) == 1 && turn_deg.count({2}) == 1));
    check_expected(
        "0 and 10", turn_deg[{0, 1}], {5.0, 1.5, Origin::closed_form, "middle of 2 to 8"});
    check_expected(
        "10 and 20", turn_deg[{1, 2}], {15.0, 1.5, Origin::closed_form, "middle of 12 to 18"});
  }

  TEST_CASE("for 500 patches about one direction, few neighbours keep the answer small and true") {
    Random random(base::named_seed(1, "many"));
    const std::vector<SkyPatch> patches = crowd(random, 500, 0.1);
    const auto skies = position::shared_skies(patches);
    CHECK(skies.size() <= 6U * 500U);
    CHECK(most_members(skies) > 50);
    for (std::size_t k = 0; k < skies.size(); k += 40) {
      CHECK(skies[k].patches == members_of(patches, skies[k].u));
    }
  }
}

}  // namespace seamturn::tests
