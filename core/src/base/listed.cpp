// SPDX-License-Identifier: MIT
#include "seamturn/base/listed.hpp"

namespace seamturn::base {

std::string listed(std::span<const std::string> words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) {
    if (&word != &words.front()) text += between;
    text += word;
  }
  return text;
}

}  // namespace seamturn::base
