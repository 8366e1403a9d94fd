// SPDX-License-Identifier: MIT
// The smallest useful plugin: the ids of the joints, one a line. No XML parser, to keep it short.
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/plugin_abi/shim.hpp"

namespace {

std::vector<std::string> document_names(std::string_view) {
  return {"joints.txt"};
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  if (name != "joints.txt") throw std::runtime_error("only joints.txt is written");
  const std::string_view start = "<joint id=\"";
  std::size_t at = plan_xml.find("<joints");
  while ((at = plan_xml.find(start, at)) != std::string_view::npos) {
    at += start.size();
    out << plan_xml.substr(at, plan_xml.find('"', at) - at) << "\n";
  }
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("joint-list", "Ids of the joints", "1.0", document_names, write_document);
