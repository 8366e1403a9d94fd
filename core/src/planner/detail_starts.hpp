// SPDX-License-Identifier: MIT
// Where the layers of a seam start and stop, so that no crater lies on a crater.
#pragma once

#include <optional>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/joint/start_stop.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::planner::detail {

/// The inputs with the library's distance between the stops of layers on every seam that states
/// none, unless balance is off; on rings at most a quarter of their length.
/// Source: none - rules of this model (docs/methods/order.md). Tests: planner/stops_apart.
[[nodiscard]] Inputs with_stops_apart(Inputs inputs);

/// Starts and stops of the layers by what the seam asks for. No layers: it asks for nothing, has no
/// place, or is interrupted.
[[nodiscard]] joint::StartStopMap layer_starts(const joint::Seam& seam,
                                               const pass::PassStack& stack);

/// Where the first layer of a closed seam starts, when the robot goes round it; 0 for open seams.
[[nodiscard]] double first_start_mm(const joint::Seam& seam, const pass::PassStack& stack);

/// Whether layers of an open seam stop above one another, and no tab takes their craters.
[[nodiscard]] bool stops_at_one_end(const joint::Seam& seam,
                                    const std::vector<joint::LayerStops>& starts);

/// What a layer's start means for the robot and the table.
struct LayerStart {
  bool reversed = false;   ///< open seams: welded from the end of the path
  double behind_mm = 0.0;  ///< closed seams: so far round after the first layer's start
  Angle wound;             ///< rolled ones: turn of the axis from its stance to there, signed
  bool has_room = true;    ///< rolled ones: false where the axis cannot start the layer elsewhere
};
/// Of a layer, counted from 1; the plain start where nothing is asked for.
[[nodiscard]] LayerStart start_of_layer(const std::vector<LayerStart>& starts, int layer);

/// One entry a layer; none when nothing is asked for. A rolled ring whose axis cannot start a
/// layer there starts it where an earlier layer did, as far from the layer before; where none is,
/// where the first did.
/// `at_stance` is the rolling axis there, `rolled` the signed turn of one pass.
[[nodiscard]] std::vector<LayerStart> planned_starts(const joint::Seam& seam,
                                                     const pass::PassStack& stack);
[[nodiscard]] std::vector<LayerStart> rolled_starts(const joint::Seam& seam,
                                                    const pass::PassStack& stack,
                                                    const cell::Axis& axis,
                                                    Angle at_stance,
                                                    Angle rolled);

}  // namespace seamturn::planner::detail
