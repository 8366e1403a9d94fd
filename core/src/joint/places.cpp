// SPDX-License-Identifier: MIT
#include "seamturn/joint/places.hpp"

#include "seamturn/base/error.hpp"

namespace seamturn::joint {

bool Places::add(std::string_view key,
                 const std::shared_ptr<const base::FileText>& file,
                 const Element& element,
                 FindValue find_value) {
  if (kept_ == nullptr) {
    constexpr std::size_t most_parts_have_fewer = 500;
    kept_ = std::make_shared<Kept>();
    kept_->things.reserve(most_parts_have_fewer);
  } else if (kept_.use_count() > 1) {
    const auto own = std::make_shared<Kept>();
    own->things = kept_->things;
    own->files = kept_->files;
    kept_ = own;
  }
  if (!kept_->things.emplace(key, Thing{file.get(), element, find_value}).second) return false;
  std::vector<std::shared_ptr<const base::FileText>>& files = kept_->files;
  if (files.empty() || files.back() != file) files.push_back(file);
  return true;
}

const Places::Thing* Places::find_thing(std::string_view key) const {
  if (kept_ == nullptr) return nullptr;
  const auto thing = kept_->things.find(key);
  return thing == kept_->things.end() ? nullptr : &thing->second;
}

std::optional<base::Spot> Places::find_spot(std::string_view key) const {
  const std::size_t at = key.find('@');
  const Thing* const thing = find_thing(key.substr(0, at));
  if (thing == nullptr) return std::nullopt;
  if (at == std::string_view::npos) return thing->spot();
  return find_attribute(*thing, key.substr(at + 1));
}

std::optional<base::Spot> Places::find_attribute(const Thing& thing, std::string_view name) {
  const std::string_view text = thing.file->bytes();
  std::optional<std::size_t> value = thing.find_value(text, thing.element.offset, name);
  if (!value && thing.element.part) value = thing.find_value(text, *thing.element.part, name);
  if (!value) return std::nullopt;
  return base::Spot{thing.file, *value};
}

base::Spot Places::nearest_spot(std::string_view key, std::string_view attribute) const {
  const Thing* const thing = find_thing(key);
  if (thing == nullptr) return {};
  return find_attribute(*thing, attribute).value_or(thing->spot());
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
