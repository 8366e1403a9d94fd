// SPDX-License-Identifier: MIT
#include "seamturn/turn/hang.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <string>

#include "seamturn/base/error.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::turn {

namespace {

using base::digits_text;
using base::Refusal;
using geom::Mat3;
using geom::Vec3;

constexpr double flat_above_deg = 60.0;  // [EN 818-4], FROM MEMORY
constexpr double no_share = 1e-9;
constexpr std::size_t most_points = 12;
constexpr double apart_mm = 1e-6;
constexpr double in_line = 1e-9;

void require(const HangParams& params) {
  SEAMTURN_REQUIRE(base::is_positive(params.mass_kg), params.mass_kg);
  SEAMTURN_REQUIRE(params.centre_of_gravity.allFinite() && params.hook.allFinite());
  SEAMTURN_REQUIRE(params.up.allFinite() && std::abs(params.up.norm() - 1.0) < 1e-9);
  SEAMTURN_REQUIRE(!params.lean_limit || params.lean_limit->rad() > 0.0);
  SEAMTURN_REQUIRE(!params.lifting_points.empty() && params.lifting_points.size() <= most_points,
                   params.lifting_points.size());
  const auto& points = params.lifting_points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    SEAMTURN_REQUIRE(points[i].allFinite());
    SEAMTURN_REQUIRE((points[i] - params.hook).norm() > apart_mm, i);
    for (std::size_t k = 0; k < i; ++k) {
      SEAMTURN_REQUIRE((points[i] - points[k]).norm() > apart_mm, i, k);
    }
  }
}

/// Hook and sky once the part hangs.
struct Rest {
  Vec3 hook = Vec3::Zero();
  Vec3 up = Vec3::UnitZ();
};

Refusal tips(const std::string& why) {
  return {"turn.hang.tips",
          why +
              ": the part turns over when it is lifted; move the lifting points so that the "
              "centre of gravity lies below and well inside them"};
}

Refusal hook_low(std::size_t point, const std::string& what) {
  return {
      "turn.hang.hook_low",
      what + " lifting point " + std::to_string(point + 1) + ": longer slings, or other points"};
}

base::Outcome<Rest> rest_on_one(const HangParams& params) {
  const Vec3& point = params.lifting_points[0];
  const Vec3 to_point = point - params.centre_of_gravity;
  if (to_point.dot(params.up) <= apart_mm) {
    return tips("the one lifting point is not above the centre of gravity");
  }
  const Vec3 up = to_point.normalized();
  return Rest{point + (params.hook - point).norm() * up, up};
}

/// The hook goes round the line of both points until it is straight over the centre of gravity.
base::Outcome<Rest> rest_on_two(const HangParams& params) {
  const Vec3& p = params.lifting_points[0];
  const Vec3 along = (params.lifting_points[1] - p).normalized();
  const auto off_line = [&](const Vec3& x) { return Vec3(x - p - along.dot(x - p) * along); };
  const Vec3 hook_off = off_line(params.hook);
  const Vec3 weight_off = off_line(params.centre_of_gravity);
  if (hook_off.norm() <= apart_mm) {
    return Refusal{"turn.hang.in_line", "hook and both lifting points lie in one line"};
  }
  if (weight_off.dot(params.up) >= -apart_mm) {
    return tips("the line of both lifting points is not above the centre of gravity");
  }
  const Vec3 hook = params.hook - hook_off - hook_off.norm() * weight_off.normalized();
  return Rest{hook, (hook - params.centre_of_gravity).normalized()};
}

