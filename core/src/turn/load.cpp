// SPDX-License-Identifier: MIT
#include "seamturn/turn/load.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::turn {

namespace {

using geom::Vec3;

constexpr double m_per_mm = 0.001;

/// Directions of the axes in the world, first axis (fixed to the floor) first.
std::vector<Vec3> axis_directions_W(const cell::Positioner& positioner,
                                    const std::vector<Angle>& axes) {
  if (positioner.kind == cell::PositionerKind::headstock) return {Vec3::UnitX()};
  const Vec3 faceplate_normal_W = rotation_WD(positioner.kind, axes) * Vec3::UnitZ();
  return {Vec3::UnitY(), faceplate_normal_W};
}

/// How far the centre of gravity stands in front of the faceplate.
double distance_from_faceplate_mm(const cell::Positioner& positioner, const Vec3& centre_D) {
  const bool headstock = positioner.kind == cell::PositionerKind::headstock;
  return std::max(0.0, headstock ? centre_D.x() : centre_D.z());
}

base::Finding too_heavy(const cell::Positioner& positioner,
                        const joint::Weight& load_D,
                        double allowed_kg,
                        const std::string& stance_name) {
  const double distance_mm = distance_from_faceplate_mm(positioner, load_D.centre);
  base::Finding finding;
  finding.code = "turn.load.too_heavy";
  finding.text = stance_name + ": the load of " + base::fixed_text(load_D.mass_kg, 1) +
                 " kg with its centre of gravity " + base::fixed_text(distance_mm, 0) +
                 " mm from the faceplate is more than positioner " + positioner.id +
                 " may carry, " + base::fixed_text(allowed_kg, 1) + " kg there (" +
                 base::fixed_text(positioner.load_max_kg, 0) + " kg up to " +
                 base::fixed_text(positioner.load_centre_mm, 0) +
                 " mm); do not turn it: take a larger positioner or bring the load nearer";
  return finding;
}

base::Finding too_much_torque(const cell::Axis& axis,
                              double torque_nm,
                              const std::string& stance_name) {
  base::Finding finding;
  finding.code = "turn.load.torque";
  finding.text = stance_name + ": the load turns axis " + axis.name + " with " +
                 base::fixed_text(std::abs(torque_nm), 0) + " N m, its plate allows " +
                 base::fixed_text(axis.torque_max_nm, 0) +
                 " N m; do not turn it: balance the part nearer the axis";
  return finding;
}

constexpr base::FigureKey torque_keys[] = {
    {"mass", base::Dimension::mass, "of part and fixture", "0 or more"},
    {"overhang",
     base::Dimension::length,
     "from the tilt axis to the faceplate",
     "as on the rating plate"},
    {"offset",
     base::Dimension::length,
     "of the centre of gravity from the faceplate, square to it",
     "any"},
    {"eccentricity",
     base::Dimension::length,
     "of the centre of gravity from the turning axis, along the faceplate",
     "any"}};
constexpr base::Citation torque_sources[] = {
    {"POSITIONER-SIZING", "tilt and rotation torque", base::Status::verified}};

}  // namespace

std::vector<double> axis_torques_nm(const cell::Positioner& positioner,
                                    const joint::Weight& load_D,
                                    const std::vector<Angle>& axes) {
  SEAMTURN_REQUIRE(axes.size() == positioner.axes.size(), axes.size(), positioner.axes.size());
  // All axes pass through the tilt centre (a headstock's through its turning centre).
  const Vec3 arm_mm = pose_WD(positioner, axes).point(load_D.centre) - positioner.tilt_centre;
  const Vec3 weight_n(0.0, 0.0, -load_D.mass_kg * base::gravity_m_s2);
  const Vec3 moment_nm = m_per_mm * arm_mm.cross(weight_n);
  std::vector<double> torques;
  for (const Vec3& direction : axis_directions_W(positioner, axes)) {
    torques.push_back(direction.dot(moment_nm));
  }
  return torques;
}

double load_allowed_kg(const cell::Positioner& positioner, double distance_mm) {
  if (distance_mm <= positioner.load_centre_mm) return positioner.load_max_kg;
  return positioner.load_max_kg * (positioner.overhang_mm + positioner.load_centre_mm) /
         (positioner.overhang_mm + distance_mm);
}

std::vector<base::Finding> check_load(const cell::Positioner& positioner,
                                      const joint::Weight& load_D,
                                      const std::vector<Angle>& axes,
                                      const std::string& stance_name) {
  constexpr double rounding = 1.0 + 1e-9;  // a load exactly at its limit is allowed
  std::vector<base::Finding> findings;
  const double allowed_kg =
      load_allowed_kg(positioner, distance_from_faceplate_mm(positioner, load_D.centre));
  if (load_D.mass_kg > allowed_kg * rounding) {
    findings.push_back(too_heavy(positioner, load_D, allowed_kg, stance_name));
  }
  const std::vector<double> torques = axis_torques_nm(positioner, load_D, axes);
  for (std::size_t i = 0; i < torques.size(); ++i) {
    const cell::Axis& axis = positioner.axes[i];
    if (std::abs(torques[i]) > axis.torque_max_nm * rounding) {
      findings.push_back(too_much_torque(axis, torques[i], stance_name));
    }
  }
  return findings;
}

joint::Weight combined_weight(const joint::Weight& a, const joint::Weight& b) {
  const double mass = a.mass_kg + b.mass_kg;
  if (!(mass > 0.0)) return joint::Weight{};
  return joint::Weight{mass, (a.mass_kg * a.centre + b.mass_kg * b.centre) / mass};
}

SizingTorque sizing_torque(double mass_kg,
                           double overhang_mm,
                           double offset_mm,
                           double eccentricity_mm) {
  const double weight_n = mass_kg * base::gravity_m_s2;
  return SizingTorque{weight_n * (overhang_mm + offset_mm) * m_per_mm,
                      weight_n * eccentricity_mm * m_per_mm};
}

const base::FigureCard& torque_card() {
  static const base::FigureCard card{
      "torque",
      "torque a load asks of a tilting and turning positioner",
      "tilt torque = mass g (overhang + offset); rotation torque = mass g eccentricity; "
      "g = 9.80665 m/s2",
      "N m",
      "static and at the worst tilt; speeding up and friction come on top",
      torque_keys,
      torque_sources};
  return card;
}

}  // namespace seamturn::turn
