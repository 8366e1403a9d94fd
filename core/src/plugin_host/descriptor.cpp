// SPDX-License-Identifier: MIT
#include <cstddef>
#include <string_view>

#include "detail_load.hpp"

namespace seamturn::plugin_host {

namespace {

/// Sizes of the structs as version 1 of the border knows them; longer ones are fine.
constexpr std::size_t plugin_size = offsetof(seamturn_plugin, writer) + sizeof(void*);
constexpr std::size_t writer_size = offsetof(seamturn_document_writer, write) + sizeof(void*);

std::string version_problem(const seamturn_plugin& plugin) {
  if (plugin.abi_version == SEAMTURN_ABI_VERSION) return {};
  return "was built for version " + std::to_string(plugin.abi_version) +
         " of the plugin border, this program speaks version " +
         std::to_string(SEAMTURN_ABI_VERSION) +
         (plugin.abi_version > SEAMTURN_ABI_VERSION ? ": use a newer seamturn"
                                                    : ": rebuild the plugin");
}

bool is_good_id(const char* id) {
  if (id == nullptr) return false;
  const std::string_view text(id);
  return !text.empty() && text.size() <= 64 &&
         text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos;
}

std::string writer_problem(const seamturn_document_writer* writer) {
  if (writer == nullptr) return "is a document writer without its table of functions";
  if (writer->struct_size < writer_size) {
    return "its table of functions is shorter than version 1 of the border demands";
  }
  if (writer->list == nullptr || writer->write == nullptr) {
    return "its table of functions has a gap";
  }
  return {};
}

}  // namespace

std::string descriptor_problem(const seamturn_plugin* plugin) {
  if (plugin == nullptr) return "its entry returned no description";
  // Size and version stand first in every version: nothing behind them is read before they fit.
  if (plugin->struct_size >= offsetof(seamturn_plugin, kind)) {
    std::string problem = version_problem(*plugin);
    if (!problem.empty()) return problem;
  }
  if (plugin->struct_size < plugin_size) {
    return "its description has " + std::to_string(plugin->struct_size) +
           " bytes, version 1 of the border demands " + std::to_string(plugin_size);
  }
  if (plugin->kind != SEAMTURN_KIND_DOCUMENT_WRITER) {
    return "is of kind " + std::to_string(plugin->kind) + ", which this version does not call";
  }
  if (plugin->plan_schema_major == 0) return "understands no version of plan.xml";
  if (!is_good_id(plugin->id)) {
    return "its id is not made of 1 to 64 lower-case letters, digits and '-'";
  }
  return writer_problem(plugin->writer);
}

std::string printable(std::string text) {
  constexpr std::size_t most = 2000;
  if (text.size() > most) {
    text.resize(most);
    text += " ...";
  }
  for (char& c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f) c = ' ';
  }
  return text;
}

std::string printable(const char* text) {
  return text == nullptr ? std::string() : printable(std::string(text));
}

}  // namespace seamturn::plugin_host
