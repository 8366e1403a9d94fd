// SPDX-License-Identifier: MIT
// The pictures of stances, read back with a ruler: heights against the positioner of the core.
#include <doctest/doctest.h>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/plan/lie.hpp"
#include "stance_ruler.hpp"
#include "xml_check.hpp"

namespace seamturn {

namespace {

using plan::Plan;
using tests::DrawnStance;

std::vector<std::string> names(const std::string& plan_xml) {
  return tests::picture_host().document_names("stance-drawing", plan_xml);
}

/// All texts of a group.
std::vector<std::string> texts_of(const std::string& group) {
  std::vector<std::string> texts;
  for (std::size_t at = group.find("<text"); at != std::string::npos;
       at = group.find("<text", at + 1)) {
    const std::size_t from = group.find('>', at) + 1;
    texts.push_back(group.substr(from, group.find("</text>", from) - from));
  }
  return texts;
}

/// As the pictures write numbers: no zeros at the end, no "-0".
std::string shown(double value, int decimals) {
  std::string text = base::fixed_text(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
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
    CHECK_THROWS_AS((void)tests::stance_picture(xml, "S01"), base::UnavailableError);
  }

  TEST_CASE("for any picture, law: well-formed, twice the same bytes, nothing fetched or run") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      INFO(one.plan->weldment.title, " ", one.stance->id);
      CHECK(tests::form_verdict(one.svg, "picture") == "");
      CHECK(tests::count_of(one.svg, "http") == 1);
      CHECK(one.svg.size() < 200000);
      for (const char* mark : {"<script", "href", "style", "<image", "nan", "inf\""}) {
        INFO(mark);
        CHECK(one.svg.find(mark) == std::string::npos);
      }
    }
    const DrawnStance& first = tests::drawn_stances().front();
    CHECK(first.svg == tests::stance_picture(io::plan_xml(*first.plan), first.stance->id));
  }

