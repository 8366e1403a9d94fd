// SPDX-License-Identifier: MIT
// Carries out one command: reads, plans, prints, writes. Computes nothing itself.
#pragma once

#include <iosfwd>
#include <string>

#include "command_line.hpp"

namespace seamturn::cli {

/// What the program needs of its surroundings, so that a test can give its own.
struct Surroundings {
  std::ostream* out = nullptr;
  std::ostream* err = nullptr;
  bool progress_wanted = false;  ///< stderr is a terminal
  std::string plugin_path;       ///< SEAMTURN_PLUGIN_PATH, folders separated by ':'
};

/// Returns the exit code. Lets no exception out.
[[nodiscard]] int run(const Command& command, const Surroundings& around);

}  // namespace seamturn::cli
