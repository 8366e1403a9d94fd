// SPDX-License-Identifier: MIT
#include "seamturn/base/error.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"

namespace seamturn::plugin_host {

std::filesystem::path installed_plugin_folder() {
  std::error_code error;
  // The link is followed: a link to the installed program still finds its plugins.
  const std::filesystem::path program = std::filesystem::read_symlink("/proc/self/exe", error);
  if (error || program.empty()) {
    throw base::UnavailableError("cannot find the folder of the running program: " +
                                 error.message());
  }
  return program.parent_path().parent_path() / "lib" / "seamturn" / "plugins";
}

}  // namespace seamturn::plugin_host
