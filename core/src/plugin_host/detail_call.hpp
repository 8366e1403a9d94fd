// SPDX-License-Identifier: MIT
// Calls across the border, with whatever a plugin may do wrong turned into UnavailableError.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "detail_load.hpp"

namespace seamturn::plugin_host {

[[nodiscard]] std::vector<std::string> call_list(const LoadedPlugin& plugin,
                                                 std::string_view plan_xml);
[[nodiscard]] std::string call_write(const LoadedPlugin& plugin,
                                     std::string_view plan_xml,
                                     std::string_view name);

}  // namespace seamturn::plugin_host
