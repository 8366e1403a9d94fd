// SPDX-License-Identifier: MIT
#include "seamturn/turn/hang.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using turn::HangParams;

namespace {

constexpr double g_m_s2 = 9.80665;

/// A part of 1000 N.
HangParams part_on(std::vector<Vec3> points, const Vec3& hook, const Vec3& centre) {
  HangParams params;
  params.mass_kg = 1000.0 / g_m_s2;
  params.lifting_points = std::move(points);
  params.hook = hook;
  params.centre_of_gravity = centre;
  return params;
}
turn::Hang hung(const HangParams& params) {
  const auto out = turn::hang(params);
  REQUIRE(out);
  return *out;
}
std::string refusal_of(const HangParams& params) {
  const auto out = turn::hang(params);
  return out ? "" : out.error().code;
}
bool says(const turn::Hang& out, const std::string& code) {
  return std::any_of(out.findings.begin(), out.findings.end(), [&](const base::Finding& f) {
    return f.code == code && f.severity == base::Severity::warning;
  });
}
std::vector<Vec3> rectangle(double x, double y) {
  return {Vec3(-x, -y, 0), Vec3(x, -y, 0), Vec3(x, y, 0), Vec3(-x, y, 0)};
}

}  // namespace

TEST_SUITE("turn/hang") {
  TEST_CASE("given one sling, closed-form: the point comes above the centre of gravity") {
    const auto got = hung(part_on({Vec3(0, 0, 100)}, Vec3(0, 0, 900), Vec3(30, 0, -200)));
    CHECK(got.lean.rad() == doctest::Approx(std::atan2(30.0, 300.0)));
    CHECK(got.slings[0].share_ratio == doctest::Approx(1.0));
    CHECK(got.slings[0].force_n == doctest::Approx(1000.0));
    CHECK(got.slings[0].from_vertical.deg() == doctest::Approx(0.0).epsilon(1e-9));
    CHECK((got.hook_as_hung - Vec3(0, 0, 100) - 800.0 * got.up_as_hung).norm() < 1e-9);
  }

  TEST_CASE("given two level points, closed-form: the lever rule") {
    const auto got =
        hung(part_on({Vec3(-500, 0, 0), Vec3(500, 0, 0)}, Vec3(100, 0, 800), Vec3(100, 0, -300)));
    CHECK(got.lean.deg() == doctest::Approx(0.0));
    CHECK(got.slings[0].share_ratio == doctest::Approx(0.4));
    CHECK(got.slings[1].share_ratio == doctest::Approx(0.6));
    // Slings 600 and 400 across, 800 up: lengths 1000 and sqrt 800 000.
    CHECK(got.slings[0].force_n == doctest::Approx(500.0));
    CHECK(got.slings[1].force_n == doctest::Approx(600.0 * std::sqrt(800000.0) / 800.0));
    CHECK(got.slings[0].from_vertical.rad() == doctest::Approx(std::atan(0.75)));
    CHECK(got.findings.empty());
  }

  TEST_CASE("given points at different heights, closed-form: equal horizontal pulls") {
    // 500 across each, 1000 and 800 up: v1 / 2 = v2 500 / 800, so 1000 to 800.
    const auto got =
        hung(part_on({Vec3(-500, 0, 0), Vec3(500, 0, 200)}, Vec3(0, 0, 1000), Vec3(0, 0, -100)));
    CHECK(got.slings[0].share_ratio == doctest::Approx(1000.0 / 1800.0));
    CHECK(got.slings[1].share_ratio == doctest::Approx(800.0 / 1800.0));
  }

  TEST_CASE("given a weight off the plane of two slings, closed-form: it swings in below") {
    const auto got =
        hung(part_on({Vec3(-500, 0, 0), Vec3(500, 0, 0)}, Vec3(0, 0, 800), Vec3(0, 40, -300)));
    CHECK(got.off_plane_mm == doctest::Approx(40.0));
    CHECK(got.lean.rad() == doctest::Approx(std::atan2(40.0, 300.0)));
    CHECK(got.slings[0].share_ratio == doctest::Approx(0.5));
  }

  TEST_CASE("given three level points, closed-form: barycentric shares") {
    const std::vector<Vec3> points{Vec3(0, 0, 0), Vec3(600, 0, 0), Vec3(0, 400, 0)};
    // 0.5, 0.3 and 0.2 of the corners.
    const auto got = hung(part_on(points, Vec3(180, 80, 1000), Vec3(180, 80, -200)));
    CHECK(got.slings[0].share_ratio == doctest::Approx(0.5));
    CHECK(got.slings[1].share_ratio == doctest::Approx(0.3));
    CHECK(got.slings[2].share_ratio == doctest::Approx(0.2));
    for (const turn::SlingLoad& sling : got.slings) {
      CHECK(sling.largest_share_ratio == doctest::Approx(sling.share_ratio));
      CHECK(sling.largest_force_n == doctest::Approx(sling.force_n));
    }
  }

  TEST_CASE("given four slings, closed-form: a quarter each when even, two may carry all") {
    const auto got = hung(part_on(rectangle(500, 300), Vec3(0, 0, 1000), Vec3(0, 0, -100)));
    for (const turn::SlingLoad& sling : got.slings) {
      CHECK(sling.share_ratio == doctest::Approx(0.25));
      CHECK(sling.largest_share_ratio == doctest::Approx(0.5));
      CHECK(sling.largest_force_n ==
            doctest::Approx(500.0 * std::sqrt(1e6 + 250000.0 + 90000.0) / 1000.0));
    }
    // A fifth of the half length off: 0.4 on the far end, 0.6 on the near one, halves each.
    const auto off = hung(part_on(rectangle(500, 300), Vec3(100, 0, 1000), Vec3(100, 0, -100)));
    CHECK(off.slings[0].share_ratio == doctest::Approx(0.2));
    CHECK(off.slings[1].share_ratio == doctest::Approx(0.3));
    // With three, the far end rests on one sling: 0.4; one side rests on one sling: 0.5.
    CHECK(off.slings[1].largest_share_ratio == doctest::Approx(0.5));
    CHECK(off.slings[0].largest_share_ratio == doctest::Approx(0.4));
  }

  TEST_CASE("for random parts, law: the slings' pulls balance weight and moments") {
    Random random(base::named_seed(21, "hang"));
    int hanging = 0;
    for (int i = 0; i < 600; ++i) {
      INFO("seed 21, case " << i);
      std::vector<Vec3> points(1 + random.below(6));
      for (Vec3& p : points) {
        p = Vec3(random.between(-900, 900), random.between(-900, 900), random.between(-200, 200));
      }
      const HangParams params =
          part_on(points,
                  Vec3(random.between(-80, 80), random.between(-80, 80), 1500.0),
                  Vec3(random.between(-80, 80), random.between(-80, 80), -400.0));
      const auto got = turn::hang(params);
      if (!got) {
        CHECK(got.error().code == "turn.hang.tips");
        continue;
      }
      ++hanging;
      const Vec3 weight = -1000.0 * got->up_as_hung;
      Vec3 force = weight, moment = params.centre_of_gravity.cross(weight);
      double shares = 0.0;
      for (std::size_t k = 0; k < points.size(); ++k) {
        const turn::SlingLoad& sling = got->slings[k];
        const Vec3 pull = sling.force_n * (got->hook_as_hung - points[k]).normalized();
        force += pull;
        moment += points[k].cross(pull);
        shares += sling.share_ratio;
        CHECK(sling.share_ratio >= -1e-8);
        CHECK(sling.largest_share_ratio >= sling.share_ratio - 1e-7);
        CHECK(sling.force_n * std::cos(sling.from_vertical.rad()) ==
              doctest::Approx(1000.0 * sling.share_ratio));
        // A sling does not stretch.
        if (points.size() != 1) {
          CHECK((got->hook_as_hung - points[k]).norm() ==
                doctest::Approx((params.hook - points[k]).norm()));
        }
      }
      CHECK(force.norm() < 1e-6);
      CHECK(moment.norm() < 1e-3);
      CHECK(shares == doctest::Approx(1.0));
    }
    CHECK(hanging > 150);
  }

  TEST_CASE("for random parts on two slings, cross: the weight hangs as low as it can") {
    // Another method: try hooks all round the line of both points, keep the one that lets the
    // centre of gravity hang furthest below.
    Random random(base::named_seed(22, "hang"));
    int compared = 0;
    for (int i = 0; i < 60; ++i) {
      INFO("seed 22, case " << i);
      const Vec3 a(-random.between(300, 900), random.between(-100, 100), random.between(-50, 50));
      const Vec3 b(random.between(300, 900), random.between(-100, 100), random.between(-50, 50));
      const HangParams params =
          part_on({a, b},
                  Vec3(0, 0, 1000),
                  Vec3(random.between(-100, 100), random.between(-150, 150), -300));
      const auto got = turn::hang(params);
      if (!got) continue;
      ++compared;
      double lowest = -1.0, at_deg = 0.0;
      Vec3 up = Vec3::Zero();
      for (const double step : {1.0, 0.01, 0.0001}) {
        const double middle = at_deg;
        const double reach = step == 1.0 ? 90.0 : 100.0 * step;
        for (double turned = middle - reach; turned <= middle + reach; turned += step) {
          const Vec3 hook = a + geom::rotation_about(b - a, Angle::deg(turned)) * (params.hook - a);
          const Vec3 below = hook - params.centre_of_gravity;
          if (below.norm() <= lowest) continue;
          lowest = below.norm();
          at_deg = turned;
          up = below.normalized();
        }
      }
      CHECK(geom::angle_between(up, got->up_as_hung).deg() < 0.001);
    }
    CHECK(compared > 40);
  }

  TEST_CASE("for random parts on three slings, cross: all six equations of statics at once") {
    Random random(base::named_seed(23, "hang"));
    for (int i = 0; i < 100; ++i) {
      INFO("seed 23, case " << i);
      const HangParams params = part_on(
          {Vec3(random.between(300, 900), random.between(-100, 100), random.between(-200, 200)),
           Vec3(-random.between(300, 900), random.between(300, 900), random.between(-200, 200)),
           Vec3(-random.between(300, 900), -random.between(300, 900), random.between(-200, 200))},
          Vec3(0, 0, 1200),
          Vec3(random.between(-20, 20), random.between(-20, 20), -300));
      const auto got = hung(params);
      Eigen::Matrix<double, 6, 3> pulls;
      Eigen::Matrix<double, 6, 1> weight;
      const Vec3 up = (params.hook - params.centre_of_gravity).normalized();
      weight << 1000.0 * up, params.centre_of_gravity.cross(1000.0 * up);
      for (int k = 0; k < 3; ++k) {
        const Vec3 along = (params.hook - params.lifting_points[k]).normalized();
        pulls.col(k) << along, params.lifting_points[k].cross(along);
      }
      const Vec3 forces = pulls.jacobiSvd(Eigen::ComputeFullU | Eigen::ComputeFullV).solve(weight);
      for (int k = 0; k < 3; ++k) CHECK(got.slings[k].force_n == doctest::Approx(forces(k)));
    }
  }

  TEST_CASE("given a weight just inside and just outside the points, it hangs or tips") {
    const std::vector<Vec3> three{Vec3(0, 0, 0), Vec3(600, 0, 0), Vec3(0, 400, 0)};
    const auto at = [](const std::vector<Vec3>& points, double x, double y) {
      return refusal_of(part_on(points, Vec3(x, y, 900), Vec3(x, y, -100)));
    };
    CHECK(at(three, 0.01, 100).empty());
    CHECK(at(three, 0.0, 100) == "turn.hang.tips");
    CHECK(at(three, -0.01, 100) == "turn.hang.tips");
    CHECK(at(rectangle(500, 300), 499.99, 0).empty());
    CHECK(at(rectangle(500, 300), 500.0, 0) == "turn.hang.tips");
    CHECK(at(rectangle(500, 300), 500.01, 0) == "turn.hang.tips");
    const std::vector<Vec3> two{Vec3(-500, 0, 0), Vec3(500, 0, 0)};
    CHECK(at(two, 499.0, 0).empty());
    CHECK(at(two, 501.0, 0) == "turn.hang.tips");
    // Above one or two points it turns over.
    CHECK(refusal_of(part_on({Vec3::Zero()}, Vec3(0, 0, 900), Vec3(0, 0, 1))) == "turn.hang.tips");
    CHECK(refusal_of(part_on(two, Vec3(0, 0, 900), Vec3(0, 0, 1))) == "turn.hang.tips");
    CHECK(refusal_of(part_on(two, Vec3(0, 0, 900), Vec3(0, 0, -1))).empty());
  }

  TEST_CASE("given a weight above three points or more, a warning and no more") {
    CHECK_FALSE(says(hung(part_on(rectangle(500, 300), Vec3(0, 0, 900), Vec3(0, 0, -0.1))),
                     "turn.hang.top_heavy"));
    CHECK(says(hung(part_on(rectangle(500, 300), Vec3(0, 0, 900), Vec3(0, 0, 0.1))),
               "turn.hang.top_heavy"));
  }

  TEST_CASE("given slings at 60 deg and just flatter, the warning comes with the flatter") {
    const double across = 300.0 * std::sqrt(3.0);
    const std::vector<Vec3> two{Vec3(-across, 0, 0), Vec3(across, 0, 0)};
    const auto steep = hung(part_on(two, Vec3(0, 0, 300.01), Vec3(0, 0, -50)));
    CHECK(steep.findings.empty());
    CHECK(steep.slings[0].force_n == doctest::Approx(1000.0).epsilon(1e-3));  // share / cos 60
    CHECK(says(hung(part_on(two, Vec3(0, 0, 299.99), Vec3(0, 0, -50))), "turn.hang.sling_flat"));
  }

  TEST_CASE("given a limit, leaning beyond it is told") {
    HangParams params = part_on({Vec3(0, 0, 100)}, Vec3(0, 0, 900), Vec3(30, 0, -200));
    params.lean_limit = Angle::rad(std::atan2(30.0, 300.0) + 1e-4);
    CHECK(hung(params).findings.empty());
    params.lean_limit = Angle::rad(std::atan2(30.0, 300.0) - 1e-4);
    CHECK(says(hung(params), "turn.hang.leans"));
  }

  TEST_CASE("given a far corner of four, its sling is slack in the even share, none pushes") {
    // Near the corner (0, 0) of a square with one point far out.
    const std::vector<Vec3> points{
        Vec3(0, 0, 0), Vec3(400, 0, 0), Vec3(0, 400, 0), Vec3(2000, 2000, 0)};
    const auto got = hung(part_on(points, Vec3(60, 60, 2500), Vec3(60, 60, -100)));
    CHECK(got.slings[3].share_ratio == doctest::Approx(0.0));
    CHECK(says(got, "turn.hang.slack"));
    // closed-form: barycentric on the other three.
    CHECK(got.slings[0].share_ratio == doctest::Approx(0.7));
    CHECK(got.slings[1].share_ratio == doctest::Approx(0.15));
  }

  TEST_CASE("refuses points in line or a hook too low because no load can be told") {
    const std::vector<Vec3> row{Vec3(-500, 0, 0), Vec3(0, 0, 0), Vec3(500, 0, 0)};
    CHECK(refusal_of(part_on(row, Vec3(0, 0, 900), Vec3(0, 0, -100))) == "turn.hang.in_line");
    CHECK(refusal_of(part_on({Vec3(0, 0, 0), Vec3(0, 0, 100)}, Vec3(0, 0, 900), Vec3(0, 5, -9))) ==
          "turn.hang.in_line");
    CHECK(refusal_of(part_on(rectangle(500, 300), Vec3(0, 0, 0), Vec3(0, 0, -100))) ==
          "turn.hang.hook_low");
    CHECK(refusal_of(part_on(rectangle(500, 300), Vec3(0, 0, 90), Vec3(0, 0, 100))) ==
          "turn.hang.hook_low");
    // Above the points as meant, but not as it comes to hang.
    CHECK(refusal_of(part_on(rectangle(500, 300), Vec3(0, 0, 10), Vec3(30, 0, -100))) ==
          "turn.hang.hook_low");
  }

  TEST_CASE("refuses what is no quantity because it is a caller's bug") {
    const auto broken = [](auto change) {
      HangParams params = part_on(rectangle(500, 300), Vec3(0, 0, 900), Vec3(0, 0, -100));
      change(params);
      CHECK_THROWS_AS((void)turn::hang(params), base::ContractViolation);
    };
    broken([](HangParams& p) { p.mass_kg = 0.0; });
    broken([](HangParams& p) { p.hook.x() = std::nan(""); });
    broken([](HangParams& p) { p.centre_of_gravity.x() = std::nan(""); });
    broken([](HangParams& p) { p.up *= 2.0; });
    broken([](HangParams& p) { p.lifting_points.clear(); });
    broken([](HangParams& p) { p.lifting_points[1] = p.lifting_points[0]; });
    broken([](HangParams& p) { p.lifting_points[1] = p.hook; });
    broken([](HangParams& p) { p.lifting_points[1].z() = std::nan(""); });
    broken([](HangParams& p) { p.lean_limit = Angle(); });
    broken([](HangParams& p) {
      for (int i = 0; i < 9; ++i) p.lifting_points.emplace_back(i, 700.0, 0.0);
    });
  }
}

}  // namespace seamturn::tests
