// SPDX-License-Identifier: MIT
#include "seamturn/joint/datum.hpp"

#include <array>

namespace seamturn::joint {

std::span<const std::string_view> datum_kind_names() {
  static constexpr std::array<std::string_view, 3> names = {"face", "bore", "thread"};
  return names;
}

std::string_view datum_kind_name(DatumKind kind) {
  return datum_kind_names()[static_cast<std::size_t>(kind)];
}

}  // namespace seamturn::joint
