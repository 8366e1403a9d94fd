// SPDX-License-Identifier: MIT
#include "detail_tour_closed.hpp"

#include <algorithm>
#include <numeric>

namespace seamturn::order {

namespace {

constexpr std::uint32_t none = 0xffffffffU;

/// Partial tours of one length: structure of arrays, sets of `words` words each.
struct Layer {
  std::vector<std::uint64_t> sets;
  std::vector<Grain> spent;  ///< refunds of the groups passed taken off, its own too
  std::vector<Grain> least;  ///< of all tours that begin so, by the ways on
  std::vector<std::uint16_t> vertex;
  std::vector<std::uint32_t> parent;

  [[nodiscard]] std::size_t size() const { return vertex.size(); }
};

/// What is left of a layer when the next is finished: enough to follow a tour back.
struct LayerTrace {
  std::vector<std::uint16_t> vertex;
  std::vector<std::uint32_t> parent;
};

std::uint64_t mixed(std::uint64_t value) {
  value ^= value >> 32;
  value *= 0xd6e8feb86659fd93ULL;
  value ^= value >> 32;
  return value;
}

/// Finds partial tours of a layer by set and last vertex; open addressing, doubling.
class Index {
 public:
  explicit Index(std::size_t words) : words_(words), slots_(1024, none) {}

  /// Its place in the layer, or none, in a slot to be filled.
  std::uint32_t& slot(const Layer& layer, const std::uint64_t* set, std::uint16_t vertex) {
    if (2 * (layer.size() + 1) > slots_.size()) grow(layer);
    std::size_t at = hash(set, vertex) & (slots_.size() - 1);
    while (slots_[at] != none) {
      const std::size_t i = slots_[at];
      const std::uint64_t* other = &layer.sets[i * words_];
      if (layer.vertex[i] == vertex && std::equal(set, set + words_, other)) break;
      at = (at + 1) & (slots_.size() - 1);
    }
    return slots_[at];
  }

 private:
  [[nodiscard]] std::size_t hash(const std::uint64_t* set, std::uint16_t vertex) const {
    std::uint64_t value = vertex;
    for (std::size_t w = 0; w < words_; ++w) value = mixed(value + set[w] * 0x9e3779b97f4a7c15ULL);
    return static_cast<std::size_t>(value);
  }

  void grow(const Layer& layer) {
    slots_.assign(slots_.size() * 2, none);
    for (std::size_t i = 0; i < layer.size(); ++i) {
      std::size_t at = hash(&layer.sets[i * words_], layer.vertex[i]) & (slots_.size() - 1);
      while (slots_[at] != none) at = (at + 1) & (slots_.size() - 1);
      slots_[at] = static_cast<std::uint32_t>(i);
    }
  }

  std::size_t words_;
  std::vector<std::uint32_t> slots_;
};

class ClosedSearch {
 public:
  explicit ClosedSearch(const ClosedSetsInput& input)
      : in_(input), words_(input.net.words), base_(sum_of(input.prices)), set_(words_, 0) {}

  ClosedSets run() {
    found_.bound = in_.cut;
    if (in_.net.layers.front().vertices.empty()) {
      found_.complete = true;
      return found_;
    }
    Layer layer = first_layer();
    found_.complete = true;
    for (std::size_t k = 0; k + 1 < in_.net.groups && layer.size() > 0; ++k) {
      Layer next;
      const bool fits = grow(k, layer, next);
      if (!fits && in_.beam == 0) {
        narrow(layer, 0);
        return found_;
      }
      traces_.push_back(LayerTrace{std::move(layer.vertex), std::move(layer.parent)});
      layer = std::move(next);
      found_.states += static_cast<std::int64_t>(layer.size());
    }
    finish(layer);
    return found_;
  }

 private:
  Layer first_layer() {
    Layer layer;
    layer.sets.assign(words_, 0);
    layer.sets[0] = 1;
    layer.spent = {0};
    const std::uint16_t start = in_.net.layers.front().vertices.front();
    const WayOn* way = in_.ways.front().begin(start);
    layer.least = {way == in_.ways.front().end(start) ? in_.cut : base_ + way->rest};
    layer.vertex = {start};
    layer.parent = {none};
    found_.states = 1;
    return layer;
  }

  /// The next layer. When it does not fit, the present one is narrowed to the beam and tried again;
  /// without a beam: false.
  bool grow(std::size_t k, Layer& layer, Layer& next) {
    const bool narrowed = !found_.complete;
    if (narrowed) narrow(layer, in_.beam);
    if (extend_all(k, layer, next)) return true;
    if (in_.beam == 0) return false;
    narrow(layer, in_.beam);
    next = Layer();
    static_cast<void>(extend_all(k, layer, next));
    return true;
  }

