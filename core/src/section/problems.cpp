// SPDX-License-Identifier: MIT
#include "detail_problems.hpp"

namespace seamturn::section::detail {

void Problems::check_size(std::string_view what, double value_mm) {
  if (value_mm <= 0.0) {
    add("section.size.not_positive",
        "the " + std::string(what) + " is " + mm_text(value_mm) + "; it must be above 0 mm");
  }
  check_not_huge(what, value_mm);
}

void Problems::check_not_huge(std::string_view what, double value_mm) {
  if (value_mm <= largest_size_mm) return;
  add("section.size.too_large",
      "the " + std::string(what) + " is " + mm_text(value_mm) + "; up to " +
          mm_text(largest_size_mm) + " is worked with; check the unit");
}

void Problems::check_gap(double gap_mm) {
  if (gap_mm < 0.0) {
    add("section.gap.negative",
        "the root gap is " + mm_text(gap_mm) + "; the least gap is 0 mm (edges touch)");
  }
  check_not_huge("root gap", gap_mm);
}

void Problems::check_angle(std::string_view what, Angle angle, Angle below) {
  if (angle > Angle::deg(0.0) && angle < below) return;
  add("section.angle.out_of_range",
      "the " + std::string(what) + " is " + deg_text(angle) + "; it must lie between 0 and " +
          base::shortest_text(below.deg()) + " deg");
}

std::optional<base::Refusal> Problems::as_one() const {
  if (all_.empty()) return std::nullopt;
  base::Refusal refusal = all_.front();
  for (std::size_t i = 1; i < all_.size(); ++i) refusal.text += "; " + all_[i].text;
  return refusal;
}

}  // namespace seamturn::section::detail
