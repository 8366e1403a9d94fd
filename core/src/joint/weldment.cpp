// SPDX-License-Identifier: MIT
#include "seamturn/joint/weldment.hpp"

#include <algorithm>

namespace seamturn::joint {

namespace {

template <class Thing>
const Thing* find_by_id(const std::vector<Thing>& things, std::string_view id) {
  const auto found =
      std::find_if(things.begin(), things.end(), [id](const Thing& t) { return t.id == id; });
  return found == things.end() ? nullptr : &*found;
}

}  // namespace

const Member* find_member(const Weldment& weldment, std::string_view id) {
  return find_by_id(weldment.members, id);
}

const Joint* find_joint(const Weldment& weldment, std::string_view id) {
  return find_by_id(weldment.joints, id);
}

const Setup* find_setup(const Weldment& weldment, std::string_view id) {
  return find_by_id(weldment.setups, id);
}

const Datum* find_datum(const Weldment& weldment, std::string_view id) {
  return find_by_id(weldment.datums, id);
}

}  // namespace seamturn::joint
