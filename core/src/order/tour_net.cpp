// SPDX-License-Identifier: MIT
// The layers of positions: made, mirrored, swept.
#include <algorithm>
#include <bit>
#include <numeric>

#include "detail_tour_walk.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::order {

namespace {

/// Positions from..to (both in).
struct Window {
  int from = 0;
  int to = 0;
  [[nodiscard]] int length() const { return std::max(0, to - from + 1); }
};

/// Groups in a, in b, or the group itself.
int count_union(const std::uint64_t* a, const std::uint64_t* b, std::size_t words, int extra) {
  int count = 0;
  for (std::size_t w = 0; w < words; ++w) {
    std::uint64_t both = a[w] | b[w];
    if (static_cast<std::size_t>(extra) / 64 == w) both |= std::uint64_t{1} << (extra % 64);
    count += std::popcount(both);
  }
  return count;
}

/// Positions from which one may step from group a to group b.
Window step_window(const TourOrder& order, int groups, int a, int b) {
  if (!may_follow(order, a, b)) return Window{0, -1};
  const int earlier = count_union(order.leaders(a), order.leaders(b), order.words(), a);
  const int later = count_union(order.followers(a), order.followers(b), order.words(), b);
  return Window{earlier - 1, groups - 1 - later};
}

struct Hop {
  std::uint16_t from = 0;
  std::uint16_t to = 0;
};

/// Both sorted by first vertex.
WalkLayer layer_of(std::vector<Hop> steps, std::size_t vertices) {
  WalkLayer layer;
  std::sort(steps.begin(), steps.end(), [](const Hop& a, const Hop& b) {
    return a.from != b.from ? a.from < b.from : a.to < b.to;
  });
  layer.first.push_back(0);
  for (const Hop& step : steps) {
    if (layer.vertices.empty() || layer.vertices.back() != step.from) {
      if (!layer.vertices.empty())
        layer.first.push_back(static_cast<std::uint32_t>(layer.next.size()));
      layer.vertices.push_back(step.from);
    }
    layer.next.push_back(step.to);
  }
  SEAMTURN_REQUIRE(layer.vertices.size() <= vertices, layer.vertices.size());
  if (!layer.vertices.empty()) layer.first.push_back(static_cast<std::uint32_t>(layer.next.size()));
  return layer;
}

WalkLayer end_layer(std::uint16_t vertex) {
  WalkLayer layer;
  layer.vertices = {vertex};
  layer.first = {0, 0};
  return layer;
}

/// Keeps of every vertex what `keep(vertex, next)` wants; vertices without steps go.
template <class Keep>
void filter(WalkLayer& layer, const Keep& keep) {
  std::vector<std::uint16_t> vertices;
  std::vector<std::uint32_t> first = {0};
  std::size_t kept = 0;
  for (std::size_t i = 0; i < layer.vertices.size(); ++i) {
    const std::size_t begin = kept;
    for (std::uint32_t e = layer.first[i]; e < layer.first[i + 1]; ++e) {
      const std::uint16_t next = layer.next[e];
      if (keep(layer.vertices[i], next)) layer.next[kept++] = next;
    }
    if (kept == begin) continue;
    vertices.push_back(layer.vertices[i]);
    first.push_back(static_cast<std::uint32_t>(kept));
  }
  layer.next.resize(kept);
  layer.vertices = std::move(vertices);
  layer.first = std::move(first);
}

std::vector<WalkLayer> turned_layers(const WalkNet& net) {
  std::vector<WalkLayer> turned;
  for (std::size_t k = net.layers.size() - 1; k > 0; --k) {
    const WalkLayer& layer = net.layers[k - 1];
    std::vector<Hop> steps;
    steps.reserve(layer.next.size());
    for (std::size_t i = 0; i < layer.vertices.size(); ++i) {
      for (std::uint32_t e = layer.first[i]; e < layer.first[i + 1]; ++e) {
        steps.push_back(Hop{layer.next[e], layer.vertices[i]});
      }
    }
    turned.push_back(layer_of(std::move(steps), net.vertices));
  }
  turned.push_back(net.layers.front().vertices.empty()
                       ? WalkLayer{}
                       : end_layer(net.layers.front().vertices.front()));
  return turned;
}

}  // namespace

double net_size(const TourProblem& problem, const TourOrder& order) {
  const auto groups = static_cast<int>(problem.group_count());
  double size = 0.0;
  for (int a = 0; a < groups; ++a) {
    for (int b = 0; b < groups; ++b) {
      const std::size_t pairs = problem.vertices[static_cast<std::size_t>(a)].size() *
                                problem.vertices[static_cast<std::size_t>(b)].size();
      size += step_window(order, groups, a, b).length() * static_cast<double>(pairs);
    }
  }
  return size;
}

