// SPDX-License-Identifier: MIT
// Faces, bores and threads that must be right after welding.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/geom/vector.hpp"

namespace seamturn::joint {

enum class DatumKind { face, bore, thread };
/// In the order of DatumKind, as files write them.
[[nodiscard]] std::span<const std::string_view> datum_kind_names();
[[nodiscard]] std::string_view datum_kind_name(DatumKind kind);  ///< "face" ...

/// What must not be done on it.
struct DatumGuard {
  bool strike = false;   ///< no arc struck on it
  bool earth = false;    ///< no return clamp on it
  bool spatter = false;  ///< covered against spatter
};

/// Frame J. A face lies about `at` across `axis` (its outward normal); a bore or thread runs along
/// `axis`.
struct Datum {
  std::string id;
  DatumKind kind = DatumKind::face;
  std::string member;
  geom::Vec3 at = geom::Vec3::Zero();
  geom::Vec3 axis = geom::Vec3::UnitZ();
  geom::Vec3 along = geom::Vec3::UnitX();  ///< of a face: the direction of its first length
  double length_mm = 0.0;                  ///< of a face along `along`; of a bore its diameter
  double width_mm = 0.0;                   ///< of a face across it
  bool round = false;                      ///< a face stated by its diameter
  std::string flatness;                    ///< ISO 13920 class "E" ... "H"; empty: none asked for
  std::optional<double> allowance_mm;      ///< left to be machined off
  std::optional<double> temperature_max_c;
  int arcs = 0;  ///< rings on its member are welded in so many opposite arcs; 0: by rule
  DatumGuard guard;
};

}  // namespace seamturn::joint
