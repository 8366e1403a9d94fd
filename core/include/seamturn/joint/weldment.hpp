// SPDX-License-Identifier: MIT
// Everything a weldment file says, checked and in internal units.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/joint/joint.hpp"
#include "seamturn/joint/member.hpp"
#include "seamturn/joint/places.hpp"

namespace seamturn::joint {

/// How the part sits on the faceplate D: X_DJ, and what is bolted on with it.
struct Setup {
  std::string id;
  geom::Pose X_DJ;
  double fixture_mass_kg = 0.0;
  geom::Vec3 fixture_centre = geom::Vec3::Zero();  ///< frame D
};

struct Batch {
  int parts = 1;
};

struct Weldment {
  std::string title;
  std::string revision;
  std::string date;
  std::string author;
  std::string wire;                    ///< id of the wire used unless a joint names another
  double ambient_c = 20.0;
  std::vector<std::string> libraries;  ///< file names as used
  std::string cell;                    ///< file name as used; empty: no cell
  std::vector<Member> members;
  std::vector<Joint> joints;
  Setup setup;
  Batch batch;
  bool invented = false;               ///< demo data, said so in the file
  Places places;
};

[[nodiscard]] const Member* find_member(const Weldment& weldment, std::string_view id);
[[nodiscard]] const Joint* find_joint(const Weldment& weldment, std::string_view id);

}  // namespace seamturn::joint
