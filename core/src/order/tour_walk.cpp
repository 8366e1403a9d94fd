// SPDX-License-Identifier: MIT
// The cheapest walks through the layers, without and with memories.
#include <algorithm>
#include <bit>

#include "detail_tour_walk.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::order {

namespace {

std::uint16_t bit(std::size_t place) {
  return static_cast<std::uint16_t>(1U << place);
}

Recall make_recall(const WalkNet& net, const Memories& memories, std::size_t from, std::size_t to) {
  Recall recall;
  std::array<std::uint16_t, most_remembered> becomes{};
  const auto& others = memories.remembered(to);
  for (std::size_t i = 0; i < others.size(); ++i) {
    const int place = memories.place(from, others[i]);
    if (place >= 0) becomes[i] = bit(static_cast<std::size_t>(place));
    if (others[i] == from || net.before(others[i], from)) recall.forbidden |= bit(i);
  }
  for (std::size_t bits = 1; bits < recall.low.size(); ++bits) {
    const auto last = static_cast<std::size_t>(std::countr_zero(bits));
    recall.low[bits] = recall.low[bits & (bits - 1)] | becomes[last];
    recall.high[bits] = recall.high[bits & (bits - 1)] | becomes[last + 6];
  }
  const int own = memories.place(from, to);
  if (own >= 0) recall.own = bit(static_cast<std::size_t>(own));
  return recall;
}

/// The ways on of one layer after the other, from the last one.
class WayFinder {
 public:
  WayFinder(WalkNet& net, const WalkLook& look, std::int64_t& work)
      : net_(net),
        look_(look),
        work_(work),
        base_(sum_of(look.prices)),
        best_(std::size_t{1} << most_remembered, never_grain) {}

  Ways run() {
    Ways ways(net_.layers.size());
    LayerWays& last = ways.back();
    last.ways = {WayOn{}};
    last.first.assign(net_.vertices + 1, 0);
    const std::uint16_t end = net_.layers.back().vertices.front();
    std::fill(last.first.begin() + end + 1, last.first.end(), 1U);
    for (std::size_t k = net_.layers.size() - 1; k > 0; --k) look_at(k - 1, ways[k], ways[k - 1]);
    return ways;
  }

 private:
  void look_at(std::size_t k, const LayerWays& behind, LayerWays& ways) {
    WalkLayer& layer = net_.layers[k];
    std::vector<std::uint16_t> vertices;
    std::vector<std::uint32_t> first = {0};
    std::size_t kept = 0;
    ways.first.assign(net_.vertices + 1, 0);
    for (std::size_t i = 0; i < layer.vertices.size(); ++i) {
      const std::uint16_t vertex = layer.vertices[i];
      const std::size_t begin = kept;
      const Grain room =
          look_.cut - base_ - look_.starts[k][vertex] + look_.prices[net_.group_of[vertex]];
      touched_.clear();
      for (std::uint32_t e = layer.first[i]; e < layer.first[i + 1]; ++e) {
        const std::uint16_t next = layer.next[e];
        if (step(vertex, next, room, behind)) layer.next[kept++] = next;
      }
      if (kept == begin) continue;
      vertices.push_back(vertex);
      first.push_back(static_cast<std::uint32_t>(kept));
      keep_best(ways);
      ways.first[vertex + std::size_t{1}] = static_cast<std::uint32_t>(ways.ways.size());
    }
    for (std::size_t v = 1; v < ways.first.size(); ++v) {
      ways.first[v] = std::max(ways.first[v], ways.first[v - 1]);
    }
    layer.next.resize(kept);
    layer.vertices = std::move(vertices);
    layer.first = std::move(first);
  }

  /// True when a way over this step stays below the room.
  bool step(std::size_t from, std::size_t to, Grain room, const LayerWays& behind) {
    const WayOn* way = behind.begin(to);
    const WayOn* const end = behind.end(to);
    if (way == end) return false;
    const Recall& recall = look_.recalls[net_.group_of[from] * net_.groups + net_.group_of[to]];
    const Grain step = net_.row(from)[to] - look_.prices[net_.group_of[to]];
    bool used = false;
    work_ += end - way;
    for (; way != end && step + way->rest < room; ++way) {
      if ((way->passes & recall.forbidden) != 0) continue;
      used = true;
      const std::uint16_t passes = recall(way->passes);
      Grain& best = best_[passes];
      if (best == never_grain) touched_.push_back(passes);
      best = std::min(best, step + way->rest);
    }
    return used;
  }

  /// The touched ways, cheapest first, without those that another one makes needless.
  void keep_best(LayerWays& ways) {
    sorted_.clear();
    for (const std::uint16_t passes : touched_) {
      sorted_.push_back(WayOn{best_[passes], passes});
      best_[passes] = never_grain;
    }
    std::sort(sorted_.begin(), sorted_.end(), [](const WayOn& a, const WayOn& b) {
      return a.rest != b.rest ? a.rest < b.rest : a.passes < b.passes;
    });
    const std::size_t begin = ways.ways.size();
    for (const WayOn& way : sorted_) {
      bool needless = false;
      for (std::size_t i = begin; i < ways.ways.size() && !needless; ++i) {
        needless = (ways.ways[i].passes & ~way.passes) == 0;
      }
      if (!needless) ways.ways.push_back(way);
    }
  }

  WalkNet& net_;
  const WalkLook& look_;
  std::int64_t& work_;
  Grain base_;
  std::vector<Grain> best_;  ///< per memory; never_grain: not touched
  std::vector<std::uint16_t> touched_;
  std::vector<WayOn> sorted_;
};

}  // namespace

