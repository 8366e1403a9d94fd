// SPDX-License-Identifier: MIT
// Where each described thing and each of its attributes stands in its file.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <memory_resource>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "seamturn/base/file_text.hpp"

namespace seamturn::joint {

/// A key names a thing, "joint/J1", or one of its attributes, "joint/J1@throat". Only the byte
/// offset of each thing is kept, with the text of the files; attributes are sought, and lines and
/// columns counted, when somebody asks for them.
class Places {
 public:
  /// Finds where the value of an attribute begins, given the file's text and the offset of the
  /// element that should hold it. Places know no file format: who adds a thing brings the finder.
  using FindValue = std::optional<std::size_t> (*)(std::string_view text,
                                                   std::size_t element,
                                                   std::string_view attribute);
  /// Where a thing stands. The attributes of `part`, an element within it, count as its own.
  struct Element {
    std::size_t offset = 0;
    std::optional<std::size_t> part;
  };

  /// Of things with the same key the first counts. False: there was one.
  bool add(std::string_view key,
           const std::shared_ptr<const base::FileText>& file,
           const Element& element,
           FindValue find_value);

  [[nodiscard]] bool contains(std::string_view key) const { return find_spot(key).has_value(); }
  [[nodiscard]] std::optional<base::Spot> find_spot(std::string_view key) const;
  /// Where the attribute stands, else the thing; a spot without file when that is unknown too.
  [[nodiscard]] base::Spot nearest_spot(std::string_view key, std::string_view attribute) const;
  [[nodiscard]] std::optional<base::Place> find(std::string_view key) const;
  /// Pre: contains(key); otherwise ContractViolation.
  [[nodiscard]] base::Place at(std::string_view key) const;

 private:
  struct Thing {
    const base::FileText* file = nullptr;
    Element element;
    FindValue find_value = nullptr;

    [[nodiscard]] base::Spot spot() const { return {file, element.offset}; }
  };
  /// Looks up views without making strings of them.
  struct KeyHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view key) const {
      return std::hash<std::string_view>()(key);
    }
  };
  [[nodiscard]] static std::optional<base::Spot> find_attribute(const Thing& thing,
                                                                std::string_view name);
  [[nodiscard]] const Thing* find_thing(std::string_view key) const;

  /// Hundreds of small entries that come one by one and go all at once: in one piece of memory.
  struct Kept {
    std::pmr::monotonic_buffer_resource memory;
    std::pmr::unordered_map<std::pmr::string, Thing, KeyHash, std::equal_to<>> things{&memory};
    std::vector<std::shared_ptr<const base::FileText>> files;
  };
  std::shared_ptr<Kept> kept_;  // copies share it until one of them adds; null: nothing yet
};

}  // namespace seamturn::joint
