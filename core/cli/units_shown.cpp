// SPDX-License-Identifier: MIT
#include "units_shown.hpp"

#include <cmath>

#include "seamturn/base/number_text.hpp"

namespace seamturn::cli {

using base::Dimension;

namespace {

double cubic_feet_per_m3() {
  const double feet = base::in_unit(1000.0, Dimension::length, "ft");
  return feet * feet * feet;
}

}  // namespace

std::string UnitsShown::shown(double internal,
                              Dimension dimension,
                              const char* metric,
                              int metric_decimals,
                              const char* us,
                              int us_decimals) const {
  return us_ ? base::fixed_text(base::in_unit(internal, dimension, us), us_decimals)
             : base::fixed_text(base::in_unit(internal, dimension, metric), metric_decimals);
}

std::string UnitsShown::length(double mm) const {
  return shown(mm, Dimension::length, "mm", 0, "in", 1);
}
std::string UnitsShown::size(double mm) const {
  std::string text = shown(mm, Dimension::length, "mm", 1, "in", 3);
  // A drawing says 12, not 12.0.
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}
std::string UnitsShown::area(double mm2) const {
  return shown(mm2, Dimension::area, "mm2", 1, "in2", 3);
}
std::string UnitsShown::mass(double kg) const {
  return shown(kg, Dimension::mass, "kg", 2, "lb", 2);
}
std::string UnitsShown::weight(double kg) const {
  return shown(kg, Dimension::mass, "kg", 0, "lb", 0);
}
std::string UnitsShown::temperature(double c) const {
  return shown(c, Dimension::temperature, "degC", 0, "degF", 0);
}
std::string UnitsShown::exact_temperature(double c) const {
  const std::string text = shown(c, Dimension::temperature, "degC", 1, "degF", 1);
  return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}
std::string UnitsShown::least_temperature(double c) const {
  constexpr double rounding = 1e-6;
  const std::string unit = temperature_unit();
  return base::fixed_text(std::ceil(base::in_unit(c, Dimension::temperature, unit) - rounding), 0);
}
std::string UnitsShown::temperature_step(double k) const {
  constexpr double freezing_c = 0.0;  // any place will do: the zero point drops out
  const char* unit = us_ ? "degF" : "degC";
  return base::fixed_text(base::in_unit(freezing_c + k, Dimension::temperature, unit) -
                              base::in_unit(freezing_c, Dimension::temperature, unit),
                          0);
}
std::string UnitsShown::heat_input(double kj_mm) const {
  return shown(kj_mm, Dimension::heat_input, "kJ/mm", 2, "kJ/in", 1);
}
std::string UnitsShown::torque(double nm) const {
  return shown(nm, Dimension::torque, "N m", 0, "ft lb", 0);
}
std::string UnitsShown::rough_torque(double nm) const {
  const double shown = base::in_unit(nm, Dimension::torque, torque_unit());
  if (!(shown > 0.0)) return base::fixed_text(shown, 0);
  const double step = std::pow(10.0, std::floor(std::log10(shown)) - 1.0);
  return base::fixed_text(std::round(shown / step) * step, 0);
}

std::string UnitsShown::gas(double m3) const {
  return us_ ? base::fixed_text(m3 * cubic_feet_per_m3(), 1) : base::fixed_text(m3, 2);
}
std::string UnitsShown::warp(double mm) const {
  return shown(mm, Dimension::length, "mm", 2, "in", 3);
}

std::optional<UnitsShown::Converted> UnitsShown::in_us(double value,
                                                       const std::string& metric) const {
  if (!us_) return std::nullopt;
  if (metric == "cm/min" || metric == "m/min") {
    const double mm_s = value * (metric == "m/min" ? 1000.0 : 10.0) / 60.0;
    return Converted{base::in_unit(mm_s, Dimension::speed, "in/min"), "in/min"};
  }
  if (metric == "kg/m3") {
    return Converted{base::in_unit(value, Dimension::mass, "lb") / cubic_feet_per_m3(), "lb/ft3"};
  }
  return std::nullopt;
}

std::string clock_text(double seconds) {
  const long long whole = std::llround(seconds);
  const auto two = [](long long n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  const long long h = whole / 3600;
  const long long m = whole / 60 % 60;
  const std::string tail = ":" + two(whole % 60);
  return h > 0 ? std::to_string(h) + ":" + two(m) + tail : std::to_string(m) + tail;
}

}  // namespace seamturn::cli
