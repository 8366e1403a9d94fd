// SPDX-License-Identifier: MIT
// The files in joints/, by kind.
#pragma once

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace fs = std::filesystem;

inline const fs::path source_dir = SEAMTURN_SOURCE_DIR;

inline std::vector<fs::path> demo_files() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(source_dir / "joints")) {
    if (entry.path().extension() == ".xml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// "weldment", "library" or "cell", by the namespace in the file's text.
inline std::string kind_of(const std::string& text) {
  for (const char* kind : {"weldment", "library", "cell"}) {
    if (text.find(std::string("xmlns=\"urn:seamturn:") + kind + ":1\"") != std::string::npos) {
      return kind;
    }
  }
  return {};
}

}  // namespace seamturn::tests
