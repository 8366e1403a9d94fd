// SPDX-License-Identifier: MIT
#include "seamturn/base/finding.hpp"

#include <algorithm>
#include <utility>

#include "seamturn/base/error.hpp"
#include "seamturn/base/listed.hpp"

namespace seamturn::base {

namespace {

/// Blanks as wide as the line before a column (columns count characters of UTF-8, from 1).
std::string caret_padding(const std::string& line, int column) {
  std::string padding;
  int seen = 1;
  for (const char c : line) {
    const bool continues = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
    if (continues) continue;
    if (seen++ >= column) break;
    padding += c == '\t' ? '\t' : ' ';
  }
  return padding;
}

}  // namespace

std::string_view severity_name(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::warning:
      return "warning";
    case Severity::error:
      return "error";
  }
  return "error";
}

bool has_errors(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.severity == Severity::error;
  });
}

void append_findings(std::vector<Finding>& all, const std::vector<Finding>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

std::string_view said_without_joints(const Finding& finding) {
  return std::string_view(finding.text).substr(finding.joints.size);
}

Finding said_of_joints(Finding finding, std::vector<std::string> ids) {
  SEAMTURN_REQUIRE(!ids.empty(), finding.text);
  const std::string names = (ids.size() == 1 ? "joint " : "joints ") + listed(ids) + ": ";
  finding.text.replace(0, finding.joints.size, names);
  finding.joints = {std::move(ids), names.size()};
  return finding;
}

std::string finding_text(const Finding& finding) {
  std::string text;
  if (!finding.place.file.empty()) {
    text += finding.place.file;
    if (finding.place.line > 0) text += ':' + std::to_string(finding.place.line);
    if (finding.place.column > 0) text += ':' + std::to_string(finding.place.column);
    text += ": ";
  }
  text += std::string(severity_name(finding.severity)) + ": " + finding.text;
  text += " [" + finding.code + ']';
  if (!finding.excerpt.empty()) {
    text += "\n    " + finding.excerpt;
    if (finding.place.column > 0) {
      text += "\n    " +
              caret_padding(finding.excerpt, finding.place.column - finding.excerpt_column + 1) +
              '^';
    }
  }
  return text;
}

}  // namespace seamturn::base
