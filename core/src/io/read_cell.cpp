// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

namespace {

using base::Angle;
using cell::PositionerKind;

constexpr std::array<std::string_view, 5> positioner_kinds = {
    "tilt-rotate", "headstock", "inclined", "roll-arm", "station-changer"};
constexpr std::array<std::string_view, 2> table_axes = {"tilt", "rotate"};
constexpr std::array<std::string_view, 1> headstock_axes = {"turn"};
constexpr std::array<std::string_view, 2> roll_arm_axes = {"roll", "rotate"};
constexpr std::array<std::string_view, 2> changer_axes = {"exchange", "turn"};

bool is_positioner_kind(std::string_view word) {
  return base::is_among(word, positioner_kinds);
}

std::span<const std::string_view> axis_names_of(PositionerKind kind) {
  switch (kind) {
    case PositionerKind::headstock:
      return headstock_axes;
    case PositionerKind::roll_arm:
      return roll_arm_axes;
    case PositionerKind::station_changer:
      return changer_axes;
    case PositionerKind::tilt_rotate:
    case PositionerKind::inclined:
      break;
  }
  return table_axes;
}

void read_limits(AttributeReader& reader, cell::Axis& axis) {
  axis.endless = reader.find_yes("endless");
  if (axis.endless) {
    for (const MarkedName name : std::initializer_list<MarkedName>{"min", "max"}) {
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

/// Where the axis is, both or neither.
void read_line(AttributeReader& reader, cell::Axis& axis) {
  const auto along = reader.find_direction("along");
  std::optional<geom::Vec3> at;
  if (reader.has("at")) at = reader.point("at");
  if (along && at) axis.line = cell::AxisLine{*along, *at};
  if (along.has_value() == at.has_value()) return;
  reader.error(along ? "along" : "at",
               "read.axis.line",
               std::string("\"") + (along ? "at" : "along") +
                   "\" is missing; expected both along= and at= (a point of the axis), or neither; "
                   "add it");
}

/// What an axis may say beside its plate.
void read_dynamics(AttributeReader& reader, cell::Axis& axis) {
  axis.jerk_rad_s3 = reader.find_quantity("jerk", ranges::axis_jerk);
  axis.stop_rad_s2 = reader.find_quantity("stop", ranges::axis_acceleration);
  axis.torque_peak_nm = reader.find_quantity("torque-peak", ranges::torque);
  if (axis.torque_peak_nm && *axis.torque_peak_nm < axis.torque_max_nm) {
    reader.error("torque-peak",
                 "read.axis.torque_peak",
                 "for seconds the axis would bear less than at rest; expected at least "
                 "torque-max=; correct one of them");
  }
}

cell::Axis read_axis(FileContext& context,
                     const Element& element,
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
  read_dynamics(reader, axis);
  read_line(reader, axis);
  reader.finish();
  check_children(context, element, {});
  return axis;
}

/// The axes in the order the kind asks for, each once.
std::vector<cell::Axis> read_axes(FileContext& context,
                                  const Element& element,
                                  std::span<const std::string_view> names) {
  std::vector<cell::Axis> read;
  for (const Element& child : element.children("axis")) {
    cell::Axis axis = read_axis(context, child, names);
    const auto same = [&](const cell::Axis& other) { return other.name == axis.name; };
    if (!axis.name.empty() && std::any_of(read.begin(), read.end(), same)) {
      AttributeReader(context, child)
          .error("name",
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
    context.report.error(context.spot(element),
                         "read.positioner.axes",
                         "axis \"" + std::string(name) + "\" is missing; expected <axis name=\"" +
                             std::string(name) + "\" .../>; add it");
  }
  return axes;
}

bool states_all(const cell::Positioner& positioner, std::size_t first) {
  return first < positioner.axes.size() &&
         std::all_of(positioner.axes.begin() + static_cast<std::ptrdiff_t>(first),
                     positioner.axes.end(),
                     [](const cell::Axis& axis) { return axis.line.has_value(); });
}

/// Where the axes are: the few numbers of a kind, or each axis for itself.
void read_places(AttributeReader& reader, cell::Positioner& positioner) {
  const bool changer = positioner.kind == PositionerKind::station_changer;
  const bool stated = states_all(positioner, changer ? 1 : 0);
  const char* const why = "the axes state where they are";
  if (stated) {
    reader.refuse("tilt-centre", "read.axis.line", why);
    positioner.tilt_centre = positioner.axes.back().line->at;
  } else {
    positioner.tilt_centre = reader.point("tilt-centre");
  }
  positioner.overhang_mm = reader.quantity("overhang", ranges::overhang);
  if (positioner.kind == PositionerKind::inclined && !stated) {
    positioner.between = reader.angle("between", ranges::between_axes);
  }
  const bool exchange_stated = changer && !positioner.axes.empty() && positioner.axes[0].line;
  if (exchange_stated) reader.refuse("exchange-centre", "read.axis.line", why);
  if (changer && !exchange_stated) positioner.exchange_centre = reader.point("exchange-centre");
}

/// Two axes that turn the part must not be parallel: one of them would do nothing.
void check_axes(AttributeReader& reader, const cell::Positioner& positioner) {
  const std::size_t count = axis_names_of(positioner.kind).size();
  if (positioner.axes.size() != count) return;  // told
  if (positioner.kind == PositionerKind::station_changer) {
    const cell::Axis& exchange = positioner.axes[0];
    const bool there = exchange.min <= Angle() && exchange.max >= Angle();
    const bool over = exchange.max.deg() >= 180.0 - 1e-6 || exchange.min.deg() <= -180.0 + 1e-6;
    const bool known = std::isfinite(exchange.min.rad()) && std::isfinite(exchange.max.rad());
    if (exchange.endless || !known || (there && over)) return;
    reader.error("read.axis.exchange",
                 "axis \"exchange\" does not reach both stations; expected limits that hold 0 deg, "
                 "where the part is welded, and half a turn from it, or endless=\"yes\"; correct "
                 "them");
    return;
  }
  if (count < 2 || !positioner.axes[0].line || !positioner.axes[1].line) return;
  const geom::Vec3& first = positioner.axes[0].line->along;
  const geom::Vec3& second = positioner.axes[1].line->along;
  if (!first.allFinite() || !second.allFinite()) return;
  constexpr double least_deg = 1.0;
  const double deg = geom::angle_between(first, second).deg();
  if (std::min(deg, 180.0 - deg) >= least_deg) return;
  reader.error("read.axis.parallel",
               "axes \"" + positioner.axes[0].name + "\" and \"" + positioner.axes[1].name +
                   "\" are parallel; expected at least 1 deg between them, for two that are turn "
                   "the part no farther than one; correct along=");
}

void read_load(AttributeReader& reader, cell::Positioner& positioner) {
  positioner.load_max_kg = reader.quantity("load-max", ranges::mass);
  positioner.load_centre_mm = reader.quantity("load-centre", ranges::size_or_none);
  const auto mass = reader.find_quantity("mass-uncertainty", ranges::uncertainty);
  const auto centre = reader.find_quantity("centre-uncertainty", ranges::size_or_none);
  if (mass || centre) {
    positioner.margin = cell::LoadMargin{mass.value_or(0.0), centre.value_or(0.0)};
  }
  positioner.rim_speed_max_mm_s = reader.find_quantity("rim-speed-max", ranges::air_speed);
  positioner.floor_clearance_mm = reader.find_quantity("floor-clearance", ranges::size_or_none);
}

void read_tailstock(FileContext& context,
                    const Element& positioner_element,
                    cell::Positioner& positioner) {
  const Element element = only_child(context, positioner_element, "tailstock", Need::may_be_absent);
  if (!element) return;
  AttributeReader reader(context, element);
  cell::Tailstock tail;
  tail.span_mm = reader.quantity("span", ranges::size);
  tail.load_max_kg = reader.quantity("load-max", ranges::mass);
  const bool headstock = positioner.kind == PositionerKind::headstock ||
                         positioner.kind == PositionerKind::station_changer;
  if (!headstock) {
    reader.error("read.positioner.tailstock",
                 "a tailstock found; expected none: only a headstock, of a station changer too, "
                 "has one opposite; delete it");
  }
  reader.finish();
  check_children(context, element, {});
  positioner.tailstock = tail;
}

cell::Positioner read_positioner(FileContext& context, const Element& element) {
  AttributeReader reader(context, element);
  cell::Positioner positioner;
  positioner.id = reader.id("id");
  positioner.kind = static_cast<PositionerKind>(reader.word("kind", positioner_kinds));
  // Of a kind nobody knows nobody knows what it should have.
  const MarkupTree::Attribute* const kind = element.find_attribute("kind");
  if (kind == nullptr || !is_positioner_kind(kind->value())) return positioner;
  constexpr std::array<std::string_view, 2> known = {"axis", "tailstock"};
  check_children(context, element, known);
  positioner.axes = read_axes(context, element, axis_names_of(positioner.kind));
  read_places(reader, positioner);
  check_axes(reader, positioner);
  read_load(reader, positioner);
  read_tailstock(context, element, positioner);
  positioner.rolling_speed_max_rad_s = reader.quantity("rolling-speed-max", ranges::axis_speed);
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

cell::Robot read_robot(FileContext& context, const Element& element) {
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

/// All four attributes of it or none.
std::optional<cell::TorchBody> find_torch_body(AttributeReader& reader) {
  const auto tip_to_bend_mm = reader.find_quantity("tip-to-bend", ranges::torch_length);
  const auto bend_rad = reader.find_quantity("bend", ranges::torch_bend);
  const auto length_mm = reader.find_quantity("body-length", ranges::torch_length);
  const auto diameter_mm = reader.find_quantity("body-diameter", ranges::weld_size);
  if (!tip_to_bend_mm && !bend_rad && !length_mm && !diameter_mm) return std::nullopt;
  if (!tip_to_bend_mm || !bend_rad || !length_mm || !diameter_mm) {
    reader.error("read.torch.body",
                 "half a torch body found; expected tip-to-bend=, bend=, body-length= and "
                 "body-diameter= together, or none; add the others");
    return std::nullopt;
  }
  return cell::TorchBody{*tip_to_bend_mm, Angle::rad(*bend_rad), *length_mm, *diameter_mm};
}

cell::Torch read_torch(FileContext& context, const Element& element) {
  AttributeReader reader(context, element);
  cell::Torch torch;
  torch.id = reader.id("id");
  torch.nozzle_diameter_mm = reader.quantity("nozzle-diameter", ranges::weld_size);
  torch.nozzle_recess_mm = reader.find_quantity("nozzle-recess", ranges::bulge);
  torch.body = find_torch_body(reader);
  reader.finish();
  check_children(context, element, {});
  return torch;
}

cell::CellTimes read_times(FileContext& context, const Element& element) {
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

cell::ReturnPath read_return_path(FileContext& context, const Element& element) {
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
  const Element root = context.tree.root();
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
  const Element path = only_child(context, root, "return-path", Need::may_be_absent);
  if (path) cell.return_path = read_return_path(context, path);
  return cell;
}

}  // namespace seamturn::io::detail
