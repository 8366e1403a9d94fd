// SPDX-License-Identifier: MIT
// The drawings of passes: read back as a welder would, number by number and area by area.
#include <doctest/doctest.h>

#include <charconv>
#include <cmath>
#include <map>

#include "planner/planned_demos.hpp"
#include "sample_plan.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn {

namespace {

using plugin_host::PluginHost;

const PluginHost& host() {
  static const PluginHost one({}, {plugin_host::installed_plugin_folder()});
  return one;
}

std::string drawing(const std::string& plan_xml, const std::string& name) {
  return host().write_document("pass-drawing", plan_xml, name);
}

/// Plans by the name of their file: the demos, and the file of all preparations.
const std::map<std::string, plan::Plan>& plans() {
  static const std::map<std::string, plan::Plan> all = [] {
    std::map<std::string, plan::Plan> made;
    for (const tests::Planned& one : tests::plans()) made[one.file] = one.plan;
    made["preparations.xml"] = planner::make_plan(
        io::read_inputs(tests::repository() / "tests" / "good" / "preparations.xml"));
    return made;
  }();
  return all;
}

struct Drawn {
  std::string file;
  std::string procedure;
  std::string svg;
  const plan::PlannedSeam* seam = nullptr;
};

/// Every drawing of every plan.
const std::vector<Drawn>& all_drawn() {
  static const std::vector<Drawn> all = [] {
    std::vector<Drawn> made;
    for (const auto& [file, plan] : plans()) {
      const std::string xml = io::plan_xml(plan);
      for (const procedure::Procedure& procedure : plan.procedures) {
        Drawn one{file, procedure.id, drawing(xml, "drawings/" + procedure.id + ".svg"), nullptr};
        for (const plan::PlannedJoint& joint : plan.joints) {
          for (const plan::PlannedSeam& seam : joint.seams) {
            if (seam.id == procedure.seams.front()) one.seam = &seam;
          }
        }
        made.push_back(one);
      }
    }
    return made;
  }();
  return all;
}

/// The texts that follow a mark, each up to an end.
std::vector<std::string> pieces(const std::string& text,
                                const std::string& mark,
                                const std::string& end) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark, at)) {
    at += mark.size();
    found.push_back(text.substr(at, text.find(end, at) - at));
  }
  return found;
}

/// All numbers in a text, in order.
std::vector<double> numbers(const std::string& text) {
  std::vector<double> found;
  const char* at = text.data();
  const char* end = at + text.size();
  while (at < end) {
    double value = 0.0;
    const auto read = std::from_chars(at, end, value);
    if (read.ec == std::errc()) found.push_back(value);
    at = read.ec == std::errc() ? read.ptr : at + 1;
  }
  return found;
}

double one_number(const std::string& text, const std::string& mark) {
  const std::vector<std::string> found = pieces(text, mark, "\"");
  REQUIRE(!found.empty());
  return numbers(found.front()).at(0);
}

/// Area of closed outlines of a path, in square pixels.
double area_px2(const std::string& path) {
  double area = 0.0;
  for (const std::string& outline : pieces(path, "M", "Z")) {
    const std::vector<double> xy = numbers(outline);
    double twice = 0.0;
    for (std::size_t i = 0; i + 1 < xy.size(); i += 2) {
      const std::size_t next = (i + 2) % xy.size();
      twice += xy[i] * xy[next + 1] - xy[next] * xy[i + 1];
    }
    area += 0.5 * std::abs(twice);
  }
  return area;
}

/// Pixels in a millimetre, from the scale bar as a reader takes it.
double px_per_mm(const std::string& svg) {
  const std::string scale = pieces(svg, "<g class=\"scale\">", "</g>").at(0);
  const double bar_px = one_number(scale, " x2=\"") - one_number(scale, " x1=\"");
  const std::vector<std::string> words = pieces(scale, "<text", "</text>");
  return bar_px / numbers(words.at(0).substr(words.at(0).find('>') + 1)).at(0);
}

