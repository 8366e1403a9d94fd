// SPDX-License-Identifier: MIT
#include "seamturn/plan/balance.hpp"

#include <array>

namespace seamturn::plan {

std::string_view twin_kind_name(TwinKind kind) {
  static constexpr std::array<std::string_view, 4> names = {
      "sides of one groove", "sides of one plate", "twin rings", "stated"};
  return names.at(static_cast<std::size_t>(kind));
}

}  // namespace seamturn::plan
