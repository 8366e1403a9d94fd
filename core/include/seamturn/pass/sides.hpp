// SPDX-License-Identifier: MIT
// In which order the layers of a preparation welded from both sides are laid.
#pragma once

#include <span>
#include <vector>

#include "seamturn/joint/joint.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::pass {

/// Metal of each layer of a stack, the root first.
/// Units: mm2. Tests: pass/sides - law: adds up to the stack.
[[nodiscard]] std::vector<double> layer_areas_mm2(const PassStack& stack);

struct SidesRequest {
  std::span<const double> side_1_mm2;  ///< metal of each layer, the root first; welded first
  std::span<const double> side_2_mm2;
  bool is_gouged = true;  ///< side 2 down to sound metal of side 1, before its root
  /// Of side 1's metal that lies before side 2 is begun.
  double first_share = joint::usual_first_share;
  /// False: once begun, side 2 is filled, then what is left of side 1; the part is turned least.
  bool is_balanced = true;
};

enum class SideWork { gouge, layer };
struct SideStep {
  SideWork work = SideWork::layer;
  int side = 1;
  int layer = 0;  ///< from 1 on its own side; 0 for gouging
  bool operator==(const SideStep&) const = default;
};

/// Side 1 to its first share, gouge, then side 2; a side goes on until one more layer would put it
/// further ahead than the thickest layer of either side, both as shares of their side's metal; then
/// the other is welded. So the part is turned as seldom as that balance allows.
/// Units: mm2 -> order.
/// Pre: layers on both sides, areas > 0, 0 <= first share <= 1.
/// Outside: n/a.
/// Source: none - a rule of our own (docs/methods/pass-stack.md, "Two sides"); a third before the
///   second side is common practice.
/// Accuracy: exact. What bends the plate less, it does not know.
/// Tests: pass/sides - hand-made orders, laws.
[[nodiscard]] std::vector<SideStep> alternate_sides(const SidesRequest& request);

}  // namespace seamturn::pass
