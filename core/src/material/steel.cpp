// SPDX-License-Identifier: MIT
#include "seamturn/material/steel.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string_view>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::material {

const SteelBand* find_band(const Steel& steel, double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  for (const SteelBand& band : steel.bands) {
    if (thickness_mm <= band.up_to_mm) return &band;
  }
  return nullptr;
}

bool bounds_carbon_equivalent(const SteelBand& band) {
  return !band.c_is_open && !band.mn_is_open;
}

std::string why_out_of_scope(const Steel& steel, const Composition& composition) {
  // EN 10020, from memory.
  constexpr double stainless_from_cr = 10.5;
  // ISO/TR 15608, from memory: 1 to 6, 9 and 11 are ferritic steels; 7, 8 and 10 stainless ones,
  // from 21 on other metals and cast iron.
  constexpr std::string_view known[] = {"1", "2", "3", "4", "5", "6", "9", "11"};
  const std::string_view group = std::string_view(steel.group).substr(0, steel.group.find('.'));
  if (!group.empty() && group.find_first_not_of("0123456789") == std::string_view::npos &&
      std::find(std::begin(known), std::end(known), group) == std::end(known)) {
    return "group " + steel.group +
           " of ISO/TR 15608 is no unalloyed or low-alloy steel (from memory)";
  }
  if (composition.cr >= stainless_from_cr) {
    return "Cr " + base::shortest_text(composition.cr) + " % makes it stainless (from " +
           base::shortest_text(stainless_from_cr) + " %, EN 10020 from memory)";
  }
  return {};
}

}  // namespace seamturn::material
