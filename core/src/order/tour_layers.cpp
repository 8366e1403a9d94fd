// SPDX-License-Identifier: MIT
#include "detail_tour_layers.hpp"

#include <algorithm>

namespace seamturn::order {

TourLayers::TourLayers(const TourTable& table)
    : table_(table),
      over_(static_cast<std::size_t>(table.vertices()), 0.0),
      came_(static_cast<std::size_t>(table.vertices()), 0),
      least_(static_cast<std::size_t>(table.groups()), 0.0),
      before_(static_cast<std::size_t>(table.groups()), -1),
      fresh_(static_cast<std::size_t>(table.vertices()), 0.0) {}

double TourLayers::least(const std::vector<int>& tour) {
  double sum = 0.0;
  bool changed = false;
  int from = table_.group_of(tour.front());
  for (std::size_t i = 1; i < tour.size(); ++i) {
    const int to = table_.group_of(tour[i]);
    const auto group = static_cast<std::size_t>(to);
    if (changed || before_[group] != from) {
      changed = redo(from, to);
      before_[group] = from;
    }
    sum += least_[group];
    from = to;
  }
  return sum;
}

/// The layer of a group behind another one's; true when it came out different.
bool TourLayers::redo(int from, int to) {
  const auto begin = static_cast<std::size_t>(table_.first(to));
  const auto end = static_cast<std::size_t>(table_.end(to));
  for (std::size_t v = begin; v < end; ++v) fresh_[v] = never_s;
  for (int back = table_.first(from); back < table_.end(from); ++back) {
    const double over = over_[static_cast<std::size_t>(back)];
    const double* row = table_.row(back);
    for (std::size_t v = begin; v < end; ++v) {
      const double cost = over + row[v];
      const bool less = cost < fresh_[v];
      fresh_[v] = less ? cost : fresh_[v];
      came_[v] = less ? back : came_[v];
    }
  }
  work_ += table_.end(from) - table_.first(from);  // rows of vertices
  double least = fresh_[begin];
  for (std::size_t v = begin; v < end; ++v) least = std::min(least, fresh_[v]);
  bool changed = false;
  for (std::size_t v = begin; v < end; ++v) {
    const double over = fresh_[v] - least;
    changed = changed || over != over_[v];
    over_[v] = over;
  }
  least_[static_cast<std::size_t>(to)] = least;
  return changed;
}

void TourLayers::choose(std::vector<int>& tour) const {
  for (std::size_t i = tour.size() - 1; i > 0; --i) {
    tour[i - 1] = came_[static_cast<std::size_t>(tour[i])];
  }
}

}  // namespace seamturn::order
