// SPDX-License-Identifier: MIT
#include "seamturn/turn/load.hpp"

#include <algorithm>
#include <cmath>

#include "detail_remedies.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::turn {

namespace {

using geom::Vec3;

using base::m_per_mm;

/// How far the centre of gravity stands in front of the faceplate.
double from_faceplate_mm(const cell::Positioner& positioner, const Vec3& centre_D) {
  return centre_D.dot(cell::faceplate_normal_D(positioner.kind));
}
double distance_from_faceplate_mm(const cell::Positioner& positioner, const Vec3& centre_D) {
  return std::max(0.0, from_faceplate_mm(positioner, centre_D));
}

cell::LoadMargin margin_of(const cell::Positioner& positioner) {
  return positioner.margin.value_or(cell::LoadMargin{});
}

/// " with its margin of 5 % and 20 mm", or nothing.
std::string margin_text(const cell::Positioner& positioner) {
  if (!positioner.margin) return "";
  return ", with a margin of " + base::fixed_text(100.0 * positioner.margin->mass_ratio, 1) +
         " % and " + base::fixed_text(positioner.margin->centre_mm, 0) + " mm,";
}

base::Finding too_heavy(const cell::Positioner& positioner,
                        const joint::Weight& load_D,
                        double allowed_kg,
                        const std::string& stance_name) {
  const double distance_mm = distance_from_faceplate_mm(positioner, load_D.centre);
  const base::TwoTexts kg = base::told_apart(load_D.mass_kg, allowed_kg, 1);
  base::Finding finding;
  finding.code = "turn.load.too_heavy";
  finding.text = stance_name + ": the load of " + kg.first + " kg with its centre of gravity " +
                 base::fixed_text(distance_mm, 0) + " mm from the faceplate" +
                 margin_text(positioner) + " is more than positioner " + positioner.id +
                 " may carry, " + kg.second + " kg there (" +
                 base::fixed_text(positioner.load_max_kg, 0) + " kg up to " +
                 base::fixed_text(positioner.load_centre_mm, 0) +
                 " mm); do not turn it: " + detail::help_overhung_text(positioner, load_D);
  return finding;
}

base::Finding end_overloaded(const cell::Positioner& positioner,
                             const char* end,
                             double share_kg,
                             double allowed_kg,
                             const std::string& stance_name) {
  const base::TwoTexts kg = base::told_apart(std::abs(share_kg), allowed_kg, 0);
  base::Finding finding;
  finding.code = "turn.load.end";
  finding.text =
      stance_name + ": the " + end + " of positioner " + positioner.id + " bears " + kg.first +
      " kg of the load" + margin_text(positioner) +
      (share_kg < 0.0      ? " upwards,"
       : positioner.margin ? ""
                           : ",") +
      " its plate allows " + kg.second +
      " kg; do not turn it: move the part along the axis, take weight off, or take a larger "
      "positioner";
  return finding;
}

base::Finding too_much_torque(const cell::Positioner& positioner,
                              const joint::Weight& load_D,
                              const std::vector<Angle>& axes,
                              std::size_t index,
                              double torque_nm,
                              const std::string& stance_name) {
  const cell::Axis& axis = positioner.axes[index];
  const base::TwoTexts nm = base::told_apart(std::abs(torque_nm), axis.torque_max_nm, 0);
  base::Finding finding;
  finding.code = "turn.load.torque";
  finding.text = stance_name + ": the load" + margin_text(positioner) + " turns axis " + axis.name +
                 " with " + nm.first + " N m, its plate allows " + nm.second +
                 " N m; do not turn it: " + detail::help_axis_text(positioner, index, load_D, axes);
  return finding;
}

using base::rounding_ratio;

/// Both ends at the worst place of the centre of gravity within the margin.
void check_ends(const cell::Positioner& positioner,
                const joint::Weight& load_D,
                const std::string& stance_name,
                std::vector<base::Finding>& findings) {
  const cell::Tailstock& tail = *positioner.tailstock;
  const cell::LoadMargin margin = margin_of(positioner);
  const double mass_kg = (1.0 + margin.mass_ratio) * load_D.mass_kg;
  const double from_mm = from_faceplate_mm(positioner, load_D.centre);
  EndShares worst;
  for (const double off_mm : {-margin.centre_mm, margin.centre_mm}) {
    const EndShares shares = end_shares(mass_kg, from_mm + off_mm, tail.span_mm);
    if (std::abs(shares.head_kg) > std::abs(worst.head_kg)) worst.head_kg = shares.head_kg;
    if (std::abs(shares.tail_kg) > std::abs(worst.tail_kg)) worst.tail_kg = shares.tail_kg;
  }
  if (std::abs(worst.head_kg) > positioner.load_max_kg * (1.0 + rounding_ratio)) {
    findings.push_back(
        end_overloaded(positioner, "head", worst.head_kg, positioner.load_max_kg, stance_name));
  }
  if (std::abs(worst.tail_kg) > tail.load_max_kg * (1.0 + rounding_ratio)) {
    findings.push_back(
        end_overloaded(positioner, "tailstock", worst.tail_kg, tail.load_max_kg, stance_name));
  }
}

void check_overhung(const cell::Positioner& positioner,
                    const joint::Weight& load_D,
                    const std::string& stance_name,
                    std::vector<base::Finding>& findings) {
  const cell::LoadMargin margin = margin_of(positioner);
  const double distance_mm =
      std::max(0.0, from_faceplate_mm(positioner, load_D.centre) + margin.centre_mm);
  const double allowed_kg = load_allowed_kg(positioner, distance_mm);
  if ((1.0 + margin.mass_ratio) * load_D.mass_kg > allowed_kg * (1.0 + rounding_ratio)) {
    findings.push_back(too_heavy(positioner, load_D, allowed_kg, stance_name));
  }
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
  const Vec3 centre_W = pose_WD(positioner, axes).point(load_D.centre);
  const Vec3 weight_n(0.0, 0.0, -load_D.mass_kg * base::gravity_m_s2);
  std::vector<double> torques;
  for (const cell::AxisLine& line : axis_lines_W(positioner, axes)) {
    torques.push_back(m_per_mm * line.along.dot((centre_W - line.at).cross(weight_n)));
  }
  return torques;
}

std::vector<double> safe_torques_nm(const cell::Positioner& positioner,
                                    const joint::Weight& load_D,
                                    const std::vector<Angle>& axes) {
  std::vector<double> torques = axis_torques_nm(positioner, load_D, axes);
  if (!positioner.margin) return torques;
  const cell::LoadMargin& margin = *positioner.margin;
  const double weight_n = load_D.mass_kg * base::gravity_m_s2;
  const std::vector<cell::AxisLine> lines = axis_lines_W(positioner, axes);
  for (std::size_t i = 0; i < torques.size(); ++i) {
    // A shift to the side turns a level axis most, an upright one not at all.
    const double level = std::hypot(lines[i].along.x(), lines[i].along.y());
    const double shifted_nm = m_per_mm * weight_n * margin.centre_mm * level;
    torques[i] =
        std::copysign((1.0 + margin.mass_ratio) * (std::abs(torques[i]) + shifted_nm), torques[i]);
  }
  return torques;
}

EndShares end_shares(double mass_kg, double from_head_mm, double span_mm) {
  SEAMTURN_REQUIRE(span_mm > 0.0, span_mm);
  const double tail_kg = mass_kg * from_head_mm / span_mm;
  return {mass_kg - tail_kg, tail_kg};
}

double load_most_kg(const cell::Positioner& positioner) {
  const double tail_kg = positioner.tailstock ? positioner.tailstock->load_max_kg : 0.0;
  return positioner.load_max_kg + tail_kg;
}

double load_allowed_kg(const cell::Positioner& positioner, double distance_mm) {
  if (distance_mm <= positioner.load_centre_mm) return positioner.load_max_kg;
  const double overhang_mm = std::max(0.0, positioner.overhang_mm);
  return positioner.load_max_kg * (overhang_mm + positioner.load_centre_mm) /
         (overhang_mm + distance_mm);
}

std::vector<base::Finding> check_load(const cell::Positioner& positioner,
                                      const joint::Weight& load_D,
                                      const std::vector<Angle>& axes,
                                      const std::string& stance_name) {
  std::vector<base::Finding> findings;
  if (positioner.tailstock) {
    check_ends(positioner, load_D, stance_name, findings);
  } else {
    check_overhung(positioner, load_D, stance_name, findings);
  }
  const std::vector<double> torques = safe_torques_nm(positioner, load_D, axes);
  for (std::size_t i = 0; i < torques.size(); ++i) {
    const cell::Axis& axis = positioner.axes[i];
    if (std::abs(torques[i]) > axis.torque_max_nm * (1.0 + rounding_ratio)) {
      findings.push_back(too_much_torque(positioner, load_D, axes, i, torques[i], stance_name));
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
