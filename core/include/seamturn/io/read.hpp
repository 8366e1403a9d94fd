// SPDX-License-Identifier: MIT
// Strict readers. All findings of a file at once, each with line and column; nothing is guessed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "seamturn/planner/inputs.hpp"

namespace seamturn::io {

/// Bytes of a file. Throws base::UnavailableError naming the file and the system's reason.
[[nodiscard]] std::string read_bytes(const std::filesystem::path& file);

/// Reads a weldment with the libraries and the cell it uses (relative to the weldment's folder).
/// Outside: throws base::InputError with every finding of every file when any is an error;
///   base::UnavailableError when the weldment file itself cannot be read.
/// Tests: io/read - every file of tests/bad with its code, line and column.
[[nodiscard]] planner::Inputs read_inputs(const std::filesystem::path& weldment_file);

}  // namespace seamturn::io
