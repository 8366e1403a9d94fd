// SPDX-License-Identifier: MIT
// Finding, checking and loading plugins. A bad plugin gets a verdict and is skipped; the others go
// on.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/finding.hpp"

namespace seamturn::plugin_host {

/// A loaded plugin or the reason why a file is none.
struct Verdict {
  std::filesystem::path file;
  bool loaded = false;
  std::string id;  ///< when loaded
  std::string title;
  std::string version;
  std::string kind;    ///< "document-writer"
  std::string reason;  ///< when skipped
};

struct WrittenDocument {
  std::string name;
  std::string bytes;
};

/// Loaded plugins stay mapped until the process ends.
/// What it cannot stop: a library whose static initialisers throw ends the process while it loads.
/// Tests: plugin_host/verdicts, plugin_host/calls.
class PluginHost {
 public:
  /// Searches first the `required` folders, then the others, in order, files sorted by name; first
  /// id wins. Every file *.so gets a verdict, other files are not looked at. Folders that do not
  /// exist are passed over; a required one that cannot be listed throws base::UnavailableError.
  explicit PluginHost(const std::vector<std::filesystem::path>& folders,
                      const std::vector<std::filesystem::path>& required = {});
  ~PluginHost();
  PluginHost(PluginHost&&) noexcept;
  PluginHost& operator=(PluginHost&&) noexcept;

  [[nodiscard]] const std::vector<Verdict>& verdicts() const;
  [[nodiscard]] std::vector<std::string> writer_ids() const;

  /// Names a writer would write: relative, safe to join to a folder, each once. Throws
  /// base::UnavailableError (unknown id: lists known ids and the folders tried; the plugin's own
  /// text when it fails; a name that is not safe).
  [[nodiscard]] std::vector<std::string> document_names(std::string_view id,
                                                        std::string_view plan_xml) const;
  [[nodiscard]] std::string write_document(std::string_view id,
                                           std::string_view plan_xml,
                                           std::string_view name) const;

 private:
  struct Content;
  std::unique_ptr<Content> content_;
};

/// The install folder: lib/seamturn/plugins beside the bin/ of the running program.
[[nodiscard]] std::filesystem::path installed_plugin_folder();

}  // namespace seamturn::plugin_host
