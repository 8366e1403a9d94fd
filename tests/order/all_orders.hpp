// SPDX-License-Identifier: MIT
// The best of all orders of a small job, found by trying them all.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

/// Every permutation with every choice of options, by counting up; shares nothing with the search.
inline order::Sequence best_of_all(const order::Job& job) {
  std::vector<int> blocks(job.blocks.size());
  std::iota(blocks.begin(), blocks.end(), 0);
  double best_s = std::numeric_limits<double>::infinity();
  order::Sequence best;
  do {
    order::Sequence sequence;
    for (const int block : blocks) sequence.push_back({block, 0});
    if (!order::is_valid(job, sequence)) continue;
    for (std::size_t digit = 0; digit < sequence.size();) {
      const double cycle_s = order::cycle_time_s(job, sequence);
      if (cycle_s < best_s) {
        best_s = cycle_s;
        best = sequence;
      }
      for (digit = 0; digit < sequence.size(); ++digit) {
        const auto block = static_cast<std::size_t>(sequence[digit].block);
        if (static_cast<std::size_t>(++sequence[digit].option) < job.blocks[block].options.size()) {
          break;
        }
        sequence[digit].option = 0;
      }
    }
  } while (std::next_permutation(blocks.begin(), blocks.end()));
  return best;
}

inline double best_of_all_s(const order::Job& job) {
  return order::cycle_time_s(job, best_of_all(job));
}

inline bool is_close(double a_s, double b_s) {
  return std::abs(a_s - b_s) <= 1e-9 * (1.0 + b_s);
}

}  // namespace seamturn::tests
