// SPDX-License-Identifier: MIT
#include "detail_tour.hpp"

#include <algorithm>

#include "seamturn/base/error.hpp"

namespace seamturn::order {

namespace {

std::uint64_t bit_of(int group) {
  return std::uint64_t{1} << (static_cast<unsigned>(group) % 64);
}

/// Groups after all they must follow; of those that may come next the lowest index.
std::vector<int> sorted_groups(const TourProblem& problem) {
  const auto count = static_cast<int>(problem.group_count());
  std::vector<std::vector<int>> next(problem.group_count());
  std::vector<int> missing(problem.group_count(), 0);
  const auto link = [&](int from, int to) {
    if (from == to) return;
    next[static_cast<std::size_t>(from)].push_back(to);
    ++missing[static_cast<std::size_t>(to)];
  };
  for (int group = 0; group < count; ++group) {
    for (const int before : problem.before[static_cast<std::size_t>(group)]) link(before, group);
    if (group > 0) link(0, group);
    if (group + 1 < count && group > 0) link(group, count - 1);
  }
  std::vector<int> ready = {0};
  std::vector<int> sorted;
  while (!ready.empty()) {
    const auto least = std::min_element(ready.begin(), ready.end());
    const int group = *least;
    ready.erase(least);
    sorted.push_back(group);
    for (const int after : next[static_cast<std::size_t>(group)]) {
      if (--missing[static_cast<std::size_t>(after)] == 0) ready.push_back(after);
    }
  }
  SEAMTURN_REQUIRE(sorted.size() == problem.group_count(), sorted.size(), problem.group_count());
  return sorted;
}

}  // namespace

TourOrder::TourOrder(const TourProblem& problem)
    : words_((problem.group_count() + 63) / 64),
      leaders_(problem.group_count() * words_, 0),
      followers_(leaders_.size(), 0),
      sorted_(sorted_groups(problem)) {
  const auto last = static_cast<int>(problem.group_count()) - 1;
  for (const int group : sorted_) {
    std::uint64_t* own = &leaders_[static_cast<std::size_t>(group) * words_];
    const auto take = [&](int before) {
      const std::uint64_t* theirs = leaders(before);
      for (std::size_t w = 0; w < words_; ++w) own[w] |= theirs[w];
      own[static_cast<std::size_t>(before) / 64] |= bit_of(before);
    };
    for (const int before : problem.before[static_cast<std::size_t>(group)]) take(before);
    if (group != 0) take(0);
    for (int other = 1; group == last && other < last; ++other) take(other);
  }
  for (const int group : sorted_) {
    for (int before = 0; before <= last; ++before) {
      if (!this->before(before, group)) continue;
      followers_[static_cast<std::size_t>(before) * words_ +
                 static_cast<std::size_t>(group) / 64] |= bit_of(group);
    }
  }
}

double tour_cost(const TourProblem& problem, const Tour& tour) {
  double sum = 0.0;
  for (std::size_t i = 1; i < tour.size(); ++i) sum += problem.from_to(tour[i - 1], tour[i]);
  return sum;
}

bool is_tour(const TourProblem& problem, const TourOrder& order, const Tour& tour) {
  if (tour.size() != problem.group_count() || !(tour_cost(problem, tour) < never_s)) return false;
  std::vector<std::uint64_t> seen(order.words(), 0);
  for (const int vertex : tour) {
    const int group = problem.group_of[static_cast<std::size_t>(vertex)];
    std::uint64_t& word = seen[static_cast<std::size_t>(group) / 64];
    if ((word & bit_of(group)) != 0) return false;
    for (std::size_t w = 0; w < order.words(); ++w) {
      if ((order.leaders(group)[w] & ~seen[w]) != 0) return false;
    }
    word |= bit_of(group);
  }
  return true;
}

bool may_follow(const TourOrder& order, int a, int b) {
  if (a == b || order.before(b, a)) return false;
  if (!order.before(a, b)) return true;
  for (std::size_t w = 0; w < order.words(); ++w) {
    if ((order.followers(a)[w] & order.leaders(b)[w]) != 0) return false;
  }
  return true;
}

}  // namespace seamturn::order
