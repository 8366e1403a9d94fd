// SPDX-License-Identifier: MIT
// The pictures of stances, read back with a ruler: heights against the positioner of the core.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "planner/planned_demos.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "seamturn/turn/stance.hpp"
#include "xml_check.hpp"

namespace seamturn {

namespace {

using plan::Plan;
using plan::PlannedStance;

const plugin_host::PluginHost& host() {
  static const plugin_host::PluginHost one({}, {plugin_host::installed_plugin_folder()});
  return one;
}

std::vector<std::string> names(const std::string& plan_xml) {
  return host().document_names("stance-drawing", plan_xml);
}
std::string picture(const std::string& plan_xml, const std::string& name) {
  return host().write_document("stance-drawing", plan_xml, name);
}

struct Drawn {
  const Plan* plan = nullptr;
  const PlannedStance* stance = nullptr;
  std::string svg;
};

const std::vector<Drawn>& all_drawn() {
  static const std::vector<Drawn> all = [] {
    std::vector<Drawn> made;
    for (const tests::Planned& one : tests::plans()) {
      const std::string xml = io::plan_xml(one.plan);
      for (const PlannedStance& stance : one.plan.stances) {
        made.push_back({&one.plan, &stance, picture(xml, "stances/" + stance.id + ".svg")});
      }
    }
    return made;
  }();
  return all;
}

/// What stands between a mark and the next end behind it, from a place on.
std::string between(const std::string& text,
                    const std::string& mark,
                    const std::string& end,
                    std::size_t from = 0) {
  const std::size_t at = text.find(mark, from);
  REQUIRE(at != std::string::npos);
  return text.substr(at + mark.size(), text.find(end, at + mark.size()) - at - mark.size());
}

/// A view from the side, to its end.
std::string side_view(const std::string& svg, int number) {
  const std::string mark = "<g class=\"side-view\">";
  std::size_t at = svg.find(mark);
  if (number == 1) at = svg.find(mark, at + 1);
  REQUIRE(at != std::string::npos);
  return svg.substr(at, std::min(svg.find(mark, at + 1), svg.find("<g class=\"welds\"", at)) - at);
}

double number_of(const std::string& element, const std::string& attribute) {
  const std::string written = between(element, " " + attribute + "=\"", "\"");
  double value = NAN;
  std::from_chars(written.data(), written.data() + written.size(), value);
  return value;
}

/// All points "x,y" of paths.
std::vector<std::array<double, 2>> points_of(const std::string& paths) {
  std::vector<std::array<double, 2>> points;
  for (std::size_t at = paths.find(" d=\""); at != std::string::npos;
       at = paths.find(" d=\"", at + 1)) {
    const std::string data = paths.substr(at + 4, paths.find('"', at + 4) - at - 4);
    const char* from = data.data();
    const char* const end = from + data.size();
    while (from < end) {
      std::array<double, 2> point{};
      const auto x = std::from_chars(from + 1, end, point[0]);
      const auto y = std::from_chars(x.ptr + 1, end, point[1]);
      REQUIRE(y.ec == std::errc());
      points.push_back(point);
      from = y.ptr;
    }
  }
  return points;
}

/// J in the world by the core's own positioner.
geom::Pose pose_WJ(const Plan& plan, const PlannedStance& stance) {
  const auto setup = std::find_if(plan.weldment.setups.begin(),
                                  plan.weldment.setups.end(),
                                  [&](const joint::Setup& one) { return one.id == stance.setup; });
  REQUIRE(setup != plan.weldment.setups.end());
  return turn::pose_WD(plan.cell->positioner, stance.stance.axes) * setup->X_DJ;
}

/// Highest and lowest of a seam in the world, mm.
std::array<double, 2> heights_of(const Plan& plan, const Drawn& drawn, const std::string& seam) {
  const geom::Pose X_WJ = pose_WJ(plan, *drawn.stance);
  const joint::Seam& described = tests::described_seam(plan, seam);
  REQUIRE(described.path.has_value());
  std::array<double, 2> heights = {1e9, -1e9};
  const double length = geom::path_length_mm(*described.path);
  constexpr int steps = 360;
  for (int i = 0; i <= steps; ++i) {
    const geom::Station at = geom::path_station(*described.path, length * i / steps);
    const double z = X_WJ.point(at.point).z();
    heights = {std::min(heights[0], z), std::max(heights[1], z)};
  }
  return heights;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_SUITE("plugins/stance_drawing") {
  TEST_CASE("for any plan, law: one picture a stance, with safe names, none where nothing turns") {
    for (const tests::Planned& one : tests::plans()) {
      const std::vector<std::string> given = names(io::plan_xml(one.plan));
      REQUIRE(given.size() == one.plan.stances.size());
      for (std::size_t i = 0; i < given.size(); ++i) {
        CHECK(given[i] == "stances/" + one.plan.stances[i].id + ".svg");
        CHECK(io::is_safe_name(given[i]));
      }
    }
    planner::Inputs inputs = tests::tee_inputs();
    inputs.cell.reset();
    const std::string xml = io::plan_xml(tests::quick_plan(inputs));
    CHECK(names(xml).empty());
    CHECK_THROWS_AS((void)picture(xml, "stances/S01.svg"), base::UnavailableError);
  }

  TEST_CASE("for any picture, law: well-formed, twice the same bytes, nothing fetched or run") {
    for (const Drawn& one : all_drawn()) {
      INFO(one.plan->weldment.title, " ", one.stance->id);
      CHECK(tests::form_verdict(one.svg, "picture") == "");
      CHECK(tests::count_of(one.svg, "http") == 1);
      CHECK(one.svg.size() < 200000);
      for (const char* mark : {"<script", "href", "style", "<image", "nan", "inf\""}) {
        INFO(mark);
        CHECK(one.svg.find(mark) == std::string::npos);
      }
    }
    const Drawn& first = all_drawn().front();
    CHECK(first.svg == picture(io::plan_xml(*first.plan), "stances/" + first.stance->id + ".svg"));
  }

  TEST_CASE("for any stance, law: every seam welded there is drawn in each view and named once") {
    for (const Drawn& one : all_drawn()) {
      for (const std::string& seam : one.stance->seams) {
        INFO(one.plan->weldment.title, " ", one.stance->id, " ", seam);
        CHECK(tests::count_of(one.svg, "id=\"seam-" + seam + "\"") == 3);
        CHECK(tests::count_of(one.svg, ">" + seam + "  P") == 1);
      }
      CHECK(tests::count_of(one.svg, "<g class=\"seam\"") == 3 * one.stance->seams.size());
    }
  }

  TEST_CASE("for any seam, cross: drawn as high above the floor as the core's positioner has it") {
    // The floor and the axis seen end on give the scale: the tilt axis of the demo table.
    int looked_at = 0;
    for (const Drawn& one : all_drawn()) {
      if (one.plan->cell->positioner.kind != cell::PositionerKind::tilt_rotate) continue;
      const std::string view = side_view(one.svg, 1);
      const double floor_px = number_of(between(view, "<g class=\"floor\">", "/>"), "y1");
      const double axis_px = number_of(between(view, "<circle", "/>"), "cy");
      const double px_per_mm = (floor_px - axis_px) / one.plan->cell->positioner.tilt_centre.z();
      REQUIRE(px_per_mm > 0.05);
      for (const std::string& seam : one.stance->seams) {
        INFO(one.plan->weldment.title, " ", one.stance->id, " ", seam);
        const std::string drawn =
            between(view, "<g class=\"seam\" id=\"seam-" + seam + "\">", "</g>");
        const auto [least, most] = heights_of(*one.plan, one, seam);
        ++looked_at;
        if (drawn.find("<circle") != std::string::npos) {  // seen end on
          CHECK(px_per_mm * (most - least) < 3.0);
          const double middle = floor_px - number_of(drawn, "cy");
          CHECK(std::abs(middle - px_per_mm * 0.5 * (most + least)) < 0.1);
          continue;
        }
        const auto points = points_of(drawn);
        REQUIRE(points.size() >= 2);
        double low = -1e9;
        double high = 1e9;
        for (const auto& [x, y] : points) {
          low = std::max(low, y);
          high = std::min(high, y);
        }
        CHECK(std::abs(floor_px - low - px_per_mm * least) < 0.1);
        CHECK(std::abs(floor_px - high - px_per_mm * most) < 0.1);
      }
    }
    CHECK(looked_at > 50);
  }

  TEST_CASE("for any seam in PA or PB, published: the torch points down in both side views") {
    // ISO 6947:2019, table 1: flat and horizontal vertical positions are welded from above.
    for (const Drawn& one : all_drawn()) {
      for (const int number : {0, 1}) {
        const std::string torches =
            between(side_view(one.svg, number), "<g class=\"torches\">", "</g>");
        std::size_t found = 0;
        for (std::size_t at = torches.find("<line"); at != std::string::npos;
             at = torches.find("<line", at + 1)) {
          const std::string line = torches.substr(at, torches.find("/>", at) - at);
          if (line.find("#1f5fa8") == std::string::npos) continue;
          INFO(one.plan->weldment.title, " ", one.stance->id, " view ", number, " ", line);
          CHECK(number_of(line, "y2") > number_of(line, "y1"));
          ++found;
        }
        CHECK(found == one.stance->seams.size());
      }
    }
  }

  TEST_CASE("given the hub on the demo table, a stance tilted by 90 deg faces the robot") {
    // The robot of the demo cell stands where a tilted table turns its face.
    for (const Drawn& one : all_drawn()) {
      if (one.plan != &tests::hub().plan || one.stance->stance.axes[0].deg() < 80.0) continue;
      const geom::Mat3 rotation =
          turn::rotation_WD(one.plan->cell->positioner, one.stance->stance.axes);
      const geom::Vec3 to_robot =
          one.plan->cell->robot.home - one.plan->cell->positioner.tilt_centre;
      CHECK(rotation.col(2).dot(to_robot.normalized()) > 0.5);
    }
  }

  TEST_CASE("for any damage to the plan, it refuses and says what was found") {
    const std::string good = io::plan_xml(tests::hub().plan);
    CHECK_NOTHROW((void)picture(good, "stances/S01.svg"));
    CHECK_THROWS_AS((void)picture(good, "stances/S99.svg"), base::UnavailableError);
    const std::vector<std::pair<std::string, std::string>> damages = {
        {"<plate length_mm=\"", "<plate length_mm=\"x"},
        {"<plate length_mm=\"", "<sheet length_mm=\""},
        {"<part-on-faceplate>", "<part-beside-it>"},
        {"<along x=\"", "<along x=\"?"}};
    for (const auto& [from, to] : damages) {
      INFO(from, " -> ", to);
      CHECK_THROWS_AS((void)picture(replaced(good, from, to), "stances/S01.svg"),
                      base::UnavailableError);
    }
  }

  TEST_CASE("for the picture of the handbook, law: it is what the plugin draws now") {
    INFO("write it again: seamturn write stance-drawing joints/grab_hub.xml, stances/S05.svg");
    const auto folder = tests::repository() / "docs" / "methods";
    CHECK(tests::text_of(folder / "stance.md").find("(pictures/hub-stance.svg)") !=
          std::string::npos);
    CHECK((tests::text_of(folder / "pictures" / "hub-stance.svg") ==
           picture(io::plan_xml(tests::hub().plan), "stances/S05.svg")));
  }
}

}  // namespace seamturn
