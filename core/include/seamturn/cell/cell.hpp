// SPDX-License-Identifier: MIT
// The robot cell as data: positioner, robot, torch, times. Nothing here has a silent default that
// could hurt: ratings and speeds come from the cell file.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/geom/vector.hpp"

namespace seamturn::cell {

using base::Angle;

enum class PositionerKind { tilt_rotate, headstock };
[[nodiscard]] std::string_view positioner_kind_name(PositionerKind kind);  ///< "tilt-rotate" ...
/// The faceplate's normal in its own frame D: +Z on a table, +X on a headstock. The last axis turns
/// about it. Tests: cell/cell - closed-form.
[[nodiscard]] geom::Vec3 faceplate_normal_D(PositionerKind kind);

/// A rotary axis. Speeds in rad/s, accelerations in rad/s2.
struct Axis {
  std::string name;  ///< "tilt", "rotate", "turn"
  Angle min;
  Angle max;
  bool endless = false;
  double speed_rad_s = 0.0;
  double acceleration_rad_s2 = 0.0;
  double torque_max_nm = 0.0;  ///< rating plate, static
};

/// Tilt-and-rotate table: axis 0 tilts about world +Y (positive leans the face normal towards +X),
/// axis 1 turns the faceplate about its normal, positive anticlockwise seen from above.
/// Headstock: one axis, turning about world +X.
struct Positioner {
  std::string id;
  PositionerKind kind = PositionerKind::tilt_rotate;
  geom::Vec3 tilt_centre = geom::Vec3::Zero();  ///< frame W: where the (tilt or turn) axis is
  double overhang_mm = 0.0;  ///< from the tilt axis to the faceplate, along the face normal
  double load_max_kg = 0.0;
  double load_centre_mm = 0.0;  ///< distance from the faceplate up to which load_max_kg holds
  double rolling_speed_max_rad_s = 0.0;  ///< of the last axis while welding
  std::vector<Axis> axes;
};

struct Robot {
  std::string id;
  geom::Vec3 home = geom::Vec3::Zero();  ///< torch tip when withdrawn, frame W
  double air_speed_mm_s = 0.0;
  double air_acceleration_mm_s2 = 0.0;
  double retract_mm = 0.0;  ///< withdrawal along the torch before and after a pass
};

struct Torch {
  std::string id;
  double nozzle_diameter_mm = 0.0;
  std::optional<double> nozzle_recess_mm;  ///< tip behind the mouth; absent: room is not checked
};

/// Times of a cell that no geometry gives.
struct CellTimes {
  double arc_start_s = 0.0;    ///< per pass
  double crater_fill_s = 0.0;  ///< per pass
  double settle_s = 0.0;       ///< after every turn
  double touch_s = 0.0;        ///< one wire touch
  int touches_per_seam = 0;    ///< before the first pass of a seam in a stance
  double clean_every_s = 0.0;  ///< arc time between nozzle cleanings
  double clean_s = 0.0;
  double load_unload_s = 0.0;  ///< outside the cycle, inside the cell time of the estimate
};

/// Where the welding current goes back.
struct ReturnPath {
  bool on_rotating_side = false;  ///< else it runs through the positioner's bearings
  double current_max_a = 0.0;     ///< rating of clamp or slip ring
};

struct Cell {
  std::string title;
  std::optional<ReturnPath> return_path;
  Positioner positioner;
  Robot robot;
  Torch torch;
  CellTimes times;
  bool invented = false;
};

}  // namespace seamturn::cell
