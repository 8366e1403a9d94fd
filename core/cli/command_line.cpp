// SPDX-License-Identifier: MIT
#include "command_line.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <sstream>
#include <string_view>

#include "exit_codes.hpp"
#include "seamturn/base/near_name.hpp"
#include "version.hpp"

namespace seamturn::cli {

namespace {

struct VerbEntry {
  std::string_view name;
  Verb verb;
};
constexpr std::array<VerbEntry, 9> verbs = {{{"check", Verb::check},
                                             {"plan", Verb::plan},
                                             {"joints", Verb::joints},
                                             {"turns", Verb::turns},
                                             {"cost", Verb::cost},
                                             {"explain", Verb::explain},
                                             {"write", Verb::write},
                                             {"figure", Verb::figure},
                                             {"plugins", Verb::plugins}}};

/// Texts the library fills; turned into a Command afterwards.
struct Texts {
  std::string file, joint, output, writer, item, figure, start_from;
  std::string units = "metric", effort = "normal";
  std::vector<std::string> arguments, plugin_folders;
  bool json = false;
  bool quiet = false;
  bool to_edit = false;
};

void add_common(CLI::App& app, Texts& texts) {
  app.add_flag("--json", texts.json, "print JSON for programs, always metric");
  app.add_option("--units",
                 texts.units,
                 "metric or us, for what is printed for people; stresses, forces, findings and "
                 "formulas stay metric")
      ->check(CLI::IsMember({"metric", "us"}));
  app.add_flag("--quiet", texts.quiet, "errors only: no progress, warnings or notes");
}

void add_file(CLI::App& app, Texts& texts) {
  app.add_option("FILE", texts.file, "the weldment")->required();
}

/// Verbs that plan.
void add_planning(CLI::App& app, Texts& texts) {
  std::vector<std::string> words(order::effort_names().begin(), order::effort_names().end());
  app.add_option("--effort", texts.effort, "how much work the order gets: quick, normal or long")
      ->check(CLI::IsMember(words));
  app.add_option("--start-from",
                 texts.start_from,
                 "plan.xml of this weldment or of an earlier revision: the search begins with its "
                 "order");
}

void add_plugin_folders(CLI::App& app, Texts& texts) {
  app.add_option("--plugin-dir", texts.plugin_folders, "a folder of plugins, searched first")
      ->allow_extra_args(false);
}

void describe(CLI::App& app, Texts& texts) {
  app.require_subcommand(1);
  app.set_version_flag("--version", std::string("seamturn ") + version);
  CLI::App* check =
      app.add_subcommand("check", "read the files, print all findings; plans nothing");
  add_file(*check, texts);
  CLI::App* plan =
      app.add_subcommand("plan", "the whole job: summary, and every document into DIR");
  add_file(*plan, texts);
  plan->add_option("-o,--output", texts.output, "folder for plan.xml and the documents");
  add_plugin_folders(*plan, texts);
  add_file(*app.add_subcommand("joints", "per joint: section, metal, passes, heat"), texts);
  CLI::App* turns = app.add_subcommand("turns", "the order: stances, turns, waits, bound");
  add_file(*turns, texts);
  turns->add_flag(
      "--to-edit", texts.to_edit, "the order as <hand-order>, to put into the weldment and change");
  add_file(*app.add_subcommand("cost", "wire, gas, time, money"), texts);
  CLI::App* explain =
      app.add_subcommand("explain", "how the numbers of a joint came about, with sources");
  add_file(*explain, texts);
  explain->add_option("JOINT", texts.joint, "id of the joint, or of a seam or segment of it")
      ->required();
  explain->add_option("FIGURE", texts.figure, "section, metal, passes ...; none: the whole chain");
  CLI::App* write = app.add_subcommand("write", "one document by one plugin");
  write->add_option("KIND", texts.writer, "id of the plugin, see 'seamturn plugins'")->required();
  write->add_option("FILE", texts.file, "a weldment, or a saved plan.xml")->required();
  write->add_option("--item", texts.item, "name of the document when there are several");
  write->add_option("-o,--output", texts.output, "file to write, '-' for stdout")->required();
  add_plugin_folders(*write, texts);
  CLI::App* figure = app.add_subcommand("figure", "bench calculations without a file");
  figure->add_option("NAME", texts.figure, "name of the figure; none: list them");
  figure->add_option("KEY=VALUE", texts.arguments, "what the figure needs, with units");
  add_plugin_folders(*app.add_subcommand("plugins", "loaded and skipped plugins, and why"), texts);
  for (CLI::App* verb : app.get_subcommands({})) {
    add_common(*verb, texts);
    const std::string name = verb->get_name();
    if (name != "check" && name != "figure" && name != "plugins") add_planning(*verb, texts);
  }
}

std::string with_hint(const std::string& text) {
  return "seamturn: " + text +
         "\nRun 'seamturn --help' for the verbs, 'seamturn VERB --help' for one.\n";
}

/// A wrong first word gets a suggestion; the library has none.
std::optional<Leave> wrong_verb(int argc, const char* const* argv) {
  if (argc < 2) return Leave{exit_usage, "", with_hint("a verb is missing")};
  const std::string_view word = argv[1];
  const bool known = std::any_of(
      verbs.begin(), verbs.end(), [&](const VerbEntry& entry) { return entry.name == word; });
  if (known || word.substr(0, 1) == "-") return std::nullopt;
  std::vector<std::string_view> names;
  for (const VerbEntry& entry : verbs) names.push_back(entry.name);
  const std::optional<std::string> near = base::find_near_name(word, names);
  return Leave{exit_usage,
               "",
               with_hint("there is no verb \"" + std::string(word) + "\"" +
                         (near ? "; did you mean " + *near + "?" : ""))};
}

std::variant<Command, Leave> command_of(const CLI::App& app, const Texts& texts) {
  Command command;
  const std::string verb = app.get_subcommands().front()->get_name();
  for (const VerbEntry& entry : verbs) {
    if (entry.name == verb) command.verb = entry.verb;
  }
  command.file = texts.file;
  command.output = texts.output;
  command.joint = texts.joint;
  command.writer = texts.writer;
  command.item = texts.item;
  command.figure = texts.figure;
  command.json = texts.json;
  command.us_units = texts.units == "us";
  command.quiet = texts.quiet;
  command.to_edit = texts.to_edit;
  const auto efforts = order::effort_names();
  const auto effort = std::find(efforts.begin(), efforts.end(), texts.effort);
  command.start_from = texts.start_from;
  command.effort = static_cast<order::Effort>(effort - efforts.begin());
  for (const std::string& folder : texts.plugin_folders) command.plugin_folders.push_back(folder);
  for (const std::string& argument : texts.arguments) {
    const std::size_t equals = argument.find('=');
    if (equals == std::string::npos || equals == 0) {
      return Leave{exit_usage, "", with_hint("\"" + argument + "\" is not KEY=VALUE")};
    }
    command.arguments.emplace_back(argument.substr(0, equals), argument.substr(equals + 1));
  }
  return command;
}

}  // namespace

std::variant<Command, Leave> parse_command_line(int argc, const char* const* argv) {
  if (std::optional<Leave> leave = wrong_verb(argc, argv)) return *leave;
  CLI::App app(
      "seamturn: from the joints of a weldment to procedure sheets, turn order, robot paths "
      "and a price.",
      "seamturn");
  Texts texts;
  describe(app, texts);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    std::ostringstream out, err;
    const int code = app.exit(error, out, err);
    if (code == 0) return Leave{exit_done, out.str(), ""};
    return Leave{exit_usage, "", with_hint(error.what())};
  }
  return command_of(app, texts);
}

}  // namespace seamturn::cli
