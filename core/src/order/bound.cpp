// SPDX-License-Identifier: MIT
// The lower bound: a sum of parts that count different seconds, or the critical chain.
#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_work.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::order {

namespace {

// Sums of a few thousand doubles differ by rounding when added in another order.
constexpr double rounding_ratio = 1e-11;

/// Blocks and home as stations: cost of leaving one and entering another, with what is spent inside
/// the one entered. Home is the last index.
class JobLegs {
 public:
  JobLegs(const Job& job, const Precedence& precedence)
      : count_(job.blocks.size() + 1), cost_s_(count_ * count_, never_s) {
    const std::size_t home = count_ - 1;
    for (std::size_t b = 0; b < home; ++b) {
      std::vector<double> inside_b_s;
      for (const Option& option : job.blocks[b].options) {
        inside_b_s.push_back(inside_s(job, job.blocks[b], option));
        at(b, home) = std::min(at(b, home), air_s(job, option.end_W, job.home_W));
        at(home, b) =
            std::min(at(home, b), air_s(job, job.home_W, option.start_W) + inside_b_s.back());
      }
      for (std::size_t a = 0; a < home; ++a) {
        const int first = static_cast<int>(a);
        const int second = static_cast<int>(b);
        if (a != b && !precedence.before(second, first) && !precedence.apart(first, second)) {
          at(a, b) = leg_s(job, job.blocks[a], job.blocks[b], inside_b_s);
        }
      }
    }
  }

  [[nodiscard]] std::size_t count() const { return count_; }
  [[nodiscard]] double operator()(std::size_t from, std::size_t to) const {
    return cost_s_[from * count_ + to];
  }

 private:
  double& at(std::size_t from, std::size_t to) { return cost_s_[from * count_ + to]; }

  static double leg_s(const Job& job,
                      const Block& from,
                      const Block& to,
                      const std::vector<double>& inside_to_s) {
    double least_s = never_s;
    for (std::size_t o = 0; o < to.options.size(); ++o) {
      const Option& entered = to.options[o];
      double way_mm2 = never_s;
      for (const Option& left : from.options) {
        if (left.stance == entered.stance) {
          way_mm2 = std::min(way_mm2, (entered.start_W - left.end_W).squaredNorm());
        }
      }
      if (way_mm2 < never_s) {
        least_s = std::min(least_s, air_s(job, std::sqrt(way_mm2)) + inside_to_s[o]);
      }
    }
    return least_s;
  }

  std::size_t count_;
  std::vector<double> cost_s_;
};

/// Prices for leaving (u) and entering (v) a station with u + v <= cost of every leg between them.
/// Every block is left once and entered once, home h times, so no order has less than
/// sum of block prices + h * home price seconds of air, for any such prices.
class StationPrices {
 public:
  explicit StationPrices(const JobLegs& legs)
      : legs_(legs), leave_s_(legs.count(), 0.0), enter_s_(legs.count(), 0.0) {}

  /// Raises the price of leaving as far as the entering prices permit, and the other way round.
  void raise_leaving(std::size_t station) {
    double room_s = never_s;
    for (std::size_t to = 0; to < legs_.count(); ++to) {
      room_s = std::min(room_s, legs_(station, to) - enter_s_[to]);
    }
    leave_s_[station] = room_s;
  }
  void raise_entering(std::size_t station) {
    double room_s = never_s;
    for (std::size_t from = 0; from < legs_.count(); ++from) {
      room_s = std::min(room_s, legs_(from, station) - leave_s_[from]);
    }
    enter_s_[station] = room_s;
  }
  [[nodiscard]] double blocks_s() const {
    double sum_s = 0.0;
    for (std::size_t b = 0; b + 1 < legs_.count(); ++b) sum_s += leave_s_[b] + enter_s_[b];
    return sum_s;
  }
  /// Not negative: no block price was raised beyond what a free home permits.
  [[nodiscard]] double home_s() const { return leave_s_.back() + enter_s_.back(); }

 private:
  const JobLegs& legs_;
  std::vector<double> leave_s_;
  std::vector<double> enter_s_;
};

/// Four orders of raising; none is best for all jobs.
StationPrices make_prices(const JobLegs& legs, int variant) {
  StationPrices prices(legs);
  const std::size_t home = legs.count() - 1;
  const bool home_first = (variant & 1) != 0;
  const bool entering_first = (variant & 2) != 0;
  if (home_first) {
    prices.raise_leaving(home);
    prices.raise_entering(home);
  }
  for (const bool entering : {entering_first, !entering_first}) {
    for (std::size_t b = 0; b < home; ++b) {
      entering ? prices.raise_entering(b) : prices.raise_leaving(b);
    }
  }
  prices.raise_leaving(home);
  prices.raise_entering(home);
  return prices;
}

int in_block_cleanings_at_most(const Job& job) {
  std::size_t places = 0;
  for (const Block& block : job.blocks) places += block.passes.size() - 1;
  return static_cast<int>(std::min<std::size_t>(places, 1000000000));
}

}  // namespace

// The robot comes home at the end, before every turn and before every cleaning, but not for a turn
// before the first block: there it is already. A cleaning inside a block leads home from within it
// and is not among the legs; one cleaning and one turn may share a visit. With t turns after the
// first block, home is entered at least max(t, cleanings between blocks) + 1 times. The home price
// is therefore due once, and besides either once a turn (it makes turns dearer) or once a cleaning.
double least_turn_and_air_s(const Job& job, const Precedence& precedence, int cleanings) {
  if (job.blocks.empty()) {
    return 0.0;
  }
  const JobLegs legs(job, precedence);
  const int between = std::max(0, cleanings - in_block_cleanings_at_most(job));
  const double turns_alone_s = least_turn_s(job, 0.0);
  double best_s = 0.0;
  for (int variant = 0; variant < 4; ++variant) {
    const StationPrices prices = make_prices(legs, variant);
    const double home_s = prices.home_s();
    const double with_turns_s =
        std::max(least_turn_s(job, home_s), turns_alone_s + between * home_s);
    best_s = std::max(best_s, prices.blocks_s() + home_s + with_turns_s);
  }
  return best_s;
}

double lower_bound_s(const Job& job) {
  const Precedence precedence(job);
  const Zones zones = number_zones(job);
  double sum_s = least_touch_s(job, zones) + least_heat_s(job, zones);
  for (const Block& block : job.blocks) {
    sum_s += work_s(job, block);
  }
  const int cleanings = least_cleanings(job);
  sum_s += least_clean_s(job, cleanings) + least_turn_and_air_s(job, precedence, cleanings);
  return std::max(sum_s, chain_s(job, precedence, zones)) * (1.0 - rounding_ratio);
}

}  // namespace seamturn::order
