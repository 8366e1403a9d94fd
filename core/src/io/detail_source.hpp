// SPDX-License-Identifier: MIT
// A file as its reader sees it: text, spots in it, and the line around a spot.
#pragma once

#include <cstddef>
#include <string>

#include "seamturn/base/file_text.hpp"

namespace seamturn::io::detail {

using Source = base::FileText;
using base::Spot;

/// A piece of a source line for people, and the column its first character has in the line.
struct Excerpt {
  std::string text;
  int first_column = 1;
};

/// The line around an offset, cut to about 160 characters; what no terminal should get becomes '?'.
[[nodiscard]] Excerpt excerpt_at(const Source& source, std::size_t offset);

}  // namespace seamturn::io::detail
