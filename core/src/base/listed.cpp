// SPDX-License-Identifier: MIT
#include "seamturn/base/listed.hpp"

#include <vector>

namespace seamturn::base {

std::string listed(std::span<const std::string> words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) {
    if (&word != &words.front()) text += between;
    text += word;
  }
  return text;
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  std::string text = std::to_string(count) + ' ';
  if (count == 1) return text.append(one);
  return many.empty() ? text.append(one).append("s") : text.append(many);
}

std::string listed_runs(std::span<const int> numbers) {
  std::vector<std::string> runs;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    runs.push_back(std::to_string(numbers[i]));
    if (last > i) runs.back() += "-" + std::to_string(numbers[last]);
    i = last + 1;
  }
  return listed(runs);
}

}  // namespace seamturn::base
