// SPDX-License-Identifier: MIT
#include "seamturn/joint/places.hpp"

#include <algorithm>

#include "seamturn/base/error.hpp"

namespace seamturn::joint {

void Places::add(std::string key,
                 const std::shared_ptr<const base::FileText>& file,
                 std::size_t offset,
                 std::span<const Attribute> attributes) {
  const Thing thing{base::Spot{file.get(), offset}, attributes_.size(), attributes.size()};
  if (!things_.try_emplace(std::move(key), thing).second) return;
  attributes_.insert(attributes_.end(), attributes.begin(), attributes.end());
  if (files_.empty() || files_.back() != file) files_.push_back(file);
}

std::optional<base::Spot> Places::find_spot(std::string_view key) const {
  const std::size_t at = key.find('@');
  const auto thing = things_.find(key.substr(0, at));
  if (thing == things_.end()) return std::nullopt;
  if (at == std::string_view::npos) return thing->second.spot;
  return find_attribute(thing->second, key.substr(at + 1));
}

std::optional<base::Spot> Places::find_attribute(const Thing& thing, std::string_view name) const {
  const std::span<const Attribute> attributes =
      std::span(attributes_).subspan(thing.first_attribute, thing.attribute_count);
  const auto found = std::find_if(
      attributes.begin(), attributes.end(), [&](const Attribute& a) { return a.name == name; });
  if (found == attributes.end()) return std::nullopt;
  return base::Spot{thing.spot.file, found->offset};
}

base::Spot Places::nearest_spot(std::string_view key, std::string_view attribute) const {
  const auto thing = things_.find(key);
  if (thing == things_.end()) return {};
  return find_attribute(thing->second, attribute).value_or(thing->second.spot);
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
