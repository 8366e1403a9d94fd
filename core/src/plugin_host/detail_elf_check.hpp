// SPDX-License-Identifier: MIT
// A look into a library file before it is given to the system's loader.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace seamturn::plugin_host {

/// Why a file must not be loaded; nothing when the loader may have it. Runs nothing of the file.
///
/// The loader maps a file without asking whether all of it is there: a file cut short kills the
/// process with SIGBUS, which no handler can turn into a message. So every mapped part is compared
/// with the file's size here. Where the file lists its symbols, the entry must be among them, so
/// that a library that is no plugin is never loaded and none of its initialisers run.
/// Does not check: that the library's own libraries are there (the loader says so itself).
/// Tests: plugin_host/verdicts.
[[nodiscard]] std::optional<std::string> find_elf_problem(const std::filesystem::path& file);

}  // namespace seamturn::plugin_host
