// SPDX-License-Identifier: MIT
// The limits that bind one pass, tightest first, and which of them a pass would break.
#pragma once

#include <limits>
#include <span>
#include <string_view>

#include "seamturn/process/bead_limits.hpp"

namespace seamturn::pass {

/// One bound and the row it comes from; infinite when no row binds.
struct Bound {
  double value = std::numeric_limits<double>::infinity();
  std::string_view id;
};

/// The tightest bounds of all rows that match a family, role and position.
struct Caps {
  Bound leg_mm;  ///< of a fillet laid in one pass
  Bound area_mm2;
  Bound thickness_mm;  ///< of the layer
  Bound split_mm;      ///< a wider layer takes at least two beads
};

struct CapsKey {
  process::WeldFamily family = process::WeldFamily::fillet;
  process::WeldPosition position = process::WeldPosition::pa;
  process::PassRole role = process::PassRole::fill;
};

[[nodiscard]] Caps find_caps(std::span<const process::BeadLimit> limits, const CapsKey& key);

/// The bound exceeded most, relative to its value. `id` stays empty while all hold.
class Excess {
 public:
  void compare(double value, const Bound& bound);
  [[nodiscard]] bool any() const { return ratio_ > 1.0; }
  [[nodiscard]] std::string_view id() const { return id_; }

 private:
  double ratio_ = 1.0;
  std::string_view id_;
};

/// Beads side by side that a layer of a width needs: one up to the split width; beyond it as many
/// as keep a bead, 1.5 pitches wide, within the split width, and never fewer than two.
[[nodiscard]] int split_beads(double width_mm, const Bound& split_mm);
/// Beads of a layer's area that keep each within the bound.
[[nodiscard]] int area_beads(double area_mm2, const Bound& bound_mm2);

}  // namespace seamturn::pass
