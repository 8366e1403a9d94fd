// SPDX-License-Identifier: MIT
// How the program ends (docs/json.md).
#pragma once

namespace seamturn::cli {

inline constexpr int exit_done = 0;         ///< warnings included
inline constexpr int exit_findings = 1;     ///< a finding of severity error; nothing written
inline constexpr int exit_usage = 2;        ///< wrong words on the command line
inline constexpr int exit_unavailable = 3;  ///< a file or plugin cannot be had
inline constexpr int exit_our_bug = 70;

}  // namespace seamturn::cli
