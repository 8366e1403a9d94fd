// SPDX-License-Identifier: MIT
// Welding positions by ISO 6947 and the family of weld they are judged for.
#pragma once

#include <optional>
#include <string_view>

namespace seamturn::process {

enum class WeldPosition { pa, pb, pc, pd, pe, pf, pg };
enum class WeldFamily { groove, fillet };
enum class PassRole { tack, root, fill, cap, single };

[[nodiscard]] std::string_view position_name(WeldPosition position);  ///< "PA" ...
[[nodiscard]] std::optional<WeldPosition> find_position(std::string_view name);
[[nodiscard]] std::string_view family_name(WeldFamily family);  ///< "groove", "fillet"
[[nodiscard]] std::string_view role_name(PassRole role);        ///< "root" ...
[[nodiscard]] std::optional<PassRole> find_role(std::string_view name);

}  // namespace seamturn::process