base::Outcome<Rest> rest_of(const HangParams& params) {
  const Vec3 to_hook = params.hook - params.centre_of_gravity;
  if (to_hook.dot(params.up) <= apart_mm) {
    return Refusal{"turn.hang.hook_low",
                   "the hook is not above the centre of gravity; longer slings, or "
                   "correct hook= (frame of the part)"};
  }
  for (std::size_t i = 0; i < params.lifting_points.size(); ++i) {
    if ((params.hook - params.lifting_points[i]).dot(params.up) <= apart_mm) {
      return hook_low(i, "the hook is not above");
    }
  }
  if (params.lifting_points.size() == 1) return rest_on_one(params);
  if (params.lifting_points.size() == 2) return rest_on_two(params);
  return Rest{params.hook, to_hook.normalized()};
}

/// Slings by columns, each with 1 along the vertical: columns * shares = up.
base::Outcome<Eigen::Matrix3Xd> slings_of(const HangParams& params, const Rest& rest) {
  Eigen::Matrix3Xd slings(3, static_cast<Eigen::Index>(params.lifting_points.size()));
  for (std::size_t i = 0; i < params.lifting_points.size(); ++i) {
    const Vec3 sling = rest.hook - params.lifting_points[i];
    const double height_mm = sling.dot(rest.up);
    if (height_mm <= apart_mm) return hook_low(i, "once it hangs, the hook is not above");
    slings.col(static_cast<Eigen::Index>(i)) = sling / height_mm;
  }
  return slings;
}

/// The most each sling carries when three do and the rest are slack. Empty: no three span anything.
Eigen::VectorXd largest_by_threes(const Eigen::Matrix3Xd& slings, const Vec3& up) {
  const Eigen::Index count = slings.cols();
  Eigen::VectorXd largest;
  for (Eigen::Index a = 0; a < count; ++a) {
    for (Eigen::Index b = a + 1; b < count; ++b) {
      for (Eigen::Index c = b + 1; c < count; ++c) {
        Mat3 three;
        three << slings.col(a), slings.col(b), slings.col(c);
        const double sizes = slings.col(a).norm() * slings.col(b).norm() * slings.col(c).norm();
        if (std::abs(three.determinant()) <= in_line * sizes) continue;
        if (largest.size() == 0) largest = Eigen::VectorXd::Zero(count);
        const Vec3 shares = three.partialPivLu().solve(up);
        if (shares.minCoeff() < -no_share) continue;
        largest(a) = std::max(largest(a), shares(0));
        largest(b) = std::max(largest(b), shares(1));
        largest(c) = std::max(largest(c), shares(2));
      }
    }
  }
  return largest;
}

/// Least sum of squares with no share below 0: of every set of slings that may carry, the others
/// slack, the one of least squares that balances. Empty: none does.
Eigen::VectorXd even_shares(const Eigen::Matrix3Xd& slings, const Vec3& up) {
  const Eigen::Index count = slings.cols();
  Eigen::VectorXd best;
  for (unsigned set = (1U << count) - 1U; set > 0; --set) {
    Eigen::Matrix3Xd some = slings;
    for (Eigen::Index i = 0; i < count; ++i) {
      if ((set >> i & 1U) == 0) some.col(i).setZero();
    }
    const Eigen::VectorXd shares = some.completeOrthogonalDecomposition().solve(up);
    const bool balances = (some * shares - up).norm() < 1e-9 && shares.minCoeff() > -no_share;
    if (balances && (best.size() == 0 || shares.norm() < best.norm() - no_share)) best = shares;
    if (balances && set == (1U << count) - 1U) break;  // all carry: nothing is less
  }
  return best;
}

struct Shares {
  Eigen::VectorXd even;
  Eigen::VectorXd largest;
};

base::Outcome<Shares> shares_of(const Eigen::Matrix3Xd& slings, const Vec3& up) {
  Shares out;
  out.even = even_shares(slings, up);
  if (out.even.size() == 0) {
    return tips(
        "no slings that only pull balance the weight, the centre of gravity is not inside "
        "the points");
  }
  out.largest = slings.cols() > 2 ? largest_by_threes(slings, up) : out.even;
  if (out.largest.size() == 0) {
    return Refusal{"turn.hang.in_line",
                   "no three lifting points span a pyramid with the hook: what each sling carries "
                   "is open; take two of them, or points that are not in line"};
  }
  Eigen::Index least = 0;
  if (out.largest.minCoeff(&least) <= no_share) {
    return tips("lifting point " + std::to_string(least + 1) +
                " carries nothing, the centre of gravity is not inside the points");
  }
  return out;
}

