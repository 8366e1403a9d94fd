// SPDX-License-Identifier: MIT
// Collects everything wrong with a section's sizes, to say it in one refusal.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/number_text.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::section::detail {

// Project choice: no weld on a plate is a metre wide or deep; a slip of unit is.
inline constexpr double largest_size_mm = 1000.0;
inline constexpr double length_slack_mm = 1e-9;

[[nodiscard]] inline std::string mm_text(double value_mm) {
  return base::digits_text(value_mm) + " mm";
}
[[nodiscard]] inline std::string deg_text(Angle angle) {
  return base::fixed_text(angle.deg(), 3) + " deg";
}

class Problems {
 public:
  void add(std::string code, std::string text) {
    all_.push_back(base::Refusal{std::move(code), std::move(text)});
  }
  void check_size(std::string_view what, double value_mm);
  void check_not_huge(std::string_view what, double value_mm);
  void check_gap(double gap_mm);
  /// Above 0 and below an angle, both ends excluded.
  void check_angle(std::string_view what, Angle angle, Angle below);
  [[nodiscard]] bool any() const { return !all_.empty(); }
  [[nodiscard]] std::optional<base::Refusal> as_one() const;

 private:
  std::vector<base::Refusal> all_;
};

/// Grooves of every form, with side and gouge.
void check_groove(const joint::Groove& groove, const SectionParams& params, Problems& problems);

}  // namespace seamturn::section::detail
