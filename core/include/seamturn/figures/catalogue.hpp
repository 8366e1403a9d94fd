// SPDX-License-Identifier: MIT
// The catalogue behind `seamturn figure`: every figure by name, called with KEY=VALUE texts.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::figures {

/// A number with its unit, or a word ("PA").
struct FigureValue {
  std::variant<double, std::string> value;
  std::string unit;  ///< "" for bare numbers and words
};

/// A column of a table; `decimals` is what people are shown, programs get the number as it is.
struct FigureColumn {
  std::string name;  ///< with the unit, as a key of JSON: "area_mm2"
  std::string head;  ///< without it: "area"
  std::string unit;  ///< "" for words and bare numbers
  int decimals = 0;
};
struct FigureTable {
  std::string name;  ///< "passes"
  std::vector<FigureColumn> columns;
  std::vector<std::vector<std::variant<double, std::string>>> rows;  ///< as long as the columns
};

struct FigureResult {
  std::string name;
  FigureValue principal;
  std::string in_words;  ///< people read it before the number, where that alone would mislead
  std::vector<std::pair<std::string, FigureValue>> values;  ///< intermediates, in a fixed order
  std::optional<FigureTable> table;                         ///< where the result is a list
  std::vector<base::Finding> findings;                      ///< warnings beside the number
  const base::FigureCard* card = nullptr;  ///< of the method taken, where the figure has several
};

/// How a call ended: wrong words (exit 2), an honest no (exit 1), or a result.
struct FigureUsage {
  std::string text;
};
using FigureAnswer = std::variant<FigureResult, FigureUsage, std::vector<base::Finding>>;

[[nodiscard]] std::vector<const base::FigureCard*> all_cards();
[[nodiscard]] const base::FigureCard* find_card(std::string_view name);

/// Calls a figure. Keys unknown, missing or twice, units wrong: FigureUsage naming them all.
/// A value that is well-formed but refused by the calculation: findings of severity error.
/// Tests: figures/catalogue - every card has its keys, sources and a worked call.
[[nodiscard]] FigureAnswer evaluate_figure(
    std::string_view name, const std::vector<std::pair<std::string, std::string>>& arguments);

}  // namespace seamturn::figures
