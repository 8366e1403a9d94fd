// SPDX-License-Identifier: MIT
// Walks of as many steps as a tour has, that may come to a group twice and to another never: the
// positions of all vertices as layers, the steps between them, and the cheapest rest of a walk from
// every place. What no walk cheaper than the cut uses is taken out for good.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "detail_tour_bound.hpp"

namespace seamturn::order {

/// The vertices that may stand at one position, and where they may go from it.
struct WalkLayer {
  std::vector<std::uint16_t> vertices;  ///< rising
  std::vector<std::uint32_t> first;     ///< per vertex and one more: its part of `next`
  std::vector<std::uint16_t> next;      ///< vertices of the next layer, rising
};

/// All positions. A net and its mirror (backwards in time) are the same kind of thing.
struct WalkNet {
  std::size_t groups = 0;
  std::size_t vertices = 0;
  std::size_t words = 0;
  std::vector<std::uint16_t> group_of;
  std::vector<Grain> steps;            ///< [from * vertices + to]
  std::vector<std::uint64_t> leaders;  ///< [group * words]
  std::vector<std::uint64_t> followers;
  std::vector<WalkLayer> layers;

  [[nodiscard]] bool before(std::size_t a, std::size_t b) const {
    return (leaders[b * words + a / 64] >> (a % 64) & 1) != 0;
  }
  [[nodiscard]] const Grain* row(std::size_t vertex) const { return &steps[vertex * vertices]; }
};

/// How many steps a net would have, from windows of positions alone. Cost: groups^2.
[[nodiscard]] double net_size(const TourProblem& problem, const TourOrder& order);

/// Pre: fewer than 65536 vertices. A group stands only where its leaders fit before and its
/// followers behind it; a step likewise.
[[nodiscard]] WalkNet make_net(const TourProblem& problem,
                               const TourOrder& order,
                               const GrainCosts& costs);

/// Time backwards: last group first, leaders and followers changed over.
[[nodiscard]] WalkNet mirrored(const WalkNet& net);
/// Takes the steps left in a mirror back into the net it was made from.
void take_back(const WalkNet& mirror, WalkNet& net);

/// Takes out what no way from the first layer to the last one passes. False: nothing is left.
bool sweep(WalkNet& net);

/// What arriving at a group is refunded; first and last group have none. A walk's reduced cost is
/// its steps minus the refunds plus the sum of all prices: for tours it is the tour's cost.
using Prices = std::vector<Grain>;

/// Per layer and vertex: the cheapest rest of a walk from there, refunds of the groups to come
/// taken off. never_grain: none.
using Rests = std::vector<std::vector<Grain>>;

[[nodiscard]] Rests cheapest_rests(const WalkNet& net, const Prices& prices, std::int64_t& work);

/// Per layer and vertex: the cheapest beginning of a walk that ends there, refunds of the groups
/// before it taken off (not its own).
[[nodiscard]] Rests cheapest_starts(const WalkNet& net, const Prices& prices, std::int64_t& work);

/// Takes out steps that no walk below the cut uses. False: nothing is left.
bool cut_net(WalkNet& net,
             const Prices& prices,
             const Rests& starts,
             const Rests& rests,
             Grain cut,
             std::int64_t& work);

inline constexpr std::size_t most_remembered = 12;

/// Each group remembers whether some others still come: a walk from a vertex may not pass them
/// twice, nor come to one that must stand before what is behind.
class Memories {
 public:
  explicit Memories(std::size_t groups)
      : remembered_(groups), place_(groups * groups, -1), groups_(groups) {}

  [[nodiscard]] const std::vector<std::uint16_t>& remembered(std::size_t group) const {
    return remembered_[group];
  }
  /// Place of another group in the memory of one; -1: not remembered.
  [[nodiscard]] int place(std::size_t group, std::size_t other) const {
    return place_[group * groups_ + other];
  }
  /// False when there was no room or it is remembered already.
  bool add(std::size_t group, std::size_t other);
  /// The part of a set (words of bits) that a group remembers.
  [[nodiscard]] std::uint16_t part(std::size_t group, const std::uint64_t* set) const {
    unsigned bits = 0;
    unsigned place = 0;
    for (const std::uint16_t other : remembered_[group]) {
      bits |= static_cast<unsigned>(set[other / 64] >> (other % 64) & 1) << place++;
    }
    return static_cast<std::uint16_t>(bits);
  }

 private:
  std::vector<std::vector<std::uint16_t>> remembered_;
  std::vector<std::int8_t> place_;
  std::size_t groups_;
};

/// From what one group remembers to what the one before it remembers, six bits at a time.
struct Recall {
  std::array<std::uint16_t, 64> low{};
  std::array<std::uint16_t, 64> high{};
  std::uint16_t forbidden = 0;  ///< what must not come any more behind the one before
  std::uint16_t own = 0;        ///< the group itself, when the one before remembers it

  [[nodiscard]] std::uint16_t operator()(std::uint16_t passes) const {
    return static_cast<std::uint16_t>(low[passes & 63U] | high[passes >> 6U & 63U] | own);
  }
};

/// Of all pairs of groups: [the one before * groups + the one behind].
using Recalls = std::vector<Recall>;

[[nodiscard]] Recalls make_recalls(const WalkNet& net, const Memories& memories);

/// One way on from a vertex: what it costs and which remembered groups it passes.
struct WayOn {
  Grain rest = 0;
  std::uint16_t passes = 0;
};

/// The ways on from the vertices of one layer, cheapest first; none is both dearer than another and
/// passes all that the other passes.
struct LayerWays {
  std::vector<WayOn> ways;
  std::vector<std::uint32_t> first;  ///< [vertex of the problem] and one more

  [[nodiscard]] const WayOn* begin(std::size_t vertex) const { return ways.data() + first[vertex]; }
  [[nodiscard]] const WayOn* end(std::size_t vertex) const {
    return ways.data() + first[vertex + 1];
  }
};
using Ways = std::vector<LayerWays>;

/// What stays the same from one look at the net to the next.
struct WalkLook {
  const Prices& prices;
  const Recalls& recalls;
  const Rests& starts;  ///< with the same prices
  Grain cut = 0;
};

/// The ways on with memories, from the last layer to the first. Steps that no walk below the cut
/// uses are taken out of the net. Ways that belong to no walk below the cut are left out.
[[nodiscard]] Ways ways_on(WalkNet& net, const WalkLook& look, std::int64_t& work);

/// The cheapest rests of ways with memories; never_grain where there is none below the cut.
[[nodiscard]] Rests rests_of(const WalkNet& net, const Ways& ways);

/// The vertices of the cheapest walk. Pre: there is one.
[[nodiscard]] std::vector<std::uint16_t> cheapest_walk(const WalkNet& net,
                                                       const WalkLook& look,
                                                       const Ways& ways);
[[nodiscard]] std::vector<std::uint16_t> cheapest_walk(const WalkNet& net,
                                                       const Prices& prices,
                                                       const Rests& rests);

/// The sum of all prices: what reduced costs start from.
[[nodiscard]] Grain sum_of(const Prices& prices);

}  // namespace seamturn::order
