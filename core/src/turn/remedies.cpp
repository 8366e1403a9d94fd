// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_remedies.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::turn::detail {

namespace {

using base::Angle;

constexpr const char* take_larger = "or take a larger positioner";

cell::LoadMargin safe_margin(const cell::Positioner& positioner) {
  return positioner.margin.value_or(cell::LoadMargin{});
}

/// A permitted value is never rounded up.
std::string permitted(double value) {
  return base::fixed_text(std::floor(value), 0);
}

}  // namespace

std::string help_axis_text(const cell::Positioner& positioner,
                           std::size_t axis,
                           const joint::Weight& load_D,
                           const std::vector<Angle>& axes) {
  SEAMTURN_REQUIRE(load_D.mass_kg > 0.0 && axis < positioner.axes.size(), load_D.mass_kg, axis);
  const double held_nm = positioner.axes[axis].torque_max_nm;
  const double asked_nm = std::abs(safe_torques_nm(positioner, load_D, axes)[axis]);
  const double newtons = load_D.mass_kg * base::gravity_m_s2;
  // Of what is asked the load's own lever is one part, the margin the other.
  const double own_nm = std::abs(axis_torques_nm(positioner, load_D, axes)[axis]);
  const double ratio = 1.0 + safe_margin(positioner).mass_ratio;
  const double left_nm = held_nm / ratio - (asked_nm / ratio - own_nm);
  const auto lever_mm = [&](double nm) { return nm / (newtons * base::m_per_mm); };
  const std::string lighter = "take weight off, down to " +
                              permitted(load_D.mass_kg * held_nm / asked_nm) +
                              " kg if it sits so, " + take_larger;
  if (lever_mm(left_nm) < 1.0) return lighter;
  const bool last = axis + 1 == positioner.axes.size();
  return "set the part up nearer the axis, its weight has a lever of " +
         base::fixed_text(std::ceil(lever_mm(own_nm)), 0) + " mm and may have " +
         permitted(lever_mm(left_nm)) + " mm, " +
         (last ? "hang a balance mass opposite, which counts in the load, " : "") + lighter;
}

std::string help_overhung_text(const cell::Positioner& positioner, const joint::Weight& load_D) {
  SEAMTURN_REQUIRE(load_D.mass_kg > 0.0, load_D.mass_kg);
  const cell::LoadMargin margin = safe_margin(positioner);
  const double mass_kg = (1.0 + margin.mass_ratio) * load_D.mass_kg;
  const double overhang_mm = std::max(0.0, positioner.overhang_mm);
  const double lever_mm = overhang_mm + positioner.load_centre_mm;
  const double within_mm =
      positioner.load_max_kg * lever_mm / mass_kg - overhang_mm - margin.centre_mm;
  std::string help;
  if (mass_kg <= positioner.load_max_kg && within_mm >= 1.0) {
    help = "set the part up with its centre of gravity at most " + permitted(within_mm) +
           " mm from the faceplate, ";
  }
  help += "take weight off, ";
  return help += take_larger;
}

}  // namespace seamturn::turn::detail
