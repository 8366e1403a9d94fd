// SPDX-License-Identifier: MIT
// Distance to the nearest limit.
#include <cmath>

#include "detail_explain.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::figures::detail {

HowClose how_close(std::string name, double value, std::string unit, Limits limits) {
  SEAMTURN_REQUIRE(limits.least || limits.largest, name);
  SEAMTURN_REQUIRE(std::isfinite(value), name, value);
  HowClose close;
  close.name = std::move(name);
  close.value = value;
  close.unit = std::move(unit);
  close.least = limits.least;
  close.largest = limits.largest;
  close.origin = std::move(limits.origin);
  const double above = limits.least ? value - *limits.least : 0.0;
  const double below = limits.largest ? *limits.largest - value : 0.0;
  const bool to_least = !limits.largest || (limits.least && above < below);
  close.nearest = to_least ? *limits.least : *limits.largest;
  close.distance = to_least ? above : below;
  const double width =
      limits.least && limits.largest ? *limits.largest - *limits.least : std::abs(close.nearest);
  if (width > 0.0) close.share_ratio = close.distance / width;
  return close;
}

}  // namespace seamturn::figures::detail
