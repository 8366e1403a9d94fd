// SPDX-License-Identifier: MIT
// What the check of the markup met on its way, kept so that nobody looks for it again.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "detail_name_marks.hpp"

namespace seamturn::io::detail {

/// The attributes of every element of a file, in the order written. Offsets are those of the bytes.
class MarkupIndex {
 public:
  struct Attribute {
    std::uint32_t name_at = 0;
    std::uint32_t name_size = 0;
    std::uint32_t value_at = 0;
    std::uint32_t value_size = 0;  ///< as written
    bool is_verbatim = false;      ///< reads as written: no reference, no carriage return in it
  };

  struct Attributes {
    std::span<const Attribute> written;
    NameMarks names;
  };

  /// Room for what a file of so many bytes is likely to hold.
  void reserve(std::size_t bytes) {
    constexpr std::size_t of_attribute = 20;  // bytes, as people write them
    constexpr std::size_t of_element = 150;
    attributes_.reserve(bytes / of_attribute);
    elements_.reserve(bytes / of_element);
  }
  /// An element begins; its attributes follow.
  void open_element(std::size_t name_at) {
    elements_.push_back(Element{static_cast<std::uint32_t>(name_at), next(), {}});
  }
  /// False: no attribute of this name was added to the element before. True: one may have been.
  bool add(const Attribute& attribute, std::string_view name) {
    attributes_.push_back(attribute);
    return elements_.back().names.add(name);
  }
  /// Of the element opened last, so far.
  [[nodiscard]] std::span<const Attribute> of_last_element() const {
    return std::span(attributes_).subspan(elements_.back().first_attribute);
  }
  /// Of the element whose name stands there; none when no element's does.
  [[nodiscard]] Attributes attributes_of(std::size_t name_at) const;

 private:
  struct Element {
    std::uint32_t name_at = 0;
    std::uint32_t first_attribute = 0;
    NameMarks names;
  };
  [[nodiscard]] std::uint32_t next() const {
    return static_cast<std::uint32_t>(attributes_.size());
  }

  std::vector<Element> elements_;  // in the order of their names' offsets
  std::vector<Attribute> attributes_;
};

}  // namespace seamturn::io::detail
