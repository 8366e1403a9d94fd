// SPDX-License-Identifier: MIT
#include "seamturn/base/error.hpp"

namespace seamturn::base {

namespace {

std::string joined(const std::vector<Finding>& findings) {
  std::string text;
  for (const Finding& finding : findings) {
    if (!text.empty()) text += '\n';
    text += finding_text(finding);
  }
  return text;
}

}  // namespace

InputError::InputError(std::vector<Finding> findings)
    : Error(joined(findings)), findings_(std::move(findings)) {}

void fail_contract(const char* condition, const char* file, int line, const std::string& values) {
  throw ContractViolation(std::string(file) + ":" + std::to_string(line) + ": required " +
                          condition + (values.empty() ? "" : "; values: " + values));
}

}  // namespace seamturn::base
