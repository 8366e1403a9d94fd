// SPDX-License-Identifier: MIT
// All findings of all files, up to a number a person can still read.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "detail_source.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::io::detail {

/// What is kept; beyond it findings are only counted, so that no broken file can flood the reader.
inline constexpr std::size_t most_findings = 200;

/// need.
class Report {
 public:
  void add(base::Severity severity, const Spot& spot, std::string code, std::string text);
  void error(const Spot& spot, std::string code, std::string text) {
    add(base::Severity::error, spot, std::move(code), std::move(text));
  }
  /// About a file as a whole.
  void error_of_file(const std::string& file, std::string code, std::string text);
  /// Errors so far, also those beyond the limit.
  [[nodiscard]] std::size_t error_count() const { return error_count_; }
  /// In order of the files as first met, then of line and column; a closing note tells how many
  /// were left out.
  [[nodiscard]] std::vector<base::Finding> sorted() const;

 private:
  void keep(base::Finding finding);

  std::vector<base::Finding> findings_;
  std::vector<std::string> files_;  // in the order first met
  std::size_t error_count_ = 0;
  std::size_t left_out_ = 0;
};

}  // namespace seamturn::io::detail
