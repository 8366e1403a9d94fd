// SPDX-License-Identifier: MIT
// Files of the repository, for the tests that walk it.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace seamturn::tests {

inline std::filesystem::path repository() {
  return SEAMTURN_SOURCE_DIR;
}

inline std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return std::string(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());
}

inline std::vector<std::string> lines_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// All files below a folder with one of the extensions, sorted, relative to the repository.
inline std::vector<std::filesystem::path> files_below(const std::string& folder,
                                                      const std::vector<std::string>& extensions) {
  namespace fs = std::filesystem;
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(repository() / folder)) {
    const std::string extension = entry.path().extension().string();
    const bool wanted =
        std::find(extensions.begin(), extensions.end(), extension) != extensions.end();
    if (entry.is_regular_file() && wanted) {
      files.push_back(fs::relative(entry.path(), repository()));
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace seamturn::tests
