// SPDX-License-Identifier: MIT
#include "stance_drawing/scene.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "stance_drawing/plan_solids.hpp"

namespace seamturn::stance_drawing {

using plan_reader::number;
using plan_reader::PlanTree;
using plan_reader::text;

namespace {

constexpr double radians = std::numbers::pi / 180.0;

Vec3 direction_of(const pugi::xml_node& node) {
  return Vec3(number(node, "x"), number(node, "y"), number(node, "z"));
}

Vec3 direction_of(const pugi::xml_node& point, const std::string& of) {
  return Vec3(number(point, (of + "_x").c_str()),
              number(point, (of + "_y").c_str()),
              number(point, (of + "_z").c_str()));
}

Pose pose_of(const pugi::xml_node& node) {
  Pose pose = Pose::Identity();
  const Vec3 x = direction_of(node.child("x-axis"));
  const Vec3 z = direction_of(node.child("z-axis"));
  pose.linear().col(0) = x;
  pose.linear().col(1) = z.cross(x);
  pose.linear().col(2) = z;
  pose.translation() = place_of(node.child("origin"));
  return pose;
}

Pose turn_about(const Axis& axis) {
  const Eigen::AngleAxisd turn(axis.angle_deg * radians, axis.along);
  return Eigen::Translation3d(axis.at) * turn * Eigen::Translation3d(-axis.at);
}

/// The axes as the positioner has them at zero, each with its angle in the stance.
std::vector<Axis> axes_at_zero(const PlanTree& plan, const pugi::xml_node& stance) {
  std::vector<Axis> axes;
  for (const pugi::xml_node node : plan.root().child("cell").child("positioner").children("axis")) {
    const std::string name = text(node, "name");
    const pugi::xml_node set = stance.find_child_by_attribute("axis", "name", name.c_str());
    const pugi::xml_node line = node.child("line");
    axes.push_back({name,
                    set ? number(set, "angle_deg") : 0.0,
                    place_of(line.child("at")),
                    direction_of(line.child("along"))});
  }
  if (axes.empty()) throw std::runtime_error("plan.xml names no axis of the positioner");
  return axes;
}

/// The faceplate in the world. Axes later in the chain are carried along by those before.
Pose faceplate_of(const PlanTree& plan, std::vector<Axis>& axes) {
  Pose carried = Pose::Identity();
  for (Axis& axis : axes) {
    const Pose turned = carried * turn_about(axis);
    axis.at = carried * axis.at;
    axis.along = carried.linear() * axis.along;
    carried = turned;
  }
  return carried * pose_of(plan.root().child("cell").child("positioner").child("faceplate"));
}

pugi::xml_node setup_of(const PlanTree& plan, const pugi::xml_node& stance) {
  return plan.entry("setups", "setup", text(stance, "setup"));
}

Edge circle_path(const pugi::xml_node& node, double sweep_deg) {
  constexpr double facet_deg = 2.0;
  const Vec3 centre = place_of(node.child("centre"));
  const Vec3 start = number(node, "radius_mm") * direction_of(node.child("start"));
  const Vec3 axis = direction_of(node.child("axis"));
  const int legs = std::max(1, static_cast<int>(sweep_deg / facet_deg));
  Line line;
  for (int i = 0; i <= legs; ++i) {
    line.push_back(centre + Eigen::AngleAxisd(sweep_deg * radians * i / legs, axis) * start);
  }
  return {line, true};
}

/// The path of a seam, frame J; empty when it is no path known here.
Edge path_of(const pugi::xml_node& seam) {
  if (const pugi::xml_node line = seam.child("line")) {
    return {{place_of(line.child("from")), place_of(line.child("to"))}};
  }
  if (const pugi::xml_node circle = seam.child("circle")) return circle_path(circle, 360.0);
  if (const pugi::xml_node arc = seam.child("arc")) {
    return circle_path(arc, number(arc, "sweep_deg"));
  }
  Line line;
  const pugi::xml_node polyline = seam.child("polyline");
  for (const pugi::xml_node at : polyline.children("at")) line.push_back(place_of(at));
  if (plan_reader::is_true(polyline, "closed") && !line.empty()) line.push_back(line.front());
  return {line};
}

/// A bent torch, its heading right-handed about the torch direction from straight behind the
/// travel.
Line body_of(const Torch& torch, const pugi::xml_node& described, double heading_deg) {
  const Vec3 along_wire = -torch.pointing;
  const Vec3 behind = -(torch.travel - torch.travel.dot(along_wire) * along_wire).normalized();
  const Vec3 out = Eigen::AngleAxisd(heading_deg * radians, torch.pointing) * behind;
  const double bend = number(described, "bend_deg") * radians;
  const Vec3 corner = torch.tip + number(described, "tip_to_bend_mm") * along_wire;
  const Vec3 away = std::cos(bend) * along_wire + std::sin(bend) * out;
  return {torch.tip, corner, corner + number(described, "body_length_mm") * away};
}

/// Where the torch begins a pass. A rolled one begins where the last axis is wound to.
std::optional<Torch> torch_of(const PlanTree& plan,
                              const pugi::xml_node& stance,
                              const pugi::xml_node& pass) {
  const pugi::xml_node point = pass.child("point");
  if (!point) return std::nullopt;
  std::vector<Axis> axes = axes_at_zero(plan, stance);
  if (pass.attribute("roll_from_deg")) axes.back().angle_deg = number(pass, "roll_from_deg");
  const Pose X_WJ =
      faceplate_of(plan, axes) * pose_of(setup_of(plan, stance).child("part-on-faceplate"));
  Torch torch{X_WJ * place_of(point),
              X_WJ.linear() * direction_of(point, "torch"),
              X_WJ.linear() * direction_of(point, "travel"),
              {}};
  if (pass.attribute("heading_from_deg")) {
    torch.body =
        body_of(torch, plan.root().child("cell").child("torch"), number(pass, "heading_from_deg"));
  }
  return torch;
}

Weld weld_of(const PlanTree& plan, const pugi::xml_node& stance, const char* id, const Pose& X_WJ) {
  Weld weld;
  weld.seam = plan.seam(id);
  weld.path = path_of(weld.seam);
  for (Vec3& point : weld.path.line) point = X_WJ * point;
  for (const pugi::xml_node pass : weld.seam.children("pass")) {
    if (std::string(text(pass, "stance")) != text(stance, "id")) continue;
    if (weld.passes++ > 0) continue;
    weld.first_pass = pass;
    weld.torch = torch_of(plan, stance, pass);
  }
  return weld;
}

/// What happens on the clock while the part is held so.
std::vector<pugi::xml_node> events_in(const PlanTree& plan, const pugi::xml_node& stance) {
  std::vector<pugi::xml_node> events;
  for (const pugi::xml_node event : plan.root().child("timeline").children("event")) {
    if (std::string(text(event, "stance")) == text(stance, "id")) events.push_back(event);
  }
  return events;
}

/// The last stage, as built, in which something is done in the stance.
pugi::xml_node stage_of(const PlanTree& plan, const std::vector<pugi::xml_node>& events) {
  const std::string id = events.empty() ? "" : text(events.back(), "stage");
  for (const pugi::xml_node stage : plan.root().child("build").children("stage")) {
    if (text(stage, "id") == id) return stage;
  }
  throw std::runtime_error("plan.xml has no stage \"" + id + "\"");
}

}  // namespace

Vec3 place_of(const pugi::xml_node& node) {
  return Vec3(number(node, "x_mm"), number(node, "y_mm"), number(node, "z_mm"));
}

std::vector<Solid> all_solids(const PlanTree& plan, const pugi::xml_node& stance) {
  std::vector<Axis> axes = axes_at_zero(plan, stance);
  const Pose X_WD = faceplate_of(plan, axes);
  const pugi::xml_node setup = setup_of(plan, stance);
  const Pose X_WJ = X_WD * pose_of(setup.child("part-on-faceplate"));
  std::vector<Solid> solids;
  for (const pugi::xml_node member : plan.root().child("members").children("member")) {
    solids.push_back({text(member, "id"), shape_of(member), X_WJ * pose_of(member.child("pose"))});
  }
  for (const pugi::xml_node node : setup.children("solid")) {
    if (!node.child("size")) continue;
    const Vec3 size = place_of(node.child("size"));
    const Vec3 corner = place_of(node.child("centre")) - 0.5 * size;
    solids.push_back({text(node, "kind"),
                      block(size.x(), size.y(), size.z()),
                      X_WD * Pose(Eigen::Translation3d(corner)),
                      true});
  }
  return solids;
}

Scene scene_of(const PlanTree& plan, const std::string& stance) {
  Scene scene;
  scene.stance = plan.entry("stances", "stance", stance.c_str());
  scene.axes = axes_at_zero(plan, scene.stance);
  const Pose X_WD = faceplate_of(plan, scene.axes);
  const Pose X_WJ = X_WD * pose_of(setup_of(plan, scene.stance).child("part-on-faceplate"));
  for (const pugi::xml_node weld : scene.stance.children("weld")) {
    scene.welds.push_back(weld_of(plan, scene.stance, text(weld, "seam"), X_WJ));
  }
  const std::vector<pugi::xml_node> events = events_in(plan, scene.stance);
  for (const pugi::xml_node event : events) {
    if (event.attribute("operation")) scene.work.emplace_back(text(event, "operation"));
  }
  scene.stage = stage_of(plan, events);
  scene.load_centre = X_WD * place_of(scene.stage.child("load").child("centre"));
  scene.solids = all_solids(plan, scene.stance);
  std::erase_if(scene.solids, [&](const Solid& solid) {
    return !solid.is_fixture &&
           !scene.stage.find_child_by_attribute("present", "member", solid.id.c_str());
  });
  return scene;
}

}  // namespace seamturn::stance_drawing
