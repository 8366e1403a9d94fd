// SPDX-License-Identifier: MIT
#include "detail_tour_exchange.hpp"

#include <algorithm>

namespace seamturn::order {

TourState::TourState(const TourTable& table, const std::vector<int>& tour)
    : table_(table),
      place_(static_cast<std::size_t>(table.groups())),
      step_(static_cast<std::size_t>(table.groups())),
      marked_(static_cast<std::size_t>(table.groups()), 0),
      set_(table.order().words()) {
  came_.resize(static_cast<std::size_t>(table.vertices()));
  layer_.resize(static_cast<std::size_t>(table.vertices()));
  take(tour);
}

void TourState::take(const std::vector<int>& tour) {
  tour_ = tour;
  refresh(0, static_cast<int>(tour_.size()));
}

void TourState::refresh(int begin, int end) {
  const int last = static_cast<int>(tour_.size()) - 1;
  for (int i = begin; i < end; ++i) {
    place_[table_.group_of(tour_[i])] = i;
    if (i < last) step_[i] = table_.cost(tour_[i], tour_[i + 1]);
  }
}

double TourState::cost() const {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < tour_.size(); ++i) sum += step_[i];
  return sum;
}

bool TourState::may(const Exchange& e) {
  const TourOrder& order = table_.order();
  const std::size_t words = order.words();
  if (order.before(table_.group_of(tour_[e.middle - 1]), table_.group_of(tour_[e.middle])))
    return false;
  work_ += (e.end - e.begin) / 4;
  std::fill(set_.begin(), set_.end(), 0);
  for (int i = e.begin; i < e.middle; ++i) {
    const auto g = static_cast<std::size_t>(table_.group_of(tour_[i]));
    set_[g / 64] |= std::uint64_t{1} << (g % 64);
  }
  for (int i = e.middle; i < e.end; ++i) {
    const std::uint64_t* leaders = order.leaders(table_.group_of(tour_[i]));
    for (std::size_t w = 0; w < words; ++w) {
      if ((leaders[w] & set_[w]) != 0) return false;
    }
  }
  return true;
}

void TourState::mark(int place) {
  const int group = table_.group_of(tour_[place]);
  if (marked_[group]) return;
  marked_[group] = 1;
  stack_.push_back(group);
}

void TourState::mark_all() {
  for (int i = 0; i < static_cast<int>(tour_.size()); ++i) mark(i);
}

void TourState::apply(const Exchange& e) {
  const auto first = tour_.begin();
  std::rotate(first + e.begin, first + e.middle, first + e.end);
  refresh(e.begin - 1, e.end);
  const int middle = e.begin + (e.end - e.middle);
  mark(e.end);
  mark(middle);
  mark(e.begin);
  mark(e.end - 1);
  mark(middle - 1);
  mark(e.begin - 1);
}

bool TourState::find_best(int a, Exchange& best) {
  const int last = static_cast<int>(tour_.size()) - 1;
  if (a >= last) return false;
  const double eps = table_.least_gain();
  double best_gain = eps;
  bool found = false;
  const int u = tour_[a];
  const int u2 = tour_[a + 1];
  const double* row_u = table_.row(u);
  std::int64_t looked = 0;
  for (const NextGroup& to : table_.next(u)) {
    if (to.least >= step_[a] - eps) break;
    ++looked;
    const int b = place_[to.group];
    const double gain1 = step_[a] - row_u[tour_[b]];
    if (b == a + 1 || gain1 <= eps) continue;
    const int e2 = b - 1;
    const int p = tour_[e2];
    const double have = gain1 + step_[e2];
    const double* row_p = table_.row(p);
    for (const NextGroup& on : table_.next(p)) {
      if (on.least >= have - eps) break;
      ++looked;
      const int c = place_[on.group];
      const int e3 = c - 1;
      const bool cyclic = e2 > a ? (e3 > e2 || e3 < a) : (e3 > e2 && e3 < a);
      if (!cyclic) continue;
      const double gain = have - row_p[tour_[c]] + step_[e3] - table_.cost(tour_[e3], u2);
      if (gain <= best_gain) continue;
      int i = a, j = e2, k = e3;
      if (e2 > a) {
        if (e3 < a) {
          i = e3;
          j = a;
          k = e2;
        }
      } else {
        i = e2;
        j = e3;
        k = a;
      }
      const Exchange e{i + 1, j + 1, k + 1};
      if (!may(e)) continue;
      best_gain = gain;
      best = e;
      found = true;
    }
  }
  work_ += looked;
  return found;
}

void TourState::descend() {
  while (!stack_.empty()) {
    const int group = stack_.back();
    stack_.pop_back();
    marked_[group] = 0;
    Exchange best;
    while (find_best(place_[group], best)) apply(best);
  }
}

bool TourState::choose_alternatives() {
  const int n = static_cast<int>(tour_.size());
  layer_[tour_[0]] = 0.0;
  std::int64_t looked = 0;
  for (int i = 1; i < n; ++i) {
    const int from_group = table_.group_of(tour_[i - 1]);
    const int group = table_.group_of(tour_[i]);
    const int begin = table_.first(group), end = table_.end(group);
    int from = table_.first(from_group);
    const int from_end = table_.end(from_group);
    looked += (from_end - from) * (end - begin);
    {
      const double base = layer_[from];
      const double* row = table_.row(from);
      for (int v = begin; v < end; ++v) {
        layer_[v] = base + row[v];
        came_[v] = from;
      }
    }
    for (++from; from < from_end; ++from) {
      const double base = layer_[from];
      const double* row = table_.row(from);
      for (int v = begin; v < end; ++v) {
        const double c = base + row[v];
        if (c < layer_[v]) {
          layer_[v] = c;
          came_[v] = from;
        }
      }
    }
  }
  work_ += looked / 4;
  if (layer_[tour_[n - 1]] >= cost() - table_.least_gain()) return false;
  int v = tour_[n - 1];
  int changed_end = 0;
  for (int i = n - 1; i > 0; --i) {
    v = came_[v];
    if (tour_[i - 1] != v) {
      tour_[i - 1] = v;
      mark(i - 1);
      mark(i);
      if (i > 1) mark(i - 2);
    }
  }
  (void)changed_end;
  refresh(0, n);
  return true;
}

}  // namespace seamturn::order
