// SPDX-License-Identifier: MIT
#include "build_folder.hpp"

namespace seamturn::tests {

std::filesystem::path build_folder() {
  return SEAMTURN_BINARY_DIR;
}

}  // namespace seamturn::tests
