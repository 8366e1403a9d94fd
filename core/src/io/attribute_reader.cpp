// SPDX-License-Identifier: MIT
#include "detail_attribute_reader.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_byte_class.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"

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
double shown(double written, const base::Unit* unit, const Range& range) {
  if (unit == nullptr || unit->symbol == range.unit) return written;
  return base::in_unit(base::in_internal_unit(written, unit), range.dimension, range.unit);
}

std::string quantity_text(const Range& range) {
  if (range.dimension == Dimension::none) return "a bare number";
  return std::string(base::dimension_name(range.dimension)) + " in " +
         base::unit_symbols(range.dimension);
}

}  // namespace

AttributeReader::AttributeReader(FileContext& context, const pugi::xml_node& element)
    : context_(context),
      element_(element),
      text_(context.file.buffer.data()),
      attributes_(context.file.index.attributes_of(context.file.offset(element.name()))),
      next_(attributes_.written.data()) {
  constexpr std::size_t most_are_asked_fewer = 45;
  asked_.reserve(most_are_asked_fewer);
}

const AttributeReader::Attribute* AttributeReader::find(std::string_view name) const {
  const Attribute* const begin = attributes_.written.data();
  const Attribute* const end = begin + attributes_.written.size();
  // People write attributes in the order of the documents, and readers ask for them in that order.
  if (next_ != end && name_of(*next_) == name) return next_;
  if (!attributes_.names.may_hold(name)) return nullptr;
  const Attribute* const found = std::find_if(
      begin, end, [&](const Attribute& attribute) { return name_of(attribute) == name; });
  return found == end ? nullptr : found;
}

bool AttributeReader::has(std::string_view name) const {
  return find(name) != nullptr;
}

const AttributeReader::Attribute* AttributeReader::ask(std::string_view name) {
  asked_.push_back(name);
  const Attribute* const found = find(name);
  if (found == nullptr) return nullptr;
  was_asked_[static_cast<std::size_t>(found - attributes_.written.data())] = true;
  next_ = found + 1;
  return found;
}

void AttributeReader::missing(std::string_view name, const std::string& expected) {
  const std::string wanted(name);
  error("read.attribute.missing",
        "<" + std::string(element_.name()) + "> has no attribute \"" + wanted + "\"; expected " +
            expected + "; add " + wanted + "=\"...\"");
}

std::optional<std::string_view> AttributeReader::nonempty(const Attribute& attribute) {
  const std::string_view value = value_of(attribute);
  if (blank_bytes.run_end(value, 0) < value.size()) return value;
  error(name_of(attribute),
        "read.attribute.empty",
        "attribute \"" + std::string(name_of(attribute)) +
            "\" is empty; expected a text; fill it in");
  return std::nullopt;
}

std::string AttributeReader::text(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return std::string(nonempty(*attribute).value_or(""));
  missing(name, "a text");
  return "";
}

std::string AttributeReader::find_text(std::string_view name, std::string_view otherwise) {
  const Attribute* attribute = ask(name);
  return std::string(attribute != nullptr ? nonempty(*attribute).value_or("") : otherwise);
}

std::string AttributeReader::checked_id(const Attribute& attribute) {
  const std::string_view found = nonempty(attribute).value_or("");
  if (found.empty() || is_id(found)) return std::string(found);
  error(name_of(attribute),
        "read.id.malformed",
        in_quotes(found) +
            " is no id; expected at most 64 ASCII letters, digits and _ . + -, a letter, digit or "
            "_ first; rename it");
  return "";
}

std::string AttributeReader::id(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return checked_id(*attribute);
  missing(name, "an id");
  return "";
}

std::string AttributeReader::find_id(std::string_view name) {
  const Attribute* attribute = ask(name);
  return attribute != nullptr ? checked_id(*attribute) : "";
}

std::vector<std::string> AttributeReader::pieces_of(const Attribute& attribute) {
  std::vector<std::string> pieces;
  std::string_view rest = nonempty(attribute).value_or("");
  for (auto piece = take_piece(rest); !piece.empty(); piece = take_piece(rest)) {
    pieces.emplace_back(piece);
  }
  return pieces;
}

std::vector<std::string> AttributeReader::checked_ids(const Attribute& attribute) {
  std::vector<std::string> ids = pieces_of(attribute);
  std::erase_if(ids, [&](const std::string& piece) {
    if (is_id(piece)) return false;
    error(name_of(attribute),
          "read.id.malformed",
          in_quotes(piece) + " is no id; expected ids separated by blanks");
    return true;
  });
  return ids;
}

std::vector<std::string> AttributeReader::ids(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return checked_ids(*attribute);
  missing(name, "ids separated by blanks");
  return {};
}

