// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 2> kinds = {"tilt-rotate", "headstock"};
constexpr std::array<std::string_view, 2> tilt_rotate_axes = {"tilt", "rotate"};
constexpr std::array<std::string_view, 1> headstock_axes = {"turn"};

void read_limits(AttributeReader& reader, cell::Axis& axis) {
  axis.endless = reader.find_yes("endless");
  if (axis.endless) {
    for (const char* name : {"min", "max"}) {
      reader.refuse(name, "read.axis.limits", "the axis is endless");
    }
    return;
  }
  axis.min = reader.angle("min", ranges::axis_limit);
  axis.max = reader.angle("max", ranges::axis_limit);
  if (axis.min >= axis.max) {
    reader.error("min",
                 "read.axis.limits",
                 "the lower limit is not below the upper; expected min= below max=, or "
                 "endless=\"yes\"; correct one of them");
  }
}

cell::Axis read_axis(FileContext& context,
                     const pugi::xml_node& element,
                     std::span<const std::string_view> names) {
  AttributeReader reader(context, element);
  cell::Axis axis;
  axis.name = reader.text("name");
  if (!axis.name.empty() && std::find(names.begin(), names.end(), axis.name) == names.end()) {
    reader.error("name",
                 "read.word.unknown",
                 "attribute \"name\" is " + in_quotes(axis.name) + "; expected " + one_of(names) +
                     did_you_mean(axis.name, names));
  }
  read_limits(reader, axis);
  axis.speed_rad_s = reader.quantity("speed", ranges::axis_speed);
  axis.acceleration_rad_s2 = reader.quantity("acceleration", ranges::axis_acceleration);
  axis.torque_max_nm = reader.quantity("torque-max", ranges::torque);
  reader.finish();
  check_children(context, element, {});
  return axis;
}

/// The axes in the order the kind asks for, each once.
std::vector<cell::Axis> read_axes(FileContext& context,
                                  const pugi::xml_node& element,
                                  std::span<const std::string_view> names) {
  std::vector<cell::Axis> read;
  for (const pugi::xml_node& child : element.children("axis")) {
    cell::Axis axis = read_axis(context, child, names);
    const auto same = [&](const cell::Axis& other) { return other.name == axis.name; };
    if (!axis.name.empty() && std::any_of(read.begin(), read.end(), same)) {
      context.report.error(context.file.spot(child.attribute("name")),
                           "read.positioner.axes",
                           "a second axis " + in_quotes(axis.name) + "; expected each once");
    }
    read.push_back(std::move(axis));
  }
  std::vector<cell::Axis> axes;
  for (const std::string_view name : names) {
    const auto found = std::find_if(
        read.begin(), read.end(), [&](const cell::Axis& axis) { return axis.name == name; });
    if (found != read.end()) {
      axes.push_back(*found);
      continue;
    }
    context.report.error(context.file.spot(element),
                         "read.positioner.axes",
                         "axis \"" + std::string(name) + "\" is missing; expected <axis name=\"" +
                             std::string(name) + "\" .../>; add it");
  }
  return axes;
}

cell::Positioner read_positioner(FileContext& context, const pugi::xml_node& element) {
  AttributeReader reader(context, element);
  cell::Positioner positioner;
  positioner.id = reader.id("id");
  positioner.kind = static_cast<cell::PositionerKind>(reader.word("kind", kinds));
  positioner.tilt_centre = reader.point("tilt-centre");
  positioner.overhang_mm = reader.quantity("overhang", ranges::overhang);
  positioner.load_max_kg = reader.quantity("load-max", ranges::mass);
  positioner.load_centre_mm = reader.quantity("load-centre", ranges::size_or_none);
  positioner.rolling_speed_max_rad_s = reader.quantity("rolling-speed-max", ranges::axis_speed);
  constexpr std::array<std::string_view, 1> known = {"axis"};
  check_children(context, element, known);
  const bool headstock = positioner.kind == cell::PositionerKind::headstock;
  const std::span<const std::string_view> names =
      headstock ? std::span<const std::string_view>(headstock_axes) : tilt_rotate_axes;
  positioner.axes = read_axes(context, element, names);
  const bool too_fast =
      !positioner.axes.empty() &&
      positioner.rolling_speed_max_rad_s > positioner.axes.back().speed_rad_s * (1 + 1e-9);
  if (too_fast) {
    reader.error("rolling-speed-max",
                 "read.positioner.rolling_speed",
                 "welding while turning would be faster than the last axis can turn; expected at "
                 "most the speed of axis \"" +
                     positioner.axes.back().name + "\"; correct one of them");
  }
  reader.finish();
  return positioner;
}

