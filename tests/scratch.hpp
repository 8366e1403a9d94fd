// SPDX-License-Identifier: MIT
// An empty folder for one test, below the build tree, of this process: cases run side by side.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include "build_folder.hpp"

namespace seamturn::tests {

inline std::filesystem::path scratch_folder(const std::string& name) {
  const std::filesystem::path folder =
      build_folder() / "tests" / "scratch" / (name + "-" + std::to_string(getpid()));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  return folder;
}

inline std::string file_bytes(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return std::string((std::istreambuf_iterator<char>(stream)), std::istreambuf_iterator<char>());
}

inline void write_bytes(const std::filesystem::path& file, std::string_view bytes) {
  std::ofstream stream(file, std::ios::binary);
  stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

}  // namespace seamturn::tests
