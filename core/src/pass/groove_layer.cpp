// SPDX-License-Identifier: MIT
// The beads of one layer of a groove: where each lies, where its wire points, how the torch leans.
#include "pass/detail_groove.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace seamturn::pass {
namespace {

using section::Slice;

// The torch does not lean further, or the nozzle meets the plate. Common practice.
constexpr Angle most_lean = Angle::deg(25.0);

/// Direction of a wall between two heights, off the y axis, + towards x.
[[nodiscard]] Angle wall_lean(double x_low_mm, double x_high_mm, double rise_mm) {
  return rise_mm > 0.0 ? Angle::rad(std::atan2(x_high_mm - x_low_mm, rise_mm)) : Angle();
}

/// Where one bead of a layer stands in its row.
struct Place {
  int index = 0;
  int count = 1;
  double thickness_mm = 0.0;
};

/// Halves the angle between what stands left and right of the bead: the walls for one bead, the
/// left wall and the face below for the first, the bead before and the right wall for the last.
[[nodiscard]] Angle work_angle(const Slice& low, const Slice& high, const Place& place) {
  const double rise_mm = high.y_mm - low.y_mm;
  const Angle left = wall_lean(low.left_mm, high.left_mm, rise_mm);
  const Angle right = wall_lean(low.right_mm, high.right_mm, rise_mm);
  const Angle level = Angle::rad(std::numbers::pi / 2.0);
  Angle lean = 0.5 * (left + right);
  if (place.count > 1 && place.index == 0) {
    lean = 0.5 * (left + level);
  } else if (place.count > 1 && place.index + 1 == place.count) {
    // The face of the bead before, from its toe to its crown: a bead is 1.5 pitches wide.
    const double pitch_mm =
        0.5 * (low.right_mm - low.left_mm + high.right_mm - high.left_mm) / place.count;
    const Angle face = Angle::rad(-std::atan2(0.75 * pitch_mm, place.thickness_mm));
    lean = 0.5 * (face + right);
  }
  return std::clamp(lean, -most_lean, most_lean);
}

/// Appends the beads of the layer, of equal area, from the first member's side across.
void append_layer(std::vector<Bead>& beads,
                  const Profile& profile,
                  const GrooveLayer& layer,
                  int number) {
  const LayerShape shape = layer_shape(profile, layer.low_mm, layer.high_mm, layer.capped);
  const Slice low = profile.walls_at(layer.low_mm);
  const Slice high = profile.walls_at(layer.high_mm);
  const double thickness_mm = layer.high_mm - layer.low_mm + shape.cap.mean_height_mm();
  double from = 0.0;
  for (int i = 0; i < layer.beads; ++i) {
    const double to =
        width_share(shape.cap, shape.strip.area_mm2, static_cast<double>(i + 1) / layer.beads);
    Bead bead;
    bead.role = layer.role;
    bead.layer = number;
    bead.bead = i + 1;
    bead.area_mm2 = (shape.strip.area_mm2 + shape.cap.area_mm2) / layer.beads;
    bead.centre = piece_centre(shape, from, to);
    bead.work_angle = work_angle(low, high, {i, layer.beads, thickness_mm});
    const double drop_mm = bead.centre.y_mm - low.y_mm;
    const double aim_x_mm = bead.centre.x_mm - std::tan(bead.work_angle.rad()) * drop_mm;
    bead.aim = {std::clamp(aim_x_mm, low.left_mm, low.right_mm), low.y_mm};
    bead.limited_by = layer.limited_by;
    beads.push_back(bead);
    from = to;
  }
}

}  // namespace

Angle halved_walls(const Slice& low, const Slice& high) {
  return work_angle(low, high, Place{});
}

base::Outcome<std::vector<Bead>> lay_groove(const section::WeldSection& section,
                                            const Rules& rules) {
  const Profile profile(section);
  const auto layers = find_groove_layers(profile, rules);
  if (!layers) {
    return layers.error();
  }
  std::vector<Bead> beads;
  int number = 0;
  for (const GrooveLayer& layer : *layers) {
    append_layer(beads, profile, layer, ++number);
  }
  return beads;
}

}  // namespace seamturn::pass
