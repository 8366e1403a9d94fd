// SPDX-License-Identifier: MIT
#include "run.hpp"

#include <algorithm>
#include <ostream>
#include <set>

#include "exit_codes.hpp"
#include "json.hpp"
#include "print.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"

namespace seamturn::cli {

namespace {

/// Wrong usage found only while running (exit 2).
class UsageError : public base::Error {
 public:
  explicit UsageError(const std::string& text) : Error(text) {}
};

/// Quiet: errors only.
void tell(std::ostream& err, const std::vector<base::Finding>& findings, bool quiet) {
  for (const base::Finding& finding : findings) {
    if (quiet && finding.severity != base::Severity::error) continue;
    err << base::finding_text(finding) << '\n';
  }
}

/// "1 warning, 2 notes".
std::string findings_count(const std::vector<base::Finding>& findings) {
  const auto of = [&](base::Severity severity) {
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(), [&](const base::Finding& finding) {
          return finding.severity == severity;
        }));
  };
  const std::size_t notes = of(base::Severity::note);
  return base::counted(of(base::Severity::warning), "warning") +
         (notes > 0 ? ", " + base::counted(notes, "note") : "");
}

class Runner {
 public:
  Runner(const Command& command, const Surroundings& around)
      : command_(command), around_(around), units_(command.us_units) {}

  int carry_out() {
    switch (command_.verb) {
      case Verb::check:
        return check();
      case Verb::plan:
        return plan();
      case Verb::joints:
        return print(joints_json, joints_text);
      case Verb::turns:
        return command_.to_edit ? print_to_edit() : print(turns_json, turns_text);
      case Verb::cost:
        return print(cost_json, cost_text);
      case Verb::explain:
        return explain();
      case Verb::write:
        return write();
      case Verb::figure:
        return figure();
      case Verb::plugins:
        return plugins();
    }
    return exit_our_bug;
  }

 private:
  std::ostream& out() const { return *around_.out; }
  std::ostream& err() const { return *around_.err; }

  void tell(const std::vector<base::Finding>& findings) const {
    cli::tell(err(), findings, command_.quiet);
  }

  planner::PlanParams plan_params(const planner::Inputs& inputs) const {
    planner::PlanParams params;
    params.search = order::search_params(command_.effort);
    if (!command_.start_from.empty()) {
      params.start = io::read_earlier_order(command_.start_from, inputs.weldment);
    }
    return params;
  }

  plan::Plan make_plan() const {
    const planner::Inputs inputs = io::read_inputs(command_.file);
    planner::PlanParams params = plan_params(inputs);
    if (around_.progress_wanted && !command_.quiet) {
      params.progress = [this](std::string_view stage) { err() << "planning: " << stage << "\n"; };
    }
    // The plan holds its own copy of everything it needs from the inputs.
    return planner::make_plan(inputs, params);
  }

  int check() const {
    const planner::Inputs inputs = io::read_inputs(command_.file);
    tell(inputs.findings);
    if (command_.json) {
      out() << findings_json(inputs.findings);
      return exit_done;
    }
    std::size_t seams = 0;
    for (const joint::Joint& joint : inputs.weldment.joints) seams += joint.seams.size();
    out() << command_.file.string() << ": "
          << base::counted(inputs.weldment.members.size(), "member") << ", "
          << base::counted(inputs.weldment.joints.size(), "joint") << ", "
          << base::counted(seams, "seam") << "; no errors, " << findings_count(inputs.findings)
          << "\nFiles read; whether they can be welded and held: seamturn plan\n";
    return exit_done;
  }

  int print(std::string (*json)(const plan::Plan&),
            std::string (*text)(const plan::Plan&, const UnitsShown&)) const {
    const plan::Plan plan = make_plan();
    tell(plan.findings);
    out() << (command_.json ? json(plan) : text(plan, units_));
    return exit_done;
  }

  int print_to_edit() const {
    if (command_.json) throw UsageError("--to-edit prints XML for people; leave --json away");
    const plan::Plan plan = make_plan();
    tell(plan.findings);
    out() << order_to_edit_text(plan);
    return exit_done;
  }

  int explain() const {
    const planner::Inputs inputs = io::read_inputs(command_.file);
    const plan::Plan plan = planner::make_plan(inputs, plan_params(inputs));
    tell(plan.findings);
    const auto steps = figures::explain(inputs, plan, command_.joint, command_.figure);
    if (!steps) throw UsageError(steps.error().text);
    const std::string joint = figures::joint_named(plan, command_.joint);
    out() << (command_.json ? explain_json(joint, *steps) : explain_text(joint, *steps, units_));
    return exit_done;
  }

  std::vector<std::filesystem::path> plugin_folders() const {
    std::vector<std::filesystem::path> folders = command_.plugin_folders;
    std::size_t start = 0;
    while (start < around_.plugin_path.size()) {
      const std::size_t end =
          std::min(around_.plugin_path.find(':', start), around_.plugin_path.size());
      if (end > start) folders.emplace_back(around_.plugin_path.substr(start, end - start));
      start = end + 1;
    }
    folders.push_back(plugin_host::installed_plugin_folder());
    return folders;
  }

