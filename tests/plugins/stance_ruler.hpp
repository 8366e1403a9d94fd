// SPDX-License-Identifier: MIT
// Pictures of stances of the demos, and what it takes to measure in them.
#pragma once

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <vector>

#include "planner/planned_demos.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

inline const plugin_host::PluginHost& picture_host() {
  static const plugin_host::PluginHost one({}, {plugin_host::installed_plugin_folder()});
  return one;
}
inline std::string stance_picture(const std::string& plan_xml, const std::string& stance) {
  return picture_host().write_document("stance-drawing", plan_xml, "stances/" + stance + ".svg");
}

struct DrawnStance {
  const plan::Plan* plan = nullptr;
  const plan::PlannedStance* stance = nullptr;
  std::string svg;
};

inline const std::vector<DrawnStance>& drawn_stances() {
  static const std::vector<DrawnStance> all = [] {
    std::vector<DrawnStance> made;
    for (const Planned& one : plans()) {
      const std::string xml = io::plan_xml(one.plan);
      for (const plan::PlannedStance& stance : one.plan.stances) {
        made.push_back({&one.plan, &stance, stance_picture(xml, stance.id)});
      }
    }
    return made;
  }();
  return all;
}

/// What stands between a mark and the next end behind it.
inline std::string between(const std::string& text,
                           const std::string& mark,
                           const std::string& end) {
  const std::size_t at = text.find(mark);
  REQUIRE(at != std::string::npos);
  return text.substr(at + mark.size(), text.find(end, at + mark.size()) - at - mark.size());
}

inline double number_of(const std::string& element, const std::string& attribute) {
  const std::string written = between(element, " " + attribute + "=\"", "\"");
  double value = NAN;
  std::from_chars(written.data(), written.data() + written.size(), value);
  return value;
}

using Px = std::array<double, 2>;

/// The lines "Mx,y x,y ..." of paths, each by itself.
inline std::vector<std::vector<Px>> lines_of(const std::string& paths) {
  std::vector<std::vector<Px>> lines;
  for (std::size_t at = paths.find(" d=\""); at != std::string::npos;
       at = paths.find(" d=\"", at + 1)) {
    const std::string data = paths.substr(at + 4, paths.find('"', at + 4) - at - 4);
    const char* from = data.data();
    const char* const end = from + data.size();
    while (from < end && *from != 'Z') {
      if (*from == 'M') lines.emplace_back();
      Px point{};
      const auto x = std::from_chars(from + 1, end, point[0]);
      const auto y = std::from_chars(x.ptr + 1, end, point[1]);
      REQUIRE(y.ec == std::errc());
      lines.back().push_back(point);
      from = y.ptr;
    }
  }
  return lines;
}

inline double drawn_length(const std::vector<std::vector<Px>>& lines) {
  double length = 0.0;
  for (const std::vector<Px>& line : lines) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      length += std::hypot(line[i + 1][0] - line[i][0], line[i + 1][1] - line[i][1]);
    }
  }
  return length;
}

/// The view from the robot (0) or from its right hand (1).
inline std::string side_view(const std::string& svg, int number) {
  const std::string mark = "<g class=\"side-view\">";
  std::size_t at = svg.find(mark);
  if (number == 1) at = svg.find(mark, at + 1);
  REQUIRE(at != std::string::npos);
  return svg.substr(at, std::min(svg.find(mark, at + 1), svg.find("<g class=\"welds\"", at)) - at);
}

/// Of a tilting demo table whose robot stands at +x: from its right hand one looks along -y, and
/// the tilt axis is seen end on. Floor and axis give the scale.
class Ruler {
 public:
  explicit Ruler(const DrawnStance& drawn) : view_(side_view(drawn.svg, 1)) {
    const cell::Positioner& table = drawn.plan->cell->positioner;
    REQUIRE(table.kind == cell::PositionerKind::tilt_rotate);
    REQUIRE(drawn.plan->cell->robot.home.x() > 1000.0);
    floor_px_ = number_of(between(view_, "<g class=\"floor\">", "/>"), "y1");
    const std::string axis = between(view_, "<circle", "/>");
    axis_px_ = number_of(axis, "cx");
    axis_mm_ = table.tilt_centre.x();
    px_per_mm_ = (floor_px_ - number_of(axis, "cy")) / table.tilt_centre.z();
    REQUIRE(px_per_mm_ > 0.05);
  }
  [[nodiscard]] const std::string& view() const { return view_; }
  [[nodiscard]] double px_per_mm() const { return px_per_mm_; }
  [[nodiscard]] double floor_px() const { return floor_px_; }
  /// Where a place of the world must be drawn.
  [[nodiscard]] Px page(const geom::Vec3& p_W) const {
    return {axis_px_ - px_per_mm_ * (p_W.x() - axis_mm_), floor_px_ - px_per_mm_ * p_W.z()};
  }
  /// How long a stretch must be drawn.
  [[nodiscard]] double px(const geom::Vec3& run_W) const {
    return px_per_mm_ * std::hypot(run_W.x(), run_W.z());
  }

 private:
  std::string view_;
  double floor_px_ = 0.0;
  double axis_px_ = 0.0;
  double axis_mm_ = 0.0;
  double px_per_mm_ = 0.0;
};

inline bool is_tilting(const DrawnStance& drawn) {
  return drawn.plan->cell->positioner.kind == cell::PositionerKind::tilt_rotate;
}

inline const joint::Setup& setup_of(const plan::Plan& plan, const std::string& id) {
  const auto found = std::find_if(plan.weldment.setups.begin(),
                                  plan.weldment.setups.end(),
                                  [&](const joint::Setup& one) { return one.id == id; });
  REQUIRE(found != plan.weldment.setups.end());
  return *found;
}
/// J in the world by the core's own positioner.
inline geom::Pose pose_WJ(const plan::Plan& plan,
                          const plan::PlannedStance& stance,
                          const std::vector<base::Angle>& axes) {
  return turn::pose_WD(plan.cell->positioner, axes) * setup_of(plan, stance.setup).X_DJ;
}

/// The plan with other things in it, drawn anew.
struct Redrawn {
  plan::Plan plan;
  DrawnStance drawn;
  Redrawn(plan::Plan changed, const std::string& stance) : plan(std::move(changed)) {
    const auto found = std::find_if(plan.stances.begin(), plan.stances.end(), [&](const auto& one) {
      return one.id == stance;
    });
    REQUIRE(found != plan.stances.end());
    drawn = {&plan, &*found, stance_picture(io::plan_xml(plan), stance)};
  }
  Redrawn(const Redrawn&) = delete;
  Redrawn& operator=(const Redrawn&) = delete;
};

}  // namespace seamturn::tests
