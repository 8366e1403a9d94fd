// SPDX-License-Identifier: MIT
#include "seamturn/base/units.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

#include "seamturn/base/gravity.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::base {

namespace {

constexpr double inch_mm = 25.4;         // exact, international yard and pound agreement 1959
constexpr double pound_kg = 0.45359237;  // exact, same
constexpr double foot_mm = 12.0 * inch_mm;
constexpr double degree_rad = std::numbers::pi / 180.0;
constexpr double turn_rad = 2.0 * std::numbers::pi;
constexpr double cubic_foot_l = foot_mm * foot_mm * foot_mm * 1e-6;

using D = Dimension;
constexpr Unit units[] = {
    {"", D::ratio, 1.0},
    {"%", D::ratio, 0.01},
    {"mm", D::length, 1.0},
    {"cm", D::length, 10.0},
    {"m", D::length, 1000.0},
    {"in", D::length, inch_mm},
    {"ft", D::length, foot_mm},
    {"mm2", D::area, 1.0},
    {"cm2", D::area, 100.0},
    {"in2", D::area, inch_mm* inch_mm},
    {"mm/s", D::speed, 1.0},
    {"mm/min", D::speed, 1.0 / 60.0},
    {"cm/min", D::speed, 10.0 / 60.0},
    {"m/min", D::speed, 1000.0 / 60.0},
    {"m/s", D::speed, 1000.0},
    {"in/min", D::speed, inch_mm / 60.0},
    {"mm/s2", D::acceleration, 1.0},
    {"m/s2", D::acceleration, 1000.0},
    {"rad", D::angle, 1.0},
    {"deg", D::angle, degree_rad},
    {"rad/s", D::angular_speed, 1.0},
    {"deg/s", D::angular_speed, degree_rad},
    {"rpm", D::angular_speed, turn_rad / 60.0},
    {"rad/s2", D::angular_acceleration, 1.0},
    {"deg/s2", D::angular_acceleration, degree_rad},
    {"rad/s3", D::angular_jerk, 1.0},
    {"deg/s3", D::angular_jerk, degree_rad},
    {"mm/s3", D::jerk, 1.0},
    {"m/s3", D::jerk, 1000.0},
    {"s", D::time, 1.0},
    {"min", D::time, 60.0},
    {"h", D::time, 3600.0},
    {"kg", D::mass, 1.0},
    {"g", D::mass, 0.001},
    {"t", D::mass, 1000.0},
    {"lb", D::mass, pound_kg},
    {"kg/m", D::linear_mass, 1.0},
    {"g/m", D::linear_mass, 0.001},
    {"lb/ft", D::linear_mass, pound_kg / (foot_mm * 0.001)},
    {"N m", D::torque, 1.0},
    {"Nm", D::torque, 1.0},
    {"kN m", D::torque, 1000.0},
    {"kNm", D::torque, 1000.0},
    {"in lb", D::torque, pound_kg* gravity_m_s2* inch_mm * 0.001},
    {"ft lb", D::torque, pound_kg* gravity_m_s2* foot_mm * 0.001},
    {"degC", D::temperature, 1.0},
    {"degF", D::temperature, 5.0 / 9.0, -32.0},
    {"MPa", D::stress, 1.0},
    {"N/mm2", D::stress, 1.0},
    {"ksi", D::stress, pound_kg* gravity_m_s2 * 1000.0 / (inch_mm * inch_mm)},
    {"V", D::voltage, 1.0},
    {"A", D::current, 1.0},
    {"W", D::power, 1.0},
    {"kW", D::power, 1000.0},
    {"kJ/mm", D::heat_input, 1.0},
    {"J/mm", D::heat_input, 0.001},
    {"kJ/cm", D::heat_input, 0.1},
    {"J/cm", D::heat_input, 0.0001},
    {"kJ/in", D::heat_input, 1.0 / inch_mm},
    {"J/in", D::heat_input, 0.001 / inch_mm},
    {"l/min", D::gas_flow, 1.0},
    {"m3/h", D::gas_flow, 1000.0 / 60.0},
    {"ft3/h", D::gas_flow, cubic_foot_l / 60.0},
    {"Hz", D::frequency, 1.0},
    {"/h", D::money_per_hour, 1.0},
    {"/kg", D::money_per_mass, 1.0},
    {"/lb", D::money_per_mass, 1.0 / pound_kg},
    {"/m3", D::money_per_volume, 1.0},
    {"/ft3", D::money_per_volume, 1000.0 / cubic_foot_l},
    {"/kWh", D::money_per_energy, 1.0},
};

struct DimensionName {
  Dimension dimension;
  std::string_view name;
};
constexpr DimensionName dimension_names[] = {
    {D::none, "a bare number"},
    {D::ratio, "a ratio"},
    {D::length, "a length"},
    {D::area, "an area"},
    {D::speed, "a speed"},
    {D::acceleration, "an acceleration"},
    {D::angle, "an angle"},
    {D::angular_speed, "an angular speed"},
    {D::angular_acceleration, "an angular acceleration"},
    {D::angular_jerk, "an angular jerk"},
    {D::jerk, "a jerk"},
    {D::time, "a time"},
    {D::mass, "a mass"},
    {D::linear_mass, "a mass per length"},
    {D::torque, "a torque"},
    {D::temperature, "a temperature"},
    {D::stress, "a stress"},
    {D::voltage, "a voltage"},
    {D::current, "a current"},
    {D::power, "a power"},
    {D::heat_input, "a heat input"},
    {D::gas_flow, "a gas flow"},
    {D::frequency, "a frequency"},
    {D::money, "an amount of money"},
    {D::money_per_hour, "a price per hour"},
    {D::money_per_mass, "a price per mass"},
    {D::money_per_volume, "a price per volume"},
    {D::money_per_energy, "a price per energy"},
};

constexpr bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

inline std::string_view without_blanks_before(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  return text;
}

inline std::string_view trimmed(std::string_view text) {
  text = without_blanks_before(text);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t shown = 60;
  std::string out = "\"" + std::string(text.substr(0, shown));
  return out + (text.size() > shown ? "...\"" : "\"");
}

Refusal malformed(std::string_view text) {
  return Refusal{"read.number.malformed",
                 quoted(text) +
                     " is not a number (digits, a point for decimals, no thousands "
                     "separators)"};
}

/// A number where no unit is written, with one.
Refusal bare_wanted(std::string_view text, std::string_view tail) {
  return Refusal{"read.number.malformed",
                 quoted(text) + " is more than a bare number, and no unit is written here; leave " +
                     quoted(tail) + " away"};
}

enum class Found { number, nothing, too_large };

/// Why a text that should start with a number is refused.
Refusal refusal_of(Found found, std::string_view text) {
  if (found == Found::nothing) return malformed(text);
  return Refusal{"read.number.too_large", quoted(text) + " is beyond the range of numbers"};
}

/// Takes the divisor of "5/16" off the start of a text that begins with "/".
Found take_divisor(std::string_view& text, double& value) {
  double divisor = 0.0;
  const char* const end = text.data() + text.size();
  const auto below = std::from_chars(text.data() + 1, end, divisor);
  if (below.ec != std::errc() || divisor == 0.0) return Found::nothing;
  value /= divisor;
  text = std::string_view(below.ptr, static_cast<std::size_t>(end - below.ptr));
  return Found::number;
}

constexpr std::size_t most_short_digits = 15;
constexpr double powers_of_ten[most_short_digits + 1] = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

/// How long the number at the start of a text is, and the number, when it is one as people write
/// nearly all of them, "12.5" or "-40"; 0 when it is longer, has an exponent or is no number. Of
/// fifteen digits and a power of ten, both exact in a double, one division makes the nearest double
/// (Clinger 1990).
std::size_t short_decimal(std::string_view text, double& value) {
  const char* at = text.data();
  const char* const end = at + text.size();
  const bool negative = at != end && *at == '-';
  if (negative) ++at;
  std::uint64_t digits = 0;  // turns over when there are too many, and is not used then
  const char* const first = at;
  for (; at != end && is_digit(*at); ++at) digits = 10 * digits + std::uint64_t(*at - '0');
  auto count = static_cast<std::size_t>(at - first);
  if (count == 0) return 0;
  std::size_t decimals = 0;
  if (at != end && *at == '.') {
    const char* const behind_point = ++at;
    for (; at != end && is_digit(*at); ++at) digits = 10 * digits + std::uint64_t(*at - '0');
    decimals = static_cast<std::size_t>(at - behind_point);
    count += decimals;
  }
  const bool has_exponent = at != end && (*at == 'e' || *at == 'E');
  if (count > most_short_digits || has_exponent) return 0;
  value = static_cast<double>(static_cast<std::int64_t>(digits)) / powers_of_ten[decimals];
  if (negative) value = -value;
  return static_cast<std::size_t>(at - text.data());
}

/// Takes any decimal number off the start of a text.
Found take_any_decimal(std::string_view& text, double& value) {
  std::string_view body = text;
  if (body.starts_with('+') && !body.starts_with("+-")) body.remove_prefix(1);
  if (body.empty()) return Found::nothing;
  const char first = body.front();  // no "inf", no "nan"
  if (!is_digit(first) && first != '-' && first != '.') return Found::nothing;
  const char* const end = body.data() + body.size();
  const auto parsed = std::from_chars(body.data(), end, value);
  if (parsed.ec == std::errc::invalid_argument) return Found::nothing;
  if (parsed.ec != std::errc() || !std::isfinite(value)) return Found::too_large;
  text = std::string_view(parsed.ptr, static_cast<std::size_t>(end - parsed.ptr));
  return Found::number;
}

/// Takes a decimal number off the start of a text, or "5/16" as people write inch fractions. No
/// refusal is made here: few numbers are wrong, and words cost.
inline Found take_number(std::string_view& text, double& value) {
  const std::size_t length = short_decimal(text, value);
  text.remove_prefix(length);
  if (length == 0) {
    const Found found = take_any_decimal(text, value);
    if (found != Found::number) return found;
  }
  const bool is_fraction = text.size() > 1 && text.front() == '/' && is_digit(text[1]);
  return is_fraction ? take_divisor(text, value) : Found::number;
}

constexpr std::size_t index_of(Dimension dimension) {
  return static_cast<std::size_t>(dimension);
}

/// Where the units of a dimension stand in the list: together.
struct UnitRange {
  std::size_t first = 0;
  std::size_t count = 0;
};
constexpr std::size_t dimension_count = index_of(D::money_per_energy) + 1;  // the last of them
constexpr auto unit_ranges = [] {
  std::array<UnitRange, dimension_count> ranges{};
  for (std::size_t i = 0; i < std::size(units); ++i) {
    UnitRange& range = ranges[index_of(units[i].dimension)];
    if (range.count == 0) range.first = i;
    range.count = i - range.first + 1;
  }
  return ranges;
}();

std::span<const Unit> units_of(Dimension dimension) {
  const UnitRange& range = unit_ranges[index_of(dimension)];
  return std::span(units).subspan(range.first, range.count);
}

const Unit* find_unit(std::string_view symbol, Dimension dimension) {
  for (const Unit& unit : units_of(dimension)) {
    if (same_text(unit.symbol, symbol)) return &unit;
  }
  return nullptr;
}

const Unit* find_unit_of_any(std::string_view symbol) {
  for (const Unit& unit : units) {
    if (!symbol.empty() && unit.symbol == symbol) return &unit;
  }
  return nullptr;
}

Refusal no_unit(std::string_view written, std::string_view symbol, Dimension dimension) {
  const std::string wanted =
      std::string(dimension_name(dimension)) + " in " + unit_symbols(dimension);
  if (symbol.empty()) {
    return Refusal{"read.unit.missing", quoted(written) + " has no unit; expected " + wanted};
  }
  if (const Unit* other = find_unit_of_any(symbol)) {
    return Refusal{"read.unit.wrong_dimension",
                   quoted(written) + " is " + std::string(dimension_name(other->dimension)) +
                       "; expected " + wanted};
  }
  if (symbol.size() > 1 && symbol.front() == ',' && is_digit(symbol[1])) {
    return Refusal{
        "read.unit.unknown",
        quoted(written) + " holds a decimal comma; expected a decimal point, and " + wanted};
  }
  return Refusal{
      "read.unit.unknown",
      quoted(written) + " has the unknown unit " + quoted(symbol) + "; expected " + wanted};
}

}  // namespace

