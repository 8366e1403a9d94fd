// SPDX-License-Identifier: MIT
// The layers and passes that fill a section in one position, with their settings.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/process/bead_limits.hpp"
#include "seamturn/process/consumables.hpp"
#include "seamturn/process/settings.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::pass {

using base::Angle;

/// One run of weld metal.
struct Pass {
  int number = 0;  ///< from 1, in the order laid
  process::PassRole role = process::PassRole::fill;
  int layer = 0;  ///< from 1
  int bead = 0;   ///< in the layer, from 1
  double area_mm2 = 0.0;
  section::Point centre;  ///< of the bead, section frame
  section::Point aim;     ///< where the wire points, section frame
  Angle work_angle;       ///< torch body off the section's y axis, + towards x
  std::string settings;   ///< id of the LinkedSettings row
  double feed_mm_s = 0.0;
  double voltage_v = 0.0;
  double current_a = 0.0;
  double travel_mm_s = 0.0;
  double weave_width_mm = 0.0;
  double weave_frequency_hz = 0.0;
  double gas_flow_l_min = 0.0;
  double tip_distance_mm = 0.0;
  Angle push;
  double arc_time_s = 0.0;  ///< welded length / travel
  double arc_energy_kj_mm = 0.0;
  double heat_input_kj_mm = 0.0;
  /// Id of the limit or settings row that set the bead's size; empty: none did.
  std::string limited_by;
};

struct PassStack {
  process::WeldPosition position = process::WeldPosition::pa;
  int layers = 0;
  std::vector<Pass> passes;
  double arc_time_s = 0.0;
  double heat_input_min_kj_mm = 0.0;
  double heat_input_max_kj_mm = 0.0;
  std::vector<base::Finding> findings;
};

/// What is sought among all stacks that keep the limits.
enum class StackAim {
  preferred_point,  ///< fewest passes, then travels nearest their preferred
  least_arc_time,   ///< with a margin only: the shortest arc time inside every limit by it
};

/// What one wire may lay in one position in one family of weld. Pointers and spans must outlive the
/// rules made of them.
struct StackRulesRequest {
  process::WeldFamily family = process::WeldFamily::fillet;
  process::WeldPosition position = process::WeldPosition::pa;
  const process::Wire* wire = nullptr;
  std::span<const process::LinkedSettings> settings;  ///< all rows; picked by role, wire, position
  std::span<const process::BeadLimit> limits;         ///< all rows
  std::optional<double> heat_input_min_kj_mm;         ///< permitted band
  std::optional<double> heat_input_max_kj_mm;
  StackAim aim = StackAim::preferred_point;
  /// Travel ranges, heat-input band and bead limits are kept by this share of each inside.
  double margin_ratio = 0.0;
};

struct StackRequest : StackRulesRequest {
  const section::WeldSection* section = nullptr;
  double length_mm = 0.0;  ///< of the seam: arc time
};

struct Rules;  // private to the room

/// Settings rows and limits sorted for stacking; made once, used for any number of sections. A
/// cheap copy; safe to read from several threads.
class StackRules {
 public:
  /// Pre: wire set, 0 <= margin < 0.5, margin > 0 for the least arc time.
  /// Outside: refuses heat.process.unknown.
  /// Tests: pass/settings, pass/rules - law: the same stacks as make_pass_stack of a request.
  [[nodiscard]] static base::Outcome<StackRules> make(const StackRulesRequest& request);
  [[nodiscard]] const Rules& rules() const { return *rules_; }

 private:
  explicit StackRules(std::shared_ptr<const Rules> rules) : rules_(std::move(rules)) {}
  std::shared_ptr<const Rules> rules_;
};

/// Lays the passes: fillets in triangular layers, grooves in layers cut from the real profile with
/// root first and cap last; travel solved from the bead area at the linked settings.
/// Units: as named.      Frame: section frame.
/// Pre: length > 0; a section as weld_section makes it.
/// Outside: refuses pass.settings.none (no row for role, wire, position), pass.travel.cannot_close
///   (names the limit and by how much), pass.heat_input.cannot_close, pass.limit.cannot_close (the
///   cap alone is thicker than its limit).
/// Source: layout rules in docs/methods/pass-stack.md; limits carry their own source.
/// Accuracy: pass areas add up to the section area within 1e-9 of it.
/// Tests: pass/fillet, pass/groove, pass/settings, pass/rules, pass/grid, pass/laws - published
///   single-pass limits and counts, exhaustive grids, laws, refusals.
[[nodiscard]] base::Outcome<PassStack> make_pass_stack(const StackRules& rules,
                                                       const section::WeldSection& section,
                                                       double length_mm);
/// The same with rules made for this one section. Refuses heat.process.unknown as well.
[[nodiscard]] base::Outcome<PassStack> make_pass_stack(const StackRequest& request);
/// Of the figure `passes`: the stack of one preparation with one settings row for every role.
[[nodiscard]] const base::FigureCard& pass_stack_card();

/// A fillet's stack with the beads of each layer laid from the second member's plate instead of the
/// first's: aims change places, torch leans are mirrored, times stay. For stances in which the
/// second plate is the lower one. Pre: beads of one layer have one area, as make_pass_stack lays
/// them in fillets. Source: layers are laid from the lower plate up, docs/methods/pass-stack.md.
/// Tests: pass/fillet - law: twice is once, planner/welds - law.
[[nodiscard]] PassStack laid_from_second(const PassStack& stack);

/// Positions in which rows of this wire can lay some section: a single or fill row, or root and cap
/// rows. Whether one section's roles are all there, make_pass_stack tells.
[[nodiscard]] std::vector<process::WeldPosition> positions_with_settings(
    std::span<const process::LinkedSettings> settings, const std::string& wire);

/// Lowest heat input of a wire's tack rows, at their fastest travel: the lowest a joint may see.
[[nodiscard]] std::optional<double> tack_heat_input_kj_mm(
    std::span<const process::LinkedSettings> settings, const process::Wire& wire);

}  // namespace seamturn::pass
