// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_precedence.hpp"

namespace seamturn::order {

Precedence::Precedence(const Job& job)
    : words_(job.blocks.size() / 64 + 1),
      ancestors_(job.blocks.size() * words_, 0),
      followers_(job.blocks.size()),
      leaders_(job.blocks.size()) {
  const std::size_t count = job.blocks.size();
  std::vector<std::size_t> missing(count, 0);
  for (std::size_t b = 0; b < count; ++b) {
    leaders_[b] = job.blocks[b].after;
    std::sort(leaders_[b].begin(), leaders_[b].end());
    leaders_[b].erase(std::unique(leaders_[b].begin(), leaders_[b].end()), leaders_[b].end());
    missing[b] = leaders_[b].size();
    for (const int before : leaders_[b]) {
      followers_[static_cast<std::size_t>(before)].push_back(static_cast<int>(b));
    }
    if (missing[b] == 0) {
      sorted_.push_back(static_cast<int>(b));
    }
  }
  for (std::size_t i = 0; i < sorted_.size(); ++i) {
    const int done = sorted_[i];
    const std::uint64_t* from = ancestors_.data() + static_cast<std::size_t>(done) * words_;
    for (const int next : followers(done)) {
      std::uint64_t* into = ancestors_.data() + static_cast<std::size_t>(next) * words_;
      for (std::size_t word = 0; word < words_; ++word) {
        into[word] |= from[word];
      }
      const auto bit = static_cast<std::size_t>(done);
      into[bit / 64] |= std::uint64_t{1} << (bit % 64);
      if (--missing[static_cast<std::size_t>(next)] == 0) {
        sorted_.push_back(next);
      }
    }
  }
}

bool Precedence::apart(int a, int b) const {
  const std::vector<int>& between = followers(a);
  return before(a, b) && std::any_of(between.begin(), between.end(), [this, b](int x) {
           return x != b && before(x, b);
         });
}

}  // namespace seamturn::order
