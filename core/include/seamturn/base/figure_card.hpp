// SPDX-License-Identifier: MIT
// The card of a figure: what a computed number means, what it needs, where it is valid, where it
// comes from. Every calculation offered by `seamturn figure` carries one in its own header.
#pragma once

#include <span>
#include <string_view>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/units.hpp"

namespace seamturn::base {

/// One KEY of a figure.
struct FigureKey {
  std::string_view name;                  ///< as written on the command line, e.g. "heat-input"
  Dimension dimension = Dimension::none;  ///< which units are accepted
  std::string_view meaning;               ///< in words
  std::string_view range;                 ///< permitted range or choices, in words
  bool required = true;
  bool is_text = false;  ///< a word, a choice or a vector, not a quantity
};

struct FigureCard {
  std::string_view name;     ///< as on the command line
  std::string_view meaning;  ///< one line
  std::string_view formula;  ///< in words and symbols
  std::string_view unit;     ///< of the principal value, as in JSON, e.g. "kJ/mm"
  std::string_view range;    ///< valid range in words
  std::span<const FigureKey> keys;
  std::span<const Citation> sources;
};

}  // namespace seamturn::base
