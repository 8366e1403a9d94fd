// SPDX-License-Identifier: MIT
// A groove's profile made ready for many questions: areas below its slices are summed once.
#pragma once

#include <span>
#include <vector>

#include "pass/detail_cap.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::pass {

/// Integrals over the profile between two heights; w is the width, l the x of the left wall.
struct Strip {
  double y_low_mm = 0.0;
  double y_high_mm = 0.0;
  double area_mm2 = 0.0;          ///< integral of w
  double moment_y_mm3 = 0.0;      ///< of y w
  double moment_left_mm3 = 0.0;   ///< of l w
  double moment_width_mm3 = 0.0;  ///< of w w
};

/// The profile of a section and its cap, from where metal begins: root faces that touch hold none.
/// The section must outlive it. Heights are clamped.
class Profile {
 public:
  explicit Profile(const section::WeldSection& section);
  [[nodiscard]] double bottom_mm() const { return slices_.front().y_mm; }
  [[nodiscard]] double top_mm() const { return slices_.back().y_mm; }
  [[nodiscard]] double height_mm() const { return top_mm() - bottom_mm(); }
  [[nodiscard]] double area_mm2() const { return pieces_.back().below_mm2; }  ///< without cap
  [[nodiscard]] const CapSize& cap() const { return cap_; }

  /// Straight between slices.
  [[nodiscard]] section::Slice walls_at(double y_mm) const;
  struct Level {
    double width_mm = 0.0;
    double below_mm2 = 0.0;  ///< area below
  };
  [[nodiscard]] Level level_at(double y_mm) const;
  /// Least height below which an area lies; the top when there is less.
  [[nodiscard]] double top_of_area_mm(double area_mm2) const;
  /// Least height above which the profile is wider than a width everywhere; the top when it is not.
  [[nodiscard]] double wider_above_mm(double width_mm) const;
  /// Pre: low <= high. Exact: Simpson's rule on pieces where every integrand is a parabola.
  [[nodiscard]] Strip strip(double low_mm, double high_mm) const;

 private:
  /// From a slice to the next; the last one begins at the top.
  struct Piece {
    double y_mm = 0.0;
    double width_mm = 0.0;
    double growth = 0.0;  // of the width with height
    double below_mm2 = 0.0;
  };
  /// Index of the piece a height lies in.
  [[nodiscard]] std::size_t piece_at(double y_mm) const;

  std::span<const section::Slice> slices_;
  std::vector<Piece> pieces_;
  CapSize cap_;
};

/// A strip and the cap above it, if any, cut across by lines that keep the share of the width, so
/// that equal shares of the width are equal areas of the strip.
struct LayerShape {
  Strip strip;
  CapSize cap;  ///< none below the last layer
};
[[nodiscard]] LayerShape layer_shape(const Profile& profile,
                                     double low_mm,
                                     double high_mm,
                                     bool with_cap);

/// Centroid of the piece between two shares of the width. Pre: from < to.
[[nodiscard]] section::Point piece_centre(const LayerShape& shape, double from, double to);

}  // namespace seamturn::pass
