// SPDX-License-Identifier: MIT
// A fillet at the foot of a web that stands along x on a base, on the web's +y side.
#pragma once

#include <string>

#include "seamturn/joint/joint.hpp"

namespace seamturn::tests {

inline joint::Seam tee_seam(const std::string& id, const geom::Path& path) {
  joint::Seam seam;
  seam.id = id;
  seam.joint = "J1";
  seam.path = path;
  seam.length_mm = geom::path_length_mm(path);
  seam.wall_1 = geom::Vec3::UnitZ();
  seam.wall_2 = geom::Vec3::UnitY();
  seam.face = (seam.wall_1 + seam.wall_2).normalized();
  return seam;
}

}  // namespace seamturn::tests
