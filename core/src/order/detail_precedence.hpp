// SPDX-License-Identifier: MIT
// What must be finished before what, direct and through others.
#pragma once

#include <cstdint>
#include <vector>

#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// Pre: check_job passed (no cycle).
class Precedence {
 public:
  explicit Precedence(const Job& job);
  /// True when a must be finished before b begins, directly or through others.
  [[nodiscard]] bool before(int a, int b) const {
    const auto bit = static_cast<std::size_t>(a);
    return (ancestors_[static_cast<std::size_t>(b) * words_ + bit / 64] >> (bit % 64) & 1) != 0;
  }
  /// Blocks that name this one in `after`, each once.
  [[nodiscard]] const std::vector<int>& followers(int block) const {
    return followers_[static_cast<std::size_t>(block)];
  }
  /// Blocks this one names in `after`, each once.
  [[nodiscard]] const std::vector<int>& leaders(int block) const {
    return leaders_[static_cast<std::size_t>(block)];
  }
  /// Every block after all it must follow, otherwise in the order listed.
  [[nodiscard]] const std::vector<int>& sorted() const { return sorted_; }
  /// True when a stands before b and some block must stand between them.
  [[nodiscard]] bool apart(int a, int b) const;

 private:
  std::size_t words_ = 0;
  std::vector<std::uint64_t> ancestors_;
  std::vector<std::vector<int>> followers_;
  std::vector<std::vector<int>> leaders_;
  std::vector<int> sorted_;
};

}  // namespace seamturn::order
