// SPDX-License-Identifier: MIT
// One library file becomes a checked plugin, or a reason why not.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "seamturn/plugin_abi/plugin.h"

namespace seamturn::plugin_host {

/// A plugin that passed every check. `keeper` holds the library; it stays mapped until exit anyway.
struct LoadedPlugin {
  std::shared_ptr<void> keeper;
  const seamturn_document_writer* writer = nullptr;
  std::string id;
  std::string title;
  std::string version;
  std::filesystem::path file;
};

/// Either a plugin (reason empty) or the reason.
struct LoadResult {
  LoadedPlugin plugin;
  std::string reason;
};

/// Never throws for anything the file is or does, but cannot stop a library whose static
/// initialisers throw: the system's loader ends the process then.
/// Pre: an absolute path.
[[nodiscard]] LoadResult load_plugin(const std::filesystem::path& file);

/// The reason why a descriptor cannot be used; empty when it can.
[[nodiscard]] std::string descriptor_problem(const seamturn_plugin* plugin);

/// A plugin's own text made fit to print: at most 2000 bytes, control characters as spaces.
[[nodiscard]] std::string printable(const char* text);
[[nodiscard]] std::string printable(std::string text);

}  // namespace seamturn::plugin_host
