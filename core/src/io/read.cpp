// SPDX-License-Identifier: MIT
#include "seamturn/io/read.hpp"

#include <algorithm>
#include <memory>

#include "detail_drafts.hpp"
#include "detail_file.hpp"
#include "detail_file_context.hpp"
#include "detail_markup_check.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::io {

namespace fs = std::filesystem;

namespace {

using detail::FileContext;
using detail::Spot;
using detail::Use;

constexpr std::string_view weldment_namespace = "urn:seamturn:weldment:1";
constexpr std::string_view library_namespace = "urn:seamturn:library:1";
constexpr std::string_view cell_namespace = "urn:seamturn:cell:1";

/// Reads the weldment, then what it uses, one after the other in one tree. What was read keeps the
/// text of its file for its places.
class Reading {
 public:
  explicit Reading(const fs::path& weldment_file) : file_(weldment_file) {}

  planner::Inputs run() {
    weldment();
    for (const Use& use : draft_.libraries) library(use);
    if (draft_.cell) cell(*draft_.cell);
    const bool has_libraries = !draft_.libraries.empty() && libraries_readable_;
    detail::check_references(draft_, library_, has_libraries, report_);
    draft_.weldment.joints = detail::build_joints(draft_, report_);
    fail_on_errors();
    return inputs();
  }

 private:
  using Text = std::shared_ptr<const detail::Source>;

  /// Null: cannot be read on; the report says why. Else the tree is that of the file.
  Text checked(const std::string& name, std::string bytes) {
    if (bytes.size() > detail::largest_file) {
      report_.error_of_file(name,
                            "read.file.too_large",
                            "the file is larger than " +
                                std::to_string(detail::largest_file / (1024 * 1024)) +
                                " MiB; expected a weldment, library or cell written by people; "
                                "check that this is the right file");
      return nullptr;
    }
    const auto text = std::make_shared<const detail::Source>(name, std::move(bytes));
    texts_.push_back(text);
    return detail::check_markup(*text, report_, tree_) ? text : nullptr;
  }

  void weldment() {
    const Text text = checked(file_.string(), read_bytes(file_));
    if (text == nullptr) fail();
    FileContext context{text, tree_, report_};
    if (!detail::check_root(context, "weldment", weldment_namespace)) fail();
    detail::read_weldment(context, draft_);
    if (draft_.libraries.empty()) no_library(context);
  }

  [[nodiscard]] fs::path path_of(const Use& use) const {
    return (file_.parent_path() / use.file).lexically_normal();
  }

  /// Null: told already.
  Text used(const Use& use, const fs::path& path) {
    try {
      return checked(path.string(), read_bytes(path));
    } catch (const base::UnavailableError& problem) {
      report_.error(
          use.spot,
          "read.file.unavailable",
          std::string(problem.what()) +
              "; expected a file there, relative to the weldment's folder; correct the path");
      return nullptr;
    }
  }

  void library(const Use& use) {
    const fs::path path = path_of(use);
    if (std::find(libraries_read_.begin(), libraries_read_.end(), path) != libraries_read_.end()) {
      report_.error(use.spot,
                    "read.use.twice",
                    "library " + detail::in_quotes(use.file) +
                        " is used twice; expected once; delete one of them");
      return;
    }
    libraries_read_.push_back(path);
    if (const Text text = used(use, path)) {
      FileContext context{text, tree_, report_};
      if (detail::check_root(context, "library", library_namespace)) {
        return detail::read_library(context, library_);
      }
    }
    libraries_readable_ = false;
  }

  void cell(const Use& use) {
    const Text text = used(use, path_of(use));
    if (text == nullptr) return;
    FileContext context{text, tree_, report_};
    if (detail::check_root(context, "cell", cell_namespace)) cell_ = detail::read_cell(context);
  }

  void no_library(const FileContext& context) {
    // A use that names none rightly was told where it stands; then this would be said twice.
    if (report_.error_count() > 0) return;
    report_.error(context.spot(context.tree.root()),
                  "read.use.no_library",
                  "the weldment uses no library, so no steel and no wire is known; expected "
                  "<use library=\"...\"/>; add it");
  }

  void fail_on_errors() {
    if (report_.error_count() > 0) fail();
  }

  [[noreturn]] void fail() { throw base::InputError(report_.sorted()); }

  planner::Inputs inputs() {
    planner::Inputs inputs;
    for (const Use& use : draft_.libraries) draft_.weldment.libraries.push_back(use.file);
    if (draft_.cell) draft_.weldment.cell = draft_.cell->file;
    const cell::PositionerKind kind =
        cell_ ? cell_->positioner.kind : cell::PositionerKind::tilt_rotate;
    for (joint::Setup& setup : draft_.weldment.setups) {
      setup.X_DJ.rotation =
          geom::rotation_about(cell::faceplate_normal_D(kind), setup.turned) * setup.X_DJ.rotation;
    }
    inputs.weldment = std::move(draft_.weldment);
    inputs.library = std::move(library_);
    inputs.cell = std::move(cell_);
    inputs.findings = report_.sorted();
    return inputs;
  }

  fs::path file_;
  detail::Report report_;
  std::vector<Text> texts_;  // spots point into them until every finding is written
  detail::MarkupTree tree_;  // of the file being read
  detail::WeldmentDraft draft_;
  planner::Library library_;
  std::optional<cell::Cell> cell_;
  std::vector<fs::path> libraries_read_;
  bool libraries_readable_ = true;
};

}  // namespace

planner::Inputs read_inputs(const fs::path& weldment_file) {
  return Reading(weldment_file).run();
}

}  // namespace seamturn::io
