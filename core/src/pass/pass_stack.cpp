// SPDX-License-Identifier: MIT
#include "seamturn/pass/pass_stack.hpp"

#include <algorithm>
#include <limits>

#include "pass/detail_layout.hpp"
#include "pass/detail_rows.hpp"
#include "seamturn/heat/heat_input.hpp"

namespace seamturn::pass {
namespace {

using process::LinkedSettings;
using process::PassRole;

void set_settings(Pass& pass, const LinkedSettings& row) {
  pass.settings = row.id;
  pass.feed_mm_s = row.feed_mm_s;
  pass.voltage_v = row.voltage_v;
  pass.current_a = row.current_a;
  pass.weave_width_mm = row.weave_width_mm;
  pass.weave_frequency_hz = row.weave_frequency_hz;
  pass.gas_flow_l_min = row.gas_flow_l_min;
  pass.tip_distance_mm = row.tip_distance_mm;
  pass.push = row.push;
}

void set_pass(Pass& pass, const Bead& bead, const RowTable& rows, double length_mm) {
  const RowRange* range = rows.pick(bead.role, bead.area_mm2);
  SEAMTURN_REQUIRE(range != nullptr, bead.area_mm2);
  pass.role = bead.role;
  pass.layer = bead.layer;
  pass.bead = bead.bead;
  pass.area_mm2 = bead.area_mm2;
  pass.centre = bead.centre;
  pass.aim = bead.aim;
  pass.work_angle = bead.work_angle;
  pass.limited_by = bead.limited_by;
  set_settings(pass, *range->row);
  // At the edge of the range the rounding of the division must not show outside of it.
  pass.travel_mm_s =
      std::clamp(range->travel_mm_s(bead.area_mm2), range->slowest_mm_s, range->fastest_mm_s);
  pass.arc_time_s = length_mm / pass.travel_mm_s;
  pass.arc_energy_kj_mm =
      heat::arc_energy_kj_mm({pass.voltage_v, pass.current_a, pass.travel_mm_s});
  pass.heat_input_kj_mm = range->efficiency_ratio * pass.arc_energy_kj_mm;
}

[[nodiscard]] bool has_row(std::span<const LinkedSettings> settings,
                           const std::string& wire,
                           process::WeldPosition position,
                           PassRole role) {
  return std::any_of(settings.begin(), settings.end(), [&](const LinkedSettings& row) {
    return row.wire == wire && row.role == role &&
           std::find(row.positions.begin(), row.positions.end(), position) != row.positions.end();
  });
}

}  // namespace

base::Outcome<PassStack> make_pass_stack(const StackRules& stack_rules,
                                         const section::WeldSection& section,
                                         double length_mm) {
  SEAMTURN_REQUIRE(length_mm > 0.0, length_mm);
  SEAMTURN_REQUIRE(section.area_mm2 > 0.0, section.area_mm2);
  SEAMTURN_REQUIRE(section.profile.size() >= 2, section.profile.size());
  const Rules& rules = stack_rules.rules();
  const auto beads = section.is_fillet ? lay_fillet(section, rules) : lay_groove(section, rules);
  if (!beads) {
    return beads.error();
  }
  PassStack stack;
  stack.position = rules.request.position;
  stack.layers = beads->back().layer;
  stack.passes.resize(beads->size());
  stack.heat_input_min_kj_mm = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < stack.passes.size(); ++i) {
    Pass& pass = stack.passes[i];
    pass.number = static_cast<int>(i) + 1;
    set_pass(pass, (*beads)[i], rules.rows, length_mm);
    stack.arc_time_s += pass.arc_time_s;
    stack.heat_input_min_kj_mm = std::min(stack.heat_input_min_kj_mm, pass.heat_input_kj_mm);
    stack.heat_input_max_kj_mm = std::max(stack.heat_input_max_kj_mm, pass.heat_input_kj_mm);
  }
  return stack;
}

base::Outcome<PassStack> make_pass_stack(const StackRequest& request) {
  SEAMTURN_REQUIRE(request.section != nullptr, "request without section");
  const auto rules = StackRules::make(request);
  if (!rules) {
    return rules.error();
  }
  return make_pass_stack(*rules, *request.section, request.length_mm);
}

PassStack laid_from_second(const PassStack& stack) {
  PassStack turned = stack;
  for (std::size_t first = 0; first < stack.passes.size();) {
    std::size_t end = first;
    while (end < stack.passes.size() && stack.passes[end].layer == stack.passes[first].layer) ++end;
    for (std::size_t i = first; i < end; ++i) {
      const Pass& other = stack.passes[first + end - 1 - i];
      turned.passes[i].centre = other.centre;
      turned.passes[i].aim = other.aim;
      turned.passes[i].work_angle = -stack.passes[i].work_angle;
    }
    first = end;
  }
  return turned;
}

std::vector<process::WeldPosition> positions_with_settings(std::span<const LinkedSettings> settings,
                                                           const std::string& wire) {
  using process::WeldPosition;
  std::vector<WeldPosition> positions;
  for (const WeldPosition position : {WeldPosition::pa,
                                      WeldPosition::pb,
                                      WeldPosition::pc,
                                      WeldPosition::pd,
                                      WeldPosition::pe,
                                      WeldPosition::pf,
                                      WeldPosition::pg}) {
    const auto has = [&](PassRole role) { return has_row(settings, wire, position, role); };
    if (has(PassRole::single) || has(PassRole::fill) ||
        (has(PassRole::root) && has(PassRole::cap))) {
      positions.push_back(position);
    }
  }
  return positions;
}

std::optional<double> tack_heat_input_kj_mm(std::span<const LinkedSettings> settings,
                                            const process::Wire& wire) {
  std::optional<double> lowest;
  for (const LinkedSettings& row : settings) {
    if (row.role != PassRole::tack || row.wire != wire.id) {
      continue;
    }
    const auto heat_input =
        heat::heat_input_kj_mm(row.process, {row.voltage_v, row.current_a, row.travel_max_mm_s});
    if (heat_input && (!lowest || *heat_input < *lowest)) {
      lowest = *heat_input;
    }
  }
  return lowest;
}

}  // namespace seamturn::pass
