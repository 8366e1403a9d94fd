// SPDX-License-Identifier: MIT
// What the functions of this room share: is it a quantity, how a finding is made, a key of figures.
#pragma once

#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/valid_range.hpp"

namespace seamturn::heat::detail {

[[nodiscard]] inline base::Finding finding(base::Severity severity,
                                           std::string_view code,
                                           std::string text) {
  return {severity, std::string(code), std::move(text), {}, {}};
}

/// "thickness 12 mm lies outside 19 to 50 mm".
[[nodiscard]] inline std::string outside_text(std::string_view what,
                                              double value,
                                              const base::ValidRange& range,
                                              std::string_view unit) {
  const std::string suffix = unit.empty() ? "" : " " + std::string(unit);
  return std::string(what) + " " + base::digits_text(value) + suffix + " lies outside " +
         base::shortest_text(range.least) + " to " + base::shortest_text(range.largest) + suffix;
}

/// Warns of what lies outside the range of a method: "thickness 12 mm lies outside ..., <ending>".
class RangeWatch {
 public:
  RangeWatch(std::vector<base::Finding>& findings, std::string_view code, std::string_view ending)
      : findings_(findings), code_(code), ending_(ending) {}

  void check(std::string_view what,
             double value,
             const base::ValidRange& range,
             std::string_view unit) const {
    if (range.holds(value)) return;
    findings_.push_back(finding(base::Severity::warning,
                                code_,
                                outside_text(what, value, range, unit) + std::string(ending_)));
    findings_.back().quantity = what;
  }

 private:
  std::vector<base::Finding>& findings_;
  std::string_view code_, ending_;
};

/// Project choice: below it formulas for plates say nothing about a real joint.
inline constexpr double plates_from_mm = 3.0;

/// The key of figures that ask how a run lies.
inline constexpr base::FigureKey case_key{"case",
                                          base::Dimension::none,
                                          "how the run lies",
                                          "run-on-plate, butt, fillet-tee or fillet-corner",
                                          true,
                                          true};

}  // namespace seamturn::heat::detail
