// SPDX-License-Identifier: MIT
// Units at the border. Inside the core every dimension has one unit (the first of each list below);
// io, figures and cli convert with these functions, nobody else does.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/outcome.hpp"

namespace seamturn::base {

/// What a quantity measures. The comment names the internal unit.
enum class Dimension {
  none,                  ///< bare number
  ratio,                 ///< 1 (written bare or in %)
  length,                ///< mm
  area,                  ///< mm2
  speed,                 ///< mm/s
  acceleration,          ///< mm/s2
  angle,                 ///< rad
  angular_speed,         ///< rad/s
  angular_acceleration,  ///< rad/s2
  angular_jerk,          ///< rad/s3
  jerk,                  ///< mm/s3
  time,                  ///< s
  mass,                  ///< kg
  linear_mass,           ///< kg/m
  torque,                ///< N m
  temperature,           ///< degC
  stress,                ///< MPa
  voltage,               ///< V
  current,               ///< A
  power,                 ///< W
  heat_input,            ///< kJ/mm
  gas_flow,              ///< l/min
  frequency,             ///< Hz
  money,                 ///< currency of the file
  money_per_hour,        ///< /h
  money_per_mass,        ///< /kg
  money_per_volume,      ///< /m3
  money_per_energy       ///< /kWh
};

/// One unit: internal value = (written value + offset) * factor.
struct Unit {
  std::string_view symbol;
  Dimension dimension;
  double factor;
  double offset = 0.0;
};

/// Every unit known, internal unit first within its dimension.
[[nodiscard]] std::span<const Unit> known_units();
/// "length", "speed", ... for messages.
[[nodiscard]] std::string_view dimension_name(Dimension dimension);
/// The symbols accepted for a dimension, separated by ", ".
[[nodiscard]] std::string unit_symbols(Dimension dimension);

/// A quantity written as "<number> <unit>" (the space may be missing), in the internal unit.
/// Units: text -> internal unit of the dimension.
/// Pre: none.
/// Outside: refuses with code read.unit.missing, read.unit.unknown, read.unit.wrong_dimension or
///   read.number.malformed; the text says what was found and which units are accepted.
/// Source: none - definitions of units (inch 25.4 mm, pound 0.45359237 kg, g 9.80665 m/s2 exact).
/// Accuracy: exact up to rounding.
/// Tests: base/units - published definitions, law write and read back.
[[nodiscard]] Outcome<double> parse_quantity(std::string_view text, Dimension dimension);

/// Same for several numbers that share one unit at the end: "10 157.5 25 mm", "400 x 120 mm".
/// Pre: count > 0. Refuses also with read.number.count.
[[nodiscard]] Outcome<std::vector<double>> parse_quantities(std::string_view text,
                                                            Dimension dimension,
                                                            std::size_t count);

/// Same into as many values as there is room for, in the unit that stands behind them: one of
/// known_units(), null for bare numbers. The reason when the text does not hold them.
[[nodiscard]] std::optional<Refusal> parse_written(std::string_view text,
                                                   Dimension dimension,
                                                   std::span<double> values,
                                                   const Unit*& unit);

/// A bare number, fully consumed and finite. Refuses with read.number.malformed.
[[nodiscard]] Outcome<double> parse_number(std::string_view text);

/// A written value in the internal unit of its dimension; a bare number as it stands.
[[nodiscard]] inline double in_internal_unit(double written, const Unit* unit) {
  return unit == nullptr ? written : (written + unit->offset) * unit->factor;
}

/// Internal value in another unit of the same dimension.
/// Pre: the symbol is a unit of that dimension; otherwise ContractViolation.
[[nodiscard]] double in_unit(double internal, Dimension dimension, std::string_view symbol);

}  // namespace seamturn::base
