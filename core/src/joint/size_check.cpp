// SPDX-License-Identifier: MIT
#include "seamturn/joint/size_check.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::joint {

namespace {

using base::rounding_ratio;

bool is_strong(const SizeCheck& check) {
  return check.citation.status == base::Status::verified ||
         check.citation.status == base::Status::computed;
}

std::string quantity(double value, const std::string& unit) {
  return base::digits_text(value) + (unit.empty() ? "" : " " + unit);
}

std::string source_of(const SizeCheck& check) {
  return std::string(check.citation.key) + " " + std::string(check.citation.locator) + ", " +
         std::string(base::status_name(check.citation.status));
}

/// The questions in the order they were first asked.
std::vector<std::string> questions_of(std::span<const SizeCheck> checks) {
  std::vector<std::string> questions;
  for (const SizeCheck& check : checks) {
    if (std::find(questions.begin(), questions.end(), check.question) == questions.end()) {
      questions.push_back(check.question);
    }
  }
  return questions;
}

base::Finding broken_finding(const SizeCheck& check) {
  const std::string text = "rule " + check.rule + ": " + check_text(check) +
                           (check.otherwise.empty() ? "" : ". " + check.otherwise);
  return base::Finding{base::Severity::warning, "joint.size.rule_broken", text, {}, {}};
}

base::Finding unproved_finding(std::span<const SizeCheck> checks, const std::string& question) {
  std::string rules;
  for (const SizeCheck& check : checks) {
    if (check.question != question) continue;
    rules += (rules.empty() ? "" : "; ") + check.rule + " (" + source_of(check) + ")";
  }
  return base::Finding{base::Severity::note,
                       "joint.size.not_proved",
                       "question \"" + question + "\": every rule holds, but none of them was " +
                           "read in its document: " + rules + ". Compare with the document",
                       {},
                       {}};
}

}  // namespace

std::string_view verdict_name(SizeVerdict verdict) {
  switch (verdict) {
    case SizeVerdict::holds:
      return "holds";
    case SizeVerdict::not_proved:
      return "not proved";
    case SizeVerdict::fails:
      return "fails";
  }
  return "";
}

SizeCheck make_size_check(SizeCheck unjudged) {
  SEAMTURN_REQUIRE(std::isfinite(unjudged.required) && std::isfinite(unjudged.found),
                   unjudged.rule,
                   unjudged.required,
                   unjudged.found);
  const double slack = rounding_ratio * std::abs(unjudged.required);
  unjudged.holds = unjudged.bound == SizeBound::at_least
                       ? unjudged.found >= unjudged.required - slack
                       : unjudged.found <= unjudged.required + slack;
  return unjudged;
}

SizeVerdict size_verdict(std::span<const SizeCheck> checks, std::string_view question) {
  bool proved = false;
  for (const SizeCheck& check : checks) {
    if (check.question != question) continue;
    if (!check.holds) return SizeVerdict::fails;
    proved = proved || is_strong(check);
  }
  return proved ? SizeVerdict::holds : SizeVerdict::not_proved;
}

SizeVerdict size_verdict(std::span<const SizeCheck> checks) {
  bool proved = !checks.empty();
  for (const std::string& question : questions_of(checks)) {
    const SizeVerdict one = size_verdict(checks, question);
    if (one == SizeVerdict::fails) return one;
    proved = proved && one == SizeVerdict::holds;
  }
  return proved ? SizeVerdict::holds : SizeVerdict::not_proved;
}

std::string check_text(const SizeCheck& check) {
  return check.subject + " " + quantity(check.found, check.unit) + ", " +
         (check.bound == SizeBound::at_least ? "at least " : "at most ") +
         quantity(check.required, check.unit) + ": " + (check.holds ? "holds" : "fails") + " [" +
         source_of(check) + "]";
}

std::vector<base::Finding> size_findings(std::span<const SizeCheck> checks) {
  std::vector<base::Finding> findings;
  for (const SizeCheck& check : checks) {
    if (!check.holds) findings.push_back(broken_finding(check));
  }
  for (const std::string& question : questions_of(checks)) {
    if (size_verdict(checks, question) == SizeVerdict::not_proved) {
      findings.push_back(unproved_finding(checks, question));
    }
  }
  return findings;
}

}  // namespace seamturn::joint
