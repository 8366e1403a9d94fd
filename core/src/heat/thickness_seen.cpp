// SPDX-License-Identifier: MIT
#include "seamturn/heat/thickness_seen.hpp"

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

}  // namespace

double combined_thickness_mm(std::span<const HeatPath> paths, bool opposed_pair) {
  SEAMTURN_REQUIRE(!paths.empty(), paths.size());
  double sum = 0.0;
  for (const HeatPath& path : paths) {
    SEAMTURN_REQUIRE(base::is_positive(path.average_mm), path.average_mm, path.member);
    sum += path.average_mm;
  }
  return opposed_pair ? sum / 2.0 : sum;
}

std::string combined_thickness_text(std::span<const HeatPath> paths, bool opposed_pair) {
  const double combined = combined_thickness_mm(paths, opposed_pair);
  std::string sum;
  for (const HeatPath& path : paths) {
    sum += (sum.empty() ? "" : " + ") + base::digits_text(path.average_mm);
  }
  return (opposed_pair ? "(" + sum + ") / 2" : sum) + " = " + base::digits_text(combined) + " mm";
}

const base::FigureCard& combined_thickness_card() {
  static const FigureKey keys[] = {
      {"thickness-1", Dimension::length, "first heat path, averaged over 75 mm", "> 0"},
      {"thickness-2", Dimension::length, "second heat path, averaged over 75 mm", "> 0"},
      {"thickness-3",
       Dimension::length,
       "third heat path of a tee, corner or lap, averaged over 75 mm",
       "> 0",
       false},
      {"opposed",
       Dimension::none,
       "two fillets directly opposed, made together",
       "yes or no, no when left out",
       false,
       true},
  };
  static const Citation sources[] = {
      {"EN 1011-2", "2001, C.2: sum, half the sum, 75 mm", Status::from_memory},
  };
  static const base::FigureCard card{
      "combined-thickness",
      "thickness a weld feels: the sum of the paths its heat may take",
      "d1 + d2 (+ d3); half of it for two directly opposed fillets made together",
      "mm",
      "each thickness averaged over 75 mm from the weld line, each heat path once. It goes with "
      "the "
      "CE method and its table only: the CET method wants the single thickness",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
