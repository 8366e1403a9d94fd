// SPDX-License-Identifier: MIT
// Is the weld of a sensible size, and what throat counts: the rules of codes, one by one.
#include <algorithm>

#include "detail_explain.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::figures::detail {

namespace {

/// Throat that counts, per seam, in the position it is planned in.
void add_counted_throat(const plan::PlannedSeam& seam, ExplainStep& step) {
  const plan::PlannedThroat& throat = *seam.counted;
  const std::string name = "throat counted of " + seam.id;
  if (!throat.refused.empty()) {
    step.results.push_back(Given{name, throat.refused, "", ""});
    return;
  }
  add(step.results,
      name,
      throat.throat_mm,
      "mm",
      "depth less " + base::digits_text(throat.deduction_mm) + " mm in this position" +
          (throat.with_cover ? ", with the cover's fillet" : "") + " [" +
          std::string(throat.citation.key) + " " + std::string(throat.citation.locator) + ", " +
          std::string(base::status_name(throat.citation.status)) + "]");
}

/// Every number judged, once, against the tightest of the rules about it.
void add_size_limits(const std::vector<joint::SizeCheck>& checks, ExplainStep& step) {
  std::vector<std::string> told;
  for (const joint::SizeCheck& first : checks) {
    if (std::find(told.begin(), told.end(), first.subject) != told.end()) continue;
    told.push_back(first.subject);
    const joint::SizeCheck* low = nullptr;
    const joint::SizeCheck* high = nullptr;
    for (const joint::SizeCheck& check : checks) {
      if (check.subject != first.subject) continue;
      const bool at_least = check.bound == joint::SizeBound::at_least;
      if (at_least && (low == nullptr || check.required > low->required)) low = &check;
      if (!at_least && (high == nullptr || check.required < high->required)) high = &check;
    }
    Limits limits;
    for (const joint::SizeCheck* check : {low, high}) {
      if (check == nullptr) continue;
      (check == low ? limits.least : limits.largest) = check->required;
      limits.origin += (limits.origin.empty() ? "" : " and ") + check->rule;
    }
    step.how_close.push_back(how_close(first.subject, first.found, first.unit, std::move(limits)));
  }
}

}  // namespace

void explain_weld_size(const Subject& subject, std::vector<ExplainStep>& steps) {
  if (!subject.planned.size) return;  // as thick as the plate
  const plan::PlannedSize& size = *subject.planned.size;
  ExplainStep step = step_of(joint::weld_size_card(), "weld-size", "joint " + subject.described.id);
  step.sources.clear();
  if (!size.refused.empty()) {
    step.results.push_back(Given{"refused", size.refused, "", ""});
    steps.push_back(std::move(step));
    return;
  }
  for (const joint::SizeCheck& check : size.checks) {
    step.results.push_back(Given{check.rule, joint::check_text(check), "", ""});
  }
  add_size_limits(size.checks, step);
  const bool groove = std::holds_alternative<joint::Groove>(subject.described.preparation);
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    if (groove && seam.counted) add_counted_throat(seam, step);
  }
  step.results.push_back(Given{"together", std::string(joint::verdict_name(size.verdict)), "", ""});
  steps.push_back(std::move(step));
}

}  // namespace seamturn::figures::detail
