// SPDX-License-Identifier: MIT
#include "detail_tour_bound.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "seamturn/base/error.hpp"

namespace seamturn::order {

namespace {

// A known tour has up to 2^42 grains: rounding down 400 steps loses less than 1e-10 of it, and sums
// with prices stay far below 2^60.
constexpr double most_grains = 4398046511104.0;
constexpr double same_ratio = 5e-10;

/// The greatest whole number that divides all costs; 0 when a cost is not whole.
Grain common_divisor(const TourProblem& problem) {
  Grain divisor = 0;
  for (const double cost : problem.cost) {
    if (!(cost < never_s)) continue;
    if (!(cost < most_grains) || cost != std::floor(cost)) return 0;
    divisor = std::gcd(divisor, static_cast<Grain>(cost));
  }
  return divisor;
}

std::vector<Grain> rounded_down(const TourProblem& problem, double grains) {
  std::vector<Grain> steps;
  steps.reserve(problem.cost.size());
  for (const double cost : problem.cost) {
    SEAMTURN_REQUIRE(cost >= 0.0, cost);
    const double exact = cost * grains;  // grains is a power of two over a whole number
    steps.push_back(exact <= 2.0 * most_grains ? static_cast<Grain>(std::floor(exact))
                                               : never_grain);
  }
  return steps;
}

/// Least steps between groups that may follow each other.
class TourLegs {
 public:
  TourLegs(const TourProblem& problem, const TourOrder& order, const std::vector<Grain>& steps)
      : count_(problem.group_count()), least_(count_ * count_, never_grain) {
    for (std::size_t a = 0; a < count_; ++a) {
      for (std::size_t b = 0; b < count_; ++b) {
        if (!may_follow(order, static_cast<int>(a), static_cast<int>(b))) continue;
        Grain& least = least_[a * count_ + b];
        for (const int from : problem.vertices[a]) {
          for (const int to : problem.vertices[b]) {
            const auto row = static_cast<std::size_t>(from) * problem.vertex_count();
            least = std::min(least, steps[row + static_cast<std::size_t>(to)]);
          }
        }
      }
    }
  }

  [[nodiscard]] std::size_t count() const { return count_; }
  [[nodiscard]] Grain operator()(std::size_t from, std::size_t to) const {
    return least_[from * count_ + to];
  }

 private:
  std::size_t count_;
  std::vector<Grain> least_;
};

/// Rows are the groups but the last, columns the groups but the first; a row joins by the shortest
/// way of changes (Kuhn 1955, in the form with potentials; index 0 stands for "none").
class Hungarian {
 public:
  explicit Hungarian(const TourLegs& legs)
      : legs_(legs),
        size_(legs.count() - 1),
        out_(size_ + 1, 0),
        in_(size_ + 1, 0),
        row_of_(size_ + 1, 0),
        way_(size_ + 1, 0) {}

  /// False when a row cannot join.
  bool add(std::size_t row) {
    std::vector<Grain> slack(size_ + 1, never_grain);
    std::vector<bool> used(size_ + 1, false);
    row_of_[0] = row;
    std::size_t column = 0;
    do {
      used[column] = true;
      const std::size_t next = look_from(column, slack, used);
      if (next == 0) return false;
      column = next;
    } while (row_of_[column] != 0);
    while (column != 0) {
      row_of_[column] = row_of_[way_[column]];
      column = way_[column];
    }
    return true;
  }

  [[nodiscard]] Assignment result() const {
    Assignment found;
    found.out.assign(out_.begin() + 1, out_.end());
    found.out.push_back(0);
    found.in.assign(in_.begin(), in_.end());
    found.in[0] = 0;
    for (std::size_t i = 1; i <= size_; ++i) found.sum += out_[i] + in_[i];
    return found;
  }

