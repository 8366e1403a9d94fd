// SPDX-License-Identifier: MIT
// One walk over the bytes of a file: what is no XML is told, what is becomes a tree. Parsers made
// to be quick read on over two roots, stray text, duplicate attributes, bare '&', undefined
// entities, control characters and broken UTF-8; XML 1.0 does not, nor do we.
#pragma once

#include <cstddef>

#include "detail_markup_tree.hpp"
#include "detail_report.hpp"
#include "detail_source.hpp"

namespace seamturn::io::detail {

inline constexpr std::size_t deepest_nesting = 16;      // ours need four
inline constexpr std::size_t longest_attribute = 4096;  // bytes
inline constexpr std::size_t most_attributes = 100;     // of one element
inline constexpr std::size_t most_elements = 200'000;   // of one file

/// Reports every breach of well-formedness and of our limits, and fills an empty tree. False: the
/// tree must not be read; the findings so far explain why. True may come with findings that do not
/// hinder reading on.
[[nodiscard]] bool check_markup(const Source& source, Report& report, MarkupTree& tree);

}  // namespace seamturn::io::detail
