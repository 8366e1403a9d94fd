// SPDX-License-Identifier: MIT
// Does the nozzle fit between the walls where each pass is welded? A check in the plane of the
// section; the torch's body, the robot and clamps are not in it.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "seamturn/pass/pass_stack.hpp"
#include "seamturn/process/nozzle.hpp"

namespace seamturn::pass {

/// Left is x < 0. A plate begins where the groove's face ends; a fillet has plates only.
enum class NozzleWall { left_face, right_face, left_plate, right_plate };
[[nodiscard]] std::string_view nozzle_wall_name(NozzleWall wall);  ///< "left face" ...

struct NozzleAccessRequest {
  const section::WeldSection* section = nullptr;
  std::span<const Pass> passes;  ///< aim, work angle and tip distance are looked at
  process::Nozzle nozzle;
  double clearance_mm = 1.0;  ///< due between nozzle and walls. Proposed
  /// Grooves: how steeply the plates rise beyond the groove's edges. 0: level, as in a butt;
  /// 90 deg: upright, as the first member of a tee. Fillets take their plates from the section.
  Angle left_rise;
  Angle right_rise;
};

/// One pass. What would clear, clears by the clearance due.
struct PassAccess {
  int number = 0;
  /// How far the nozzle may grow or sink, along and square to the torch; negative: it collides.
  double clearance_mm = 0.0;
  NozzleWall wall = NozzleWall::left_face;  ///< the nearest
  std::optional<double> slim_diameter_mm;   ///< largest nozzle that clears at this stick-out
  std::optional<double> stick_out_mm;       ///< least that clears with this nozzle
};

struct NozzleAccess {
  std::vector<PassAccess> passes;
  bool is_reached = true;                  ///< every pass clears
  double clearance_mm = 0.0;               ///< the least
  int tightest = 0;                        ///< number of its pass
  std::optional<double> slim_diameter_mm;  ///< clears every pass
  std::optional<double> stick_out_mm;      ///< clears every pass
  /// Grooves with a bevel: least angle between the faces that clears every pass, aims kept. Only
  /// looked for when a pass does not clear.
  std::optional<Angle> included;
  std::vector<base::Finding> findings;
};

/// Room of the nozzle pass by pass: a rectangle as wide as the nozzle, from its mouth upwards along
/// the torch, against the section's walls and the plates beyond.
/// Units: mm, Angle -> mm, Angle.      Frame: section frame.
/// Pre: section and passes there, diameter > 0, clearance >= 0, 0 <= stick-out range in order.
/// Outside: warns pass.nozzle.no_access (with slim nozzle, wider angle, longer stick-out in
///   numbers) and pass.nozzle.stick_out (a row's tip distance is outside the nozzle's range).
/// Source: none - plane geometry (docs/methods/nozzle-access.md).
/// Accuracy: exact for straight walls; the angle within 0.01 deg. Weld metal already laid is not
///   in the way: it stays below the mouth as long as layers are thinner than that is above them.
/// Tests: pass/nozzle_access - closed-form, laws, refusal pairs.
[[nodiscard]] NozzleAccess find_nozzle_access(const NozzleAccessRequest& request);
/// Of the figure `nozzle-access`: one bead in a preparation.
[[nodiscard]] const base::FigureCard& nozzle_access_card();

/// One bead before anything is known of the stack: the wire points midway between the walls at a
/// height, the torch halves the angle of the lines from there to the edges, within 25 deg as where
/// layers are laid; in a fillet along y. Its tip distance is still to be set.
/// Units: mm -> mm, Angle.      Frame: section frame.
/// Pre: 0 <= height < the section's height.
/// Outside: n/a.
/// Source: none - the rule of layers of one bead (docs/methods/pass-stack.md), common practice.
/// Accuracy: exact. A stack's own beads know their layer: take theirs where there is one.
/// Tests: figures/pass_figures - closed-form, common practice.
[[nodiscard]] Pass bead_at_height(const section::WeldSection& section, double height_mm);

}  // namespace seamturn::pass
