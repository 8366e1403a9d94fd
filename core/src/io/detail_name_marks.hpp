// SPDX-License-Identifier: MIT
// A quick "no" to the question whether a name is among others.
#pragma once

#include <cstdint>
#include <cstring>
#include <initializer_list>
#include <string_view>

namespace seamturn::io::detail {

/// A name with its mark, one of sixty-four given by length and outer letters. The compiler works
/// out those of names that stand in the code. Small enough to be handed on in registers.
class MarkedName {
 public:
  MarkedName() = default;  // no name yet
  constexpr explicit MarkedName(std::string_view text)
      : text_(text.data()),
        size_(static_cast<std::uint32_t>(text.size())),
        mark_(text.empty() ? 0U : mark_of(text)) {}
  // Not explicit: readers ask for attributes by their names.
  consteval MarkedName(const char* text) : MarkedName(std::string_view(text)) {}

  [[nodiscard]] constexpr std::string_view text() const { return {text_, size_}; }
  [[nodiscard]] bool is(std::string_view name) const {
    return name.size() == size_ && same_bytes(name.data(), text_, size_);
  }
  [[nodiscard]] constexpr std::uint64_t mark() const { return std::uint64_t{1} << mark_; }

 private:
  [[nodiscard]] static constexpr std::uint32_t mark_of(std::string_view name) {
    const auto size = static_cast<std::uint32_t>(name.size());
    const auto first = static_cast<unsigned char>(name.front());
    const auto last = static_cast<unsigned char>(name.back());
    constexpr std::uint32_t spread = 5;  // odd, so that neighbouring lengths and letters part
    return (size * spread + first + (std::uint32_t{last} << 2U)) % 64U;
  }

  /// Names are short: two looks at eight or four bytes, which may overlap, tell most of them apart
  /// sooner than a call of the library does.
  [[nodiscard]] static bool same_bytes(const char* a, const char* b, std::size_t size) {
    if (size > 16) return std::memcmp(a, b, size) == 0;
    if (size >= 8) return same_ends<std::uint64_t>(a, b, size);
    if (size >= 4) return same_ends<std::uint32_t>(a, b, size);
    for (std::size_t i = 0; i < size; ++i) {
      if (a[i] != b[i]) return false;
    }
    return true;
  }
  template <class Word>
  [[nodiscard]] static bool same_ends(const char* a, const char* b, std::size_t size) {
    const auto word = [](const char* at) {
      Word value;
      std::memcpy(&value, at, sizeof value);
      return value;
    };
    const std::size_t last = size - sizeof(Word);
    return word(a) == word(b) && word(a + last) == word(b + last);
  }

  const char* text_;
  std::uint32_t size_;
  std::uint32_t mark_;
};

/// Names with different marks differ, names with the same mark must be compared.
class NameMarks {
 public:
  /// False: no name added before is the same. True: one may be.
  bool add(const MarkedName& name) {
    const bool may_be_there = may_hold(name);
    marks_ |= name.mark();
    return may_be_there;
  }
  [[nodiscard]] bool may_hold(const MarkedName& name) const { return (marks_ & name.mark()) != 0; }

 private:
  std::uint64_t marks_ = 0;
};

}  // namespace seamturn::io::detail
