// SPDX-License-Identifier: MIT
#include "detail_attribute_reader.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_byte_class.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

namespace {

using base::Dimension;

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
const geom::Vec3 no_vector(no_number, no_number, no_number);
constexpr double rounding = 1e-9;  // relative: 360 deg must not fail for the way through radians

constexpr bool starts_id(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
}
constexpr ByteClass id_bytes([](char c) {
  return starts_id(c) || c == '.' || c == '+' || c == '-';
});

bool is_id(std::string_view text) {
  constexpr std::size_t longest = 64;
  return !text.empty() && text.size() <= longest && starts_id(text.front()) &&
         id_bytes.run_end(text, 0) == text.size();
}

template <std::size_t count>
std::array<double, count> no_numbers() {
  std::array<double, count> numbers;
  numbers.fill(no_number);
  return numbers;
}

std::string range_text(const Range& range) {
  const std::string unit = range.unit.empty() ? "" : " " + std::string(range.unit);
  return (range.above ? "more than " : "at least ") + base::shortest_text(range.least) + unit +
         (range.below ? " and less than " : " and at most ") + base::shortest_text(range.most) +
         unit;
}

/// A written value in the unit of its range.
inline double shown(double written, const base::Unit* unit, const Range& range) {
  if (unit == nullptr || base::same_text(unit->symbol, range.unit)) return written;
  return base::in_unit(base::in_internal_unit(written, unit), range.dimension, range.unit);
}

std::string quantity_text(const Range& range) {
  if (range.dimension == Dimension::none) return "a bare number";
  return std::string(base::dimension_name(range.dimension)) + " in " +
         base::unit_symbols(range.dimension);
}

}  // namespace

AttributeReader::AttributeReader(FileContext& context, const Element& element)
    : context_(context),
      element_(element),
      attributes_(element.attributes()),
      names_(element.attribute_names()),
      next_(attributes_.data()),
      end_(next_ + attributes_.size()) {}

const AttributeReader::Attribute* AttributeReader::seek(MarkedName name) const {
  // Often the one just read.
  if (next_ != attributes_.data() && name.is(next_[-1].name())) return next_ - 1;
  const auto found = std::find_if(
      attributes_.begin(), attributes_.end(), [&](const auto& one) { return name.is(one.name()); });
  return found == attributes_.end() ? nullptr : &*found;
}

bool AttributeReader::has(MarkedName name) const {
  return find(name) != nullptr;
}

void AttributeReader::too_many_asked(MarkedName name) const {
  SEAMTURN_REQUIRE(asked_count_ < most_asked, name.text(), element_.name());
}

const AttributeReader::Attribute* AttributeReader::ask(MarkedName name) {
  if (asked_count_ == most_asked) too_many_asked(name);
  asked_[asked_count_++] = name;
  const Attribute* const found = find(name);
  if (found == nullptr) return nullptr;
  was_asked_[static_cast<std::size_t>(found - attributes_.data())] = true;
  next_ = found + 1;
  return found;
}

void AttributeReader::missing(MarkedName name, const std::string& expected) {
  const std::string wanted(name.text());
  error("read.attribute.missing",
        "<" + std::string(element_.name()) + "> has no attribute \"" + wanted + "\"; expected " +
            expected + "; add " + wanted + "=\"...\"");
}

std::optional<std::string_view> AttributeReader::nonempty(const Attribute& attribute) {
  const std::string_view value = attribute.value();
  if (blank_bytes.run_end(value, 0) < value.size()) return value;
  error(
      attribute.name(),
      "read.attribute.empty",
      "attribute \"" + std::string(attribute.name()) + "\" is empty; expected a text; fill it in");
  return std::nullopt;
}

std::string AttributeReader::text(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return std::string(nonempty(*attribute).value_or(""));
  missing(name, "a text");
  return "";
}

std::string AttributeReader::find_text(MarkedName name, std::string_view otherwise) {
  const Attribute* attribute = ask(name);
  return std::string(attribute != nullptr ? nonempty(*attribute).value_or("") : otherwise);
}

std::string AttributeReader::checked_id(const Attribute& attribute) {
  const std::string_view found = nonempty(attribute).value_or("");
  if (found.empty() || is_id(found)) return std::string(found);
  error(attribute.name(),
        "read.id.malformed",
        in_quotes(found) +
            " is no id; expected at most 64 ASCII letters, digits and _ . + -, a letter, digit or "
            "_ first; rename it");
  return "";
}

std::string AttributeReader::id(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return checked_id(*attribute);
  missing(name, "an id");
  return "";
}

std::string AttributeReader::find_id(MarkedName name) {
  const Attribute* attribute = ask(name);
  return attribute != nullptr ? checked_id(*attribute) : "";
}

std::vector<std::string> AttributeReader::pieces_of(const Attribute& attribute) {
  std::vector<std::string> pieces;
  std::string_view rest = nonempty(attribute).value_or("");
  constexpr std::size_t most_are_fewer = 2;
  pieces.reserve(most_are_fewer);
  for (auto piece = take_piece(rest); !piece.empty(); piece = take_piece(rest)) {
    pieces.emplace_back(piece);
  }
  return pieces;
}

std::vector<std::string> AttributeReader::checked_ids(const Attribute& attribute) {
  std::vector<std::string> ids = pieces_of(attribute);
  std::erase_if(ids, [&](const std::string& piece) {
    if (is_id(piece)) return false;
    error(attribute.name(),
          "read.id.malformed",
          in_quotes(piece) + " is no id; expected ids separated by blanks");
    return true;
  });
  return ids;
}

