// SPDX-License-Identifier: MIT
// A quick "no" to the question whether a name is among others.
#pragma once

#include <cstdint>
#include <string_view>

namespace seamturn::io::detail {

/// Sixty-four marks, given by length and outer letters: names with different marks differ, names
/// with the same mark must be compared.
class NameMarks {
 public:
  /// False: no name added before is the same. True: one may be.
  bool add(std::string_view name) {
    const std::uint64_t mark = mark_of(name);
    const bool may_be_there = (marks_ & mark) != 0;
    marks_ |= mark;
    return may_be_there;
  }
  [[nodiscard]] bool may_hold(std::string_view name) const { return (marks_ & mark_of(name)) != 0; }

 private:
  /// Pre: the name is not empty.
  [[nodiscard]] static std::uint64_t mark_of(std::string_view name) {
    const auto first = static_cast<unsigned char>(name.front());
    const auto last = static_cast<unsigned char>(name.back());
    constexpr unsigned spread = 5;  // odd, so that neighbouring lengths and letters part
    return std::uint64_t{1} << ((name.size() * spread + first + (unsigned{last} << 2U)) % 64U);
  }
  std::uint64_t marks_ = 0;
};

}  // namespace seamturn::io::detail
