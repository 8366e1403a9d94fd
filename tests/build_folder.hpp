// SPDX-License-Identifier: MIT
// Where the program under test was built. Told to one file only: all others compile alike in every
// build folder, so the compiler's cache serves the second one.
#pragma once

#include <filesystem>

namespace seamturn::tests {

[[nodiscard]] std::filesystem::path build_folder();
/// Plugins made to be looked at by the tests of plugin_host.
[[nodiscard]] inline std::filesystem::path fixture_folder() {
  return build_folder() / "tests" / "fixtures";
}

}  // namespace seamturn::tests
