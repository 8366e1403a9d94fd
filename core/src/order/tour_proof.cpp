// SPDX-License-Identifier: MIT
#include "detail_tour_proof.hpp"

#include <algorithm>
#include <optional>

#include "detail_tour_bound.hpp"
#include "detail_tour_closed.hpp"
#include "detail_tour_price.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::order {

namespace {

constexpr double most_steps = 6e7;  // of the net: 2 bytes each, their mirror as much

/// Ways that know nothing: the rest costs nothing.
Ways no_ways(const WalkNet& net) {
  Ways ways(net.layers.size());
  for (LayerWays& layer : ways) {
    layer.ways.assign(net.vertices, WayOn{});
    layer.first.resize(net.vertices + 1);
    for (std::size_t v = 0; v <= net.vertices; ++v) layer.first[v] = static_cast<std::uint32_t>(v);
  }
  return ways;
}

class Proof {
 public:
  Proof(const TourProblem& problem,
        const TourOrder& order,
        double known,
        const TourProofParams& params)
      : problem_(problem),
        order_(order),
        params_(params),
        best_cost_(known),
        costs_(grain_costs(problem, best_cost_)),
        cut_(costs_.cut) {}

  TourProof run() {
    if (params_.bound_work > 0) {
      by_walks();
    } else {
      plainly();
    }
    return result_;
  }

 private:
  /// Without any bound: all closed sets, if they fit.
  void plainly() {
    if (params_.states <= 0 || net_size(problem_, order_) > most_steps) return;
    WalkNet net = make_net(problem_, order_, costs_);
    static_cast<void>(sweep(net));
    const Prices prices(net.groups, 0);
    const Memories memories(net.groups);
    const Ways ways = no_ways(net);
    take(search_closed_sets({net, prices, memories, ways, cut_, params_.states, params_.beam}));
  }

  void by_walks() {
    const auto groups = static_cast<double>(problem_.group_count());
    const double walks = net_size(problem_, order_);
    result_.work = static_cast<std::int64_t>(groups * groups * groups / 4.0);
    if (result_.work > params_.bound_work) {
      raise(one_sided_bound(problem_, order_));
      return;
    }
    const Assignment assignment = assign_groups(problem_, order_, costs_.steps);
    raise_grains(std::min(assignment.sum, cut_));
    if (assignment.sum >= cut_) return prove();
    if (walks > most_steps || problem_.vertex_count() > 60000) return;
    WalkBound bound(problem_, order_, costs_, assignment, params_.bound_work);
    // Cheap attempts first: a share of the work, then of the states.
    for (const std::int64_t share : {64, 16, 4, 2, 1}) {
      bound.improve(params_.bound_work / share - result_.work);
      if (attempt(bound, share)) break;
    }
    result_.work += bound.work();
  }

  /// True when nothing is left to do.
  bool attempt(WalkBound& bound, std::int64_t share) {
    bound.cut();
    raise_grains(bound.bound());
    if (bound.done()) {
      prove();
      return true;
    }
    if (params_.states <= 0) return false;
    const Ways ways = bound.ways();
    if (bound.done()) {
      prove();
      return true;
    }
    // A narrow beam early: a better tour makes all that follows easier.
    const std::size_t beam = params_.beam / static_cast<std::size_t>(share);
    take(search_closed_sets(
        {bound.net(), bound.prices(), bound.memories(), ways, cut_, params_.states / share, beam}));
    bound.lower_cut(cut_);
    return result_.proved;
  }

  void take(const ClosedSets& found) {
    result_.states += found.states;
    result_.work += found.work;
    if (!found.tour.empty()) {
      cut_ = std::min(cut_, costs_.whole > 0 ? found.cost - costs_.whole + 1 : found.cost);
      const double cost = tour_cost(problem_, found.tour);
      if (cost < best_cost_) {
        best_cost_ = cost;
        result_.better = found.tour;
      }
    }
    raise_grains(std::min(found.bound, cut_));
    if (found.complete) prove();
  }

  void prove() {
    result_.proved = true;
    result_.lower_bound = best_cost_;
  }
  void raise_grains(Grain grains) { raise(cost_of(costs_, grains)); }
  void raise(double bound) {
    result_.lower_bound = std::max(result_.lower_bound, std::min(bound, best_cost_));
  }

  const TourProblem& problem_;
  const TourOrder& order_;
  const TourProofParams& params_;
  double best_cost_;
  GrainCosts costs_;
  Grain cut_;
  TourProof result_;
};

}  // namespace

TourProof prove_below(const TourProblem& problem,
                      const TourOrder& order,
                      double known,
                      const TourProofParams& params) {
  SEAMTURN_REQUIRE(known >= 0.0 && known < never_s, known);
  if (known > 0.0) return Proof(problem, order, known, params).run();
  TourProof proof;  // costs are not negative
  proof.proved = true;
  return proof;
}

TourProof prove_tour(const TourProblem& problem,
                     const TourOrder& order,
                     const Tour& known,
                     const TourProofParams& params) {
  SEAMTURN_REQUIRE(is_tour(problem, order, known), known.size(), problem.group_count());
  return prove_below(problem, order, tour_cost(problem, known), params);
}

}  // namespace seamturn::order
