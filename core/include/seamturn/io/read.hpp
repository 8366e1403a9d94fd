// SPDX-License-Identifier: MIT
// Strict readers. All findings of a file at once, each with line and column; nothing is guessed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "seamturn/planner/earlier_order.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::io {

/// Bytes of a file. Throws base::UnavailableError naming the file and the system's reason.
[[nodiscard]] std::string read_bytes(const std::filesystem::path& file);

/// Reads a weldment with the libraries and the cell it uses (relative to the weldment's folder).
/// Outside: throws base::InputError with every finding of every file when any is an error;
///   base::UnavailableError when the weldment file itself cannot be read.
/// Tests: io/read - every file of tests/bad with its code, line and column.
[[nodiscard]] planner::Inputs read_inputs(const std::filesystem::path& weldment_file);

/// The order of a saved plan.xml, to begin a search with: how each pass was held, when and which
/// way round. Nothing else of the plan is looked at. Seams that `weldment` has not, with stances
/// and passes of them, are left out with a note. Outside: throws base::InputError for what is no
/// plan, one of a newer major schema, damaged, or
///   contradicting itself; base::UnavailableError when it cannot be read. A plan in which nothing
///   is turned has no steps.
/// Tests: io/read_earlier_order.
[[nodiscard]] planner::EarlierOrder read_earlier_order(const std::filesystem::path& plan_file,
                                                       const joint::Weldment& weldment);

}  // namespace seamturn::io
