// SPDX-License-Identifier: MIT
#include "detail_attribute_reader.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::io::detail {

namespace {

using base::Dimension;

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double rounding = 1e-9;  // relative: 360 deg must not fail for the way through radians

bool is_id(std::string_view text) {
  constexpr std::size_t longest = 64;
  const auto plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
  };
  return !text.empty() && text.size() <= longest && plain(text.front()) &&
         std::all_of(text.begin(), text.end(), [&](char c) {
           return plain(c) || c == '.' || c == '+' || c == '-';
         });
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
    : context_(context), element_(element) {}

bool AttributeReader::has(const char* name) const {
  return bool(element_.attribute(name));
}

pugi::xml_attribute AttributeReader::optional(const char* name) {
  if (std::find(asked_.begin(), asked_.end(), name) == asked_.end()) asked_.emplace_back(name);
  return element_.attribute(name);
}

pugi::xml_attribute AttributeReader::required(const char* name, const std::string& expected) {
  const pugi::xml_attribute attribute = optional(name);
  if (!attribute) {
    error("read.attribute.missing",
          "<" + std::string(element_.name()) + "> has no attribute \"" + name + "\"; expected " +
              expected + "; add " + name + "=\"...\"");
  }
  return attribute;
}

std::optional<std::string> AttributeReader::nonempty(const pugi::xml_attribute& attribute) {
  const std::string_view value = attribute.value();
  if (value.find_first_not_of(" \t\r\n") != std::string_view::npos) return std::string(value);
  error(
      attribute.name(),
      "read.attribute.empty",
      "attribute \"" + std::string(attribute.name()) + "\" is empty; expected a text; fill it in");
  return std::nullopt;
}

std::string AttributeReader::text(const char* name) {
  const pugi::xml_attribute attribute = required(name, "a text");
  return attribute ? nonempty(attribute).value_or("") : "";
}

std::string AttributeReader::find_text(const char* name, const char* otherwise) {
  const pugi::xml_attribute attribute = optional(name);
  return attribute ? nonempty(attribute).value_or("") : otherwise;
}

std::string AttributeReader::checked_id(const pugi::xml_attribute& attribute) {
  const std::optional<std::string> found = nonempty(attribute);
  if (!found || is_id(*found)) return found.value_or("");
  error(attribute.name(),
        "read.id.malformed",
        in_quotes(*found) +
            " is no id; expected at most 64 ASCII letters, digits and _ . + -, a letter, digit or "
            "_ first; rename it");
  return "";
}

std::string AttributeReader::id(const char* name) {
  const pugi::xml_attribute attribute = required(name, "an id");
  return attribute ? checked_id(attribute) : "";
}

std::string AttributeReader::find_id(const char* name) {
  const pugi::xml_attribute attribute = optional(name);
  return attribute ? checked_id(attribute) : "";
}

std::vector<std::string> AttributeReader::ids(const char* name) {
  if (!required(name, "ids separated by blanks")) return {};
  return find_ids(name);
}

std::vector<std::string> AttributeReader::find_ids(const char* name) {
  std::vector<std::string> ids;
  const pugi::xml_attribute attribute = optional(name);
  if (!attribute || !nonempty(attribute)) return ids;
  for (const std::string_view piece : split_blanks(attribute.value())) {
    if (!is_id(piece)) {
      error(name,
            "read.id.malformed",
            in_quotes(piece) + " is no id; expected ids separated by blanks");
    } else {
      ids.emplace_back(piece);
    }
  }
  return ids;
}

double AttributeReader::in_range(const pugi::xml_attribute& attribute,
                                 double internal,
                                 const Range& range) {
  const double value = shown(internal, range);
  const double slack = rounding * std::max(std::abs(range.least), std::abs(range.most));
  const bool low = range.above ? value <= range.least : value < range.least - slack;
  const bool high = range.below ? value >= range.most : value > range.most + slack;
  if (!low && !high) return internal;
  error(attribute.name(),
        "read.value.out_of_range",
        "attribute \"" + std::string(attribute.name()) + "\" is " + in_quotes(attribute.value()) +
            "; expected " + range_text(range) + "; correct the value or its unit");
  return no_number;
}

double AttributeReader::read_quantity(const pugi::xml_attribute& attribute, const Range& range) {
  return read_quantities(attribute, range, 1).front();
}

std::vector<double> AttributeReader::read_quantities(const pugi::xml_attribute& attribute,
                                                     const Range& range,
                                                     std::size_t count) {
  const auto read = base::parse_quantities(attribute.value(), range.dimension, count);
  if (!read) {
    error(attribute.name(),
          read.error().code,
          "attribute \"" + std::string(attribute.name()) + "\": " + read.error().text +
              (read.error().text.find("expected") == std::string::npos
                   ? "; expected " + quantity_text(range)
                   : "") +
              "; correct it");
    return std::vector<double>(count, no_number);
  }
  std::vector<double> values = *read;
  const std::size_t before = context_.report.error_count();
  for (double& value : values) {
    value = in_range(attribute, value, range);
    if (context_.report.error_count() > before) break;  // one finding an attribute
  }
  if (context_.report.error_count() > before) return std::vector<double>(count, no_number);
  return values;
}

double AttributeReader::quantity(const char* name, const Range& range) {
  const pugi::xml_attribute attribute = required(name, quantity_text(range));
  return attribute ? read_quantity(attribute, range) : no_number;
}

std::optional<double> AttributeReader::find_quantity(const char* name, const Range& range) {
  const pugi::xml_attribute attribute = optional(name);
  if (!attribute) return std::nullopt;
  return read_quantity(attribute, range);
}

base::Angle AttributeReader::angle(const char* name, const Range& range) {
  return base::Angle::rad(quantity(name, range));
}

base::Angle AttributeReader::find_angle(const char* name, const Range& range) {
  return base::Angle::rad(find_quantity(name, range).value_or(0.0));
}

int AttributeReader::count(const char* name, int least, int most) {
  const Range range{Dimension::none, "", double(least), double(most)};
  const pugi::xml_attribute attribute = required(name, "a whole number");
  if (!attribute) return least;
  const double value = read_quantity(attribute, range);
  if (std::isnan(value)) return least;
  if (value != std::floor(value)) {
    error(name,
          "read.number.not_whole",
          "attribute \"" + std::string(name) + "\" is " + in_quotes(attribute.value()) +
              "; expected a whole number");
  }
  return static_cast<int>(value);
}

std::vector<double> AttributeReader::quantities(const char* name,
                                                const Range& range,
                                                std::size_t count) {
  const pugi::xml_attribute attribute =
      required(name, std::to_string(count) + " numbers and one unit, " + quantity_text(range));
  if (!attribute) return std::vector<double>(count, no_number);
  return read_quantities(attribute, range, count);
}

geom::Vec3 AttributeReader::point(const char* name) {
  const std::vector<double> values = quantities(name, ranges::coordinate, 3);
  return geom::Vec3(values[0], values[1], values[2]);
}

geom::Vec3 AttributeReader::read_direction(const pugi::xml_attribute& attribute) {
  constexpr Range component{Dimension::none, "", -1e6, 1e6};
  constexpr double shortest = 1e-6;
  const std::vector<double> values = read_quantities(attribute, component, 3);
  const geom::Vec3 direction(values[0], values[1], values[2]);
  if (direction.hasNaN()) return direction;
  if (direction.norm() < shortest) {
    error(attribute.name(),
          "read.direction.zero",
          "attribute \"" + std::string(attribute.name()) + "\" is " + in_quotes(attribute.value()) +
              ", which points nowhere; expected three numbers, e.g. \"0 0 1\"");
    return geom::Vec3(no_number, no_number, no_number);
  }
  return geom::unit(direction);
}

geom::Vec3 AttributeReader::direction(const char* name) {
  const pugi::xml_attribute attribute = required(name, "a direction, e.g. \"0 0 1\"");
  return attribute ? read_direction(attribute) : geom::Vec3(no_number, no_number, no_number);
}

std::optional<geom::Vec3> AttributeReader::find_direction(const char* name) {
  const pugi::xml_attribute attribute = optional(name);
  if (!attribute) return std::nullopt;
  return read_direction(attribute);
}

}  // namespace seamturn::io::detail
