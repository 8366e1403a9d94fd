// SPDX-License-Identifier: MIT
// The words of the command line as one value. The only user of the parsing library.
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "seamturn/order/search.hpp"

namespace seamturn::cli {

enum class Verb { check, plan, joints, turns, cost, explain, write, figure, plugins };

struct Command {
  Verb verb = Verb::check;
  std::filesystem::path file;
  std::filesystem::path output;  ///< -o; empty: none
  std::string writer;            ///< write KIND
  std::string item;              ///< write --item
  std::string joint;             ///< explain JOINT
  std::string figure;            ///< figure NAME, explain FIGURE; empty: all
  std::vector<std::pair<std::string, std::string>> arguments;  ///< figure KEY=VALUE
  std::vector<std::filesystem::path> plugin_folders;
  bool json = false;
  bool us_units = false;
  bool quiet = false;
  bool to_edit = false;  ///< turns --to-edit
  order::Effort effort = order::Effort::normal;
  std::filesystem::path start_from;  ///< plan.xml; empty: none
};

/// What to do instead of a command: print a text and leave (help, version, wrong usage).
struct Leave {
  int exit_code = 0;
  std::string out;  ///< for stdout
  std::string err;  ///< for stderr
};

[[nodiscard]] std::variant<Command, Leave> parse_command_line(int argc, const char* const* argv);

}  // namespace seamturn::cli
