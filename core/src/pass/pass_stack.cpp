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

[[nodiscard]] base::Outcome<Pass> weld_pass(const Bead& bead,
                                            const RowTable& rows,
                                            double length_mm) {
  const RowRange* range = rows.pick(bead.role, bead.area_mm2);
  SEAMTURN_REQUIRE(range != nullptr, bead.area_mm2);
  const LinkedSettings& row = *range->row;
  Pass pass;
  pass.role = bead.role;
  pass.layer = bead.layer;
  pass.bead = bead.bead;
  pass.area_mm2 = bead.area_mm2;
  pass.centre = bead.centre;
  pass.aim = bead.aim;
  pass.work_angle = bead.work_angle;
  pass.limited_by = std::string(bead.limited_by);
  pass.settings = row.id;
  pass.feed_mm_s = row.feed_mm_s;
  pass.voltage_v = row.voltage_v;
  pass.current_a = row.current_a;
  pass.weave_width_mm = row.weave_width_mm;
  pass.weave_frequency_hz = row.weave_frequency_hz;
  pass.gas_flow_l_min = row.gas_flow_l_min;
  pass.tip_distance_mm = row.tip_distance_mm;
  pass.push = row.push;
  // At the edge of the range the rounding of the division must not show outside of it.
  pass.travel_mm_s =
      std::clamp(range->travel_mm_s(bead.area_mm2), row.travel_min_mm_s, row.travel_max_mm_s);
  pass.arc_time_s = length_mm / pass.travel_mm_s;
  const heat::ArcParams arc{row.voltage_v, row.current_a, pass.travel_mm_s};
  pass.arc_energy_kj_mm = heat::arc_energy_kj_mm(arc);
  const auto heat_input = heat::heat_input_kj_mm(row.process, arc);
  if (!heat_input) {
    return heat_input.error();
  }
  pass.heat_input_kj_mm = *heat_input;
  return pass;
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

base::Outcome<PassStack> make_pass_stack(const StackRequest& request) {
  SEAMTURN_REQUIRE(request.section != nullptr && request.wire != nullptr);
  SEAMTURN_REQUIRE(request.length_mm > 0.0, request.length_mm);
  SEAMTURN_REQUIRE(request.section->area_mm2 > 0.0, request.section->area_mm2);
  SEAMTURN_REQUIRE(request.section->profile.size() >= 2, request.section->profile.size());
  const auto rows = RowTable::make(request);
  if (!rows) {
    return rows.error();
  }
  const auto beads =
      request.section->is_fillet ? lay_fillet(request, *rows) : lay_groove(request, *rows);
  if (!beads) {
    return beads.error();
  }
  PassStack stack;
  stack.position = request.position;
  stack.layers = beads->back().layer;
  stack.passes.reserve(beads->size());
  stack.heat_input_min_kj_mm = std::numeric_limits<double>::infinity();
  for (const Bead& bead : *beads) {
    auto pass = weld_pass(bead, *rows, request.length_mm);
    if (!pass) {
      return pass.error();
    }
    stack.passes.push_back(std::move(pass).value());
    Pass& last = stack.passes.back();
    last.number = static_cast<int>(stack.passes.size());
    stack.arc_time_s += last.arc_time_s;
    stack.heat_input_min_kj_mm = std::min(stack.heat_input_min_kj_mm, last.heat_input_kj_mm);
    stack.heat_input_max_kj_mm = std::max(stack.heat_input_max_kj_mm, last.heat_input_kj_mm);
  }
  return stack;
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
