// SPDX-License-Identifier: MIT
// Turns that no order can avoid: every block is welded in one of its stances.
#include <algorithm>
#include <cstdint>
#include <limits>

#include "detail_work.hpp"

namespace seamturn::order {

namespace {

constexpr std::size_t exact_stances = 12;  // 2^12 sets of stances are looked at one by one

/// Stances that stand in an option, and for each block which of them it may use.
struct Cover {
  std::vector<int> stances;
  std::vector<std::vector<std::size_t>> choices;  ///< distinct sets, indices into stances
};

Cover make_cover(const Job& job) {
  Cover cover;
  for (const Block& block : job.blocks) {
    for (const Option& option : block.options) {
      cover.stances.push_back(option.stance);
    }
  }
  std::sort(cover.stances.begin(), cover.stances.end());
  cover.stances.erase(std::unique(cover.stances.begin(), cover.stances.end()), cover.stances.end());
  for (const Block& block : job.blocks) {
    std::vector<std::size_t> choice;
    for (const Option& option : block.options) {
      const auto place =
          std::lower_bound(cover.stances.begin(), cover.stances.end(), option.stance);
      choice.push_back(static_cast<std::size_t>(place - cover.stances.begin()));
    }
    std::sort(choice.begin(), choice.end());
    choice.erase(std::unique(choice.begin(), choice.end()), choice.end());
    cover.choices.push_back(choice);
  }
  std::sort(cover.choices.begin(), cover.choices.end());
  cover.choices.erase(std::unique(cover.choices.begin(), cover.choices.end()), cover.choices.end());
  return cover;
}

/// Cheapest walk through a set of stances that serves every block, given the cost of reaching each
/// from the start. The walk of any order visits such a set, and between first visits costs at least
/// the closure.
double cheapest_walk_s(const Cover& cover,
                       const std::vector<double>& first_s,
                       const std::vector<std::vector<double>>& closure_s) {
  const std::size_t count = cover.stances.size();
  const std::size_t sets = std::size_t{1} << count;
  const auto from = [&cover](std::size_t s) { return static_cast<std::size_t>(cover.stances[s]); };
  std::vector<double> walk_s(sets * count, never_s);
  for (std::size_t s = 0; s < count; ++s) {
    walk_s[(std::size_t{1} << s) * count + s] = first_s[from(s)];
  }
  std::vector<std::size_t> masks;
  for (const auto& choice : cover.choices) {
    std::size_t mask = 0;
    for (const std::size_t s : choice) mask |= std::size_t{1} << s;
    masks.push_back(mask);
  }
  double best_s = never_s;
  for (std::size_t set = 1; set < sets; ++set) {
    const bool serves =
        std::all_of(masks.begin(), masks.end(), [set](std::size_t m) { return (m & set) != 0; });
    for (std::size_t last = 0; last < count; ++last) {
      const double here_s = walk_s[set * count + last];
      if (serves) best_s = std::min(best_s, here_s);
      if (!(here_s < best_s)) continue;
      for (std::size_t next = 0; next < count; ++next) {
        const std::size_t bit = std::size_t{1} << next;
        if ((set & bit) == 0) {
          double& there_s = walk_s[(set | bit) * count + next];
          there_s = std::min(there_s, here_s + closure_s[from(last)][from(next)]);
        }
      }
    }
  }
  return best_s;
}

/// Weaker, for many stances: every stance visited but the first must be turned into. Each block
/// gets a price, and the blocks that could share a stance may not together pay more than the
/// cheapest turn into it; the prices then add up to a valid bound (dual of the covering problem).
double packed_turns_s(const Cover& cover,
                      const std::vector<std::vector<double>>& closure_s,
                      int start_stance) {
  std::vector<double> left_s;
  for (const int stance : cover.stances) {
    double into_s = never_s;
    for (std::size_t from = 0; from < closure_s.size(); ++from) {
      if (static_cast<int>(from) != stance) {
        into_s = std::min(into_s, closure_s[from][static_cast<std::size_t>(stance)]);
      }
    }
    left_s.push_back(stance == start_stance || into_s == never_s ? 0.0 : into_s);
  }
  auto choices = cover.choices;
  std::stable_sort(choices.begin(), choices.end(), [](const auto& a, const auto& b) {
    return a.size() < b.size();
  });
  double total_s = 0.0;
  for (const auto& choice : choices) {
    double price_s = never_s;
    for (const std::size_t s : choice) price_s = std::min(price_s, left_s[s]);
    for (const std::size_t s : choice) left_s[s] -= price_s;
    total_s += price_s;
  }
  return total_s;
}

}  // namespace

std::vector<std::vector<double>> turn_closure(const Job& job, double extra_s) {
  auto closure_s = job.turn_s;
  const std::size_t count = closure_s.size();
  for (std::size_t s = 0; s < count; ++s) {
    for (double& turn_s : closure_s[s]) turn_s += extra_s;
    closure_s[s][s] = 0.0;
  }
  for (std::size_t via = 0; via < count; ++via) {
    for (std::size_t from = 0; from < count; ++from) {
      for (std::size_t to = 0; to < count; ++to) {
        closure_s[from][to] =
            std::min(closure_s[from][to], closure_s[from][via] + closure_s[via][to]);
      }
    }
  }
  return closure_s;
}

double least_turn_s(const Job& job, double extra_s) {
  if (job.blocks.empty()) {
    return 0.0;
  }
  const Cover cover = make_cover(job);
  const auto plain_s = turn_closure(job, 0.0);
  const auto dearer_s = turn_closure(job, extra_s);
  if (cover.stances.size() <= exact_stances) {
    const auto start = static_cast<std::size_t>(job.start_stance);
    return cheapest_walk_s(cover, plain_s[start], dearer_s);
  }
  return std::max(packed_turns_s(cover, plain_s, job.start_stance),
                  packed_turns_s(cover, dearer_s, job.start_stance) - extra_s);
}

}  // namespace seamturn::order