  int plan() const {
    const plan::Plan plan = make_plan();
    tell(plan.findings);
    std::vector<std::string> files;
    if (!command_.output.empty()) {
      const std::vector<io::Document> documents = all_documents(plan);
      io::write_folder(command_.output, documents);
      for (const io::Document& document : documents) files.push_back(document.name);
    }
    out() << (command_.json ? plan_json(plan, files)
                            : summary_text(plan, units_, command_.output.string(), files));
    return exit_done;
  }

  std::vector<io::Document> all_documents(const plan::Plan& plan) const {
    const std::string xml = io::plan_xml(plan);
    const plugin_host::PluginHost host(plugin_folders());
    std::vector<io::Document> documents = {io::Document{"plan.xml", xml}};
    std::set<std::string> names = {"plan.xml"};
    for (const std::string& id : host.writer_ids()) {
      for (const std::string& name : host.document_names(id, xml)) {
        if (!names.insert(name).second) {
          throw base::UnavailableError("two plugins want to write " + name + "; the second is " +
                                       id);
        }
        documents.push_back(io::Document{name, host.write_document(id, xml, name)});
      }
    }
    return documents;
  }

  /// The plan a writer gets: a saved one as it is, or one made now.
  std::string plan_bytes() const {
    std::string bytes = io::read_bytes(command_.file);
    if (io::is_plan_xml(bytes)) {
      if (!command_.start_from.empty()) {
        throw UsageError("--start-from is for planning a weldment; " + command_.file.string() +
                         " is a plan already");
      }
      io::check_plan_xml(bytes, command_.file.string());
      return bytes;
    }
    const plan::Plan plan = make_plan();
    tell(plan.findings);
    return io::plan_xml(plan);
  }

  int write() const {
    const plugin_host::PluginHost host(plugin_folders());
    const std::string xml = plan_bytes();
    const std::vector<std::string> names = host.document_names(command_.writer, xml);
    const std::string bytes = host.write_document(command_.writer, xml, chosen_item(names));
    if (command_.output == "-") {
      out() << bytes;
    } else {
      io::write_file(command_.output, bytes);
    }
    return exit_done;
  }

  std::string chosen_item(const std::vector<std::string>& names) const {
    std::string list;
    for (const std::string& name : names) list += "\n  " + name;
    const bool known = std::find(names.begin(), names.end(), command_.item) != names.end();
    if (known) return command_.item;
    if (!command_.item.empty()) {
      throw UsageError("plugin " + command_.writer + " writes no \"" + command_.item +
                       "\" from this plan; it writes:" + list);
    }
    if (names.size() == 1) return names.front();
    throw UsageError("plugin " + command_.writer + " writes " + std::to_string(names.size()) +
                     " documents from this plan; choose one with --item:" + list);
  }

  int figure() const {
    if (command_.figure.empty()) {
      out() << (command_.json ? cards_json() : cards_text());
      return exit_done;
    }
    const base::FigureCard* card = figures::find_card(command_.figure);
    if (card != nullptr && command_.arguments.empty()) {
      out() << (command_.json ? cards_json() : card_text(*card));
      return exit_done;
    }
    const figures::FigureAnswer answer =
        figures::evaluate_figure(command_.figure, command_.arguments);
    if (const auto* usage = std::get_if<figures::FigureUsage>(&answer))
      throw UsageError(usage->text);
    if (const auto* refused = std::get_if<std::vector<base::Finding>>(&answer)) {
      throw base::InputError(*refused);
    }
    const figures::FigureResult& result = std::get<figures::FigureResult>(answer);
    tell(result.findings);
    if (result.card != nullptr) card = result.card;
    out() << (command_.json ? figure_json(result, *card) : figure_text(result, *card));
    return exit_done;
  }

  int plugins() const {
    const plugin_host::PluginHost host(plugin_folders());
    out() << (command_.json ? plugins_json(host.verdicts()) : plugins_text(host.verdicts()));
    return exit_done;
  }

  const Command& command_;
  const Surroundings& around_;
  UnitsShown units_;
};

}  // namespace

int run(const Command& command, const Surroundings& around) {
  std::ostream& err = *around.err;
  try {
    const int code = Runner(command, around).carry_out();
    around.out->flush();
    if (!*around.out) {
      err << "seamturn: writing the output failed\n";
      return exit_unavailable;
    }
    return code;
  } catch (const base::InputError& error) {
    if (command.json) *around.out << findings_json(error.findings());
    tell(err, error.findings(), command.quiet);
    return exit_findings;
  } catch (const UsageError& error) {
    err << "seamturn: " << error.what() << '\n';
    return exit_usage;
  } catch (const base::UnavailableError& error) {
    err << "seamturn: " << error.what() << '\n';
    return exit_unavailable;
  } catch (const std::exception& error) {
    err << "seamturn: this is a bug of ours, please report it with the file: " << error.what()
        << '\n';
    return exit_our_bug;
  }
}

}  // namespace seamturn::cli
