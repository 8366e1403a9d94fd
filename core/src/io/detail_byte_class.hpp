// SPDX-License-Identifier: MIT
// Runs of bytes of one kind, for texts of which every byte is looked at.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace seamturn::io::detail {

/// A kind of byte, answered from a table.
class ByteClass {
 public:
  constexpr explicit ByteClass(bool (*is_in)(char)) {
    for (std::size_t i = 0; i < holds_.size(); ++i) holds_[i] = is_in(static_cast<char>(i));
  }
  /// Where the run of such bytes that begins at an offset ends.
  [[nodiscard]] constexpr std::size_t run_end(std::string_view text, std::size_t at) const {
    while (at < text.size() && holds_[static_cast<unsigned char>(text[at])]) ++at;
    return at;
  }

 private:
  std::array<bool, 256> holds_{};
};

}  // namespace seamturn::io::detail
