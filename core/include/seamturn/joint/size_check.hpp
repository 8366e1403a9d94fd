// SPDX-License-Identifier: MIT
// A rule about a weld's size held against one number, in a form that sheets and `explain` print.
// A rule from memory, proposed or common practice can condemn a size but never alone declare it
// sound: the verdict then is "not proved".
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::joint {

enum class SizeBound { at_least, at_most };

/// One rule, one number.
struct SizeCheck {
  std::string rule;  ///< stable id, e.g. "least-leg-aws"
  std::string
      question;         ///< what is asked, e.g. "least size"; several rules may answer one question
  std::string subject;  ///< the number judged, e.g. "leg"
  SizeBound bound = SizeBound::at_least;
  double required = 0.0;
  double found = 0.0;
  std::string unit = "mm";
  bool holds = false;
  base::Citation citation;
  std::string otherwise;  ///< what follows when it does not hold; may be empty
};

enum class SizeVerdict { holds, not_proved, fails };

/// "holds", "not proved", "fails".
[[nodiscard]] std::string_view verdict_name(SizeVerdict verdict);

/// The rule held against the number; equality holds (1e-9 of the limit is rounding).
/// Pre: finite values. Source: none - comparison. Tests: joint/size_check - law.
[[nodiscard]] SizeCheck make_size_check(SizeCheck unjudged);

/// All rules together: fails when one fails; holds when each question has at least one verified or
/// computed rule; otherwise not proved. No rule at all proves nothing.
/// Source: none - project choice. Tests: joint/size_check - law.
[[nodiscard]] SizeVerdict size_verdict(std::span<const SizeCheck> checks);
/// One question alone; the same rule.
[[nodiscard]] SizeVerdict size_verdict(std::span<const SizeCheck> checks,
                                       std::string_view question);

/// "leg 4 mm, at least 5 mm: fails [AWS D1.1 ..., from memory]".
[[nodiscard]] std::string check_text(const SizeCheck& check);

/// A warning joint.size.rule_broken for each rule that fails, a note joint.size.not_proved for each
/// question that only weak rules answer.
[[nodiscard]] std::vector<base::Finding> size_findings(std::span<const SizeCheck> checks);

}  // namespace seamturn::joint