std::vector<std::string> AttributeReader::ids(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return checked_ids(*attribute);
  missing(name, "ids separated by blanks");
  return {};
}

std::vector<std::string> AttributeReader::pieces(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return pieces_of(*attribute);
  missing(name, "names separated by blanks");
  return {};
}

std::vector<std::string> AttributeReader::find_ids(MarkedName name) {
  const Attribute* attribute = ask(name);
  return attribute != nullptr ? checked_ids(*attribute) : std::vector<std::string>();
}

bool AttributeReader::is_at_limit(const Attribute& attribute, double value, const Range& range) {
  const double slack = rounding * std::max(std::abs(range.least), std::abs(range.most));
  const bool low = range.above ? value <= range.least : value < range.least - slack;
  const bool high = range.below ? value >= range.most : value > range.most + slack;
  if (!low && !high) return true;
  error(attribute.name(),
        "read.value.out_of_range",
        "attribute \"" + std::string(attribute.name()) + "\" is " + in_quotes(attribute.value()) +
            "; expected " + range_text(range) + "; correct the value or its unit");
  return false;
}

void AttributeReader::not_a_quantity(const Attribute& attribute,
                                     const base::Refusal& why,
                                     const Range& range) {
  // What is no number at all says nothing of units or how many.
  const bool says_what_is_expected =
      why.code != "read.number.malformed" && why.code != "read.number.too_large";
  error(attribute.name(),
        why.code,
        "attribute \"" + std::string(attribute.name()) + "\": " + why.text +
            (says_what_is_expected ? "" : "; expected " + quantity_text(range)) + "; correct it");
}

template <std::size_t count>
std::array<double, count> AttributeReader::read_quantities(const Attribute& attribute,
                                                           const Range& range) {
  std::array<double, count> values{};
  const base::Unit* unit = nullptr;
  if (const auto why = base::parse_written(attribute.value(), range.dimension, values, unit)) {
    not_a_quantity(attribute, *why, range);
    return no_numbers<count>();
  }
  for (double& value : values) {
    const double seen = shown(value, unit, range);
    const bool inside = seen > range.least && seen < range.most;
    // The first outside ends it: one finding an attribute.
    if (!inside && !is_at_limit(attribute, seen, range)) return no_numbers<count>();
    value = base::in_internal_unit(value, unit);
  }
  return values;
}

double AttributeReader::read_quantity(const Attribute& attribute, const Range& range) {
  return read_quantities<1>(attribute, range).front();
}

double AttributeReader::quantity(MarkedName name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_quantity(*attribute, range);
  missing(name, quantity_text(range));
  return no_number;
}

std::optional<double> AttributeReader::find_quantity(MarkedName name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) return std::nullopt;
  return read_quantity(*attribute, range);
}

base::Angle AttributeReader::angle(MarkedName name, const Range& range) {
  return base::Angle::rad(quantity(name, range));
}

base::Angle AttributeReader::find_angle(MarkedName name, const Range& range) {
  return base::Angle::rad(find_quantity(name, range).value_or(0.0));
}

int AttributeReader::count(MarkedName name, int least, int most) {
  const Range range{Dimension::none, "", double(least), double(most)};
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) {
    missing(name, "a whole number");
    return least;
  }
  const double value = read_quantity(*attribute, range);
  if (std::isnan(value)) return least;
  if (value != std::floor(value)) {
    error(name.text(),
          "read.number.not_whole",
          "attribute \"" + std::string(name.text()) + "\" is " + in_quotes(attribute->value()) +
              "; expected a whole number");
  }
  return static_cast<int>(value);
}

std::array<double, 2> AttributeReader::two_quantities(MarkedName name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_quantities<2>(*attribute, range);
  missing(name, "2 numbers and one unit, " + quantity_text(range));
  return {no_number, no_number};
}

std::array<double, 3> AttributeReader::three_quantities(MarkedName name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_quantities<3>(*attribute, range);
  missing(name, "3 numbers and one unit, " + quantity_text(range));
  return {no_number, no_number, no_number};
}

geom::Vec3 AttributeReader::point(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) {
    missing(name, "3 numbers and one unit, " + quantity_text(ranges::coordinate));
    return no_vector;
  }
  const std::array<double, 3> values = read_quantities<3>(*attribute, ranges::coordinate);
  return geom::Vec3(values[0], values[1], values[2]);
}

geom::Vec3 AttributeReader::read_direction(const Attribute& attribute) {
  constexpr Range component{Dimension::none, "", -1e6, 1e6};
  constexpr double shortest = 1e-6;
  const std::array<double, 3> values = read_quantities<3>(attribute, component);
  const geom::Vec3 direction(values[0], values[1], values[2]);
  if (direction.hasNaN()) return direction;
  if (direction.norm() < shortest) {
    error(attribute.name(),
          "read.direction.zero",
          "attribute \"" + std::string(attribute.name()) + "\" is " + in_quotes(attribute.value()) +
              ", which points nowhere; expected three numbers, e.g. \"0 0 1\"");
    return no_vector;
  }
  return geom::unit(direction);
}

geom::Vec3 AttributeReader::direction(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_direction(*attribute);
  missing(name, "a direction, e.g. \"0 0 1\"");
  return no_vector;
}

std::optional<geom::Vec3> AttributeReader::find_direction(MarkedName name) {
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) return std::nullopt;
  return read_direction(*attribute);
}

}  // namespace seamturn::io::detail
