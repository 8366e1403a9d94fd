// SPDX-License-Identifier: MIT
#include "seamturn/joint/places.hpp"

#include "seamturn/base/error.hpp"

namespace seamturn::joint {

void Places::add(std::string key,
                 const std::shared_ptr<const base::FileText>& file,
                 const Element& element,
                 FindValue find_value) {
  constexpr std::size_t most_parts_have_fewer = 500;
  if (things_.empty()) things_.reserve(most_parts_have_fewer);
  const Thing thing{file.get(), element, find_value};
  if (!things_.try_emplace(std::move(key), thing).second) return;
  if (files_.empty() || files_.back() != file) files_.push_back(file);
}

std::optional<base::Spot> Places::find_spot(std::string_view key) const {
  const std::size_t at = key.find('@');
  const auto thing = things_.find(key.substr(0, at));
  if (thing == things_.end()) return std::nullopt;
  if (at == std::string_view::npos) return thing->second.spot();
  return find_attribute(thing->second, key.substr(at + 1));
}

std::optional<base::Spot> Places::find_attribute(const Thing& thing, std::string_view name) {
  const std::string_view text = thing.file->bytes();
  std::optional<std::size_t> value = thing.find_value(text, thing.element.offset, name);
  if (!value && thing.element.part) value = thing.find_value(text, *thing.element.part, name);
  if (!value) return std::nullopt;
  return base::Spot{thing.file, *value};
}

base::Spot Places::nearest_spot(std::string_view key, std::string_view attribute) const {
  const auto thing = things_.find(key);
  if (thing == things_.end()) return {};
  return find_attribute(thing->second, attribute).value_or(thing->second.spot());
}

std::optional<base::Place> Places::find(std::string_view key) const {
  const std::optional<base::Spot> spot = find_spot(key);
  if (!spot) return std::nullopt;
  return spot->place();
}

base::Place Places::at(std::string_view key) const {
  const std::optional<base::Place> place = find(key);
  SEAMTURN_REQUIRE(place.has_value(), key);
  return *place;
}

}  // namespace seamturn::joint