void warn(Hang& out, const char* code, std::string text) {
  out.findings.push_back({base::Severity::warning, code, std::move(text), {}, {}});
}

/// Height of the points where the plumb line through the centre of gravity passes them.
double height_of_points_mm(const HangParams& params, const Hang& out) {
  double height_mm = 0.0, sum = 0.0;
  for (std::size_t i = 0; i < params.lifting_points.size(); ++i) {
    // Weights of the horizontal places: shares over the heights of the slings.
    const double weight = out.slings[i].share_ratio /
                          (out.hook_as_hung - params.lifting_points[i]).dot(out.up_as_hung);
    height_mm += weight * params.lifting_points[i].dot(out.up_as_hung);
    sum += weight;
  }
  return height_mm / sum;
}

void judge(Hang& out, const HangParams& params) {
  for (std::size_t i = 0; i < out.slings.size(); ++i) {
    const SlingLoad& sling = out.slings[i];
    const std::string name = "sling " + std::to_string(i + 1);
    if (sling.from_vertical.deg() > flat_above_deg + 1e-9) {
      warn(out,
           "turn.hang.sling_flat",
           name + " stands " + digits_text(sling.from_vertical.deg(), 3) +
               " deg from the vertical; 60 deg is the usual limit: longer slings or a spreader");
    }
    if (sling.share_ratio <= no_share) {
      warn(out,
           "turn.hang.slack",
           name +
               " goes slack when all could share: the others carry more, up to the largest "
               "share named");
    }
  }
  if (params.lifting_points.size() > 2 &&
      params.centre_of_gravity.dot(out.up_as_hung) > height_of_points_mm(params, out)) {
    warn(out,
         "turn.hang.top_heavy",
         "the centre of gravity lies above the lifting points: a jerk may turn the part over; lift "
         "it higher up, or guide it");
  }
  if (params.lean_limit && out.lean.rad() > params.lean_limit->rad() + 1e-9) {
    warn(out,
         "turn.hang.leans",
         "the part hangs " + digits_text(out.lean.deg(), 3) + " deg askew; " +
             digits_text(params.lean_limit->deg(), 3) +
             " deg are permitted: shorten or lengthen slings, or move the points");
  }
}

double off_plane_mm(const HangParams& params) {
  if (params.lifting_points.size() != 2) return 0.0;
  const Vec3 normal = (params.lifting_points[0] - params.hook)
                          .cross(params.lifting_points[1] - params.hook)
                          .normalized();
  return std::abs(normal.dot(params.centre_of_gravity - params.hook));
}

}  // namespace

base::Outcome<Hang> hang(const HangParams& params) {
  require(params);
  const auto rest = rest_of(params);
  if (!rest) return rest.error();
  const auto slings = slings_of(params, *rest);
  if (!slings) return slings.error();
  const auto shares = shares_of(*slings, rest->up);
  if (!shares) return shares.error();
  Hang out;
  out.hook_as_hung = rest->hook;
  out.up_as_hung = rest->up;
  out.lean = geom::angle_between(params.up, rest->up);
  out.off_plane_mm = off_plane_mm(params);
  const double weight_n = params.mass_kg * base::gravity_m_s2;
  for (Eigen::Index i = 0; i < slings->cols(); ++i) {
    const Vec3 sling = slings->col(i);
    out.slings.push_back({shares->even(i),
                          geom::angle_between(sling, rest->up),
                          weight_n * shares->even(i) * sling.norm(),
                          shares->largest(i),
                          weight_n * shares->largest(i) * sling.norm()});
  }
  judge(out, params);
  return out;
}

}  // namespace seamturn::turn