std::vector<std::string> AttributeReader::pieces(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return pieces_of(*attribute);
  missing(name, "names separated by blanks");
  return {};
}

std::vector<std::string> AttributeReader::find_ids(std::string_view name) {
  const Attribute* attribute = ask(name);
  return attribute != nullptr ? checked_ids(*attribute) : std::vector<std::string>();
}

bool AttributeReader::is_in_range(const Attribute& attribute, double value, const Range& range) {
  if (value > range.least && value < range.most) return true;
  const double slack = rounding * std::max(std::abs(range.least), std::abs(range.most));
  const bool low = range.above ? value <= range.least : value < range.least - slack;
  const bool high = range.below ? value >= range.most : value > range.most + slack;
  if (!low && !high) return true;
  error(name_of(attribute),
        "read.value.out_of_range",
        "attribute \"" + std::string(name_of(attribute)) + "\" is " +
            in_quotes(value_of(attribute)) + "; expected " + range_text(range) +
            "; correct the value or its unit");
  return false;
}

void AttributeReader::not_a_quantity(const Attribute& attribute,
                                     const base::Refusal& why,
                                     const Range& range) {
  // What is no number at all says nothing of units or how many.
  const bool says_what_is_expected =
      why.code != "read.number.malformed" && why.code != "read.number.too_large";
  error(name_of(attribute),
        why.code,
        "attribute \"" + std::string(name_of(attribute)) + "\": " + why.text +
            (says_what_is_expected ? "" : "; expected " + quantity_text(range)) + "; correct it");
}

template <std::size_t count>
std::array<double, count> AttributeReader::read_quantities(const Attribute& attribute,
                                                           const Range& range) {
  const auto read = base::parse_written<count>(value_of(attribute), range.dimension);
  if (!read) {
    not_a_quantity(attribute, read.error(), range);
    return no_numbers<count>();
  }
  std::array<double, count> values = read->values;
  for (double& value : values) {
    // The first outside ends it: one finding an attribute.
    if (!is_in_range(attribute, shown(value, read->unit, range), range)) return no_numbers<count>();
    value = base::in_internal_unit(value, read->unit);
  }
  return values;
}

double AttributeReader::read_quantity(const Attribute& attribute, const Range& range) {
  return read_quantities<1>(attribute, range).front();
}

double AttributeReader::quantity(std::string_view name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_quantity(*attribute, range);
  missing(name, quantity_text(range));
  return no_number;
}

std::optional<double> AttributeReader::find_quantity(std::string_view name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) return std::nullopt;
  return read_quantity(*attribute, range);
}

base::Angle AttributeReader::angle(std::string_view name, const Range& range) {
  return base::Angle::rad(quantity(name, range));
}

base::Angle AttributeReader::find_angle(std::string_view name, const Range& range) {
  return base::Angle::rad(find_quantity(name, range).value_or(0.0));
}

int AttributeReader::count(std::string_view name, int least, int most) {
  const Range range{Dimension::none, "", double(least), double(most)};
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) {
    missing(name, "a whole number");
    return least;
  }
  const double value = read_quantity(*attribute, range);
  if (std::isnan(value)) return least;
  if (value != std::floor(value)) {
    error(name,
          "read.number.not_whole",
          "attribute \"" + std::string(name) + "\" is " + in_quotes(value_of(*attribute)) +
              "; expected a whole number");
  }
  return static_cast<int>(value);
}

std::array<double, 2> AttributeReader::two_quantities(std::string_view name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_quantities<2>(*attribute, range);
  missing(name, "2 numbers and one unit, " + quantity_text(range));
  return {no_number, no_number};
}

std::array<double, 3> AttributeReader::three_quantities(std::string_view name, const Range& range) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_quantities<3>(*attribute, range);
  missing(name, "3 numbers and one unit, " + quantity_text(range));
  return {no_number, no_number, no_number};
}

geom::Vec3 AttributeReader::point(std::string_view name) {
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
    error(name_of(attribute),
          "read.direction.zero",
          "attribute \"" + std::string(name_of(attribute)) + "\" is " +
              in_quotes(value_of(attribute)) +
              ", which points nowhere; expected three numbers, e.g. \"0 0 1\"");
    return no_vector;
  }
  return geom::unit(direction);
}

geom::Vec3 AttributeReader::direction(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_direction(*attribute);
  missing(name, "a direction, e.g. \"0 0 1\"");
  return no_vector;
}

std::optional<geom::Vec3> AttributeReader::find_direction(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) return std::nullopt;
  return read_direction(*attribute);
}

}  // namespace seamturn::io::detail
