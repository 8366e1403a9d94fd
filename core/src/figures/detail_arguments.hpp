// SPDX-License-Identifier: MIT
// The KEY=VALUE texts of a figure call, checked against its card.
#pragma once

#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/geom/vector.hpp"

namespace seamturn::figures::detail {

class Arguments {
 public:
  /// Checks names, repetition, presence and units; every problem is kept.
  Arguments(const base::FigureCard& card,
            const std::vector<std::pair<std::string, std::string>>& given);

  /// True while neither a key nor a value is wrong.
  [[nodiscard]] bool good() const { return usage_.empty() && bad_values_.empty(); }
  /// Keys unknown, missing, twice or excluding each other, one a line: wrong usage.
  [[nodiscard]] std::string usage() const;
  /// Values that cannot be: findings of severity error.
  [[nodiscard]] const std::vector<base::Finding>& bad_values() const { return bad_values_; }
  void add_usage(const std::string& text);
  void add_bad_value(const std::string& text,
                     const std::string& code = "figure.value.out_of_range");

  [[nodiscard]] bool has(std::string_view key) const;
  /// Internal unit of the key's dimension. A missing optional key gives the fallback.
  [[nodiscard]] double number(std::string_view key, double fallback = 0.0) const;
  [[nodiscard]] std::optional<double> find_number(std::string_view key) const;
  [[nodiscard]] std::string text(std::string_view key) const;
  /// A bad value for every key given that is not above zero.
  void require_positive(std::initializer_list<std::string_view> keys);
  /// A direction "x,y,z"; a bad value when it is none.
  [[nodiscard]] geom::Vec3 direction(std::string_view key);
  /// A word out of a list; the index, or a bad value and 0.
  [[nodiscard]] std::size_t choice(std::string_view key,
                                   const std::vector<std::string_view>& words);

 private:
  void take(const std::string& key, const std::string& value);
  const base::FigureCard& card_;
  std::map<std::string, std::string, std::less<>> texts_;
  std::map<std::string, double, std::less<>> numbers_;
  std::vector<std::string> usage_;
  std::vector<base::Finding> bad_values_;
};

}  // namespace seamturn::figures::detail