/// The words of all texts, one a line.
std::string words_of(const std::string& svg) {
  std::string all;
  for (const std::string& text : pieces(svg, "<text", "</text>")) {
    all += text.substr(text.find('>') + 1) + "\n";
  }
  return all;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_SUITE("plugins/drawing") {
  TEST_CASE("given three procedures, three drawings with safe names are named after them") {
    const std::vector<std::string> names =
        host().document_names("pass-drawing", io::plan_xml(tests::sample_plan()));
    CHECK(names ==
          std::vector<std::string>{"drawings/P01.svg", "drawings/P02.svg", "drawings/P03.svg"});
    for (const std::string& name : names) CHECK(io::is_safe_name(name));
  }

  TEST_CASE("for any drawing, law: well-formed, twice the same bytes, nothing fetched or run") {
    CHECK(tests::form_verdict("<svg><g></svg>", "drawing_bad") != "");
    for (const Drawn& one : all_drawn()) {
      INFO(one.file, " ", one.procedure);
      CHECK(tests::form_verdict(one.svg, "drawing") == "");
      CHECK(one.svg ==
            drawing(io::plan_xml(plans().at(one.file)), "drawings/" + one.procedure + ".svg"));
      CHECK(one.svg.find("xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"") !=
            std::string::npos);
      CHECK(tests::count_of(one.svg, "http") == 1);
      for (const char* mark : {"<script", "href", "style", "@", "<image", "nan", "inf\""}) {
        INFO(mark);
        CHECK(one.svg.find(mark) == std::string::npos);
      }
    }
  }

  TEST_CASE("for any drawing, law: each pass has its number once, in the order laid") {
    for (const Drawn& one : all_drawn()) {
      INFO(one.file, " ", one.procedure);
      const std::vector<std::string> found = pieces(one.svg, "class=\"pass-number\">", "<");
      REQUIRE(found.size() == one.seam->passes.size());
      for (std::size_t i = 0; i < found.size(); ++i) {
        CHECK(found[i] == std::to_string(one.seam->passes[i].pass.number));
      }
      CHECK(tests::count_of(one.svg, "class=\"bead-") == found.size());
    }
  }

  TEST_CASE("for any drawing, law: beads measured by the scale bar have the areas planned") {
    for (const Drawn& one : all_drawn()) {
      const double scale = px_per_mm(one.svg);
      for (const plan::PlannedPass& planned : one.seam->passes) {
        const std::string mark = "class=\"bead-" + std::to_string(planned.pass.number) + "\"";
        const std::size_t at = one.svg.find(mark);
        const std::size_t start = one.svg.rfind("<path", at);
        const std::string path = pieces(one.svg.substr(start), " d=\"", "\"").at(0);
        const double area_mm2 = area_px2(path) / (scale * scale);
        INFO(one.file, " ", one.procedure, " pass ", planned.pass.number);
        // 0.1 % of the cap lies outside its chords, and pixels have two decimals.
        CHECK(area_mm2 == doctest::Approx(planned.pass.area_mm2).epsilon(0.006));
      }
    }
  }

  TEST_CASE("for any drawing, law: all that is drawn lies on the paper") {
    for (const Drawn& one : all_drawn()) {
      INFO(one.file, " ", one.procedure);
      const std::vector<double> paper = numbers(pieces(one.svg, "viewBox=\"", "\"").at(0));
      REQUIRE(paper.size() == 4);
      CHECK(paper[2] == 640.0);
      const std::string drawn = one.svg.substr(one.svg.find("</defs>"));
      for (const char* mark : {" x=\"", " x1=\"", " x2=\"", " cx=\""}) {
        for (const std::string& x : pieces(drawn, mark, "\"")) {
          CHECK(numbers(x).at(0) >= 0.0);
          CHECK(numbers(x).at(0) <= 640.0);
        }
      }
      for (const char* mark : {" y=\"", " y1=\"", " y2=\"", " cy=\""}) {
        for (const std::string& y : pieces(drawn, mark, "\"")) {
          CHECK(numbers(y).at(0) >= 0.0);
          CHECK(numbers(y).at(0) <= paper[3]);
        }
      }
      for (const std::string& path : pieces(drawn, " d=\"", "\"")) {
        const std::vector<double> xy = numbers(path);
        for (std::size_t i = 0; i + 1 < xy.size(); i += 2) {
          CHECK((xy[i] >= 0.0 && xy[i] <= 640.0));
          CHECK((xy[i + 1] >= 0.0 && xy[i + 1] <= paper[3]));
        }
      }
    }
  }

  TEST_CASE("for any drawing, law: grey only, and roles differ in more than tone") {
    for (const Drawn& one : all_drawn()) {
      for (const std::string& colour : pieces(one.svg, "\"#", "\"")) {
        INFO(one.file, " ", one.procedure, " ", colour);
        const std::size_t digits = colour.size() / 3;
        CHECK(colour.substr(0, digits) == colour.substr(digits, digits));
        CHECK(colour.substr(0, digits) == colour.substr(2 * digits));
      }
    }
    std::map<std::string, std::string> line_by_role;
    for (const Drawn& one : all_drawn()) {
      for (const plan::PlannedPass& planned : one.seam->passes) {
        const std::string mark = "class=\"bead-" + std::to_string(planned.pass.number) + "\"";
        const std::size_t end = one.svg.find(mark);
        const std::string path = one.svg.substr(one.svg.rfind("<path", end), end);
        const std::string tag = path.substr(0, path.find("/>"));
        const std::string line = tag.substr(
            tag.find(" stroke-width"), tag.find(" stroke-linejoin") - tag.find(" stroke-width"));
        line_by_role[std::string(process::role_name(planned.pass.role))] = line;
      }
    }
    REQUIRE(line_by_role.size() >= 4);
    for (const auto& [role, line] : line_by_role) {
      for (const auto& [other, other_line] : line_by_role) {
        if (role != other) CHECK(line != other_line);
      }
    }
  }

  TEST_CASE("for any drawing, law: sizes, position, scale and standing can be read from it") {
    for (const Drawn& one : all_drawn()) {
      INFO(one.file, " ", one.procedure);
      const std::string words = words_of(one.svg);
      for (const std::string& said :
           {one.procedure + "  ",
            "position " + std::string(process::position_name(one.seam->position)),
            std::string("preliminary until a qualification record covers it"),
            std::string("Bead shapes are schematic"),
            std::string("thickness t1 of member 1: "),
            std::string("gravity"),
            std::string(" mm\n"),
            one.seam->id}) {
        INFO(said);
        CHECK(words.find(said) != std::string::npos);
      }
    }
  }

  TEST_CASE("given a double groove, each drawing says which side it is and shows the other") {
    const std::string xml = io::plan_xml(plans().at("preparations.xml"));
    const std::string first = words_of(drawing(xml, "drawings/P09.svg"));
    CHECK(first.find("double-bevel, tee, position PA, side 1 of 2") != std::string::npos);
    CHECK(first.find("side 2 as gouged, welded later") != std::string::npos);
    const std::string second = words_of(drawing(xml, "drawings/P10.svg"));
    CHECK(second.find("side 2 of 2") != std::string::npos);
    CHECK(second.find("side 1, welded before") != std::string::npos);
    CHECK(words_of(drawing(xml, "drawings/P06.svg")).find("side 2, welded later") !=
          std::string::npos);
    CHECK(words_of(drawing(xml, "drawings/P05.svg")).find("of 2") == std::string::npos);
  }

  TEST_CASE("given a fillet in PB on the table, gravity is drawn down on the page") {
    const std::string svg = drawing(io::plan_xml(plans().at("grab_hub.xml")), "drawings/P08.svg");
    const std::string gravity = pieces(svg, "<g class=\"gravity\">", "</g>").at(0);
    // The stance is shared with seams that lie a little otherwise: within half a degree of PB.
    const double down = one_number(gravity, " y2=\"") - one_number(gravity, " y1=\"");
    const double aside = one_number(gravity, " x2=\"") - one_number(gravity, " x1=\"");
    CHECK(down > 0.0);
    CHECK(std::abs(aside) < 0.01 * down);
    CHECK(words_of(svg).find("Drawn the way up that the plan gives seam LF_0r.a") !=
          std::string::npos);
  }

  TEST_CASE("given a seam without a place, the drawing says that it takes the plainest case") {
    const std::string svg =
        drawing(io::plan_xml(plans().at("preparations.xml")), "drawings/P05.svg");
    CHECK(words_of(svg).find("The plan gives this seam no place") != std::string::npos);
  }

  TEST_CASE("given a seam that climbs, gravity is drawn along the seam") {
    std::string xml = io::plan_xml(plans().at("bracket.xml"));
    for (const char* name : {"up_x", "up_y", "up_along"}) {
      const std::string mark = std::string(name) + "=\"";
      const std::size_t at = xml.find(mark) + mark.size();
      xml.replace(at, xml.find('"', at) - at, std::string(name) == "up_along" ? "1" : "0");
    }
    const std::string words = words_of(drawing(xml, "drawings/P01.svg"));
    CHECK(words.find("gravity along\nthe seam\n") != std::string::npos);
  }

  TEST_CASE("given passes that hold more than the outline, the drawing says so") {
    const std::string words =
        words_of(drawing(io::plan_xml(tests::sample_plan()), "drawings/P01.svg"));
    CHECK(words.find("Attention: the passes hold 33.3 mm2, the outline 25 mm2.") !=
          std::string::npos);
  }

  TEST_CASE("refuses with a reason what is no plan or lacks a part because a guess could hurt") {
    const std::string good = io::plan_xml(tests::sample_plan());
    for (const std::string& bad : {std::string(),
                                   std::string("<plan"),
                                   std::string("<other/>"),
                                   good.substr(0, good.size() / 2),
                                   replaced(good, "schema=\"1.0\"", "schema=\"2.0\"")}) {
      INFO(bad.substr(0, 80));
      CHECK_THROWS_AS((void)host().document_names("pass-drawing", bad), base::UnavailableError);
      CHECK_THROWS_AS((void)drawing(bad, "drawings/P01.svg"), base::UnavailableError);
    }
    for (const char* name : {"drawings/P09.svg", "P01", "../drawings/P01.svg", ""}) {
      CHECK_THROWS_AS((void)drawing(good, name), base::UnavailableError);
    }
  }

  TEST_CASE("refuses a pass without number, area, role or outline because it cannot be drawn") {
    const std::string good = io::plan_xml(tests::sample_plan());
    REQUIRE_NOTHROW((void)drawing(good, "drawings/P01.svg"));
    const std::vector<std::pair<std::string, std::string>> damages = {
        {"area_mm2=\"11.1\"", "area_mm2=\"0\""},
        {"area_mm2=\"11.1\"", "area_mm2=\"1,5\""},
        {"work_angle_deg=\"-7\"", "work_angle_deg=\"nan\""},
        {"aim_y_mm=\"1.5\"", "aim_y_mm=\"\""},
        {"role=\"root\"", "role=\"polish\""},
        {"<corner x_mm=\"5\" y_mm=\"5\" />", ""},
        {"<section side=\"1\"", "<section side=\"2\""},
        {"<seam id=\"J1.a\" side", "<seam id=\"J1.z\" side"}};
    for (const auto& [from, to] : damages) {
      INFO(from, " -> ", to);
      CHECK_THROWS_AS((void)drawing(replaced(good, from, to), "drawings/P01.svg"),
                      base::UnavailableError);
    }
  }

  TEST_CASE("for any picture of the handbook, law: it is what the plugin draws now") {
    struct Shown {
      const char* picture;
      const char* file;
      const char* procedure;
    };
    const std::string page =
        tests::text_of(tests::repository() / "docs" / "methods" / "pass-stack-pictures.md");
    const std::filesystem::path folder = tests::repository() / "docs" / "methods" / "pictures";
    for (const Shown& shown : {Shown{"fillet-one-pass.svg", "bracket.xml", "P04"},
                               Shown{"fillet-three-passes.svg", "grab_hub.xml", "P08"},
                               Shown{"single-v.svg", "bracket.xml", "P01"},
                               Shown{"k-in-tee-side-1.svg", "preparations.xml", "P09"},
                               Shown{"single-u.svg", "preparations.xml", "P05"}}) {
      INFO(shown.picture, ": write it again with seamturn write pass-drawing");
      CHECK(page.find("pictures/" + std::string(shown.picture)) != std::string::npos);
      const std::string now = drawing(io::plan_xml(plans().at(shown.file)),
                                      "drawings/" + std::string(shown.procedure) + ".svg");
      CHECK((tests::text_of(folder / shown.picture) == now));
    }
  }
}

}  // namespace seamturn
