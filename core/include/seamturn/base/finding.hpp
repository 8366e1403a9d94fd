// SPDX-License-Identifier: MIT
// What the tool must tell its user: how grave, which stable code, where, what and what to do next.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace seamturn::base {

enum class Severity { note, warning, error };

/// "note", "warning" or "error".
[[nodiscard]] std::string_view severity_name(Severity severity);

/// Where something stands in a file. line and column count from 1; 0 means "the file as a whole".
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  bool operator==(const Place&) const = default;
};

/// The joints a text begins with, "joints J1, J2: ": the same said of others can be told with it.
struct NamedJoints {
  std::vector<std::string> ids;  ///< empty: the text names none so
  std::size_t size = 0;          ///< characters of the text that name them
  bool operator==(const NamedJoints&) const = default;
};

/// One thing to tell. The codes are listed in docs/findings.md and never renamed.
struct Finding {
  Severity severity = Severity::error;
  std::string code;        ///< stable, e.g. "read.unit.missing"
  std::string text;        ///< what was found, what was expected, what to do
  Place place;             ///< may be empty when the finding belongs to no file
  std::string excerpt;     ///< the source line, or empty
  int excerpt_column = 1;  ///< column of the excerpt's first character: a very long line is cut
  NamedJoints joints = {};
  std::string quantity = {};  ///< where a method's range is left: what leaves it, "heat input"
  bool operator==(const Finding&) const = default;
};

/// True when at least one finding is an error.
[[nodiscard]] bool has_errors(const std::vector<Finding>& findings);

/// Appends all of `more` to `all`.
void append_findings(std::vector<Finding>& all, const std::vector<Finding>& more);

/// The finding with its text said of joints: their names before it, or in place of those named
/// before. Units: none. Pre: one joint or more. Tests: base/finding - closed-form.
[[nodiscard]] Finding said_of_joints(Finding finding, std::vector<std::string> ids);

/// What the text says, without the joints it names first. Tests: base/finding - closed-form.
[[nodiscard]] std::string_view said_without_joints(const Finding& finding);

/// The finding as people read it: "file:line:column: error: text [code]", the source line and a
/// caret under the column. Ends without a newline.
[[nodiscard]] std::string finding_text(const Finding& finding);

}  // namespace seamturn::base
