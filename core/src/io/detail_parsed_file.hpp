// SPDX-License-Identifier: MIT
// A file as source and tree together, so that every attribute knows its byte.
#pragma once

#include <memory>
#include <pugixml.hpp>
#include <string>
#include <string_view>

#include "detail_markup_index.hpp"
#include "detail_report.hpp"
#include "detail_source.hpp"

namespace seamturn::io::detail {

/// Larger files are refused unread. A weldment of a thousand joints has 0.3 MB.
inline constexpr std::size_t largest_file = std::size_t{64} * 1024 * 1024;

/// Not movable: the tree points into it. What is read may outlive it and share the source.
struct ParsedFile {
  std::shared_ptr<const Source> source;
  std::string buffer;  ///< parsed in place: pointers into it are byte offsets of the source
  pugi::xml_document document;
  MarkupIndex index;  ///< of the source

  [[nodiscard]] Spot spot(const pugi::xml_attribute& attribute) const;
  [[nodiscard]] Spot spot(const pugi::xml_node& element) const;
  /// Byte offset of a name or value of the tree.
  [[nodiscard]] std::size_t offset(const char* text) const {
    return static_cast<std::size_t>(text - buffer.data());
  }
};

/// The source, not yet parsed.
[[nodiscard]] std::unique_ptr<ParsedFile> make_parsed_file(std::string name, std::string bytes);
/// Checks the markup and builds the tree. False: do not read it; the report says why.
[[nodiscard]] bool parse(ParsedFile& file, Report& report);

/// What reading an element needs to know of its file.
struct FileContext {
  const ParsedFile& file;
  Report& report;
  /// Of an unknown name: a warning in a file of a newer minor schema.
  base::Severity unknown = base::Severity::error;
};

/// Checks root name, namespace and schema="major.minor". False: do not read on.
[[nodiscard]] bool check_root(FileContext& context,
                              std::string_view root_name,
                              std::string_view root_namespace);

}  // namespace seamturn::io::detail
