// SPDX-License-Identifier: MIT
// Running the built program as a user would.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <string>

#include "build_folder.hpp"
#include "repository.hpp"

namespace seamturn::tests {

struct Ran {
  int exit_code = -1;
  std::string out;
  std::string err;
};

/// A fresh scratch folder below the build folder, of this process: cases run side by side.
inline std::filesystem::path scratch(const std::string& name) {
  const std::filesystem::path folder =
      build_folder() / "scratch" / (name + "-" + std::to_string(getpid()));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  return folder;
}

/// Runs "seamturn ARGUMENTS" (shell syntax) in a folder.
inline Ran run_seamturn(const std::string& arguments,
                        const std::filesystem::path& folder,
                        const std::string& environment = "") {
  const std::filesystem::path err = folder / ".stderr";
  const std::string line = "cd '" + folder.string() + "' && " + environment + " '" +
                           build_folder().string() + "/bin/seamturn' " + arguments + " 2>'" +
                           err.string() + "'";
  Ran ran;
  FILE* pipe = popen(line.c_str(), "r");
  if (pipe == nullptr) return ran;
  std::array<char, 4096> buffer{};
  for (std::size_t n = 0; (n = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
    ran.out.append(buffer.data(), n);
  }
  const int status = pclose(pipe);
  ran.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  ran.err = text_of(err);
  std::filesystem::remove(err);
  return ran;
}

}  // namespace seamturn::tests
