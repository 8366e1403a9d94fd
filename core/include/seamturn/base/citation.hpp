// SPDX-License-Identifier: MIT
// Where a number comes from, and how far it may be trusted.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace seamturn::base {

/// How a value or formula was obtained (docs/sources.md explains each word).
enum class Status { verified, from_memory, computed, common_practice, proposed };

/// "verified", "from memory", "computed", "common practice", "proposed".
[[nodiscard]] std::string_view status_name(Status status);
/// The status of a name as status_name prints it; nothing when the name is none of them.
[[nodiscard]] std::optional<Status> find_status(std::string_view name);

/// One source of one figure. The key resolves in docs/sources.md.
struct Citation {
  std::string_view key;      ///< e.g. "EN 1011-2"
  std::string_view locator;  ///< edition, clause, table or equation
  Status status = Status::from_memory;
};

}  // namespace seamturn::base
