// SPDX-License-Identifier: MIT
#include "detail_markup_index.hpp"

#include <algorithm>

namespace seamturn::io::detail {

MarkupIndex::Attributes MarkupIndex::attributes_of(std::size_t name_at) const {
  const auto element = std::lower_bound(
      elements_.begin(), elements_.end(), name_at, [](const Element& one, std::size_t at) {
        return one.name_at < at;
      });
  if (element == elements_.end() || element->name_at != name_at) return {};
  const auto after = std::next(element);
  const std::uint32_t end = after == elements_.end() ? next() : after->first_attribute;
  const std::size_t count = end - element->first_attribute;
  return {std::span(attributes_).subspan(element->first_attribute, count), element->names};
}

}  // namespace seamturn::io::detail
