// SPDX-License-Identifier: MIT
// What the functions of this room share: is it a quantity, how a finding is made.
#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "seamturn/base/finding.hpp"

namespace seamturn::shrinkage::detail {

[[nodiscard]] inline bool is_positive(double value) {
  return std::isfinite(value) && value > 0.0;
}
[[nodiscard]] inline bool is_amount(double value) {
  return std::isfinite(value) && value >= 0.0;
}
[[nodiscard]] inline base::Finding warning(std::string_view code, std::string text) {
  return {base::Severity::warning, std::string(code), std::move(text), {}, {}};
}

}  // namespace seamturn::shrinkage::detail