std::span<const Unit> known_units() {
  return units;
}

std::string_view dimension_name(Dimension dimension) {
  for (const DimensionName& entry : dimension_names) {
    if (entry.dimension == dimension) return entry.name;
  }
  return "a quantity";
}

std::string unit_symbols(Dimension dimension) {
  std::string text;
  for (const Unit& unit : units_of(dimension)) {
    if (!text.empty()) text += ", ";
    text += unit.symbol.empty() ? "a bare number" : std::string(unit.symbol);
  }
  return text.empty() ? "a bare number" : text;
}

Outcome<double> parse_number(std::string_view text) {
  const std::string_view body = trimmed(text);
  std::string_view rest = body;
  double value = 0.0;
  const Found found = take_number(rest, value);
  if (found != Found::number) return refusal_of(found, body);
  if (rest.empty()) return value;
  const bool has_words = is_blank(rest.front()) || rest.front() == '%' || is_letter(rest.front());
  return has_words ? bare_wanted(body, trimmed(rest)) : malformed(text);
}

Outcome<double> parse_quantity(std::string_view text, Dimension dimension) {
  double value = 0.0;
  const Unit* unit = nullptr;
  if (std::optional<Refusal> why = parse_written(text, dimension, std::span(&value, 1), unit)) {
    return *std::move(why);
  }
  return in_internal_unit(value, unit);
}

