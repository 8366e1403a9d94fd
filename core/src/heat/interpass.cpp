// SPDX-License-Identifier: MIT
#include "seamturn/heat/interpass.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::heat {

std::optional<InterpassLimit> governing_interpass(std::span<const InterpassLimit> limits) {
  const InterpassLimit* lowest = nullptr;
  for (const InterpassLimit& limit : limits) {
    SEAMTURN_REQUIRE(std::isfinite(limit.max_c), limit.max_c, limit.stated_by);
    if (lowest == nullptr || limit.max_c < lowest->max_c) lowest = &limit;
  }
  if (lowest == nullptr) return std::nullopt;
  return *lowest;
}

}  // namespace seamturn::heat
