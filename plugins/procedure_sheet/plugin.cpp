// SPDX-License-Identifier: MIT
// The border of procedure-sheet: one document per procedure, named after its id.
#include "procedure_sheet/sheet.hpp"
#include "seamturn/plugin_abi/shim.hpp"

namespace {

using seamturn::plan_reader::PlanTree;

seamturn::plan_reader::ProcedureDocuments documents() {
  return {"sheets", "xml"};
}

std::vector<std::string> document_names(std::string_view plan_xml) {
  return documents().names(PlanTree(plan_xml));
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  const PlanTree plan(plan_xml);
  out << seamturn::procedure_sheet::sheet_xml(plan, documents().procedure_of(plan, name));
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("procedure-sheet",
                         "One procedure sheet (XML) per group of joints welded alike",
                         "1.0",
                         document_names,
                         write_document);
