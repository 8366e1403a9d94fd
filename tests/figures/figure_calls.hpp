// SPDX-License-Identifier: MIT
// Calling a figure in a test and taking its result apart.
#pragma once

#include <string>
#include <vector>

#include "oracle.hpp"
#include "seamturn/figures/catalogue.hpp"

namespace seamturn::tests {

using Arguments = std::vector<std::pair<std::string, std::string>>;
using figures::FigureAnswer;
using figures::FigureResult;

inline FigureResult result_of(const std::string& name, const Arguments& arguments) {
  FigureAnswer answer = figures::evaluate_figure(name, arguments);
  if (const auto* usage = std::get_if<figures::FigureUsage>(&answer)) FAIL(usage->text);
  if (const auto* refused = std::get_if<std::vector<base::Finding>>(&answer)) {
    FAIL(refused->front().text);
  }
  return std::get<FigureResult>(answer);
}

inline std::string usage_of(const std::string& name, const Arguments& arguments) {
  const FigureAnswer answer = figures::evaluate_figure(name, arguments);
  const auto* usage = std::get_if<figures::FigureUsage>(&answer);
  return usage == nullptr ? std::string("no usage") : usage->text;
}

inline std::string code_of(const std::string& name, const Arguments& arguments) {
  const FigureAnswer answer = figures::evaluate_figure(name, arguments);
  const auto* findings = std::get_if<std::vector<base::Finding>>(&answer);
  return findings == nullptr ? std::string("no finding") : findings->front().code;
}

inline double number(const FigureResult& result, const std::string& name) {
  for (const auto& [key, value] : result.values) {
    if (key == name) return std::get<double>(value.value);
  }
  FAIL("no value named ", name);
  return 0.0;
}

inline std::string word(const FigureResult& result, const std::string& name) {
  for (const auto& [key, value] : result.values) {
    if (key == name) return std::get<std::string>(value.value);
  }
  FAIL("no value named ", name);
  return {};
}

inline double principal(const FigureResult& result) {
  return std::get<double>(result.principal.value);
}

}  // namespace seamturn::tests
