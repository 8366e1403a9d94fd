// SPDX-License-Identifier: MIT
// What the functions of this room share: is it a quantity, how a finding is made.
#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "seamturn/base/finding.hpp"

namespace seamturn::shrinkage::detail {

[[nodiscard]] inline base::Finding warning(std::string_view code, std::string text) {
  return {base::Severity::warning, std::string(code), std::move(text), {}, {}};
}

}  // namespace seamturn::shrinkage::detail
