// SPDX-License-Identifier: MIT
// Our own seeded generator: the same numbers on every machine and standard library.
#pragma once

#include <cstdint>
#include <string_view>

namespace seamturn::base {

/// SplitMix64 (Steele, Lea, Flood 2014; public-domain reference by S. Vigna).
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}
  [[nodiscard]] std::uint64_t next();
  /// In [0, 1).
  [[nodiscard]] double unit();
  /// In [low, high).
  [[nodiscard]] double between(double low, double high);
  /// In 0 .. count-1. Pre: count > 0.
  [[nodiscard]] std::size_t below(std::size_t count);

 private:
  std::uint64_t state_;
};

/// A seed of its own for every purpose: the base seed mixed with a name (FNV-1a).
[[nodiscard]] std::uint64_t named_seed(std::uint64_t seed, std::string_view name);

}  // namespace seamturn::base
