// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_starts.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

/// Going on the way the pass rolls, or back against it, whichever is shorter and leaves the axis
/// room for the whole pass.
std::optional<Angle> wound_by(const cell::Axis& axis, Angle at_stance, Angle rolled, Angle behind) {
  const Angle once = Angle::deg(360.0);
  const double sense = rolled < Angle() ? -1.0 : 1.0;
  Angle turns[] = {sense * behind, sense * (behind - once)};
  if (behind > once / 2.0) std::swap(turns[0], turns[1]);
  for (const Angle turn : turns) {
    const Angle start = at_stance + turn;
    const Angle end = start + rolled;
    if (axis.endless || (std::min(start, end) >= axis.min && std::max(start, end) <= axis.max)) {
      return turn;
    }
  }
  return std::nullopt;
}

}  // namespace

namespace {

/// A segment's layers all run one way; their ends are moved as it says.
joint::StartStopMap segment_starts(const joint::Seam& seam, int layers) {
  joint::StartStopMap map;
  for (int layer = 1; layer <= layers; ++layer) {
    const std::vector<joint::Stretch> stretches = joint::layer_stretches(seam, layer);
    joint::LayerStops stops{
        layer, stretches.front().from_mm, stretches.back().to_mm, seam.segment->reversed};
    if (stops.reversed) std::swap(stops.start_mm, stops.stop_mm);
    map.layers.push_back(stops);
  }
  return map;
}

}  // namespace

Inputs with_stops_apart(Inputs inputs) {
  const std::optional<LayerStopRule>& row = inputs.library.layer_stops;
  if (!row || !inputs.weldment.balance_off.empty()) return inputs;
  for (joint::Joint& joint : inputs.weldment.joints) {
    if (!joint.balance_off.empty()) continue;
    for (joint::Seam& seam : joint.seams) {
      if (!seam.path || seam.asked.stop_stagger_mm > 0.0) continue;
      const bool closed = geom::is_closed(*seam.path);
      // Craters on a tab are cut off with it. Going round, stops lie at most half the way apart.
      if (!closed && seam.asked.run_on_mm > 0.0 && seam.asked.run_off_mm > 0.0) continue;
      seam.asked.stop_stagger_mm =
          closed ? std::min(row->stagger_mm, seam.length_mm / 4.0) : row->stagger_mm;
    }
  }
  return inputs;
}

joint::StartStopMap layer_starts(const joint::Seam& seam, const pass::PassStack& stack) {
  if (seam.segment) return segment_starts(seam, stack.layers);
  const joint::StartStopRule rule{seam.asked.corner_clear_mm, seam.asked.stop_stagger_mm};
  const bool asks = rule.corner_clear_mm > 0.0 || (rule.stagger_mm > 0.0 && stack.layers > 1);
  const bool in_one_go = joint::stretches_of(seam).size() == 1;
  if (!asks || !seam.path || !in_one_go || stack.layers < 1) return {};
  const joint::StartStopCourse course = joint::start_stop_course(*seam.path, seam.asked, false);
  return joint::start_stop_map(rule, course, stack.layers);
}

bool stops_at_one_end(const joint::Seam& seam, const std::vector<joint::LayerStops>& starts) {
  const auto above =
      std::adjacent_find(starts.begin(),
                         starts.end(),
                         [](const joint::LayerStops& one, const joint::LayerStops& next) {
                           return std::abs(one.stop_mm - next.stop_mm) < base::rounding_mm;
                         });
  if (above == starts.end()) return false;
  return (above->reversed ? seam.asked.run_on_mm : seam.asked.run_off_mm) <= 0.0;
}

double first_start_mm(const joint::Seam& seam, const pass::PassStack& stack) {
  if (!seam.path || !geom::is_closed(*seam.path)) return 0.0;
  const joint::StartStopMap starts = layer_starts(seam, stack);
  return starts.layers.empty() ? 0.0 : starts.layers.front().start_mm;
}

LayerStart start_of_layer(const std::vector<LayerStart>& starts, int layer) {
  return starts.empty() ? LayerStart() : starts.at(static_cast<std::size_t>(layer) - 1);
}

std::vector<LayerStart> planned_starts(const joint::Seam& seam, const pass::PassStack& stack) {
  std::vector<LayerStart> starts;
  const joint::StartStopMap map = layer_starts(seam, stack);
  for (const joint::LayerStops& layer : map.layers) {
    LayerStart start;
    start.reversed = layer.reversed;
    if (geom::is_closed(*seam.path)) {
      start.behind_mm = geom::wrapped_station_mm(layer.start_mm - map.layers.front().start_mm,
                                                 geom::path_length_mm(*seam.path));
    }
    starts.push_back(start);
  }
  return starts;
}

std::vector<LayerStart> rolled_starts(const joint::Seam& seam,
                                      const pass::PassStack& stack,
                                      const cell::Axis& axis,
                                      Angle at_stance,
                                      Angle rolled) {
  std::vector<LayerStart> starts = planned_starts(seam, stack);
  const std::vector<LayerStart> planned = starts;
  const double radius_mm = std::get<geom::CirclePath>(*seam.path).radius_mm;
  const double length_mm = geom::path_length_mm(*seam.path);
  for (std::size_t i = 1; i < starts.size(); ++i) {
    // Where its own place is out of reach, that of an earlier layer does as well, if only it lies
    // as far from the layer before.
    std::vector<double> places_mm = {planned[i].behind_mm};
    for (std::size_t k = i; k-- > 0;) places_mm.push_back(starts[k].behind_mm);
    const double due_mm =
        geom::way_round_mm(planned[i].behind_mm, planned[i - 1].behind_mm, length_mm) -
        base::rounding_mm;
    starts[i].has_room = false;
    starts[i].behind_mm = 0.0;
    for (const double place_mm : places_mm) {
      if (geom::way_round_mm(place_mm, starts[i - 1].behind_mm, length_mm) < due_mm) continue;
      const auto wound = wound_by(axis, at_stance, rolled, Angle::rad(place_mm / radius_mm));
      if (!wound) continue;
      starts[i].has_room = true;
      starts[i].behind_mm = place_mm;
      starts[i].wound = *wound;
      break;
    }
  }
  return starts;
}

}  // namespace seamturn::planner::detail
