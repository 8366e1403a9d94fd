// SPDX-License-Identifier: MIT
// The border of stance-drawing: one document a stance, none when nothing is turned.
#include <stdexcept>

#include "seamturn/plugin_abi/shim.hpp"
#include "stance_drawing/drawing.hpp"

namespace {

using seamturn::plan_reader::PlanTree;

std::string name_of(const pugi::xml_node& stance) {
  return std::string("stances/") + seamturn::plan_reader::text(stance, "id") + ".svg";
}

std::vector<std::string> document_names(std::string_view plan_xml) {
  const PlanTree plan(plan_xml);
  std::vector<std::string> names;
  for (const pugi::xml_node stance : plan.root().child("stances").children("stance")) {
    names.push_back(name_of(stance));
  }
  return names;
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  const PlanTree plan(plan_xml);
  for (const pugi::xml_node stance : plan.root().child("stances").children("stance")) {
    if (name_of(stance) != name) continue;
    out << seamturn::stance_drawing::stance_svg(plan, seamturn::plan_reader::text(stance, "id"));
    return;
  }
  throw std::runtime_error("the plan gives no document \"" + std::string(name) + "\"");
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("stance-drawing",
                         "Each stance as a picture: the part as it hangs, seams, torch (SVG)",
                         "1.0",
                         document_names,
                         write_document);
