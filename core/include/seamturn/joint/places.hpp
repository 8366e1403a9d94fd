// SPDX-License-Identifier: MIT
// Where each described thing and each of its attributes stands in its file.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "seamturn/base/file_text.hpp"

namespace seamturn::joint {

/// A key names a thing, "joint/J1", or one of its attributes, "joint/J1@throat". Only byte offsets
/// are kept, with the text of the files; line and column are counted when somebody asks for them.
class Places {
 public:
  struct Attribute {
    std::string_view name;   ///< a piece of the file's text
    std::size_t offset = 0;  ///< of the value
  };

  /// Of things with the same key, and of attributes with the same name, the first counts.
  void add(std::string key,
           const std::shared_ptr<const base::FileText>& file,
           std::size_t offset,
           std::span<const Attribute> attributes);

  [[nodiscard]] bool contains(std::string_view key) const { return find_spot(key).has_value(); }
  [[nodiscard]] std::optional<base::Spot> find_spot(std::string_view key) const;
  /// Where the attribute stands, else the thing; a spot without file when that is unknown too.
  [[nodiscard]] base::Spot nearest_spot(std::string_view key, std::string_view attribute) const;
  [[nodiscard]] std::optional<base::Place> find(std::string_view key) const;
  /// Pre: contains(key); otherwise ContractViolation.
  [[nodiscard]] base::Place at(std::string_view key) const;

 private:
  struct Thing {
    base::Spot spot;
    std::size_t first_attribute = 0;
    std::size_t attribute_count = 0;
  };
  /// Looks up views without making strings of them.
  struct KeyHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view key) const {
      return std::hash<std::string_view>()(key);
    }
  };
  [[nodiscard]] std::optional<base::Spot> find_attribute(const Thing& thing,
                                                         std::string_view name) const;

  std::vector<std::shared_ptr<const base::FileText>> files_;
  std::unordered_map<std::string, Thing, KeyHash, std::equal_to<>> things_;
  std::vector<Attribute> attributes_;
};

}  // namespace seamturn::joint
