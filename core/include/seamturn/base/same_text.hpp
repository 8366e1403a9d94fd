// SPDX-License-Identifier: MIT
// Whether short texts are the same, told without calling the library.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <span>
#include <string_view>

namespace seamturn::base {

namespace detail {

/// Of texts of the same size, at least that of a Word: both ends, which may overlap.
template <class Word>
[[nodiscard]] inline bool same_ends(const char* a, const char* b, std::size_t size) {
  const auto word = [](const char* at) {
    Word value;
    std::memcpy(&value, at, sizeof value);
    return value;
  };
  const std::size_t last = size - sizeof(Word);
  return word(a) == word(b) && word(a + last) == word(b + last);
}

[[nodiscard]] inline bool same_bytes(const char* a, const char* b, std::size_t size) {
  if (size > 16) return std::memcmp(a, b, size) == 0;
  if (size >= 8) return same_ends<std::uint64_t>(a, b, size);
  if (size >= 4) return same_ends<std::uint32_t>(a, b, size);
  if (size >= 2) return same_ends<std::uint16_t>(a, b, size);
  return size == 0 || *a == *b;
}

}  // namespace detail

/// Same as a == b. For names, words and units, of which a file has thousands: up to sixteen bytes
/// two looks decide, which may overlap. Cost: constant up to sixteen bytes, then linear. Tests:
/// base/same_text - law, against ==.
[[nodiscard]] inline bool same_text(std::string_view a, std::string_view b) {
  return a.size() == b.size() && detail::same_bytes(a.data(), b.data(), a.size());
}

/// Whether a text is one of several. Cost: linear in them.
[[nodiscard]] inline bool is_among(std::string_view text, std::span<const std::string_view> texts) {
  return std::any_of(
      texts.begin(), texts.end(), [&](std::string_view one) { return same_text(one, text); });
}

}  // namespace seamturn::base
