// SPDX-License-Identifier: MIT
// Is the weld of a sensible size, and what throat counts: the rules of codes, one by one.
#include "detail_explain.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::figures::detail {

namespace {

/// Throat that counts, per seam, in the position it is planned in.
void add_counted_throat(const plan::PlannedSeam& seam, ExplainStep& step) {
  const plan::PlannedThroat& counted = *seam.counted;
  const std::string name = "throat counted of " + seam.id;
  if (!counted.refused.empty()) {
    step.results.push_back(Given{name, counted.refused, "", ""});
    return;
  }
  add(step.results,
      name,
      counted.throat_mm,
      "mm",
      "depth less " + base::digits_text(counted.deduction_mm) + " mm in this position" +
          (counted.with_cover ? ", with the cover's fillet" : "") + " [" +
          std::string(counted.citation.key) + " " + std::string(counted.citation.locator) + ", " +
          std::string(base::status_name(counted.citation.status)) + "]");
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
  const bool groove = std::holds_alternative<joint::Groove>(subject.described.preparation);
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    if (groove && seam.counted) add_counted_throat(seam, step);
  }
  step.results.push_back(Given{"together", std::string(joint::verdict_name(size.verdict)), "", ""});
  steps.push_back(std::move(step));
}

}  // namespace seamturn::figures::detail