  /// Keeps the most promising; what is dropped still bounds.
  void narrow(Layer& layer, std::size_t beam) {
    if (found_.complete) {
      // The last layer of which nothing is missing: every tour below the cut begins in it.
      const auto least = std::min_element(layer.least.begin(), layer.least.end());
      found_.bound = least == layer.least.end() ? in_.cut : std::min(in_.cut, *least);
      found_.complete = false;
    }
    if (layer.size() <= beam) return;
    std::vector<std::uint32_t> order(layer.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto better = [&](std::uint32_t a, std::uint32_t b) {
      return layer.least[a] != layer.least[b] ? layer.least[a] < layer.least[b] : a < b;
    };
    std::nth_element(
        order.begin(), order.begin() + static_cast<std::ptrdiff_t>(beam), order.end(), better);
    order.resize(beam);
    std::sort(order.begin(), order.end());
    Layer kept;
    for (const std::uint32_t i : order) {
      const std::uint64_t* set = &layer.sets[i * words_];
      kept.sets.insert(kept.sets.end(), set, set + words_);
      kept.spent.push_back(layer.spent[i]);
      kept.least.push_back(layer.least[i]);
      kept.vertex.push_back(layer.vertex[i]);
      kept.parent.push_back(layer.parent[i]);
    }
    layer = std::move(kept);
  }

  /// False when the states do not fit (only while none was dropped).
  bool extend_all(std::size_t k, const Layer& layer, Layer& next) {
    Index index(words_);
    const WalkLayer& from = in_.net.layers[k];
    for (std::size_t i = 0; i < layer.size(); ++i) {
      const auto at = std::lower_bound(from.vertices.begin(), from.vertices.end(), layer.vertex[i]);
      if (at == from.vertices.end() || *at != layer.vertex[i]) continue;
      const auto place = static_cast<std::size_t>(at - from.vertices.begin());
      group_ = in_.net.groups;
      found_.work += from.first[place + 1] - from.first[place];
      for (std::uint32_t e = from.first[place]; e < from.first[place + 1]; ++e) {
        extend(k, layer, i, from.next[e], next, index);
      }
      const auto kept = found_.states + static_cast<std::int64_t>(next.size());
      if (found_.complete && kept > in_.states) return false;
    }
    return true;
  }

  void extend(std::size_t k,
              const Layer& layer,
              std::size_t i,
              std::uint16_t to,
              Layer& next,
              Index& index) {
    turn_to(in_.net.group_of[to], &layer.sets[i * words_]);
    if (!permitted_) return;
    const Grain step = in_.net.row(layer.vertex[i])[to] - in_.prices[group_];
    const Grain spent = layer.spent[i] + step;
    const WayOn* way = in_.ways[k + 1].begin(to);
    const WayOn* const end = in_.ways[k + 1].end(to);
    while (way != end && (way->passes & part_) != 0) ++way;
    if (way == end || base_ + spent + way->rest >= in_.cut) return;
    std::uint32_t& slot = index.slot(next, set_.data(), to);
    if (slot == none) {
      slot = static_cast<std::uint32_t>(next.size());
      next.sets.insert(next.sets.end(), set_.begin(), set_.end());
      next.spent.push_back(spent);
      next.least.push_back(base_ + spent + way->rest);
      next.vertex.push_back(to);
      next.parent.push_back(static_cast<std::uint32_t>(i));
    } else if (spent < next.spent[slot]) {
      next.spent[slot] = spent;
      next.least[slot] = base_ + spent + way->rest;
      next.parent[slot] = static_cast<std::uint32_t>(i);
    }
  }

  /// The set with one more group; whether it is new to it and all its leaders are in.
  void turn_to(std::size_t group, const std::uint64_t* set) {
    if (group == group_) return;
    group_ = group;
    permitted_ = (set[group / 64] >> (group % 64) & 1) == 0;
    const std::uint64_t* leaders = &in_.net.leaders[group * words_];
    for (std::size_t w = 0; w < words_; ++w) {
      permitted_ = permitted_ && (leaders[w] & ~set[w]) == 0;
      set_[w] = set[w];
    }
    if (!permitted_) return;
    set_[group / 64] |= std::uint64_t{1} << (group % 64);
    part_ = in_.memories.part(group, set_.data());
  }

  void finish(const Layer& layer) {
    const auto least = std::min_element(layer.spent.begin(), layer.spent.end());
    if (least == layer.spent.end()) return;
    found_.cost = base_ + *least;
    if (found_.complete) found_.bound = found_.cost;
    auto at = static_cast<std::uint32_t>(least - layer.spent.begin());
    found_.tour.push_back(layer.vertex[at]);
    at = layer.parent[at];
    for (std::size_t k = traces_.size(); k-- > 0;) {
      found_.tour.push_back(traces_[k].vertex[at]);
      at = traces_[k].parent[at];
    }
    std::reverse(found_.tour.begin(), found_.tour.end());
  }

  const ClosedSetsInput& in_;
  std::size_t words_;
  Grain base_;
  std::vector<std::uint64_t> set_;
  std::size_t group_ = 0;
  bool permitted_ = false;
  std::uint16_t part_ = 0;
  std::vector<LayerTrace> traces_;
  ClosedSets found_;
};

}  // namespace

ClosedSets search_closed_sets(const ClosedSetsInput& input) {
  return ClosedSearch(input).run();
}

}  // namespace seamturn::order
