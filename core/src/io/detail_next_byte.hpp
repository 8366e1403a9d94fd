// SPDX-License-Identifier: MIT
// A byte that is rare in a text, sought by one who walks through it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace seamturn::io::detail {

/// Where the next of a byte stands, sought anew only when that one is passed.
class NextByte {
 public:
  NextByte(std::string_view text, char byte) : text_(text), byte_(byte), next_(sought(0)) {}
  /// The text's size when none follows. Pre: never asked for less than before.
  std::size_t from(std::size_t at) {
    if (next_ < at) next_ = sought(at);
    return next_;
  }

 private:
  [[nodiscard]] std::size_t sought(std::size_t at) const {
    return std::min(text_.find(byte_, at), text_.size());
  }
  std::string_view text_;
  char byte_;
  std::size_t next_;
};

}  // namespace seamturn::io::detail
