// SPDX-License-Identifier: MIT
#include "seamturn/base/citation.hpp"

#include <array>

namespace seamturn::base {

namespace {
constexpr std::array<std::string_view, 5> names = {
    "verified", "from memory", "computed", "common practice", "proposed"};
}  // namespace

std::string_view status_name(Status status) {
  return names.at(static_cast<std::size_t>(status));
}

std::optional<Status> find_status(std::string_view name) {
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names.at(i) == name) return static_cast<Status>(i);
  }
  return std::nullopt;
}

}  // namespace seamturn::base
