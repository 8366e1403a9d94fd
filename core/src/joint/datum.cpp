// SPDX-License-Identifier: MIT
#include "seamturn/joint/datum.hpp"

#include <array>

namespace seamturn::joint {

std::string_view datum_kind_name(DatumKind kind) {
  constexpr std::array<std::string_view, 3> names = {"face", "bore", "thread"};
  return names.at(static_cast<std::size_t>(kind));
}

}  // namespace seamturn::joint
