// SPDX-License-Identifier: MIT
// A stance as it stands in the cell: what hangs there, where it is welded and from where.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan_reader/plan_reader.hpp"
#include "stance_drawing/solid.hpp"

namespace seamturn::stance_drawing {

/// A line the table turns about, where this stance has it; frame W.
struct Axis {
  std::string name;
  double angle_deg = 0.0;
  Vec3 at = Vec3::Zero();
  Vec3 along = Vec3::UnitZ();
};

/// Torch and travel where the first pass laid in the stance begins; frame W, unit length.
struct Torch {
  Vec3 tip = Vec3::Zero();
  Vec3 pointing = -Vec3::UnitZ();
  Vec3 travel = Vec3::UnitX();
  Line body;  ///< tip, bend and flange; empty: the cell describes none, or no heading is free
};

/// A seam that is welded in the stance.
struct Weld {
  pugi::xml_node seam;  ///< of the plan
  Edge path;            ///< frame W; a rolled ring where the stance has it
  std::optional<Torch> torch;
  pugi::xml_node first_pass;  ///< laid in the stance
  int passes = 0;             ///< laid in the stance
};

struct Scene {
  pugi::xml_node stance;
  pugi::xml_node stage;       ///< the last it is used in
  std::vector<Solid> solids;  ///< present in that stage, and what they hang on
  std::vector<Axis> axes;     ///< the one fixed to the floor first
  std::vector<Weld> welds;
  std::vector<std::string> work;    ///< of people while the part is held so, in order
  Vec3 load_centre = Vec3::Zero();  ///< part and fixture, frame W
};

/// Throws std::runtime_error when the plan has no such stance or is damaged.
[[nodiscard]] Scene scene_of(const plan_reader::PlanTree& plan, const std::string& stance);
/// All that ever hangs there in a stance, whatever the stage: for the size of the picture.
[[nodiscard]] std::vector<Solid> all_solids(const plan_reader::PlanTree& plan,
                                            const pugi::xml_node& stance);
/// x_mm y_mm z_mm.
[[nodiscard]] Vec3 place_of(const pugi::xml_node& node);

}  // namespace seamturn::stance_drawing