WalkNet make_net(const TourProblem& problem, const TourOrder& order, const GrainCosts& costs) {
  SEAMTURN_REQUIRE(problem.vertex_count() < 65536, problem.vertex_count());
  WalkNet net;
  net.groups = problem.group_count();
  net.vertices = problem.vertex_count();
  net.words = order.words();
  net.steps = costs.steps;
  for (const int group : problem.group_of)
    net.group_of.push_back(static_cast<std::uint16_t>(group));
  const std::size_t bits = net.groups * net.words;
  net.leaders.assign(order.leaders(0), order.leaders(0) + bits);
  net.followers.assign(order.followers(0), order.followers(0) + bits);
  const auto groups = static_cast<int>(net.groups);
  std::vector<Window> windows;
  for (int a = 0; a < groups; ++a) {
    for (int b = 0; b < groups; ++b) windows.push_back(step_window(order, groups, a, b));
  }
  for (int k = 0; k + 1 < groups; ++k) {
    std::vector<Hop> steps;
    for (std::size_t a = 0; a < net.groups; ++a) {
      for (std::size_t b = 0; b < net.groups; ++b) {
        const Window& window = windows[a * net.groups + b];
        if (k < window.from || k > window.to) continue;
        for (const int from : problem.vertices[a]) {
          for (const int to : problem.vertices[b]) {
            const Grain cost = net.row(static_cast<std::size_t>(from))[to];
            if (cost >= never_grain) continue;
            steps.push_back(Hop{static_cast<std::uint16_t>(from), static_cast<std::uint16_t>(to)});
          }
        }
      }
    }
    net.layers.push_back(layer_of(std::move(steps), net.vertices));
  }
  net.layers.push_back(end_layer(static_cast<std::uint16_t>(problem.vertices.back().front())));
  return net;
}

WalkNet mirrored(const WalkNet& net) {
  WalkNet mirror;
  mirror.groups = net.groups;
  mirror.vertices = net.vertices;
  mirror.words = net.words;
  mirror.group_of = net.group_of;
  mirror.leaders = net.followers;
  mirror.followers = net.leaders;
  mirror.steps.resize(net.steps.size());
  for (std::size_t a = 0; a < net.vertices; ++a) {
    for (std::size_t b = 0; b < net.vertices; ++b) {
      mirror.steps[b * net.vertices + a] = net.steps[a * net.vertices + b];
    }
  }
  mirror.layers = turned_layers(net);
  return mirror;
}

void take_back(const WalkNet& mirror, WalkNet& net) {
  net.layers = turned_layers(mirror);
}

bool sweep(WalkNet& net) {
  std::vector<bool> alive(net.vertices, false);
  const auto mark = [&](const std::vector<std::uint16_t>& vertices) {
    std::fill(alive.begin(), alive.end(), false);
    for (const std::uint16_t vertex : vertices) alive[vertex] = true;
  };
  for (std::size_t k = net.layers.size() - 1; k > 0; --k) {
    mark(net.layers[k].vertices);
    filter(net.layers[k - 1], [&](std::size_t, std::size_t next) { return alive[next]; });
  }
  for (std::size_t k = 1; k < net.layers.size(); ++k) {
    mark(net.layers[k - 1].next);
    if (k + 1 == net.layers.size()) break;
    filter(net.layers[k], [&](std::size_t vertex, std::size_t) { return alive[vertex]; });
  }
  return !net.layers.front().vertices.empty();
}

bool cut_net(WalkNet& net,
             const Prices& prices,
             const Rests& starts,
             const Rests& rests,
             Grain cut,
             std::int64_t& work) {
  const Grain base = sum_of(prices);
  for (std::size_t k = 0; k + 1 < net.layers.size(); ++k) {
    work += static_cast<std::int64_t>(net.layers[k].next.size());
    filter(net.layers[k], [&](std::size_t from, std::size_t to) {
      const Grain refunds = prices[net.group_of[from]] + prices[net.group_of[to]];
      const Grain steps = starts[k][from] + net.row(from)[to] + rests[k + 1][to];
      return base + steps - refunds < cut;
    });
  }
  return sweep(net);
}

Grain sum_of(const Prices& prices) {
  return std::accumulate(prices.begin(), prices.end(), Grain{0});
}

}  // namespace seamturn::order