bool Memories::add(std::size_t group, std::size_t other) {
  if (group == other || place(group, other) >= 0) return false;
  if (remembered_[group].size() >= most_remembered) return false;
  place_[group * groups_ + other] = static_cast<std::int8_t>(remembered_[group].size());
  remembered_[group].push_back(static_cast<std::uint16_t>(other));
  return true;
}

Recalls make_recalls(const WalkNet& net, const Memories& memories) {
  Recalls recalls;
  recalls.reserve(net.groups * net.groups);
  for (std::size_t from = 0; from < net.groups; ++from) {
    for (std::size_t to = 0; to < net.groups; ++to) {
      recalls.push_back(make_recall(net, memories, from, to));
    }
  }
  return recalls;
}

Rests cheapest_rests(const WalkNet& net, const Prices& prices, std::int64_t& work) {
  Rests rests(net.layers.size(), std::vector<Grain>(net.vertices, never_grain));
  rests.back()[net.layers.back().vertices.front()] = 0;
  std::vector<Grain> behind(net.vertices);
  for (std::size_t k = net.layers.size() - 1; k > 0; --k) {
    const WalkLayer& layer = net.layers[k - 1];
    work += static_cast<std::int64_t>(layer.next.size());
    for (std::size_t v = 0; v < net.vertices; ++v) {
      behind[v] = rests[k][v] - prices[net.group_of[v]];
    }
    for (std::size_t i = 0; i < layer.vertices.size(); ++i) {
      const Grain* row = net.row(layer.vertices[i]);
      Grain least = never_grain;
      for (std::uint32_t e = layer.first[i]; e < layer.first[i + 1]; ++e) {
        least = std::min(least, row[layer.next[e]] + behind[layer.next[e]]);
      }
      rests[k - 1][layer.vertices[i]] = least;
    }
  }
  return rests;
}

Rests cheapest_starts(const WalkNet& net, const Prices& prices, std::int64_t& work) {
  Rests starts(net.layers.size(), std::vector<Grain>(net.vertices, never_grain));
  starts.front()[net.layers.front().vertices.front()] = 0;
  for (std::size_t k = 0; k + 1 < net.layers.size(); ++k) {
    const WalkLayer& layer = net.layers[k];
    work += static_cast<std::int64_t>(layer.next.size());
    for (std::size_t i = 0; i < layer.vertices.size(); ++i) {
      const std::size_t from = layer.vertices[i];
      const Grain* row = net.row(from);
      const Grain left = starts[k][from] - prices[net.group_of[from]];
      for (std::uint32_t e = layer.first[i]; e < layer.first[i + 1]; ++e) {
        Grain& least = starts[k + 1][layer.next[e]];
        least = std::min(least, left + row[layer.next[e]]);
      }
    }
  }
  return starts;
}

Ways ways_on(WalkNet& net, const WalkLook& look, std::int64_t& work) {
  return WayFinder(net, look, work).run();
}

Rests rests_of(const WalkNet& net, const Ways& ways) {
  Rests rests(ways.size(), std::vector<Grain>(net.vertices, never_grain));
  for (std::size_t k = 0; k < ways.size(); ++k) {
    for (std::size_t v = 0; v < net.vertices; ++v) {
      if (ways[k].begin(v) != ways[k].end(v)) rests[k][v] = ways[k].begin(v)->rest;
    }
  }
  return rests;
}

std::vector<std::uint16_t> cheapest_walk(const WalkNet& net,
                                         const Prices& prices,
                                         const Rests& rests) {
  std::vector<std::uint16_t> walk = {net.layers.front().vertices.front()};
  for (std::size_t k = 0; k + 1 < net.layers.size(); ++k) {
    const WalkLayer& layer = net.layers[k];
    const auto at = std::lower_bound(layer.vertices.begin(), layer.vertices.end(), walk.back());
    const auto i = static_cast<std::size_t>(at - layer.vertices.begin());
    std::uint32_t e = layer.first[i];
    const auto matches = [&](std::uint16_t next) {
      const Grain step = net.row(walk.back())[next] - prices[net.group_of[next]];
      return step + rests[k + 1][next] == rests[k][walk.back()];
    };
    while (e < layer.first[i + 1] && !matches(layer.next[e])) ++e;
    SEAMTURN_REQUIRE(e < layer.first[i + 1], k);
    walk.push_back(layer.next[e]);
  }
  return walk;
}

std::vector<std::uint16_t> cheapest_walk(const WalkNet& net,
                                         const WalkLook& look,
                                         const Ways& ways) {
  std::vector<std::uint16_t> walk = {net.layers.front().vertices.front()};
  WayOn now = *ways.front().begin(walk.back());
  for (std::size_t k = 0; k + 1 < net.layers.size(); ++k) {
    const WalkLayer& layer = net.layers[k];
    const auto at = std::lower_bound(layer.vertices.begin(), layer.vertices.end(), walk.back());
    const auto i = static_cast<std::size_t>(at - layer.vertices.begin());
    const std::size_t from = walk.back();
    for (std::uint32_t e = layer.first[i]; e < layer.first[i + 1] && walk.size() == k + 1; ++e) {
      const std::uint16_t next = layer.next[e];
      const std::size_t group = net.group_of[next];
      const Recall& recall = look.recalls[net.group_of[from] * net.groups + group];
      const Grain step = net.row(from)[next] - look.prices[group];
      for (const WayOn* way = ways[k + 1].begin(next); way != ways[k + 1].end(next); ++way) {
        const bool allowed = (way->passes & recall.forbidden) == 0;
        if (!allowed || step + way->rest != now.rest || recall(way->passes) != now.passes) continue;
        now = *way;
        walk.push_back(next);
        break;
      }
    }
    SEAMTURN_REQUIRE(walk.size() == k + 2, k);
  }
  return walk;
}

}  // namespace seamturn::order
