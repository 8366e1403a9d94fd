// SPDX-License-Identifier: MIT
// Elements and attributes of a file, as the check of its markup met them on its one walk: whoever
// must look at every byte to be strict need not have the bytes looked at again.
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <iterator>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "detail_name_marks.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

class Element;

/// Views into the text that was checked, which must outlive what is read of it. Elements point into
/// the tree, so it stays where it is while they are used.
class MarkupTree {
 public:
  class Attribute {
   public:
    /// `value_at`: the byte offset of the value as written.
    Attribute(std::string_view name, std::string_view value, std::size_t value_at)
        : name_(name.data()),
          value_(value.data()),
          name_size_(static_cast<std::uint32_t>(name.size())),
          value_size_(static_cast<std::uint32_t>(value.size())),
          value_at_(static_cast<std::uint32_t>(value_at)) {}
    [[nodiscard]] std::string_view name() const { return {name_, name_size_}; }
    /// References resolved, tabs and line ends blanks.
    [[nodiscard]] std::string_view value() const { return {value_, value_size_}; }
    [[nodiscard]] std::size_t value_at() const { return value_at_; }

   private:
    // Small, for there are many: no file is larger than 32 bits tell.
    const char* name_;
    const char* value_;
    std::uint32_t name_size_;
    std::uint32_t value_size_;
    std::uint32_t value_at_;
  };

  /// Empties the tree, for one may serve many files, and makes room for what a file of so many
  /// bytes is likely to hold.
  void start(std::size_t bytes) {
    nodes_.clear();
    attributes_.clear();
    values_.clear();
    innermost_ = none;
    constexpr std::size_t of_attribute = 22;  // bytes, as people write them
    constexpr std::size_t of_element = 150;
    attributes_.reserve(bytes / of_attribute);
    nodes_.reserve(bytes / of_element);
  }
  /// An element begins inside the one opened last that is not closed; its attributes follow.
  void open(std::string_view name) {
    nodes_.push_back(Node{name, next_attribute(), 0, innermost_, {}});
    innermost_ = static_cast<std::uint32_t>(nodes_.size() - 1);
  }
  /// Pre: an element is open.
  void close() {
    Node& node = nodes_[innermost_];
    node.end = static_cast<std::uint32_t>(nodes_.size());
    innermost_ = node.parent;
  }
  /// To the element opened last. False: one of this name was added to it before.
  bool add(const Attribute& attribute) {
    attributes_.push_back(attribute);
    return !nodes_.back().names.add(MarkedName(attribute.name())) || is_first_of_its_name();
  }
  /// A value that does not stand in the text; the view lives as long as the tree.
  [[nodiscard]] std::string_view keep(std::string value) {
    return values_.emplace_back(std::move(value));
  }
  /// Of the element opened last, so far.
  [[nodiscard]] std::span<const Attribute> of_last_element() const {
    return std::span(attributes_).subspan(nodes_.back().first_attribute);
  }
  /// The first element; null when there is none.
  [[nodiscard]] Element root() const;

 private:
  friend class Element;
  static constexpr std::uint32_t none = 0xFFFFFFFFU;
  struct Node {
    std::string_view name;
    std::uint32_t first_attribute = 0;
    std::uint32_t end = 0;  // of the elements within: the one that follows them
    std::uint32_t parent = none;
    NameMarks names;
  };
  [[nodiscard]] bool is_first_of_its_name() const;
  [[nodiscard]] std::uint32_t next_attribute() const {
    return static_cast<std::uint32_t>(attributes_.size());
  }

  std::vector<Node> nodes_;  // in the order of the text
  std::vector<Attribute> attributes_;
  std::deque<std::string> values_;
  std::uint32_t innermost_ = none;
};

/// One element of a tree, or none. None has no name, attributes or children.
class Element {
 public:
  class Children;

  Element() = default;
  [[nodiscard]] explicit operator bool() const { return tree_ != nullptr; }
  friend bool operator==(const Element&, const Element&) = default;

  [[nodiscard]] std::string_view name() const {
    return tree_ == nullptr ? std::string_view() : node().name;
  }
  /// In the order written.
  [[nodiscard]] std::span<const MarkupTree::Attribute> attributes() const;
  /// Of its attributes.
  [[nodiscard]] NameMarks attribute_names() const {
    return tree_ == nullptr ? NameMarks() : node().names;
  }
  /// The first of a name; null when absent.
  [[nodiscard]] const MarkupTree::Attribute* find_attribute(std::string_view name) const;

  [[nodiscard]] bool is_root() const { return tree_ != nullptr && at_ == 0; }
  [[nodiscard]] Element first_child() const;
  /// The next of the same parent.
  [[nodiscard]] Element next() const;
  /// The first child of a name.
  [[nodiscard]] Element child(std::string_view name) const { return first_child().or_next(name); }
  [[nodiscard]] Element next(std::string_view name) const { return next().or_next(name); }
  [[nodiscard]] Children children() const;
  [[nodiscard]] Children children(std::string_view name) const;

 private:
  friend class MarkupTree;
  Element(const MarkupTree& tree, std::uint32_t at) : tree_(&tree), at_(at) {}
  [[nodiscard]] const MarkupTree::Node& node() const { return tree_->nodes_[at_]; }
  /// This one or the next of the same parent that has the name.
  [[nodiscard]] Element or_next(std::string_view name) const {
    Element one = *this;
    while (one && !base::same_text(one.name(), name)) one = one.next();
    return one;
  }

  const MarkupTree* tree_ = nullptr;
  std::uint32_t at_ = 0;
};

/// Children in the order written, all or those of one name.
class Element::Children {
 public:
  class Iterator {
   public:
    using iterator_category = std::forward_iterator_tag;
    using value_type = Element;
    using difference_type = std::ptrdiff_t;
    using pointer = const Element*;
    using reference = const Element&;

    Iterator() = default;
    Iterator(Element first, std::string_view name) : at_(first), name_(name) { pass_others(); }
    const Element& operator*() const { return at_; }
    const Element* operator->() const { return &at_; }
    Iterator& operator++() {
      at_ = at_.next();
      pass_others();
      return *this;
    }
    Iterator operator++(int) {
      Iterator before = *this;
      ++*this;
      return before;
    }
    friend bool operator==(const Iterator& a, const Iterator& b) { return a.at_ == b.at_; }

   private:
    void pass_others() {
      if (!name_.empty()) at_ = at_.or_next(name_);
    }
    Element at_;
    std::string_view name_;  // empty: any
  };

  Children(Element first, std::string_view name) : first_(first), name_(name) {}
  [[nodiscard]] Iterator begin() const { return {first_, name_}; }
  [[nodiscard]] Iterator end() const { return {}; }
  /// Cost: of a walk over all children.
  [[nodiscard]] std::size_t count() const {
    return static_cast<std::size_t>(std::distance(begin(), end()));
  }

 private:
  Element first_;
  std::string_view name_;
};

inline Element::Children Element::children() const {
  return {first_child(), {}};
}
inline Element::Children Element::children(std::string_view name) const {
  return {first_child(), name};
}

}  // namespace seamturn::io::detail
