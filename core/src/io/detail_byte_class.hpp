// SPDX-License-Identifier: MIT
// Runs of bytes of one kind, for texts of which every byte is looked at.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

namespace seamturn::io::detail {

/// A kind of byte, answered from a table. NUL is of none.
class ByteClass {
 public:
  constexpr explicit ByteClass(bool (*is_in)(char)) {
    for (std::size_t i = 1; i < holds_.size(); ++i) holds_[i] = is_in(static_cast<char>(i));
  }
  [[nodiscard]] constexpr bool holds(char c) const { return holds_[static_cast<unsigned char>(c)]; }
  /// Where the run of such bytes that begins at an offset ends.
  [[nodiscard]] constexpr std::size_t run_end(std::string_view text, std::size_t at) const {
    while (at < text.size() && holds(text[at])) ++at;
    return at;
  }
  /// Same in a string: the NUL that closes it is of no class and ends the run.
  [[nodiscard]] std::size_t run_end(const std::string& text, std::size_t at) const {
    return static_cast<std::size_t>(run_end(text.c_str() + at) - text.c_str());
  }
  /// Same up to a NUL. Pre: one follows. Four steps a turn: every byte of a file comes by here.
  [[nodiscard, gnu::noinline]] const char* run_end(const char* byte) const {
    for (;; byte += 4) {
      if (!holds(byte[0])) return byte;
      if (!holds(byte[1])) return byte + 1;
      if (!holds(byte[2])) return byte + 2;
      if (!holds(byte[3])) return byte + 3;
    }
  }

 private:
  std::array<bool, 256> holds_{};
};

inline constexpr std::string_view blanks = " \t\r\n";

/// Of the names of elements and attributes.
constexpr bool is_name_start(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == ':' ||
         static_cast<unsigned char>(c) >= 0x80U;
}
constexpr bool is_name_part(char c) {
  return is_name_start(c) || (c >= '0' && c <= '9') || c == '-' || c == '.';
}

inline constexpr ByteClass blank_bytes([](char c) {
  return blanks.find(c) != std::string_view::npos;
});
inline constexpr ByteClass first_name_bytes(is_name_start);
inline constexpr ByteClass name_bytes(is_name_part);

}  // namespace seamturn::io::detail
