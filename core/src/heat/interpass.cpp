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

const base::FigureCard& interpass_card() {
  using base::Dimension;
  static const base::FigureKey keys[] = {
      {"steel", Dimension::temperature, "limit of the steel's maker or standard", "", false},
      {"second-steel", Dimension::temperature, "limit of the other member's steel", "", false},
      {"wire", Dimension::temperature, "limit of the filler's maker", "", false},
      {"record", Dimension::temperature, "limit of the procedure qualification", "", false},
      {"file", Dimension::temperature, "limit stated for the joint", "", false},
      {"preheat", Dimension::temperature, "preheat to compare with", "below the maximum", false},
  };
  static const base::Citation sources[] = {
      {"INTERPASS", "the lowest limit holds", base::Status::common_practice},
  };
  static const base::FigureCard card{
      "interpass",
      "highest temperature of the place when the next pass starts",
      "the lowest of what is stated",
      "degC",
      "at least one limit; there is no blanket default. A preheat that is not below it is refused: "
      "lower hydrogen, more heat input, another steel or filler",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
