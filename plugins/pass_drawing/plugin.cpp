// SPDX-License-Identifier: MIT
// The border of pass-drawing: one document per procedure, named after its id.
#include <stdexcept>

#include "pass_drawing/drawing.hpp"
#include "seamturn/plugin_abi/shim.hpp"

namespace {

using seamturn::plan_reader::PlanTree;
using seamturn::plan_reader::text;

/// Ids become file names; the core makes them of letters and digits.
std::string document_name(const std::string& id) {
  if (id.empty() || id.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
                                         "0123456789-_") != std::string::npos) {
    throw std::runtime_error("procedure id \"" + id + "\" cannot be a file name");
  }
  return "drawings/" + id + ".svg";
}

std::vector<std::string> document_names(std::string_view plan_xml) {
  const PlanTree plan(plan_xml);
  std::vector<std::string> names;
  for (const pugi::xml_node procedure : plan.root().child("procedures").children("procedure")) {
    names.push_back(document_name(text(procedure, "id")));
  }
  return names;
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  const PlanTree plan(plan_xml);
  for (const pugi::xml_node procedure : plan.root().child("procedures").children("procedure")) {
    const std::string id = text(procedure, "id");
    if (document_name(id) == name) {
      out << seamturn::pass_drawing::drawing_svg(plan, id);
      return;
    }
  }
  throw std::runtime_error("the plan gives no document \"" + std::string(name) + "\"");
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("pass-drawing",
                         "The passes of each procedure, drawn across the seam (SVG)",
                         "1.0",
                         document_names,
                         write_document);
