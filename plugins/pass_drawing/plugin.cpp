// SPDX-License-Identifier: MIT
// The border of pass-drawing: one document per procedure, named after its id.
#include "pass_drawing/drawing.hpp"
#include "seamturn/plugin_abi/shim.hpp"

namespace {

using seamturn::plan_reader::PlanTree;

seamturn::plan_reader::ProcedureDocuments documents() {
  return {"drawings", "svg"};
}

std::vector<std::string> document_names(std::string_view plan_xml) {
  return documents().names(PlanTree(plan_xml));
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  const PlanTree plan(plan_xml);
  out << seamturn::pass_drawing::drawing_svg(plan, documents().procedure_of(plan, name));
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("pass-drawing",
                         "The passes of each procedure, drawn across the seam (SVG)",
                         "1.0",
                         document_names,
                         write_document);
