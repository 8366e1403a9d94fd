// SPDX-License-Identifier: MIT
#include "pass_drawing/beads.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace seamturn::pass_drawing {

namespace {

constexpr int face_steps = 48;  // over the whole width
constexpr int flank_steps = 8;  // from the bottom of a layer to its top
constexpr double swell = 0.16;  // of a bead's crown, in thicknesses of its layer
constexpr double flank = 0.22;  // overlap of neighbours, in widths of the narrower
constexpr double sure = 0.985;  // so much of the outline filled is all of it

/// The upper side of a layer: level, and over each bead a crown that adds nothing in total.
struct Surface {
  double level = 0.0;
  double swell = 0.0;
  std::vector<double> bounds = {0.0, 1.0};  ///< shares across between beads, ends included

  [[nodiscard]] double at(double s) const {
    std::size_t bead = 0;
    while (bead + 2 < bounds.size() && s > bounds[bead + 1]) ++bead;
    const double u = (s - bounds[bead]) / std::max(bounds[bead + 1] - bounds[bead], 1e-9);
    return std::max(0.0, level + swell * (4.0 * u * (1.0 - u) - 2.0 / 3.0));
  }
};

/// A side of a bead: a share across at every height of its layer. A wall of the groove, or the
/// round flank of the bead laid first of two.
struct Side {
  double bound = 0.0;
  double lean = 0.0;  ///< above 0: the bead on the left was laid first

  [[nodiscard]] double at(double v) const {
    const double round = 2.0 * std::sqrt(std::max(0.0, 1.0 - v * v)) - 1.0;
    return std::clamp(bound + lean * round, 0.0, 1.0);
  }
};

class Band {
 public:
  Band(const FillMap& map, const Surface& lower, const Surface& upper)
      : map_(map), lower_(lower), upper_(upper) {}

  [[nodiscard]] Polygon between(const Side& left, const Side& right) const {
    Polygon polygon;
    along_face(polygon, left.at(0.0), right.at(0.0), 0.0);
    along_side(polygon, right, true);
    along_face(polygon, right.at(1.0), left.at(1.0), 1.0);
    along_side(polygon, left, false);
    return polygon;
  }

 private:
  [[nodiscard]] double r_at(double s, double v) const {
    const double low = lower_.at(s);
    const double high = std::max(low, std::min(upper_.at(s), map_.full()));
    return low + v * (high - low);
  }
  [[nodiscard]] Point place(double s, double v) const { return map_.at(s, r_at(s, v)); }

  /// The same places whichever bead asks, so that one layer ends where the next begins.
  void along_face(Polygon& polygon, double from, double to, double v) const {
    std::vector<double> stops = {from, to};
    const auto add = [&](double s) {
      if (s > std::min(from, to) && s < std::max(from, to)) stops.push_back(s);
    };
    for (int i = 1; i < face_steps; ++i) add(static_cast<double>(i) / face_steps);
    for (const double bound : (v > 0.0 ? upper_ : lower_).bounds) add(bound);
    std::sort(stops.begin(), stops.end());
    if (from > to) std::reverse(stops.begin(), stops.end());
    for (const double s : stops) polygon.push_back(place(s, v));
  }
  /// Along a wall its bends are met exactly.
  void along_side(Polygon& polygon, const Side& side, bool upwards) const {
    std::vector<double> stops;
    for (int i = 1; i < flank_steps; ++i) stops.push_back(static_cast<double>(i) / flank_steps);
    const double low = r_at(side.bound, 0.0);
    const double high = r_at(side.bound, 1.0);
    for (const double bend : map_.bends()) {
      if (side.lean == 0.0 && bend > low && bend < high)
        stops.push_back((bend - low) / (high - low));
    }
    std::sort(stops.begin(), stops.end());
    if (!upwards) std::reverse(stops.begin(), stops.end());
    for (const double v : stops) polygon.push_back(place(side.at(v), v));
  }

  const FillMap& map_;
  Surface lower_;
  Surface upper_;
};

using Row = std::vector<const PassData*>;  // of one layer, across

double total_area(const Row& row) {
  double area = 0.0;
  for (const PassData* pass : row) area += pass->area_mm2;
  return area;
}

/// Lays layer upon layer.
class Laying {
 public:
  Laying(const FillMap& map, double scale) : map_(map), scale_(scale) {}