 private:
  /// Lowers the slacks by the row of a column, shifts the potentials; the next column, or none.
  std::size_t look_from(std::size_t column, std::vector<Grain>& slack, std::vector<bool>& used) {
    const std::size_t row = row_of_[column];
    Grain least = never_grain;
    std::size_t next = 0;
    for (std::size_t j = 1; j <= size_; ++j) {
      if (used[j]) continue;
      const Grain leg = legs_(row - 1, j);
      if (leg < never_grain && leg - out_[row] - in_[j] < slack[j]) {
        slack[j] = leg - out_[row] - in_[j];
        way_[j] = column;
      }
      if (slack[j] < least) {
        least = slack[j];
        next = j;
      }
    }
    if (next == 0) return 0;
    for (std::size_t j = 0; j <= size_; ++j) {
      if (used[j]) {
        out_[row_of_[j]] += least;
        if (j != 0) in_[j] -= least;
      } else if (slack[j] < never_grain) {
        slack[j] -= least;
      }
    }
    return next;
  }

  const TourLegs& legs_;
  std::size_t size_;
  std::vector<Grain> out_;  ///< per row from 1
  std::vector<Grain> in_;   ///< per column from 1
  std::vector<std::size_t> row_of_;
  std::vector<std::size_t> way_;
};

/// Grains for a problem without a known tour: no sum of steps exceeds their number.
GrainCosts grains_of_all(const TourProblem& problem) {
  double dearest = 0.0;
  for (const double cost : problem.cost) {
    if (cost < never_s) dearest = std::max(dearest, cost);
  }
  return grain_costs(problem, std::max(dearest, 1e-300));
}

}  // namespace

GrainCosts grain_costs(const TourProblem& problem, double known) {
  SEAMTURN_REQUIRE(known > 0.0 && known < never_s, known);
  GrainCosts costs;
  const Grain divisor = common_divisor(problem);
  const auto unit = static_cast<double>(divisor);
  const bool whole = divisor > 0 && known >= unit && known / unit <= most_grains / 2.0;
  const double known_units = whole ? std::round(known / unit) : known;
  const double fine = std::exp2(std::floor(std::log2(most_grains / known_units)));
  costs.grains = whole ? fine / unit : fine;
  if (!whole) {
    costs.steps = rounded_down(problem, fine);
    costs.cut = static_cast<Grain>(std::ceil(known * fine * (1.0 - same_ratio)));
    return costs;
  }
  costs.whole = static_cast<Grain>(fine);
  costs.cut = (static_cast<Grain>(known_units) - 1) * costs.whole + 1;
  for (const double cost : problem.cost) {
    const bool never = !(cost < never_s) || cost / unit * fine > 2.0 * most_grains;
    costs.steps.push_back(never ? never_grain : static_cast<Grain>(cost) / divisor * costs.whole);
  }
  return costs;
}

double cost_of(const GrainCosts& costs, Grain grains) {
  if (grains >= never_grain / 2) return never_s;
  if (costs.whole == 0) return static_cast<double>(grains) / costs.grains;
  const Grain units = grains <= 0 ? 0 : (grains - 1) / costs.whole + 1;
  const double unit = std::round(static_cast<double>(costs.whole) / costs.grains);
  return static_cast<double>(units) * unit;
}

Assignment assign_groups(const TourProblem& problem,
                         const TourOrder& order,
                         const std::vector<Grain>& steps) {
  SEAMTURN_REQUIRE(problem.group_count() >= 2, problem.group_count());
  const TourLegs legs(problem, order, steps);
  Hungarian hungarian(legs);
  for (std::size_t row = 1; row < problem.group_count(); ++row) {
    if (!hungarian.add(row)) {
      Assignment none;
      none.sum = never_grain;
      return none;
    }
  }
  return hungarian.result();
}

double assignment_bound(const TourProblem& problem, const TourOrder& order) {
  const GrainCosts costs = grains_of_all(problem);
  return cost_of(costs, assign_groups(problem, order, costs.steps).sum);
}

double one_sided_bound(const TourProblem& problem, const TourOrder& order) {
  const GrainCosts costs = grains_of_all(problem);
  const TourLegs legs(problem, order, costs.steps);
  Grain out = 0;
  Grain in = 0;
  for (std::size_t a = 0; a + 1 < legs.count(); ++a) {
    Grain least_out = never_grain;
    Grain least_in = never_grain;
    for (std::size_t b = 0; b < legs.count(); ++b) {
      least_out = std::min(least_out, legs(a, b));
      least_in = std::min(least_in, legs(b, a + 1));
    }
    out = std::min(never_grain, out + least_out);
    in = std::min(never_grain, in + least_in);
  }
  return cost_of(costs, std::max(out, in));
}

}  // namespace seamturn::order
