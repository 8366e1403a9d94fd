// SPDX-License-Identifier: MIT
#include "seamturn/base/near_name.hpp"

#include <algorithm>
#include <vector>

namespace seamturn::base {

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Optimal string alignment: rows for i-2, i-1 and i.
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::optional<std::string> find_near_name(std::string_view name,
                                          std::span<const std::string_view> known) {
  constexpr std::size_t longest = 64;  // names of ours are short; a long text is no typing error
  if (name.size() > longest) return std::nullopt;
  std::optional<std::string> best;
  std::size_t best_distance = std::max<std::size_t>(1, name.size() / 3) + 1;
  for (const std::string_view candidate : known) {
    const std::size_t distance = edit_distance(name, candidate);
    if (distance < best_distance) {
      best_distance = distance;
      best = std::string(candidate);
    }
  }
  return best;
}

}  // namespace seamturn::base
