// SPDX-License-Identifier: MIT
// A quick "no" to the question whether a name is among others.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

/// A name with its mark, one of 256 given by its length and three of its letters. The compiler
/// works out those of names that stand in the code. Small enough to be handed on in registers.
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
  [[nodiscard]] bool is(std::string_view name) const { return base::same_text(name, text()); }
  /// Pre: the name is not empty.
  [[nodiscard]] constexpr std::uint32_t mark() const { return mark_; }

 private:
  [[nodiscard]] static constexpr std::uint32_t mark_of(std::string_view name) {
    const auto letter = [&](std::size_t i) -> std::uint32_t {
      return static_cast<unsigned char>(name[i]);
    };
    const auto size = static_cast<std::uint32_t>(name.size());
    // Odd factors, so that neighbouring letters and lengths part.
    return (letter(0) + 5 * letter(size / 2) + 25 * letter(size - 1) + 125 * size) % 256U;
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
    words_[name.mark() / 64U] |= bit(name);
    return may_be_there;
  }
  [[nodiscard]] bool may_hold(const MarkedName& name) const {
    return (words_[name.mark() / 64U] & bit(name)) != 0;
  }

 private:
  [[nodiscard]] static std::uint64_t bit(const MarkedName& name) {
    return std::uint64_t{1} << (name.mark() % 64U);
  }
  std::array<std::uint64_t, 4> words_{};
};

}  // namespace seamturn::io::detail
