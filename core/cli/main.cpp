// SPDX-License-Identifier: MIT
#include <unistd.h>

#include <cstdlib>
#include <iostream>

#include "command_line.hpp"
#include "run.hpp"

int main(int argc, char** argv) {
  using namespace seamturn::cli;  // NOLINT: the program's own room
  const std::variant<Command, Leave> parsed = parse_command_line(argc, argv);
  if (const auto* leave = std::get_if<Leave>(&parsed)) {
    std::cout << leave->out;
    std::cerr << leave->err;
    return leave->exit_code;
  }
  Surroundings around;
  around.out = &std::cout;
  around.err = &std::cerr;
  around.progress_wanted = isatty(STDERR_FILENO) != 0;
  if (const char* path = std::getenv("SEAMTURN_PLUGIN_PATH")) around.plugin_path = path;
  return run(std::get<Command>(parsed), around);
}
