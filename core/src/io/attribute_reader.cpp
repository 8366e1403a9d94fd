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

std::string range_text(const Range& range) {
  const std::string unit = range.unit.empty() ? "" : " " + std::string(range.unit);
  return (range.above ? "more than " : "at least ") + base::shortest_text(range.least) + unit +
         (range.below ? " and less than " : " and at most ") + base::shortest_text(range.most) +
         unit;
}

double shown(double internal, const Range& range) {
  return range.dimension == Dimension::none ? internal
                                            : base::in_unit(internal, range.dimension, range.unit);
}

std::string quantity_text(const Range& range) {
  if (range.dimension == Dimension::none) return "a bare number";
  return std::string(base::dimension_name(range.dimension)) + " in " +
         base::unit_symbols(range.dimension);
}

}  // namespace

AttributeReader::AttributeReader(FileContext& context, const pugi::xml_node& element)
    : context_(context), element_(element) {
  constexpr std::size_t most_have_fewer = 25;
  constexpr std::size_t most_are_asked_fewer = 45;
  attributes_.reserve(most_have_fewer);
  asked_.reserve(most_are_asked_fewer);
  for (pugi::xml_attribute at = element.first_attribute(); at; at = at.next_attribute()) {
    attributes_.push_back(Attribute{at.name(), at.value()});
    marks_.add(attributes_.back().name);
  }
  next_ = attributes_.data();
}

const AttributeReader::Attribute* AttributeReader::find(std::string_view name) const {
  const Attribute* const end = attributes_.data() + attributes_.size();
  // People write attributes in the order of the documents, and readers ask for them in that order.
  if (next_ != end && next_->name == name) return next_;
  if (!marks_.may_hold(name)) return nullptr;
  const Attribute* const found = std::find_if(
      attributes_.data(), end, [&](const Attribute& attribute) { return attribute.name == name; });
  return found == end ? nullptr : found;
}

bool AttributeReader::has(std::string_view name) const {
  return find(name) != nullptr;
}

const AttributeReader::Attribute* AttributeReader::ask(std::string_view name) {
  asked_.push_back(name);
  const Attribute* const found = find(name);
  if (found == nullptr) return nullptr;
  attributes_[static_cast<std::size_t>(found - attributes_.data())].was_asked = true;
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
  if (blank_bytes.run_end(attribute.value, 0) < attribute.value.size()) return attribute.value;
  error(attribute.name,
        "read.attribute.empty",
        "attribute \"" + std::string(attribute.name) + "\" is empty; expected a text; fill it in");
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
  error(attribute.name,
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

std::vector<std::string> AttributeReader::checked_ids(const Attribute& attribute) {
  std::vector<std::string> ids;
  std::string_view rest = nonempty(attribute).value_or("");
  for (auto piece = take_piece(rest); !piece.empty(); piece = take_piece(rest)) {
    if (is_id(piece)) {
      ids.emplace_back(piece);
    } else {
      error(attribute.name,
            "read.id.malformed",
            in_quotes(piece) + " is no id; expected ids separated by blanks");
    }
  }
  return ids;
}

std::vector<std::string> AttributeReader::ids(std::string_view name) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return checked_ids(*attribute);
  missing(name, "ids separated by blanks");
  return {};
}

std::vector<std::string> AttributeReader::find_ids(std::string_view name) {
  const Attribute* attribute = ask(name);
  return attribute != nullptr ? checked_ids(*attribute) : std::vector<std::string>();
}

bool AttributeReader::is_in_range(const Attribute& attribute, double internal, const Range& range) {
  const double value = shown(internal, range);
  if (value > range.least && value < range.most) return true;
  const double slack = rounding * std::max(std::abs(range.least), std::abs(range.most));
  const bool low = range.above ? value <= range.least : value < range.least - slack;
  const bool high = range.below ? value >= range.most : value > range.most + slack;
  if (!low && !high) return true;
  error(attribute.name,
        "read.value.out_of_range",
        "attribute \"" + std::string(attribute.name) + "\" is " + in_quotes(attribute.value) +
            "; expected " + range_text(range) + "; correct the value or its unit");
  return false;
}

void AttributeReader::not_a_quantity(const Attribute& attribute,
                                     const base::Refusal& why,
                                     const Range& range) {
  const bool says_what_is_expected = why.text.find("expected") != std::string::npos;
  error(attribute.name,
        why.code,
        "attribute \"" + std::string(attribute.name) + "\": " + why.text +
            (says_what_is_expected ? "" : "; expected " + quantity_text(range)) + "; correct it");
}

template <std::size_t count>
std::array<double, count> AttributeReader::read_quantities(const Attribute& attribute,
                                                           const Range& range) {
  std::array<double, count> no_numbers;
  no_numbers.fill(no_number);
  const auto read = base::parse_quantities<count>(attribute.value, range.dimension);
  if (!read) {
    not_a_quantity(attribute, read.error(), range);
    return no_numbers;
  }
  const std::array<double, count>& values = *read;
  // The first outside ends it: one finding an attribute.
  const bool all_in_range = std::all_of(values.begin(), values.end(), [&](double value) {
    return is_in_range(attribute, value, range);
  });
  return all_in_range ? values : no_numbers;
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
          "attribute \"" + std::string(name) + "\" is " + in_quotes(attribute->value) +
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
    error(attribute.name,
          "read.direction.zero",
          "attribute \"" + std::string(attribute.name) + "\" is " + in_quotes(attribute.value) +
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
