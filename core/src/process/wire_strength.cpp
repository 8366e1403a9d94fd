// SPDX-License-Identifier: MIT
#include "seamturn/process/wire_strength.hpp"

#include <algorithm>
#include <utility>

namespace seamturn::process {

namespace {

constexpr std::pair<std::string_view, double> symbols[] = {{"35", 355.0},
                                                           {"38", 380.0},
                                                           {"42", 420.0},
                                                           {"46", 460.0},
                                                           {"50", 500.0},
                                                           {"55", 550.0},
                                                           {"62", 620.0},
                                                           {"69", 690.0},
                                                           {"79", 790.0},
                                                           {"89", 890.0}};

/// Takes the first word off a text; empty when none is left.
std::string_view take_word(std::string_view& text) {
  text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
  const std::string_view word = text.substr(0, text.find(' '));
  text.remove_prefix(word.size());
  return word;
}

}  // namespace

std::optional<double> designated_yield_mpa(std::string_view designation) {
  bool is_next = false;
  for (auto word = take_word(designation); !word.empty(); word = take_word(designation)) {
    for (const auto& [symbol, yield_mpa] : symbols) {
      if (is_next && word == symbol) return yield_mpa;
    }
    is_next = word == "G" || word == "T";
  }
  return std::nullopt;
}

}  // namespace seamturn::process
