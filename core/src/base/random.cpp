// SPDX-License-Identifier: MIT
#include "seamturn/base/random.hpp"

#include "seamturn/base/error.hpp"

namespace seamturn::base {

std::uint64_t Random::next() {
  state_ += 0x9E3779B97F4A7C15ULL;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
  z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
  return z ^ (z >> 31U);
}

double Random::unit() {
  return static_cast<double>(next() >> 11U) * 0x1.0p-53;
}

double Random::between(double low, double high) {
  return low + (high - low) * unit();
}

std::size_t Random::below(std::size_t count) {
  SEAMTURN_REQUIRE(count > 0, count);
  return static_cast<std::size_t>(next() % count);
}

std::uint64_t named_seed(std::uint64_t seed, std::string_view name) {
  std::uint64_t hash = 0xCBF29CE484222325ULL ^ seed;
  for (const char c : name) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  return hash;
}

}  // namespace seamturn::base
