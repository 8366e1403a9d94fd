// SPDX-License-Identifier: MIT
// Partial tours as closed sets: a set of groups whose leaders are all in it, and the vertex it ends
// at. Layer by layer, each kept only while its completion may stay below the cut.
#pragma once

#include <cstddef>
#include <cstdint>

#include "detail_tour_walk.hpp"

namespace seamturn::order {

/// What the layers are made of; all with the same prices.
struct ClosedSetsInput {
  const WalkNet& net;
  const Prices& prices;
  const Memories& memories;
  const Ways& ways;
  Grain cut = 0;
  std::int64_t states = 0;  ///< partial tours kept in all, at most
  std::size_t beam = 0;     ///< kept per layer when they are too many; 0: stop then
};

struct ClosedSets {
  bool complete = false;  ///< no partial tour was dropped that might stay below the cut
  Grain bound = 0;        ///< no tour below the cut is below this
  Tour tour;              ///< cheapest found below the cut; empty: none
  Grain cost = 0;         ///< of it
  std::int64_t states = 0;
  std::int64_t work = 0;
};

/// Forward over the layers. Memory: about 60 bytes a state of the two layers at hand, 8 of others.
[[nodiscard]] ClosedSets search_closed_sets(const ClosedSetsInput& input);

}  // namespace seamturn::order
