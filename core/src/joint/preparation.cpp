// SPDX-License-Identifier: MIT
#include "seamturn/joint/preparation.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::joint {

namespace {

struct Namer {
  std::string_view operator()(const Fillet&) const { return "fillet"; }
  std::string_view operator()(const SquareButt&) const { return "square"; }
  std::string_view operator()(const SingleV&) const { return "single-v"; }
  std::string_view operator()(const SingleBevel&) const { return "single-bevel"; }
};

}  // namespace

std::string_view preparation_name(const Preparation& preparation) {
  return std::visit(Namer{}, preparation);
}

bool is_fillet(const Preparation& preparation) {
  return std::holds_alternative<Fillet>(preparation);
}

double leg_from_throat_mm(double throat_mm, Angle between_plates) {
  SEAMTURN_REQUIRE(std::isfinite(throat_mm) && throat_mm > 0.0, throat_mm);
  SEAMTURN_REQUIRE(between_plates > Angle::deg(0.0) && between_plates < Angle::deg(180.0),
                   between_plates.deg());
  return throat_mm / std::cos(0.5 * between_plates.rad());
}

}  // namespace seamturn::joint
