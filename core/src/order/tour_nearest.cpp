// SPDX-License-Identifier: MIT
#include "detail_tour_search.hpp"

namespace seamturn::order {

namespace {

/// Grows group by group.
class Growing {
 public:
  Growing(const TourProblem& problem, const TourOrder& order)
      : problem_(problem), order_(order), done_(order.words(), 0) {
    add(problem.vertices.front().front());
  }

  void add(int vertex) {
    const auto group =
        static_cast<std::size_t>(problem_.group_of[static_cast<std::size_t>(vertex)]);
    done_[group / 64] |= std::uint64_t{1} << (group % 64);
    tour_.push_back(vertex);
  }

  /// Of the groups that may come next, the nearest vertex; a step not permitted when no other is.
  int nearest() const {
    int found = -1;
    double least = never_s;
    for (const int group : order_.sorted()) {
      if (!may_be_next(static_cast<std::size_t>(group))) continue;
      for (const int vertex : problem_.vertices[static_cast<std::size_t>(group)]) {
        const double cost = problem_.from_to(tour_.back(), vertex);
        if (found >= 0 && cost >= least) continue;
        found = vertex;
        least = cost;
      }
    }
    return found;
  }

  const Tour& tour() const { return tour_; }

 private:
  bool may_be_next(std::size_t group) const {
    if ((done_[group / 64] >> (group % 64) & 1) != 0) return false;
    for (std::size_t w = 0; w < done_.size(); ++w) {
      if ((order_.leaders(static_cast<int>(group))[w] & ~done_[w]) != 0) return false;
    }
    return true;
  }

  const TourProblem& problem_;
  const TourOrder& order_;
  std::vector<std::uint64_t> done_;
  Tour tour_;
};

}  // namespace

Tour nearest_tour(const TourProblem& problem, const TourOrder& order) {
  Growing growing(problem, order);
  while (growing.tour().size() < problem.group_count()) growing.add(growing.nearest());
  return growing.tour();
}

}  // namespace seamturn::order
