// SPDX-License-Identifier: MIT
// `seamturn figure passes`: the stack the plan would lay, from stated sizes and one settings row.
#include "detail_figures.hpp"
#include "detail_preparation.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::figures::detail {

namespace {

using process::PassRole;

constexpr double metre_mm = 1000.0;

void require_above_zero(Arguments& arguments, std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    const std::optional<double> value = arguments.find_number(key);
    if (value && !(*value > 0.0)) {
      arguments.add_bad_value(std::string(key) + " must be above zero");
    }
  }
}

process::Wire wire_laid(Arguments& arguments) {
  process::Wire wire;
  wire.id = "wire";
  wire.process = arguments.has("process") ? arguments.text("process") : "135";
  wire.diameter_mm = arguments.number("wire");
  wire.linear_mass_kg_m = arguments.find_number("linear-mass");
  wire.efficiency_ratio = arguments.number("efficiency");
  require_above_zero(arguments, {"wire", "linear-mass", "efficiency"});
  if (wire.efficiency_ratio > 1.0) {
    arguments.add_bad_value("efficiency lies above 0 and up to 1 (100 %)");
  }
  return wire;
}

/// The stated row, once for every role a stack may ask for.
std::vector<process::LinkedSettings> rows_of(Arguments& arguments, const process::Wire& wire) {
  process::LinkedSettings row;
  row.id = "settings";
  row.process = wire.process;
  row.wire = wire.id;
  const std::string position = arguments.text("position");
  if (const auto known = process::find_position(position)) {
    row.positions = {*known};
  } else {
    arguments.add_bad_value("key position=: \"" + position + "\" is none of PA to PG",
                            "figure.word.unknown");
  }
  row.feed_mm_s = arguments.number("feed");
  row.voltage_v = arguments.number("voltage");
  row.current_a = arguments.number("current");
  row.travel_min_mm_s = arguments.number("travel-min");
  row.travel_preferred_mm_s = arguments.number("travel");
  row.travel_max_mm_s = arguments.number("travel-max");
  row.weave_width_mm = arguments.number("weave-width");
  require_above_zero(arguments,
                     {"feed", "voltage", "current", "travel-min", "travel", "travel-max"});
  if (row.weave_width_mm < 0.0) arguments.add_bad_value("weave-width must not be negative");
  if (row.travel_min_mm_s > row.travel_preferred_mm_s ||
      row.travel_preferred_mm_s > row.travel_max_mm_s) {
    arguments.add_bad_value("travel-min, travel and travel-max must rise");
  }
  std::vector<process::LinkedSettings> rows;
  for (const PassRole role : {PassRole::root, PassRole::fill, PassRole::cap, PassRole::single}) {
    row.role = role;
    rows.push_back(row);
  }
  return rows;
}

/// One limit a row, so that a pass names the one that governs.
std::vector<process::BeadLimit> limits_of(Arguments& arguments, process::WeldFamily family) {
  std::vector<process::BeadLimit> limits;
  const auto add = [&](std::string_view key, std::optional<double> process::BeadLimit::*field) {
    require_above_zero(arguments, {key});
    if (!arguments.has(key)) return;
    process::BeadLimit limit;
    limit.id = std::string(key);
    limit.family = family;
    limit.*field = arguments.number(key);
    limits.push_back(limit);
  };
  add("leg-max", &process::BeadLimit::leg_max_mm);
  add("area-max", &process::BeadLimit::area_max_mm2);
  add("thickness-max", &process::BeadLimit::thickness_max_mm);
  add("split-width", &process::BeadLimit::split_width_mm);
  return limits;
}

void take_heat_input(Arguments& arguments, pass::StackRequest& request) {
  request.heat_input_min_kj_mm = arguments.find_number("heat-input-min");
  request.heat_input_max_kj_mm = arguments.find_number("heat-input-max");
  require_above_zero(arguments, {"heat-input-min", "heat-input-max"});
  if (request.heat_input_min_kj_mm && request.heat_input_max_kj_mm &&
      *request.heat_input_min_kj_mm > *request.heat_input_max_kj_mm) {
    arguments.add_bad_value("heat-input-min must be at most heat-input-max");
  }
}

FigureTable table_of(const pass::PassStack& stack) {
  FigureTable table;
  table.name = "passes";
  table.columns = {{"pass", "pass", "", 0},
                   {"role", "role", "", 0},
                   {"layer", "layer", "", 0},
                   {"area_mm2", "area", "mm2", 1},
                   {"centre_x_mm", "centre x", "mm", 1},
                   {"centre_y_mm", "y", "mm", 1},
                   {"aim_x_mm", "aim x", "mm", 1},
                   {"aim_y_mm", "y", "mm", 1},
                   {"work_angle_deg", "torch", "deg", 0},
                   {"weave_width_mm", "weave", "mm", 1},
                   {"travel_mm_s", "travel", "mm/s", 2},
                   {"arc_time_s", "arc", "s", 0},
                   {"heat_input_kj_mm", "heat", "kJ/mm", 2},
                   {"limited_by", "limited by", "", 0}};
  for (const pass::Pass& pass : stack.passes) {
    table.rows.push_back({static_cast<double>(pass.number),
                          std::string(process::role_name(pass.role)),
                          static_cast<double>(pass.layer),
                          pass.area_mm2,
                          pass.centre.x_mm,
                          pass.centre.y_mm,
                          pass.aim.x_mm,
                          pass.aim.y_mm,
                          pass.work_angle.deg(),
                          pass.weave_width_mm,
                          pass.travel_mm_s,
                          pass.arc_time_s,
                          pass.heat_input_kj_mm,
                          pass.limited_by});
  }
  return table;
}

Answer stack_answer(const section::WeldSection& section, const pass::StackRequest& request) {
  const auto stack = pass::make_pass_stack(request);
  if (!stack) return stack.error();
  return ResultMaker("passes")
      .principal(static_cast<double>(stack->passes.size()), "")
      .value("layers", stack->layers, "")
      .value("section_area_mm2", section.area_mm2, "mm2")
      .value("length_mm", request.length_mm, "mm")
      .value("arc_time_s", stack->arc_time_s, "s")
      .value("heat_input_min_kj_mm", stack->heat_input_min_kj_mm, "kJ/mm")
      .value("heat_input_max_kj_mm", stack->heat_input_max_kj_mm, "kJ/mm")
      .table(table_of(*stack))
      .findings(section.findings)
      .findings(stack->findings)
      .done();
}

}  // namespace

Answer passes_figure(Arguments& arguments) {
  section::SectionParams params = section_params(arguments);
  params.side = side_of_call(arguments, params);
  const process::WeldFamily family = joint::is_fillet(params.preparation)
                                         ? process::WeldFamily::fillet
                                         : process::WeldFamily::groove;
  const process::Wire wire = wire_laid(arguments);
  const std::vector<process::LinkedSettings> rows = rows_of(arguments, wire);
  const std::vector<process::BeadLimit> limits = limits_of(arguments, family);
  pass::StackRequest request;
  take_heat_input(arguments, request);
  if (!arguments.good()) return FigureResult{};
  const auto section = section::weld_section(params);
  if (!section) return section.error();
  request.section = &section.value();
  request.family = family;
  request.position = rows.front().positions.front();
  // A metre of seam; a plug or slot is one weld of the length along its middle line.
  request.length_mm = section->welded_round_mm > 0.0 ? section->welded_round_mm : metre_mm;
  request.wire = &wire;
  request.settings = rows;
  request.limits = limits;
  return stack_answer(*section, request);
}

}  // namespace seamturn::figures::detail