  TEST_CASE("for any stance, law: every seam welded there is drawn in each view and named once") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      for (const std::string& seam : one.stance->seams) {
        INFO(one.plan->weldment.title, " ", one.stance->id, " ", seam);
        CHECK(tests::count_of(one.svg, "id=\"seam-" + seam + "\"") == 3);
        CHECK(tests::count_of(one.svg, ">" + seam + "  P") == 1);
      }
      CHECK(tests::count_of(one.svg, "<g class=\"seam\"") == 3 * one.stance->seams.size());
    }
  }

  TEST_CASE("for any stance, law: the names of its seams do not run into one another") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      const std::string group = tests::between(one.svg, "<g class=\"names\">", "</g>");
      std::vector<tests::Px> left;
      std::vector<tests::Px> right;
      for (std::size_t at = group.find("<text"); at != std::string::npos;
           at = group.find("<text", at + 1)) {
        const std::string name = group.substr(at, group.find('>', at) - at);
        const tests::Px place = {tests::number_of(name, "x"), tests::number_of(name, "y")};
        (name.find("\"end\"") == std::string::npos ? left : right).push_back(place);
      }
      CHECK(left.size() + right.size() == one.stance->seams.size());
      for (auto* column : {&left, &right}) {
        for (std::size_t i = 0; i + 1 < column->size(); ++i) {
          INFO(one.plan->weldment.title, " ", one.stance->id);
          CHECK((*column)[i + 1][1] - (*column)[i][1] >= 12.0);
          CHECK((*column)[i][0] == (*column)[i + 1][0]);
        }
      }
    }
  }

  TEST_CASE("for any stance, law: heading and table say what the plan says") {
    for (const DrawnStance& one : tests::drawn_stances()) {
      INFO(one.plan->weldment.title, " ", one.stance->id);
      const std::string heading = tests::between(one.svg, "<g class=\"heading\">", "</g>");
      for (std::size_t i = 0; i < one.stance->axis_names.size(); ++i) {
        const std::string& name = one.stance->axis_names[i];
        const double angle_deg = one.stance->stance.axes[i].deg();
        CHECK(heading.find(name + " " + shown(angle_deg, 1) + " deg") != std::string::npos);
        const cell::Axis& axis = one.plan->cell->positioner.axes[i];
        CHECK(heading.find(name + " " + shown(one.stance->torque_nm[i], 0) + " of " +
                           shown(axis.torque_max_nm, 0) + " N m") != std::string::npos);
      }
      const std::vector<std::string> cells =
          texts_of(tests::between(one.svg, "<g class=\"welds\">", "</g>"));
      constexpr std::size_t columns = 7;
      REQUIRE(cells.size() == columns * (one.stance->seams.size() + 1));
      for (std::size_t row = 0; row < one.stance->seams.size(); ++row) {
        const plan::PlannedSeam& seam = tests::seam_of(*one.plan, one.stance->seams[row]);
        const std::string* cell = &cells[columns * (row + 1)];
        INFO(seam.id);
        CHECK(cell[0] == seam.id);
        CHECK(cell[2] == seam.procedure);
        int passes = 0;
        const plan::PlannedPass* first = nullptr;
        const auto index = static_cast<int>(one.stance - one.plan->stances.data());
        for (const plan::PlannedPass& pass : seam.passes) {
          if (pass.stance != index) continue;
          ++passes;
          if (first == nullptr) first = &pass;
        }
        CHECK(cell[3] == std::to_string(passes));
        const auto* joint = joint::find_joint(one.plan->weldment, seam.joint);
        REQUIRE(joint != nullptr);
        const auto lies = plan::lie_at_start(
            *one.plan, *joint, tests::described_seam(*one.plan, seam.id), *first);
        REQUIRE(lies.has_value());
        CHECK(cell[4] == shown(lies->slope.deg(), 1));
        CHECK(cell[5] == shown(lies->bank.deg(), 1));
        CHECK((cell[6].find("rolls") != std::string::npos) == seam.rolling);
      }
    }
  }

  TEST_CASE("given stances held for people's work only, they are drawn and the work is named") {
    const Plan plan =
        tests::quick_plan(io::read_inputs(tests::repository() / "tests" / "good" / "stages.xml"));
    const std::string xml = io::plan_xml(plan);
    std::size_t without_weld = 0;
    for (const plan::PlannedStance& stance : plan.stances) {
      INFO(stance.id);
      const std::string svg = tests::stance_picture(xml, stance.id);
      std::vector<std::string> work;
      for (const plan::PlannedEvent& event : plan.timeline) {
        if (event.stance == stance.id && !event.operation.empty()) work.push_back(event.operation);
      }
      CHECK((svg.find("<g class=\"work\">") != std::string::npos) == !work.empty());
      for (const std::string& one : work) CHECK(svg.find(one) != std::string::npos);
      if (!stance.seams.empty()) continue;
      ++without_weld;
      CHECK(svg.find("<g class=\"welds\">") == std::string::npos);
      CHECK(!work.empty());
      // Its rib is there: the stage that fits it has begun.
      CHECK(svg.find("as in stage ribs") != std::string::npos);
    }
    CHECK(without_weld == 2);
  }

  TEST_CASE("given a seam hidden from one shoulder of the robot, it is drawn over the other") {
    // By hand: the lugs 0r and 270r of stance S05 and the lugs 0l and 90l of S13 are mirror images.
    const auto looked_over = [](const std::string& stance) {
      for (const DrawnStance& one : tests::drawn_stances()) {
        if (one.plan == &tests::hub().plan && one.stance->id == stance) {
          return tests::between(one.svg, "Over the robot's ", " shoulder");
        }
      }
      return std::string();
    };
    CHECK(looked_over("S05") == "left");
    CHECK(looked_over("S13") == "right");
  }

  TEST_CASE("for any seam in PA or PB, published: the torch points down in both side views") {
    // ISO 6947:2019, table 1: flat and horizontal vertical positions are welded from above.
    for (const DrawnStance& one : tests::drawn_stances()) {
      for (const int number : {0, 1}) {
        const std::string torches =
            tests::between(tests::side_view(one.svg, number), "<g class=\"torches\">", "</g>");
        std::size_t found = 0;
        for (std::size_t at = torches.find("<line"); at != std::string::npos;
             at = torches.find("<line", at + 1)) {
          const std::string line = torches.substr(at, torches.find("/>", at) - at);
          if (line.find("#1f5fa8") == std::string::npos) continue;
          INFO(one.plan->weldment.title, " ", one.stance->id, " view ", number, " ", line);
          CHECK(tests::number_of(line, "y2") > tests::number_of(line, "y1"));
          ++found;
        }
        CHECK(found == one.stance->seams.size());
      }
    }
  }

  TEST_CASE("given the hub on the demo table, a stance tilted by 90 deg faces the robot") {
    // The robot of the demo cell stands where a tilted table turns its face.
    for (const DrawnStance& one : tests::drawn_stances()) {
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
    CHECK_NOTHROW((void)tests::stance_picture(good, "S01"));
    CHECK_THROWS_AS((void)tests::stance_picture(good, "S99"), base::UnavailableError);
    const std::vector<std::pair<std::string, std::string>> damages = {
        {"<plate length_mm=\"", "<plate length_mm=\"x"},
        {"<plate length_mm=\"", "<sheet length_mm=\""},
        {"<part-on-faceplate>", "<part-beside-it>"},
        {"<along x=\"", "<along x=\"?"}};
    for (const auto& [from, to] : damages) {
      INFO(from, " -> ", to);
      CHECK_THROWS_AS((void)tests::stance_picture(replaced(good, from, to), "S01"),
                      base::UnavailableError);
    }
  }

  TEST_CASE("for the picture of the handbook, law: it is what the plugin draws now") {
    INFO("write it again: seamturn write stance-drawing joints/grab_hub.xml, stances/S05.svg");
    const auto folder = tests::repository() / "docs" / "methods";
    CHECK(tests::text_of(folder / "stance.md").find("(pictures/hub-stance.svg)") !=
          std::string::npos);
    CHECK((tests::text_of(folder / "pictures" / "hub-stance.svg") ==
           tests::stance_picture(io::plan_xml(tests::hub().plan), "S05")));
  }
}

}  // namespace seamturn