cell::Robot read_robot(FileContext& context, const pugi::xml_node& element) {
  AttributeReader reader(context, element);
  cell::Robot robot;
  robot.id = reader.id("id");
  robot.home = reader.point("home");
  robot.air_speed_mm_s = reader.quantity("air-speed", ranges::air_speed);
  robot.air_acceleration_mm_s2 = reader.quantity("air-acceleration", ranges::air_acceleration);
  robot.retract_mm = reader.quantity("retract", ranges::size_or_none);
  reader.finish();
  check_children(context, element, {});
  return robot;
}

cell::Torch read_torch(FileContext& context, const pugi::xml_node& element) {
  AttributeReader reader(context, element);
  cell::Torch torch;
  torch.id = reader.id("id");
  torch.nozzle_diameter_mm = reader.quantity("nozzle-diameter", ranges::weld_size);
  torch.nozzle_recess_mm = reader.find_quantity("nozzle-recess", ranges::bulge);
  reader.finish();
  check_children(context, element, {});
  return torch;
}

cell::CellTimes read_times(FileContext& context, const pugi::xml_node& element) {
  AttributeReader reader(context, element);
  cell::CellTimes times;
  times.arc_start_s = reader.quantity("arc-start", ranges::time);
  times.crater_fill_s = reader.quantity("crater-fill", ranges::time);
  times.settle_s = reader.quantity("settle", ranges::time);
  times.touch_s = reader.quantity("touch", ranges::time);
  times.touches_per_seam = reader.count("touches-per-seam", 0, 100);
  times.clean_every_s = reader.quantity("clean-every", ranges::time_above_none);
  times.clean_s = reader.quantity("clean", ranges::time);
  times.load_unload_s = reader.quantity("load-unload", ranges::time);
  reader.finish();
  check_children(context, element, {});
  return times;
}

cell::ReturnPath read_return_path(FileContext& context, const pugi::xml_node& element) {
  AttributeReader reader(context, element);
  cell::ReturnPath path;
  constexpr std::array<std::string_view, 2> sides = {"rotating", "fixed"};
  path.on_rotating_side = reader.word("side", sides) == 0;
  path.current_max_a = reader.quantity("current-max", ranges::current);
  reader.finish();
  check_children(context, element, {});
  return path;
}

}  // namespace

cell::Cell read_cell(FileContext& context) {
  const pugi::xml_node root = context.file.document.document_element();
  AttributeReader reader(context, root);
  cell::Cell cell;
  cell.title = reader.text("title");
  cell.invented = reader.find_yes("invented");
  reader.finish();
  constexpr std::array<std::string_view, 5> known = {
      "positioner", "robot", "torch", "times", "return-path"};
  check_children(context, root, known);
  const auto child = [&](const char* name) {
    return only_child(context, root, name, Need::required);
  };
  if (const auto element = child("positioner")) cell.positioner = read_positioner(context, element);
  if (const auto element = child("robot")) cell.robot = read_robot(context, element);
  if (const auto element = child("torch")) cell.torch = read_torch(context, element);
  if (const auto element = child("times")) cell.times = read_times(context, element);
  const pugi::xml_node path = only_child(context, root, "return-path", Need::may_be_absent);
  if (path) cell.return_path = read_return_path(context, path);
  return cell;
}

}  // namespace seamturn::io::detail
