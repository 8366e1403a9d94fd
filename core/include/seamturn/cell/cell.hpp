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

enum class PositionerKind { tilt_rotate, headstock, inclined, roll_arm, station_changer };
[[nodiscard]] std::string_view positioner_kind_name(PositionerKind kind);  ///< "tilt-rotate" ...
/// The faceplate's normal in its own frame D: +X on headstocks (a station changer has one a side),
/// +Z on all others. The last axis turns about it. Tests: cell/cell - closed-form.
[[nodiscard]] geom::Vec3 faceplate_normal_D(PositionerKind kind);

/// The line an axis turns about, right-handed. Frame W, all axes at zero.
struct AxisLine {
  geom::Vec3 along = geom::Vec3::UnitZ();  ///< unit
  geom::Vec3 at = geom::Vec3::Zero();
};

/// A rotary axis. Speeds in rad/s, accelerations in rad/s2.
struct Axis {
  std::string name;  ///< "tilt", "rotate", "turn", "roll", "exchange"
  Angle min;
  Angle max;
  bool endless = false;
  double speed_rad_s = 0.0;
  double acceleration_rad_s2 = 0.0;
  std::optional<double> jerk_rad_s3;     ///< absent: the acceleration sets in at once
  std::optional<double> stop_rad_s2;     ///< slowing down at an emergency stop; absent: not judged
  double torque_max_nm = 0.0;            ///< rating plate, static
  std::optional<double> torque_peak_nm;  ///< rating for seconds; absent: as torque_max_nm
  std::optional<AxisLine> line;          ///< as stated; absent: the one of the kind
};

/// A second bearing opposite the faceplate of a headstock, in line with it.
struct Tailstock {
  double span_mm = 0.0;  ///< from the faceplate
  double load_max_kg = 0.0;
};

/// How far the weight hung on may be off from what was calculated.
struct LoadMargin {
  double mass_ratio = 0.0;  ///< 0.05: 5 % more
  double centre_mm = 0.0;   ///< of the centre of gravity, any way
};

/// A chain of rotary axes, the one fixed to the floor first, the faceplate D on the last.
/// Tilt-and-rotate table: axis 0 tilts about world +Y (positive leans the face normal towards +X),
/// axis 1 turns the faceplate about its normal, positive anticlockwise seen from above.
/// Headstock: one axis, turning about world +X.
/// Inclined: as the table, the second axis at `between` to the first, leant towards its direction.
/// Roll-arm: axis 0 rolls the arm about world +X, axis 1 turns the faceplate, upright at zero.
/// Station changer: axis 0 exchanges the sides, about world +Z; axis 1 is the headstock of the side
/// that is welded on. The exchange stands at zero while the part is welded.
struct Positioner {
  std::string id;
  PositionerKind kind = PositionerKind::tilt_rotate;
  /// Frame W: a point common to all axes but an exchange; on the last one.
  geom::Vec3 tilt_centre = geom::Vec3::Zero();
  double overhang_mm = 0.0;          ///< from that point to the faceplate, along the face normal
  Angle between = Angle::deg(90.0);  ///< inclined: between both axes
  geom::Vec3 exchange_centre = geom::Vec3::Zero();  ///< station changer: on the exchange axis
  double load_max_kg = 0.0;
  double load_centre_mm = 0.0;  ///< distance from the faceplate up to which load_max_kg holds
  std::optional<Tailstock> tailstock;
  std::optional<LoadMargin> margin;          ///< absent: the load is taken as calculated
  double rolling_speed_max_rad_s = 0.0;      ///< of the last axis while welding
  std::optional<double> rim_speed_max_mm_s;  ///< of anything that turns; absent: no cap
  std::optional<double> floor_clearance_mm;  ///< of anything that turns; absent: 0
  std::vector<Axis> axes;
};

/// Line of an axis: as stated, else the one of the kind.
/// Pre: index below the number of axes. Tests: cell/cell - closed-form.
[[nodiscard]] AxisLine axis_line(const Positioner& positioner, std::size_t index);
/// Pose of the faceplate with all axes at zero: its normal along the last axis, its centre
/// `overhang_mm` along it from the point stated. Axes of D that this leaves open: by the least turn
/// from W. Tests: cell/cell - closed-form.
[[nodiscard]] geom::Pose faceplate_at_zero(const Positioner& positioner);
/// An axis that never moves while the part is welded.
[[nodiscard]] bool is_exchange(const Positioner& positioner, std::size_t index);

struct Robot {
  std::string id;
  geom::Vec3 home = geom::Vec3::Zero();  ///< torch tip when withdrawn, frame W
  double air_speed_mm_s = 0.0;
  double air_acceleration_mm_s2 = 0.0;
  double retract_mm = 0.0;  ///< withdrawal along the torch before and after a pass
};

/// A torch behind its wire tip as two straight pieces: along the wire to the bend, then on at an
/// angle to the flange of the robot.
struct TorchBody {
  double tip_to_bend_mm = 0.0;
  Angle bend;  ///< between wire and body; 0: a straight torch
  double length_mm = 0.0;
  double diameter_mm = 0.0;
};

struct Torch {
  std::string id;
  double nozzle_diameter_mm = 0.0;
  std::optional<double> nozzle_recess_mm;  ///< tip behind the mouth; absent: room is not checked
  std::optional<TorchBody> body;           ///< absent: whether it clears the part is not checked
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