Outcome<std::vector<double>> parse_quantities(std::string_view text,
                                              Dimension dimension,
                                              std::size_t count) {
  SEAMTURN_REQUIRE(count > 0, count);
  std::vector<double> values(count);
  const Unit* unit = nullptr;
  if (std::optional<Refusal> why = parse_written(text, dimension, values, unit)) {
    return *std::move(why);
  }
  for (double& value : values) value = in_internal_unit(value, unit);
  return values;
}

std::optional<Refusal> parse_written(std::string_view text,
                                     Dimension dimension,
                                     std::span<double> values,
                                     const Unit*& unit) {
  std::string_view rest = trimmed(text);
  std::size_t read = 0;
  while (read < values.size()) {
    if (rest.empty() && read > 0) break;
    const Found found = take_number(rest, values[read]);
    if (found == Found::nothing && read > 0) break;
    if (found != Found::number) return refusal_of(found, rest);
    ++read;
    // "1.2.3" or "5-3" is a typing error, not two numbers.
    if (!rest.empty() && (rest.front() == '.' || rest.front() == '-')) return malformed(text);
    rest = without_blanks_before(rest);
    const bool cross = read < values.size() && rest.size() > 1 && rest.front() == 'x';
    if (cross) rest = without_blanks_before(rest.substr(1));
  }
  if (read < values.size()) {
    return Refusal{"read.number.count",
                   quoted(text) + " holds " + std::to_string(read) + " number(s); expected " +
                       std::to_string(values.size())};
  }
  if (dimension == Dimension::none || dimension == Dimension::money) {
    if (!rest.empty()) return malformed(text);
    unit = nullptr;
    return std::nullopt;
  }
  unit = find_unit(rest, dimension);
  if (unit == nullptr) return no_unit(text, rest, dimension);
  return std::nullopt;
}

double in_unit(double internal, Dimension dimension, std::string_view symbol) {
  const Unit* unit = find_unit(symbol, dimension);
  SEAMTURN_REQUIRE(unit != nullptr, symbol, dimension_name(dimension));
  return internal / unit->factor - unit->offset;
}

}  // namespace seamturn::base
