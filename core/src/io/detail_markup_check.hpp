// SPDX-License-Identifier: MIT
// What the parser would let pass. pugixml reads on over two roots, stray text, duplicate
// attributes, bare '&', undefined entities, control characters and broken UTF-8; XML 1.0 does not,
// nor do we.
#pragma once

#include <cstddef>

#include "detail_markup_index.hpp"
#include "detail_report.hpp"
#include "detail_source.hpp"

namespace seamturn::io::detail {

inline constexpr std::size_t deepest_nesting = 16;      // ours need four
inline constexpr std::size_t longest_attribute = 4096;  // bytes
inline constexpr std::size_t most_attributes = 100;     // of one element
inline constexpr std::size_t most_elements = 200'000;   // of one file

/// Reports every breach of well-formedness and of our limits. False: do not parse the file; the
/// findings so far explain why. True may come with findings that do not hinder reading on. What was
/// met goes into an empty index.
[[nodiscard]] bool check_markup(const Source& source, Report& report, MarkupIndex& index);

}  // namespace seamturn::io::detail
