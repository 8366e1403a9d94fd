// SPDX-License-Identifier: MIT
// Comparing with a value from outside, and saying everything when it fails.
#pragma once

#include <doctest/doctest.h>

#include <cmath>
#include <sstream>
#include <string>

namespace seamturn::tests {

/// Where an expected value comes from. Only `published` counts as an outside check.
enum class Origin { published, closed_form, cross, law, certified, computed, remembered, practice };

/// One expected value. The tolerance is half the last printed digit unless `why` says otherwise.
struct Expected {
  double value = 0.0;
  double tolerance = 0.0;
  Origin origin = Origin::published;
  const char* source = "";  // key of docs/sources.md and locator
  const char* why = "";     // why this tolerance, or why the row is weak
};

inline std::string comparison(const std::string& inputs, double got, const Expected& expected) {
  std::ostringstream text;
  text.precision(17);
  text << inputs << ": expected " << expected.value << ", got " << got << ", difference "
       << got - expected.value << ", tolerance " << expected.tolerance << ", source "
       << expected.source << ' ' << expected.why;
  return text.str();
}

/// CHECK that `got` is within the tolerance; NaN fails.
inline void check_expected(const std::string& inputs, double got, const Expected& expected) {
  INFO(comparison(inputs, got, expected));
  CHECK(std::abs(got - expected.value) <= expected.tolerance);
}

}  // namespace seamturn::tests
