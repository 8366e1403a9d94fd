// SPDX-License-Identifier: MIT
// The parts of a weldment as simple solids of steel, placed in the weldment's frame J.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "seamturn/geom/vector.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::joint {

/// A flat rectangle of plate. Local frame M: corner at the origin, length along x, width along y,
/// thickness along z.
struct Plate {
  double length_mm = 0.0;
  double width_mm = 0.0;
  double thickness_mm = 0.0;
};
/// A round tube or solid bar (bore 0). Local frame M: axis z from 0 to length, centre at the
/// origin.
struct Tube {
  double outer_diameter_mm = 0.0;
  double wall_mm = 0.0;  ///< half the outside diameter: a solid bar
  double length_mm = 0.0;
};
/// A flat ring cut from plate. Local frame M: axis z from 0 to thickness, centre at the origin.
struct Ring {
  double outer_diameter_mm = 0.0;
  double inner_diameter_mm = 0.0;
  double thickness_mm = 0.0;
};
enum class BarShape { round, square, flat, hexagon };
/// A solid bar. Local frame M: axis z from 0 to length, centre at the origin, width along x.
struct Bar {
  BarShape shape = BarShape::round;
  double width_mm = 0.0;   ///< diameter, side, or across flats; of a flat bar the side along x
  double height_mm = 0.0;  ///< flat: the side along y; others: as width
  double length_mm = 0.0;
};
/// A length of a forging: a cylinder, or a cone's frustum.
struct ForgingStep {
  double length_mm = 0.0;
  double start_diameter_mm = 0.0;
  double end_diameter_mm = 0.0;
};
/// A forged or turned body of revolution: steps one after another, with one bore right through.
/// Local frame M: axis z from 0, centre of the first face at the origin.
struct Forging {
  std::vector<ForgingStep> steps;  ///< at least one; every diameter above the bore
  double bore_mm = 0.0;            ///< 0: solid
};
using Shape = std::variant<Plate, Tube, Ring, Bar, Forging>;

struct Member {
  std::string id;
  Shape shape;
  geom::Pose X_JM;
  std::string steel;                              ///< designation in the library
  std::optional<material::Composition> analysis;  ///< of this heat; governs when given
  std::string z_quality;  ///< through-thickness class of a plate, "Z15" ...; empty: none ordered
};

[[nodiscard]] std::string_view shape_name(const Shape& shape);  ///< "plate", "tube" ...
[[nodiscard]] std::string_view bar_shape_name(BarShape shape);  ///< "round", "square" ...
[[nodiscard]] double volume_mm3(const Shape& shape);
/// Thickness that heat and weld see: plate and ring thickness, tube wall, a bar's diameter or
/// smaller side, a forging's thickest step (half the metal across when bored). Bars and forgings
/// are meant to err towards the thick side: more preheat, faster cooling.
[[nodiscard]] double wall_thickness_mm(const Shape& shape);
/// Units: -> kg at 7850 kg/m3. Tests: joint/member - closed-form.
[[nodiscard]] double mass_kg(const Member& member);
/// Centre of gravity in J.
[[nodiscard]] geom::Vec3 centre_of_gravity(const Member& member);

struct Weight {
  double mass_kg = 0.0;
  geom::Vec3 centre = geom::Vec3::Zero();  ///< centre of gravity in the frame asked for
};
/// Weight and centre of gravity of several members, frame J; weld metal is not counted.
[[nodiscard]] Weight total_weight(const std::vector<Member>& members);

/// A face of a member that passes through (or near) a point.
struct Face {
  geom::Vec3 normal;         ///< outward, unit, frame J
  double distance_mm = 0.0;  ///< of the point from the face, >= 0
};
/// The faces within `off_face_mm` of a point whose outline, grown by `beyond_edge_mm`, holds it.
/// Order: nearest first, ties by the shape's own face order.
/// Tests: joint/member - closed-form.
[[nodiscard]] std::vector<Face> faces_at(const Member& member,
                                         const geom::Vec3& p_J,
                                         double off_face_mm,
                                         double beyond_edge_mm);

}  // namespace seamturn::joint
