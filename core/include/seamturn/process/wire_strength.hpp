// SPDX-License-Identifier: MIT
// What the designation of a wire promises of its weld metal.
#pragma once

#include <optional>
#include <string_view>

namespace seamturn::process {

/// Least yield of the weld metal by the strength symbol of a designation: "... G 46 4 M21 3Si1" and
/// "T 46 2 P M21 1 H5" promise 460 MPa.
/// Units: text -> MPa.
/// Pre: none. Outside: nothing where no symbol of the tables stands behind a G or T.
/// Source: [ISO 14341] 2020 table 1A, symbols 35 to 50 of solid wire. That ISO 17632-A takes the
///   same for cored wire, and 55 to 89 of ISO 16834-A and ISO 18276-A, are from memory.
/// Tests: process/wire_strength - published, remembered.
[[nodiscard]] std::optional<double> designated_yield_mpa(std::string_view designation);

}  // namespace seamturn::process
