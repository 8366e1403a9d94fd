// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_arguments.hpp"
#include "seamturn/base/near_name.hpp"
#include "seamturn/base/valid_range.hpp"

namespace seamturn::figures::detail {

namespace {

const base::FigureKey* find_key(const base::FigureCard& card, std::string_view name) {
  for (const base::FigureKey& key : card.keys) {
    if (key.name == name) return &key;
  }
  return nullptr;
}

/// Sizes beyond these overflow on the way through a formula.
constexpr base::ValidRange counted{1e-30, 1e30};

bool is_counted(double value) {
  return value == 0.0 || counted.holds(std::abs(value));
}

std::string key_names(const base::FigureCard& card) {
  std::string text;
  for (const base::FigureKey& key : card.keys) {
    text += (text.empty() ? "" : " ") + std::string(key.name) + "=";
  }
  return text;
}

}  // namespace

Arguments::Arguments(const base::FigureCard& card,
                     const std::vector<std::pair<std::string, std::string>>& given)
    : card_(card) {
  for (const auto& [key, value] : given) take(key, value);
  for (const base::FigureKey& key : card.keys) {
    if (key.required && texts_.count(key.name) == 0) {
      add_usage("key " + std::string(key.name) + "= is missing: " + std::string(key.meaning) +
                " (" + std::string(key.range) + ")");
    }
  }
}

void Arguments::take(const std::string& key, const std::string& value) {
  const base::FigureKey* known = find_key(card_, key);
  if (known == nullptr) {
    std::vector<std::string_view> names;
    for (const base::FigureKey& one : card_.keys) names.push_back(one.name);
    const std::optional<std::string> near = base::find_near_name(key, names);
    add_usage("figure " + std::string(card_.name) + " has no key \"" + key + "\"" +
              (near ? "; did you mean " + *near + "=?" : "") + " Keys: " + key_names(card_));
    return;
  }
  if (!texts_.emplace(key, value).second) {
    add_usage("key " + key + "= is given twice");
    return;
  }
  if (known->is_text) return;
  const base::Outcome<double> number = known->dimension == base::Dimension::none
                                           ? base::parse_number(value)
                                           : base::parse_quantity(value, known->dimension);
  if (number && is_counted(number.value())) {
    numbers_.emplace(key, number.value());
  } else if (number) {
    add_bad_value("key " + key + "=: \"" + value +
                      "\" is beyond what figures count with; expected 0 or a size from 1e-30 to "
                      "1e30 in " +
                      (known->dimension == base::Dimension::none
                           ? std::string("bare numbers")
                           : std::string(base::unit_symbols(known->dimension))),
                  "read.number.too_large");
  } else {
    // What it counts in stands with the range: no unit can be written.
    const bool bare = known->dimension == base::Dimension::none && !known->range.empty();
    add_bad_value("key " + key + "=: " + number.error().text +
                      (bare ? " (" + std::string(known->range) + ")" : std::string()),
                  number.error().code);
  }
}

std::string Arguments::usage() const {
  std::string text;
  for (const std::string& problem : usage_) text += (text.empty() ? "" : "\n") + problem;
  return text;
}

void Arguments::add_usage(const std::string& text) {
  usage_.push_back(text);
}

void Arguments::add_bad_value(const std::string& text, const std::string& code) {
  bad_values_.push_back(base::Finding{base::Severity::error, code, text, {}, {}});
}

bool Arguments::has(std::string_view key) const {
  return texts_.find(key) != texts_.end();
}

double Arguments::number(std::string_view key, double fallback) const {
  return find_number(key).value_or(fallback);
}

std::optional<double> Arguments::find_number(std::string_view key) const {
  const auto found = numbers_.find(key);
  if (found == numbers_.end()) return std::nullopt;
  return found->second;
}

std::string Arguments::text(std::string_view key) const {
  const auto found = texts_.find(key);
  return found == texts_.end() ? std::string() : found->second;
}

void Arguments::require_positive(std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    const std::optional<double> given = find_number(key);
    if (given && !(*given > 0.0)) {
      add_bad_value("key " + std::string(key) + "= must be above zero");
    }
  }
}

geom::Vec3 Arguments::direction(std::string_view key) {
  std::string value = text(key);
  const bool three = std::count(value.begin(), value.end(), ',') == 2;
  std::replace(value.begin(), value.end(), ',', ' ');
  const auto numbers = base::parse_quantities(value, base::Dimension::none, 3);
  if (!three || !numbers) {
    add_bad_value("key " + std::string(key) + "=: \"" + text(key) +
                      "\" is no direction; expected three numbers \"x,y,z\"",
                  "figure.direction.malformed");
    return geom::Vec3::UnitX();
  }
  const std::vector<double>& xyz = numbers.value();
  if (std::any_of(xyz.begin(), xyz.end(), [](double x) { return std::abs(x) > counted.largest; })) {
    add_bad_value("key " + std::string(key) + "=: \"" + text(key) +
                      "\" is beyond what figures count with; expected sizes up to 1e30",
                  "read.number.too_large");
    return geom::Vec3::UnitX();
  }
  const geom::Vec3 v(xyz[0], xyz[1], xyz[2]);
  if (v.norm() < 1e-9) {
    add_bad_value("key " + std::string(key) + "=: the zero vector has no direction",
                  "figure.direction.malformed");
    return geom::Vec3::UnitX();
  }
  return v.normalized();
}

std::size_t Arguments::choice(std::string_view key, const std::vector<std::string_view>& words) {
  const std::string value = text(key);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == value) return i;
  }
  std::string list;
  for (const std::string_view word : words) list += (list.empty() ? "" : "|") + std::string(word);
  const std::optional<std::string> near = base::find_near_name(value, words);
  add_bad_value("key " + std::string(key) + "=: \"" + value + "\" is none of " + list +
                    (near ? "; did you mean " + *near + "?" : ""),
                "figure.word.unknown");
  return 0;
}

}  // namespace seamturn::figures::detail
