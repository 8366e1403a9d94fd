// SPDX-License-Identifier: MIT
#include <algorithm>
#include <tuple>

#include "detail_report.hpp"

namespace seamturn::io::detail {

void Report::add(base::Severity severity, const Spot& spot, std::string code, std::string text) {
  base::Finding finding;
  finding.severity = severity;
  finding.code = std::move(code);
  finding.text = std::move(text);
  if (spot.file != nullptr) {
    finding.place = spot.place();
    Excerpt excerpt = excerpt_at(*spot.file, spot.offset);
    finding.excerpt = std::move(excerpt.text);
    finding.excerpt_column = excerpt.first_column;
  }
  keep(std::move(finding));
}

void Report::error_of_file(const std::string& file, std::string code, std::string text) {
  base::Finding finding;
  finding.code = std::move(code);
  finding.text = std::move(text);
  finding.place.file = file;
  keep(std::move(finding));
}

void Report::keep(base::Finding finding) {
  if (finding.severity == base::Severity::error) ++error_count_;
  const std::string& file = finding.place.file;
  if (std::find(files_.begin(), files_.end(), file) == files_.end()) files_.push_back(file);
  // The first error is kept always: without it the reading would look clean.
  const bool first_error = finding.severity == base::Severity::error && error_count_ == 1;
  if (findings_.size() >= most_findings && !first_error) {
    ++left_out_;
    return;
  }
  findings_.push_back(std::move(finding));
}

std::vector<base::Finding> Report::sorted() const {
  std::vector<base::Finding> all = findings_;
  const auto rank = [this](const base::Finding& finding) {
    return std::find(files_.begin(), files_.end(), finding.place.file) - files_.begin();
  };
  std::stable_sort(all.begin(), all.end(), [&](const base::Finding& a, const base::Finding& b) {
    return std::make_tuple(rank(a), a.place.line, a.place.column) <
           std::make_tuple(rank(b), b.place.line, b.place.column);
  });
  if (left_out_ > 0) {
    base::Finding note;
    note.severity = base::Severity::note;
    note.code = "read.findings.more";
    note.text = std::to_string(left_out_) +
                " more finding(s) are not shown; mend those above and read again";
    all.push_back(std::move(note));
  }
  return all;
}

}  // namespace seamturn::io::detail
