// SPDX-License-Identifier: MIT
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

void put_citation(pugi::xml_node node, const base::Citation& citation) {
  put_text(node, "source", citation.key);
  put_text(node, "locator", citation.locator);
  put_text(node, "status", base::status_name(citation.status));
}

void put_check(pugi::xml_node parent, const joint::SizeCheck& check) {
  pugi::xml_node node = parent.append_child("check");
  put_text(node, "rule", check.rule);
  put_text(node, "question", check.question);
  put_text(node, "subject", check.subject);
  put_number(node, "found", check.found);
  put_text(node, "bound", check.bound == joint::SizeBound::at_least ? "at least" : "at most");
  put_number(node, "required", check.required);
  put_text_if(node, "unit", check.unit);
  put_flag(node, "holds", check.holds);
  put_text_if(node, "otherwise", check.holds ? "" : check.otherwise);
  put_citation(node, check.citation);
}

}  // namespace

void put_weld_size(pugi::xml_node joint, const plan::PlannedSize& size) {
  pugi::xml_node node = joint.append_child("weld-size");
  if (!size.refused.empty()) {
    put_text(node, "refused", size.refused);
    return;
  }
  put_text(node, "verdict", joint::verdict_name(size.verdict));
  for (const joint::SizeCheck& check : size.checks) put_check(node, check);
}

void put_counted_throat(pugi::xml_node seam, const plan::PlannedThroat& counted) {
  pugi::xml_node node = seam.append_child("counted-throat");
  if (!counted.refused.empty()) {
    put_text(node, "refused", counted.refused);
    return;
  }
  put_number(node, "throat_mm", counted.throat_mm);
  put_number(node, "deduction_mm", counted.deduction_mm);
  put_flag(node, "with_cover", counted.with_cover);
  put_citation(node, counted.citation);
}

}  // namespace seamturn::io::detail
