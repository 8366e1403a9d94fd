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

namespace {

struct Element {
  std::string_view symbol;
  double Composition::*content;
};
constexpr Element alloying[] = {{"Al", &Composition::al},
                                {"Cu", &Composition::cu},
                                {"Mn", &Composition::mn},
                                {"Mo", &Composition::mo},
                                {"Nb", &Composition::nb},
                                {"Ni", &Composition::ni},
                                {"Si", &Composition::si},
                                {"Ti", &Composition::ti},
                                {"V", &Composition::v}};
// EN 10027-1 names high-alloy steels from there on; nickel has group 9 of ISO/TR 15608 up to 10 %.
// Both from memory.
constexpr double high_alloy_from = 5.0;
constexpr double most_nickel = 10.0;

bool is_high(const Element& element, double content) {
  return element.symbol == "Ni" ? content > most_nickel : content >= high_alloy_from;
}

}  // namespace

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
  for (const Element& element : alloying) {
    const double content = composition.*element.content;
    if (!is_high(element, content)) continue;
    return std::string(element.symbol) + " " + base::shortest_text(content) +
           " % makes it another metal or a high-alloy steel (from " +
           base::shortest_text(high_alloy_from) + " % of an element, nickel above " +
           base::shortest_text(most_nickel) + " %; EN 10027-1 and ISO/TR 15608, both from memory)";
  }
  return {};
}

}  // namespace seamturn::material
