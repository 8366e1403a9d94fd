// SPDX-License-Identifier: MIT
// Which units people see: metric, or inch, pound and degree Fahrenheit.
#pragma once

#include <optional>
#include <string>

#include "seamturn/base/units.hpp"

namespace seamturn::cli {

/// Numbers for people in one of the two systems. Every function returns the number without unit;
/// the unit goes into the table head.
class UnitsShown {
 public:
  explicit UnitsShown(bool us) : us_(us) {}
  [[nodiscard]] bool is_us() const { return us_; }
  [[nodiscard]] std::string length(double mm) const;      ///< mm, 0 decimals; in, 1
  [[nodiscard]] std::string size(double mm) const;        ///< weld sizes: mm, up to 1; in, up to 3
  [[nodiscard]] std::string area(double mm2) const;       ///< mm2, 1; in2, 3
  [[nodiscard]] std::string mass(double kg) const;        ///< kg, 3; lb, 3
  [[nodiscard]] std::string weight(double kg) const;      ///< kg, 0; lb, 0
  [[nodiscard]] std::string temperature(double c) const;  ///< degC, 0; degF, 0
  [[nodiscard]] std::string exact_temperature(
      double c) const;  ///< one decimal where it is not whole
  /// A least temperature: rounded up.
  [[nodiscard]] std::string least_temperature(double c) const;
  [[nodiscard]] std::string temperature_step(double k) const;  ///< a difference: degC, 0; degF, 0
  [[nodiscard]] std::string heat_input(double kj_mm) const;    ///< kJ/mm, 2; kJ/in, 1
  [[nodiscard]] std::string torque(double nm) const;           ///< N m, 0; ft lb, 0
  [[nodiscard]] std::string rough_torque(double nm) const;     ///< two digits of either
  [[nodiscard]] std::string gas(double m3) const;              ///< m3, 2; ft3, 1
  [[nodiscard]] std::string warp(double mm) const;             ///< mm, 2; in, 3
  /// Of what is shown as calculated, in a metric unit named, the value in the unit a US shop reads;
  /// nothing in metric, and for units that both read.
  struct Converted {
    double value = 0.0;
    std::string unit;
  };
  [[nodiscard]] std::optional<Converted> in_us(double value, const std::string& metric) const;
  [[nodiscard]] std::string least_warp() const { return us_ ? "0.001" : "0.01"; }  ///< told of it
  [[nodiscard]] std::string length_unit() const { return us_ ? "in" : "mm"; }
  [[nodiscard]] std::string area_unit() const { return us_ ? "in2" : "mm2"; }
  [[nodiscard]] std::string mass_unit() const { return us_ ? "lb" : "kg"; }
  [[nodiscard]] std::string temperature_unit() const { return us_ ? "degF" : "degC"; }
  [[nodiscard]] std::string heat_input_unit() const { return us_ ? "kJ/in" : "kJ/mm"; }
  [[nodiscard]] std::string torque_unit() const { return us_ ? "ft lb" : "N m"; }
  [[nodiscard]] std::string gas_unit() const { return us_ ? "ft3" : "m3"; }

 private:
  [[nodiscard]] std::string shown(double internal,
                                  base::Dimension dimension,
                                  const char* metric,
                                  int metric_decimals,
                                  const char* us,
                                  int us_decimals) const;
  bool us_;
};

/// "1:02:07" or "4:05": hours, minutes, seconds as a clock shows them, rounded to the second.
[[nodiscard]] std::string clock_text(double seconds);

}  // namespace seamturn::cli
