// SPDX-License-Identifier: MIT
// What reading an element needs to know of its file.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "detail_markup_tree.hpp"
#include "detail_report.hpp"
#include "detail_source.hpp"

namespace seamturn::io::detail {

/// Text and tree of a file together, so that every element knows its byte.
struct FileContext {
  const std::shared_ptr<const Source>& source;
  const MarkupTree& tree;  ///< of the source
  Report& report;
  /// Of an unknown name: a warning in a file of a newer minor schema.
  base::Severity unknown = base::Severity::error;

  [[nodiscard]] Spot spot(const Element& element) const {
    return Spot{source.get(), offset(element)};
  }
  /// Byte offset of the name of an element.
  [[nodiscard]] std::size_t offset(const Element& element) const {
    return static_cast<std::size_t>(element.name().data() - source->bytes().data());
  }
};

/// Checks root name, namespace and schema="major.minor". False: do not read on.
[[nodiscard]] bool check_root(FileContext& context,
                              std::string_view root_name,
                              std::string_view root_namespace);

}  // namespace seamturn::io::detail
