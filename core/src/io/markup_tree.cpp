// SPDX-License-Identifier: MIT
#include "detail_markup_tree.hpp"

#include <algorithm>

#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

Element MarkupTree::root() const {
  return nodes_.empty() ? Element() : Element(*this, 0);
}

bool MarkupTree::is_first_of_its_name() const {
  const auto all = of_last_element();
  const std::string_view name = all.back().name();
  return std::none_of(all.begin(), all.end() - 1, [&](const Attribute& one) {
    return base::same_text(one.name(), name);
  });
}

std::span<const MarkupTree::Attribute> Element::attributes() const {
  if (tree_ == nullptr) return {};
  const std::uint32_t first = node().first_attribute;
  const bool is_last = at_ + 1 == tree_->nodes_.size();
  const std::uint32_t end =
      is_last ? tree_->next_attribute() : tree_->nodes_[at_ + 1].first_attribute;
  return std::span(tree_->attributes_).subspan(first, end - first);
}

const MarkupTree::Attribute* Element::find_attribute(std::string_view name) const {
  const auto all = attributes();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.name() == name; });
  return found == all.end() ? nullptr : &*found;
}

Element Element::first_child() const {
  const bool has_one = tree_ != nullptr && at_ + 1 < node().end;
  return has_one ? Element(*tree_, at_ + 1) : Element();
}

Element Element::next() const {
  if (tree_ == nullptr || node().parent == MarkupTree::none) return {};
  const std::uint32_t end = node().end;
  return end < tree_->nodes_[node().parent].end ? Element(*tree_, end) : Element();
}

}  // namespace seamturn::io::detail
