// SPDX-License-Identifier: MIT
#include "seamturn/material/steel.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
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

}  // namespace seamturn::material