  std::vector<BeadShape> add_layer(const Row& row, bool fills_up) {
    Surface upper;
    upper.bounds = even_bounds(row);
    upper.level = map_.full();
    // The crowns move the bounds a little, and the bounds the crowns.
    for (int i = 0; !fills_up && i < 3; ++i) {
      upper.level = solved_level(row, upper);
      upper.bounds = solved_bounds(row, upper);
      upper.swell = swell * (upper.level - below_.level);
    }
    if (!fills_up) upper.level = solved_level(row, upper);
    std::vector<BeadShape> beads = cut(row, upper, solved_bounds(row, upper));
    below_ = upper;
    first_ = false;
    return beads;
  }

 private:
  static std::vector<double> even_bounds(const Row& row) {
    std::vector<double> bounds = {0.0};
    const double all = std::max(total_area(row), 1e-12);
    for (const PassData* pass : row) bounds.push_back(bounds.back() + pass->area_mm2 / all);
    bounds.back() = 1.0;
    return bounds;
  }

  [[nodiscard]] double behind_mm2() const { return std::abs(signed_area(map_.behind())); }

  /// The level up to which the metal of a layer reaches.
  [[nodiscard]] double solved_level(const Row& row, const Surface& upper) const {
    const double wanted = scale_ * total_area(row) - (first_ ? behind_mm2() : 0.0);
    return solve_rising(0.0, map_.full(), wanted, [&](double level) {
      Surface tried = upper;
      tried.level = level;
      return signed_area(Band(map_, below_, tried).between({0.0, 0.0}, {1.0, 0.0}));
    });
  }

  /// The side between the beads i - 1 and i.
  static Side side_at(const Row& row, std::size_t i, double bound) {
    if (i == 0 || i == row.size()) return {i == 0 ? 0.0 : 1.0, 0.0};
    const double all = std::max(total_area(row), 1e-12);
    const double overlap = flank * std::min(row[i - 1]->area_mm2, row[i]->area_mm2) / all;
    return {bound, row[i - 1]->number < row[i]->number ? overlap : -overlap};
  }

  [[nodiscard]] std::vector<double> solved_bounds(const Row& row, const Surface& upper) const {
    const Band band(map_, below_, upper);
    std::vector<double> bounds = {0.0};
    double wanted = first_ ? -behind_mm2() : 0.0;
    for (std::size_t i = 1; i < row.size(); ++i) {
      wanted += scale_ * row[i - 1]->area_mm2;
      bounds.push_back(solve_rising(bounds.back(), 1.0, wanted, [&](double bound) {
        return signed_area(band.between({0.0, 0.0}, side_at(row, i, bound)));
      }));
    }
    bounds.push_back(1.0);
    return bounds;
  }

  std::vector<BeadShape> cut(const Row& row,
                             const Surface& upper,
                             const std::vector<double>& bounds) const {
    const Band band(map_, below_, upper);
    std::vector<BeadShape> beads;
    for (std::size_t i = 0; i < row.size(); ++i) {
      BeadShape bead{row[i]->number, row[i]->layer, row[i]->role, {}, {}};
      bead.parts.push_back(
          band.between(side_at(row, i, bounds[i]), side_at(row, i + 1, bounds[i + 1])));
      bead.middle = centroid(bead.parts.front());
      if (first_ && i == 0 && !map_.behind().empty()) bead.parts.push_back(map_.behind());
      beads.push_back(bead);
    }
    return beads;
  }

  const FillMap& map_;
  double scale_;
  Surface below_;
  bool first_ = true;
};

}  // namespace

std::vector<BeadShape> bead_shapes(const FillMap& map, const std::vector<PassData>& passes) {
  std::map<int, Row> layers;
  double planned = 0.0;
  for (const PassData& pass : passes) {
    layers[pass.layer].push_back(&pass);
    planned += pass.area_mm2;
  }
  const double held = signed_area(map.outline());
  const bool fills_up = planned >= sure * held;
  Laying laying(map, fills_up ? held / planned : 1.0);
  std::vector<BeadShape> beads;
  for (auto& [layer, row] : layers) {
    std::stable_sort(row.begin(), row.end(), [&](const PassData* a, const PassData* b) {
      return map.share_of(a->centre) < map.share_of(b->centre);
    });
    const bool last = layer == layers.rbegin()->first;
    for (BeadShape& bead : laying.add_layer(row, last && fills_up)) {
      beads.push_back(std::move(bead));
    }
  }
  std::sort(beads.begin(), beads.end(), [](const BeadShape& a, const BeadShape& b) {
    return a.number < b.number;
  });
  return beads;
}

}  // namespace seamturn::pass_drawing
