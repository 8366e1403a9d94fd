// SPDX-License-Identifier: MIT
#include "detail_tour_exchange.hpp"

#include <algorithm>

namespace seamturn::order {

namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

}  // namespace

/// Two steps taken out, one of the three new ones put in: from the first place to behind the
/// second.
struct TourState::Gap {
  int first = 0;
  int second = 0;
  double gain = 0.0;  ///< so far
};

double TourPath::cost() const {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < tour.size(); ++i) sum += step[i];
  return sum;
}

TourState::TourState(const TourTable& table, const std::vector<int>& tour)
    : table_(table),
      layers_(table),
      marked_(at(table.groups()), 0),
      set_(table.order().words(), 0) {
  path_.tour = tour;
  path_.here.resize(tour.size());
  path_.step.resize(tour.size());
  refresh(0, table.groups());
}

void TourState::refresh(int begin, int end) {
  const int last = table_.groups() - 1;
  for (int i = begin; i < end; ++i) {
    const int vertex = path_.tour[at(i)];
    path_.here[at(table_.group_of(vertex))] = {vertex, i};
    if (i < last) path_.step[at(i)] = table_.cost(vertex, path_.tour[at(i) + 1]);
  }
}

bool TourState::may(const Exchange& exchange) {
  const TourOrder& order = table_.order();
  const auto group = [&](int place) { return table_.group_of(path_.tour[at(place)]); };
  if (order.before(group(exchange.middle - 1), group(exchange.middle))) return false;
  if (order.before(group(exchange.begin), group(exchange.end - 1))) return false;
  work_ += (exchange.end - exchange.begin) / 4;
  std::fill(set_.begin(), set_.end(), 0);
  for (int i = exchange.begin; i < exchange.middle; ++i) {
    const std::size_t bit = at(group(i));
    set_[bit / 64] |= std::uint64_t{1} << (bit % 64);
  }
  for (int i = exchange.middle; i < exchange.end; ++i) {
    const std::uint64_t* leaders = order.leaders(group(i));
    for (std::size_t w = 0; w < set_.size(); ++w) {
      if ((leaders[w] & set_[w]) != 0) return false;
    }
  }
  return true;
}

void TourState::mark(int place) {
  const int group = table_.group_of(path_.tour[at(place)]);
  if (marked_[at(group)] != 0) return;
  marked_[at(group)] = 1;
  marks_.push_back(group);
}

void TourState::mark_all() {
  for (int i = 0; i < table_.groups(); ++i) mark(i);
}

void TourState::apply(const Exchange& exchange) {
  const auto first = path_.tour.begin();
  std::rotate(first + exchange.begin, first + exchange.middle, first + exchange.end);
  refresh(exchange.begin - 1, exchange.end);
  const int middle = exchange.begin + (exchange.end - exchange.middle);
  for (const int cut : {exchange.end, middle, exchange.begin}) mark(cut);
  for (const int cut : {exchange.end, middle, exchange.begin}) mark(cut - 1);
}

void TourState::descend() {
  while (!marks_.empty()) {
    const std::size_t group = at(marks_.back());
    marks_.pop_back();
    marked_[group] = 0;
    Exchange best;
    while (find_best(path_.here[group].place, best)) apply(best);
  }
}

/// Of an exchange that gains, one of the three new steps can be found whose gain alone is positive,
/// and with the next one's as well; so both are looked for among near neighbours only.
bool TourState::find_best(int place, Exchange& best) {
  if (place + 1 >= table_.groups()) return false;
  const int vertex = path_.tour[at(place)];
  const double* row = table_.row(vertex);
  const double step = path_.step[at(place)] - table_.least_gain();
  double best_gain = table_.least_gain();
  const double none = best_gain;
  for (const NextGroup& next : table_.next(vertex)) {
    if (next.least >= step) break;
    ++work_;
    const TourPath::Here to = path_.here[at(next.group)];
    const double cost = row[to.vertex];
    if (cost >= step || to.place == place + 1) continue;
    find_third({place, to.place - 1, path_.step[at(place)] - cost}, best, best_gain);
  }
  return best_gain > none;
}

void TourState::find_third(const Gap& gap, Exchange& best, double& best_gain) {
  const int vertex = path_.tour[at(gap.second)];
  const int loose = path_.tour[at(gap.first) + 1];
  const double* row = table_.row(vertex);
  const double have = gap.gain + path_.step[at(gap.second)];
  const bool forward = gap.second > gap.first;
  for (const NextGroup& next : table_.next(vertex)) {
    if (next.least >= have - best_gain) break;
    ++work_;
    const TourPath::Here to = path_.here[at(next.group)];
    const int third = to.place - 1;
    const bool round =
        forward ? third > gap.second || third < gap.first : third > gap.second && third < gap.first;
    if (!round) continue;
    const double gain =
        have - row[to.vertex] + path_.step[at(third)] - table_.cost(path_.tour[at(third)], loose);
    if (gain <= best_gain) continue;
    Exchange exchange{gap.first + 1, gap.second + 1, third + 1};
    if (!forward) {
      exchange = {gap.second + 1, third + 1, gap.first + 1};
    } else if (third < gap.first) {
      exchange = {third + 1, gap.first + 1, gap.second + 1};
    }
    if (!may(exchange)) continue;
    best_gain = gain;
    best = exchange;
  }
}

bool TourState::choose_alternatives() {
  if (!table_.has_alternatives()) return false;
  if (layers_.least(path_.tour) >= path_.cost() - table_.least_gain()) return false;
  chosen_ = path_.tour;
  layers_.choose(chosen_);
  for (int i = table_.groups() - 1; i > 0; --i) {
    if (chosen_[at(i)] == path_.tour[at(i)]) continue;
    mark(i);
    mark(i - 1);
  }
  path_.tour = chosen_;
  refresh(0, table_.groups());
  return true;
}

}  // namespace seamturn::order
