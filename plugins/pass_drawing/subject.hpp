// SPDX-License-Identifier: MIT
// What one drawing looks at, read from plan.xml: a procedure, and the joint and seam that stand for
// all of it.
#pragma once

#include <string>
#include <vector>

#include "pass_drawing/beads.hpp"
#include "plan_reader/plan_reader.hpp"

namespace seamturn::pass_drawing {

struct Subject {
  const plan_reader::PlanTree* plan = nullptr;
  pugi::xml_node procedure;
  pugi::xml_node joint;
  pugi::xml_node preparation;
  pugi::xml_node seam;
  std::string position;
  std::string kind;  ///< of the preparation
  std::string type;  ///< of the joint
  int side = 1;
  bool has_two_sides = false;
  bool is_fillet = false;
  bool is_plug = false;    ///< or slot
  bool is_corner = false;  ///< a groove between plates that do not lie flush: tee and some corners
  double thickness_1_mm = 0.0;
  double thickness_2_mm = 0.0;
  double gap_mm = 0.0;
  double between_deg = 0.0;  ///< between the plates; 180 in a butt
  double surface_mm = 0.0;   ///< y of the welded surface, grooves
  std::vector<PassData> passes;
};

/// Throws std::runtime_error when the plan does not hold what a drawing needs.
[[nodiscard]] Subject find_subject(const plan_reader::PlanTree& plan, const std::string& id);

/// The section of a side of the joint; null when it has none.
[[nodiscard]] pugi::xml_node section_of(const Subject& subject, int side);
[[nodiscard]] FillMap fill_map(const Subject& subject);
/// The weld of the other side of a joint with two, in the frame of this side; empty without.
[[nodiscard]] Polygon other_side(const Subject& subject);

/// A size of the preparation; 0 when it is not stated.
[[nodiscard]] double size(const Subject& subject, const char* attribute);

}  // namespace seamturn::pass_drawing
