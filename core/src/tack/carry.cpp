// SPDX-License-Identifier: MIT
#include "seamturn/tack/carry.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <optional>

#include "seamturn/base/error.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::tack {

namespace {

using base::digits_text;
using geom::Mat3;
using geom::Vec3;

bool is_unit(const Vec3& v) {
  return v.allFinite() && std::abs(v.norm() - 1.0) < 1e-9;
}

void require(const std::vector<HeldTack>& tacks, const CarriedPart& part) {
  SEAMTURN_REQUIRE(!tacks.empty());
  for (const HeldTack& tack : tacks) {
    SEAMTURN_REQUIRE(tack.centre.allFinite() && is_unit(tack.direction));
    SEAMTURN_REQUIRE(base::is_positive(tack.length_mm), tack.length_mm);
    SEAMTURN_REQUIRE(base::is_positive(tack.throat_mm), tack.throat_mm);
  }
  SEAMTURN_REQUIRE(base::is_positive(part.mass_kg), part.mass_kg);
  SEAMTURN_REQUIRE(part.centre_of_gravity.allFinite());
  SEAMTURN_REQUIRE(!part.gravity_directions.empty());
  for (const Vec3& down : part.gravity_directions) SEAMTURN_REQUIRE(is_unit(down), down.norm());
  SEAMTURN_REQUIRE(std::isfinite(part.site_factor) && part.site_factor >= 1.0, part.site_factor);
  SEAMTURN_REQUIRE(base::is_positive(part.permitted.stress_mpa), part.permitted.stress_mpa);
}

Mat3 cross_matrix(const Vec3& v) {
  Mat3 m;
  m << 0.0, -v.z(), v.y(), v.z(), 0.0, -v.x(), -v.y(), v.x(), 0.0;
  return m;
}

double area_mm2(const HeldTack& tack) {
  return tack.length_mm * tack.throat_mm;
}

/// The throats of all tacks as one group about its centroid.
struct Group {
  Vec3 centroid = Vec3::Zero();
  double area_mm2 = 0.0;
  Mat3 inertia_mm4 = Mat3::Zero();
};

Group group_of(const std::vector<HeldTack>& tacks) {
  Group group;
  for (const HeldTack& tack : tacks) {
    group.area_mm2 += area_mm2(tack);
    group.centroid += area_mm2(tack) * tack.centre;
  }
  group.centroid /= group.area_mm2;
  for (const HeldTack& tack : tacks) {
    const Vec3 r = tack.centre - group.centroid;
    const Mat3 own = tack.length_mm * tack.length_mm / 12.0 *
                     (Mat3::Identity() - tack.direction * tack.direction.transpose());
    group.inertia_mm4 +=
        area_mm2(tack) * (r.squaredNorm() * Mat3::Identity() - r * r.transpose() + own);
  }
  return group;
}

/// None where all throats lie in one line.
std::optional<Mat3> inverse_inertia(const Group& group) {
  constexpr double in_line = 1e-9;
  const Eigen::SelfAdjointEigenSolver<Mat3> axes(group.inertia_mm4);
  if (axes.eigenvalues()(0) <= in_line * axes.eigenvalues()(2)) return std::nullopt;
  const Mat3& turns = axes.eigenvectors();
  return Mat3(turns * axes.eigenvalues().cwiseInverse().asDiagonal() * turns.transpose());
}

/// Stress at a point from a weight: a matrix, MPa per N.
struct Spread {
  Group group;
  Mat3 turn;  ///< weight -> omega
  [[nodiscard]] Mat3 at(const Vec3& point) const {
    return Mat3::Identity() / group.area_mm2 - cross_matrix(point - group.centroid) * turn;
  }
};

std::pair<Vec3, Vec3> ends_of(const HeldTack& tack) {
  const Vec3 half = 0.5 * tack.length_mm * tack.direction;
  return {tack.centre - half, tack.centre + half};
}

double stress_mpa(const Spread& spread, const HeldTack& tack, const Vec3& weight_n) {
  const auto [a, b] = ends_of(tack);
  return std::max((spread.at(a) * weight_n).norm(), (spread.at(b) * weight_n).norm());
}

/// Largest stretch of a matrix: the worst direction of a weight of 1 N.
double worst_direction(const Mat3& m) {
  return Eigen::JacobiSVD<Mat3>(m).singularValues()(0);
}

base::Finding verdict(const Carry& carry) {
  const std::string numbers = digits_text(carry.stress_mpa, 3) + " MPa on the throat of tack " +
                              std::to_string(carry.worst_tack + 1) + " against " +
                              digits_text(carry.permitted.stress_mpa, 3) + " MPa";
  if (carry.utilisation_ratio > 1.0) {
    return {base::Severity::warning,
            "tack.carry.overloaded",
            "the tacks do not carry the part in attitude " +
                std::to_string(carry.worst_attitude + 1) + ": " + numbers +
                "; lay more or longer ones, or hold the part otherwise before it is turned",
            {},
            {}};
  }
  return {base::Severity::note,
          "tack.carry.not_released",
          numbers +
              ": a simple rule for a rigid part, no release; tacks are looked at, and the "
              "responsible welding coordinator decides before the first turn",
          {},
          {}};
}

void find_worst(Carry& out,
                const Spread& spread,
                const std::vector<HeldTack>& tacks,
                const CarriedPart& part,
                double weight_n) {
  out.stress_mpa = -1.0;
  for (std::size_t k = 0; k < part.gravity_directions.size(); ++k) {
    for (std::size_t i = 0; i < tacks.size(); ++i) {
      const double stress = stress_mpa(spread, tacks[i], weight_n * part.gravity_directions[k]);
      if (stress <= out.stress_mpa) continue;
      out.stress_mpa = stress;
      out.worst_attitude = k;
      out.worst_tack = i;
    }
  }
  for (const HeldTack& tack : tacks) {
    const auto [a, b] = ends_of(tack);
    const double worst =
        weight_n * std::max(worst_direction(spread.at(a)), worst_direction(spread.at(b)));
    out.any_attitude_stress_mpa = std::max(out.any_attitude_stress_mpa, worst);
  }
}

}  // namespace

std::vector<HeldTack> held_tacks(const TackPlan& plan) {
  std::vector<HeldTack> held;
  for (const Tack& tack : plan.tacks) {
    held.push_back({tack.centre, tack.direction, tack.to_mm - tack.from_mm, plan.throat_mm});
  }
  return held;
}

base::Outcome<Carry> carry(const std::vector<HeldTack>& tacks, const CarriedPart& part) {
  require(tacks, part);
  const Group group = group_of(tacks);
  const std::optional<Mat3> inverse = inverse_inertia(group);
  if (!inverse) {
    return base::Refusal{"tack.carry.hinge",
                         "all tacks lie in one line: the part can turn about it like a door; tack "
                         "the other side, another seam or a strut before it is turned"};
  }
  const Spread spread{group, *inverse * cross_matrix(part.centre_of_gravity - group.centroid)};
  const double weight_n = part.mass_kg * base::gravity_m_s2 * part.site_factor;
  Carry out;
  out.permitted = part.permitted;
  find_worst(out, spread, tacks, part, weight_n);
  out.utilisation_ratio = out.stress_mpa / out.permitted.stress_mpa;
  const Vec3 worst_n = weight_n * part.gravity_directions[out.worst_attitude];
  for (const HeldTack& tack : tacks) {
    out.loads.push_back(
        {area_mm2(tack) * (spread.at(tack.centre) * worst_n), stress_mpa(spread, tack, worst_n)});
  }
  out.findings.push_back(verdict(out));
  return out;
}

}  // namespace seamturn::tack
